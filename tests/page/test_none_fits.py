"""Where no game fits the class, the list says so before all else, and shows those that lack least."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from desks import browser, desk_in
from starlette.testclient import TestClient

import library

ROW = '<li class="game">'


def page_for(folder: Path, language: str = "en", **told: str) -> TestClient:
    desk = desk_in(folder)
    client = browser(desk, **{"accept-language": language})
    group = {"pupils": "26", "youngest": "9", "oldest": "10", "minutes": "40", "hall": ""}
    client.post("/class", data={"token": desk.token, **group, **told})
    return client


@pytest.mark.parametrize("address", ["/games?whole=yes", "/games/rows?"])
@pytest.mark.parametrize(
    ("language", "said"), [("en", "None of these games fits your class"), ("fr", "Aucun de ces jeux ne convient")]
)
def test_that_none_fits_is_said_before_a_dozen_games(tmp_path: Path, address: str, language: str, said: str) -> None:
    text = page_for(tmp_path, language, **{"kit-foam ball": "1"}, minutes="8").get(address).text
    before, _, others = text.partition('<details id="other-games">')
    assert said in before.partition(ROW)[0] and "verdict sound" not in text
    assert before.count(ROW) == 12
    assert before.count(ROW) + others.count(ROW) == len([*library.game_paths(), *library.remix_paths()])
    assert f"({others.count(ROW)})" in others.partition("</summary>")[0]


def test_all_that_fit_are_shown_and_nothing_else_is_said(tmp_path: Path) -> None:
    text = page_for(tmp_path).get("/games?whole=yes").text
    shown = text.partition('<details id="other-games">')[0]
    assert text.count("verdict sound") == shown.count("verdict sound") > 10
    assert "None of these" not in text


def test_that_none_is_left_is_said_otherwise(tmp_path: Path) -> None:
    text = page_for(tmp_path).get("/games?whole=yes&skill=nothing").text
    assert "No game is left" in text and "None of these" not in text and not re.search("other-games", text)


def test_of_halls_that_are_too_small_the_least_short_comes_first(tmp_path: Path) -> None:
    text = page_for(tmp_path, long="15", wide="12").get("/games?whole=yes").text
    alone = re.findall(
        r'<li class="game">(?:(?!<li|</details>).)*?The hall is ([0-9.]+)\xa0m too small(?:(?!<li).)*?</div>',
        text,
        re.S,
    )
    short = [float(each) for each in alone]
    assert len(short) > 10 and short[0] == min(short)
    assert text.index("too small") < text.index("would not play"), "what can be played comes before what cannot"
