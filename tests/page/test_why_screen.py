"""Why a remix does not work, and what mends it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from desks import browser, desk_in
from starlette.testclient import TestClient

STUCK = """game Stuck Row
  ages 8 to 12
  skills roll
  about "Nobody may fetch what rolled away."
space
  court 18 m by 9 m, halved across
sides
  north and south, 6 to 14 players each, mirrored
kit
  4 foam balls
  3 cones for each side
set-up
  cones on the back line of their side, evenly spaced
  2 foam balls in each half
play
  players stay in their half
  players roll a foam ball at the cones of the other side
  a missed ball rests behind the back line of the other side
when
  a cone is knocked: it stays down
finish
  a side wins when the other side has no cones standing
"""


@pytest.fixture
def client(tmp_path: Path) -> TestClient:
    desk = desk_in(tmp_path)
    folder = desk.shelf / "games"
    folder.mkdir(parents=True)
    (folder / "stuck-row.rules").write_text(STUCK, encoding="utf-8")
    return browser(desk)


def test_a_finding_leads_to_its_play_move_by_move(client: TestClient) -> None:
    remix = client.get("/remix/stuck-row").text
    assert "/why/stuck-row?finding=r0" in remix
    start = client.get("/why/stuck-row?finding=r0").text
    assert "The round starts." in start and 'data-key="ArrowLeft"' not in start
    second = client.get("/why/stuck-row?finding=r0&step=1").text
    assert "The round starts." not in second and 'data-key="ArrowLeft"' in second
    last = client.get("/why/stuck-row?finding=r0&step=999").text
    assert 'data-key="ArrowRight"' not in last


def test_mends_are_links_to_the_mended_remix(client: TestClient) -> None:
    text = client.get("/why/heron-and-pike/mends?with=nobody+is+out&finding=r0").text
    assert "Take “nobody is out” off" in text
    assert 'href="/remix/heron-and-pike?was=nobody+is+out"' in text
    assert 'data-later="/why/heron-and-pike/more-mends?' in text, "what has to be searched for keeps nobody waiting"
    assert "before=1" in text, "and how many there are is not worked out again"


def test_what_could_be_added_follows(client: TestClient) -> None:
    first = client.get("/why/stuck-row/mends?finding=r0").text
    assert "choice" not in first and "more-mends" in first
    assert "Add “open fetching”" in client.get("/why/stuck-row/more-mends?finding=r0").text


@pytest.mark.parametrize("place", ["", "r", "x0", "r0000", "r99", "c99"])
def test_a_finding_that_is_not_there_is_told(client: TestClient, place: str) -> None:
    assert client.get(f"/why/lantern-row?finding={place}").status_code == 404


def test_the_line_of_a_finding_is_that_of_the_remix(client: TestClient) -> None:
    """Whatever lines come in before it, and whatever it is changed into."""
    plain, more = (client.get(f"/why/stuck-row?{uses}finding=r0").text for uses in ("", "with=kick+instead&"))
    assert "players roll a foam ball at the cones of the other side" in plain
    assert "players kick a foam ball at the cones of the other side" in more


def test_only_what_is_said_to_change_nothing_is_taken_off_for_it(client: TestClient) -> None:
    """No game shows that its clock was written twice: each modifier taken off passed for a mend."""
    uses = "with=add+balls&with=time+limit"  # the wardens stop after five minutes already
    places = sorted(set(re.findall(r"finding=(r\d+)", client.get(f"/remix/beacon-wardens?{uses}").text)))
    told = {place: client.get(f"/why/beacon-wardens?{uses}&finding={place}").text for place in places}
    (place,) = [place for place in places if "changes nothing in" in told[place]]
    mends = client.get(f"/why/beacon-wardens/mends?{uses}&finding={place}").text
    assert "Take “time limit” off" in mends and "Take “add balls” off" not in mends
    assert "Add “" not in client.get(f"/why/beacon-wardens/more-mends?{uses}&finding={place}").text


@pytest.mark.parametrize(
    ("language", "said", "not_said"),
    [
        ("en", "It is so from the start, without a move.", "The play that leads there"),
        ("fr", "C’est ainsi dès le début, sans aucun coup.", "Le jeu qui y mène"),
    ],
)
def test_what_is_stuck_at_once_has_no_play_to_step_through(
    client: TestClient, tmp_path: Path, language: str, said: str, not_said: str
) -> None:
    """It is shown as it stands, and no screen promises a play that leads there."""
    text = STUCK.replace("2 foam balls in each half", "2 foam balls behind each back line")
    text = text.replace("game Stuck Row", "game Stuck at Once")
    (tmp_path / "shelf" / "games" / "stuck-at-once.rules").write_text(text, encoding="utf-8")
    headers = {"accept-language": language}
    remix = client.get("/remix/stuck-at-once", headers=headers).text
    assert "/why/stuck-at-once?finding=r0" in remix and "See the play" not in remix and "Voir le jeu" not in remix
    shown = client.get("/why/stuck-at-once?finding=r0", headers=headers).text
    assert said in shown and not_said not in shown and "stepping" not in shown
    assert "<svg" in shown.partition(said)[2]
    stepped = client.get("/why/stuck-row?finding=r0", headers=headers).text
    assert said not in stepped and "stepping" in stepped
