"""The parser's tables kept between runs: damaged ones are made anew, whatever the damage."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from grammar import tables
from grammar.language import GRAMMAR_FILE, sentence_tables

TEXT = GRAMMAR_FILE.read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(tables, "FOLDER", tmp_path_factory.mktemp("tables"))
        tables.keep_tables(TEXT, sentence_tables())
        assert tables.kept_tables(TEXT) == sentence_tables()
        assert tables.kept_tables(f"{TEXT}\n// another grammar") is None
        return tables.tables_file(TEXT).read_bytes()


def test_tables_are_made_where_none_can_be_kept(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "no folder").write_text("", encoding="utf-8")
    monkeypatch.setattr(tables, "FOLDER", tmp_path / "no folder")
    small = 'a_line: "stop" | NAME ["again"]\nNAME: /x+/\n'
    assert tables.tables(small, ("a_line",)).phrases == {"stop": "STOP", "again": "AGAIN"}


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_damaged_tables_are_not_read(
    kept: bytes, data: st.DataObject, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tables, "FOLDER", tmp_path)
    at = data.draw(st.integers(0, len(kept) - 1))
    damaged = data.draw(
        st.sampled_from(
            [kept[:at], kept[:at] + bytes([kept[at] ^ 1 << at % 8]) + kept[at + 1 :], kept[:at] + kept[at + 1 :]]
        )
    )
    tables.tables_file(TEXT).write_bytes(damaged)
    assert tables.kept_tables(TEXT) is None
