"""The parser's tables kept between runs: damaged ones are made anew, whatever the damage."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from grammar import tables
from grammar.language import GRAMMAR_FILE, sentence_parser, start_symbol

TEXT = GRAMMAR_FILE.read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(tables, "FOLDER", tmp_path_factory.mktemp("tables"))
        patch.setattr("sys.dont_write_bytecode", False)
        tables.keep_tables(TEXT, sentence_parser())
        again = tables.kept_tables(TEXT)
        assert again is not None
        line, start = "players roll a ball at the pins", start_symbol("play")
        assert again.parse(line, start=start) == sentence_parser().parse(line, start=start)
        return tables.tables_file(TEXT).read_bytes()


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
