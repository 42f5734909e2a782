"""Writing a sheet: mistakes with their help, one line written as it should be, tidied, kept."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest
from desks import BEGIN, browser, desk_in
from starlette.testclient import TestClient

import library
from compose.page.answers.writing import look
from compose.page.desk import Desk
from compose.share.bounds import MOST_RULES_BYTES

SLIP = BEGIN.replace("players underarm throw a foam ball", "players underarm thro a foam ball")


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return desk_in(tmp_path)


@pytest.fixture
def client(desk: Desk) -> TestClient:
    return browser(desk)


def work(client: TestClient, desk: Desk, text: str, do: str, name: str = "") -> str:
    return client.post("/write/work", data={"token": desk.token, "text": text, "do": do, "name": name}).text


def text_in(page: str) -> str:
    found = re.search(r"<textarea[^>]*>\n?(.*?)</textarea>", page, re.S)
    assert found
    return unescape(found.group(1))


def test_every_sheet_to_begin_with_can_be_read(client: TestClient) -> None:
    """Those of the library that are games, each offered by its kind of play."""
    offered = re.findall(r'href="/write/new\?like=([^"]*)"', client.get("/write").text)
    games = {path.stem: path.read_text(encoding="utf-8") for path in library.beginning_paths()}
    assert set(offered) == {name for name, text in games.items() if re.search("^game ", text, re.M)}
    for name in offered:
        page = client.get(f"/write/new?like={name}").text
        assert text_in(page) == games[name]
        assert "It can be read." in page and "What was understood" in page
    assert text_in(client.get("/write/new").text) == BEGIN
    assert client.get("/write/new?like=class").status_code == 404


def test_a_slip_is_told_and_written_as_it_should_be(client: TestClient, desk: Desk) -> None:
    page = work(client, desk, SLIP, "look")
    line = SLIP.splitlines().index("  players underarm thro a foam ball at the cones of the other side") + 1
    assert f'data-line="{line}"' in page
    assert "Write it so" in page
    assert text_in(work(client, desk, SLIP, "mend-0")) == BEGIN


def test_a_hint_that_is_a_line_is_told_in_french() -> None:
    told = look("fr", BEGIN.replace("players underarm throw a", "plyers underarm throw a")).slips
    assert told[0].hint == f"Écrire\u00a0: {told[0].write}"


def test_a_text_with_a_slip_is_not_kept(client: TestClient, desk: Desk) -> None:
    assert "1 mistake" in work(client, desk, SLIP, "keep")
    assert "my-game" not in desk.sheets()


def test_tidying_brings_the_usual_wording(client: TestClient, desk: Desk) -> None:
    untidy = BEGIN.replace("  8 foam balls", "  8   foam   balls").replace("\n\n", "\n")
    assert text_in(work(client, desk, untidy, "tidy")).strip() == BEGIN.strip()


def test_a_sheet_is_kept_opened_and_changed(client: TestClient, desk: Desk) -> None:
    assert "My Game" in work(client, desk, BEGIN, "keep")
    assert desk.sheets()["my-game"].own
    changed = BEGIN.replace("after 6 min", "after 7 min")
    assert "already" in work(client, desk, changed, "keep")
    assert text_in(client.get("/write/sheet/my-game").text).strip() == BEGIN.strip()
    work(client, desk, changed, "keep", "my-game")
    assert "after 7 min" in desk.sheets()["my-game"].texts[0]


def test_a_remix_becomes_a_sheet_of_its_own(client: TestClient) -> None:
    page = client.get("/write/sheet/lantern-row?with=kick+instead").text
    assert "game Lantern Row Remix" in text_in(page)
    assert "game My Lantern Row" in text_in(client.get("/write/sheet/lantern-row").text)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "x",
        "game",
        "</textarea><script>alert(1)</script>",
        "game <b>x</b>\n",
        "\u202egame\n",
        "class A\n  class of 3\n",
    ],
)
def test_any_text_is_answered_as_text(client: TestClient, desk: Desk, text: str) -> None:
    page = work(client, desk, text, "look")
    assert "<script>alert" not in page and "<b>x" not in page
    assert "mistake" in page


def test_a_text_that_is_too_long_is_not_read(client: TestClient, desk: Desk) -> None:
    assert "longer than a sheet may be" in work(client, desk, "x" * (MOST_RULES_BYTES + 1), "look")


def test_the_looks_alone_are_a_part_of_the_page(client: TestClient, desk: Desk) -> None:
    answer = client.post("/write/look", data={"token": desk.token, "text": SLIP})
    assert "<html" not in answer.text and "Write it so" in answer.text


def test_all_mistakes_are_counted_and_the_first_are_told() -> None:
    wrong = "".join(f"  players thorw ball {number}\n" for number in range(20))
    looked = look("en", BEGIN.replace("play\n", f"play\n{wrong}"))
    assert len(looked.slips) + looked.more == 20 > len(looked.slips)
