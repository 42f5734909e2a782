"""The loader names the file and the key of whatever is wrong with a data file."""

from __future__ import annotations

from pathlib import Path

import pytest

import library
from library import load as loader
from library import norm_tables
from library.reading import read_file

SOURCED = ', source = "common-practice"'
GOOD = 'plural = "orbs"\nabout = "."\ncategory = "ball"\nmay = ["roll"]\n'
GOOD += 'diameter_cm = { usual = 9, source = "common-practice" }\n'
MALFORMED = {
    "not readable as TOML": "[orb\n",
    "orb > may: a ball must be fit for something": "[orb]\n" + GOOD.replace('may = ["roll"]', "may = []"),
    "orb > may: `juggle` is none of": "[orb]\n" + GOOD.replace('"roll"', '"juggle"'),
    "orb > category: `bal` is none of": "[orb]\n" + GOOD.replace('"ball"', '"bal"'),
    "orb > plural: must be a text": "[orb]\n" + GOOD.replace('"orbs"', "3"),
    "orb > colour: not a key here": "[orb]\n" + GOOD + 'colour = "red"\n',
    "orb > soft: must be true or false": "[orb]\n" + GOOD + 'soft = "yes"\n',
    "orb > diameter_cm > usual: low <= usual": "[orb]\n" + GOOD.replace("usual = 9", "low = 10, usual = 9"),
    "orb > diameter_cm > usual: must be a number": "[orb]\n" + GOOD.replace("usual = 9", "usual = -9"),
    "orb > diameter_cm > source: `shop` is not in": "[orb]\n" + GOOD.replace("common-practice", "shop"),
    "orb > diameter_cm > source: must be a text": "[orb]\n" + GOOD.replace(SOURCED, ""),
    "orb > diameter_cm > why: an assumption must": "[orb]\n" + GOOD.replace("common-practice", "assumption"),
    "orb > diameter_cm: must be a table": "[orb]\n" + GOOD.replace("{ usual = 9", "9 # {"),
    "orb > diameter_cm: a ring must have it": '[orb]\nplural = "o"\nabout = ""\ncategory = "ring"\n',
    "orb > width_cm: a target must have it": '[orb]\nplural = "o"\nabout = ""\ncategory = "target"\n',
    "orb > also: must be a list of texts": "[orb]\n" + GOOD + "also = [1]\n",
}


@pytest.mark.parametrize("complaint", MALFORMED)
def test_a_malformed_file_is_told_with_file_and_key(
    complaint: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "kit").mkdir()
    (tmp_path / "kit" / "orbs.toml").write_text(MALFORMED[complaint], encoding="utf-8")
    library.sources()
    monkeypatch.setattr(loader, "HERE", tmp_path)
    with pytest.raises(library.DataError) as told:
        loader.folder("kit", loader.kit_from)
    assert complaint in str(told.value)
    assert "orbs.toml" in str(told.value)


HEAD = '[pace]\nabout=""\nunit="s"\nbetter="lower"\n[pace.roll]\nsource="common-practice"\n'
BAD_NORMS = {
    "pace > better: `faster` is none of": HEAD.replace("lower", "faster"),
    "pace > roll > all: a norm needs": HEAD,
    "pace > roll > all: a norm needs `all` alone": HEAD + "all={usual=1}\n8-9={usual=1}\n",
    "pace > roll > 8-9: overlaps": HEAD + "6-8={usual=1}\n8-9={usual=1}\n",
    "pace > roll > eight: must be `all` or ages": HEAD + "eight={usual=1}\n",
}


@pytest.mark.parametrize("complaint", BAD_NORMS)
def test_a_malformed_norm_is_told(complaint: str, tmp_path: Path) -> None:
    path = tmp_path / "odd.toml"
    path.write_text(BAD_NORMS[complaint], encoding="utf-8")
    entry = read_file(path).entry("pace")
    with pytest.raises(library.DataError, match=r"odd\.toml: ") as told:
        norm_tables.table_from("odd pace", entry)
    assert complaint in str(told.value)


def test_a_name_may_stand_once_only(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "kit").mkdir()
    for name in ("a", "b"):
        (tmp_path / "kit" / f"{name}.toml").write_text("[orb]\n" + GOOD, encoding="utf-8")
    library.sources()
    monkeypatch.setattr(loader, "HERE", tmp_path)
    with pytest.raises(library.DataError, match=r"b\.toml: orb: stands in another file too"):
        loader.folder("kit", loader.kit_from)
