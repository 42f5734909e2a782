"""What goes onto paper, and the lesson that is built."""

from __future__ import annotations

import json
import re
from io import BytesIO
from pathlib import Path

import pytest
from desks import browser, desk_in
from pypdf import PdfReader
from starlette.testclient import TestClient

from compose.page.desk import Desk
from compose.page.planned import FILE, MOST_GAMES, planned


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return desk_in(tmp_path)


@pytest.fixture
def client(desk: Desk) -> TestClient:
    return browser(desk)


def text_of(data: bytes) -> str:
    return " ".join(page.extract_text() for page in PdfReader(BytesIO(data)).pages)


@pytest.mark.parametrize(("file", "pages"), [("card.pdf", 1), ("large.pdf", 2)])
def test_a_card_is_a_file_with_the_remix_on_it(client: TestClient, file: str, pages: int) -> None:
    answer = client.get(f"/paper/lantern-row/{file}?with=kick+instead")
    assert answer.headers["content-type"] == "application/pdf"
    assert "attachment" in answer.headers["content-disposition"]
    assert len(PdfReader(BytesIO(answer.content)).pages) == pages
    assert "Lantern Row Remix" in text_of(answer.content)


def test_the_plan_is_a_drawing(client: TestClient) -> None:
    assert client.get("/paper/lantern-row/plan.svg").text.startswith("<svg")


@pytest.mark.parametrize(("long", "wide"), [(8, 15), (28, 6)])
def test_the_plan_fills_a_page_the_way_it_lies(client: TestClient, long: int, wide: int) -> None:
    use = f"court of this size,length {long},width {wide}"
    answer = client.get("/paper/lantern-row/plan.pdf", params={"with": use})
    assert answer.headers["content-type"] == "application/pdf"
    (page,) = PdfReader(BytesIO(answer.content)).pages
    text = page.extract_text()
    assert "Lantern Row Remix" in text and "lanterns" in text
    assert (page.mediabox.width > page.mediabox.height) == (long > wide)


def test_games_are_put_into_the_lesson_moved_and_taken_out(desk: Desk, client: TestClient) -> None:
    client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row", "with": ["kick instead"]})
    client.post("/lesson/add", data={"token": desk.token, "game": "toll-stone"})
    shown = client.get("/lesson?whole=yes").text
    assert "Minute by minute" in shown and "kick instead" in shown
    assert "<svg" in shown
    change = {"token": desk.token, "game": "toll-stone"}
    client.post("/lesson/change", data={**change, "one": "1", "to": "0", "do": "move"})
    assert [each.slug for each in planned(desk.shelf, desk.sheets())] == ["toll-stone", "lantern-row"]
    sheet = client.get("/lesson/lesson.pdf")
    assert "Toll Stone" in text_of(sheet.content)
    cards = client.get("/lesson/cards.pdf")
    assert len(PdfReader(BytesIO(cards.content)).pages) >= 2
    client.post("/lesson/change", data={**change, "one": "0", "to": "0", "do": "out"})
    assert [each.slug for each in planned(desk.shelf, desk.sheets())] == ["lantern-row"]
    late = client.post("/lesson/change", data={**change, "one": "0", "to": "0", "do": "out"})
    assert "changed elsewhere" in late.text, "another tab has taken it out already"
    assert [each.slug for each in planned(desk.shelf, desk.sheets())] == ["lantern-row"]


def test_a_game_whose_sheet_has_gone_leaves_the_others_in_their_places(desk: Desk, client: TestClient) -> None:
    games = [["gone", []], ["lantern-row", []], ["toll-stone", []]]
    desk.shelf.mkdir()
    (desk.shelf / FILE).write_text(json.dumps({"games": games}))
    assert re.findall(r"\d\. ([A-Z]\w+ \w+)</a>", client.get("/lesson").text) == ["Lantern Row", "Toll Stone"]
    client.post("/lesson/change", data={"token": desk.token, "game": "toll-stone", "one": "1", "to": "0", "do": "move"})
    assert [each.slug for each in planned(desk.shelf, desk.sheets())] == ["toll-stone", "lantern-row"]


def test_a_game_too_many_is_refused_with_the_reason(desk: Desk, client: TestClient) -> None:
    desk.shelf.mkdir()
    (desk.shelf / FILE).write_text(json.dumps({"games": [["toll-stone", []]] * MOST_GAMES}))
    sent = client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row"})
    assert f"holds {MOST_GAMES} games at most" in sent.text and "lantern-row" not in sent.text


def test_the_minutes_of_a_lesson_add_up(desk: Desk, client: TestClient) -> None:
    client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row"})
    rows = re.findall(r"<tr><td>(\d+)</td>.*?<td>([\d.]+)\u00a0min</td>", client.get("/lesson/minutes").text, re.S)
    first, last = rows[0], rows[-1]
    assert first[0] == "0"
    assert abs(int(last[0]) + float(last[1]) - 40) <= 1


def test_a_game_that_has_no_time_for_a_whole_round_says_so(desk: Desk, client: TestClient) -> None:
    for game in ("lantern-row", "toll-stone", "winter-store"):
        client.post(
            "/lesson/add", data={"token": desk.token, "game": game, "with": ["kick instead"] * (game[0] == "l")}
        )
    played = re.findall(r"Play: (.*?)</th>", client.get("/lesson/minutes").text)
    assert played[0].startswith("Lantern Row Remix, one round, stopped after"), played
    assert all(" rounds of about " in each or "one round" in each or "1 round of" in each for each in played)


@pytest.mark.parametrize("file", ["card.pdf", "large.pdf", "plan.pdf", "plan.svg"])
def test_what_does_not_go_together_is_not_printed(client: TestClient, file: str) -> None:
    answer = client.get(f"/paper/lantern-row/{file}?with=longer+court&with=shorter+court")
    assert answer.status_code == 422 and "do not go together" in answer.text


@pytest.mark.parametrize("text", ["", "{}", '{"games": 3}', '{"games": [["lantern-row"]]}', "\x00"])
def test_a_lesson_file_that_is_none_is_as_good_as_none(desk: Desk, client: TestClient, text: str) -> None:
    desk.shelf.mkdir()
    (desk.shelf / FILE).write_text(text)
    assert client.get("/lesson").status_code == 200


def test_nothing_outside_the_lesson_is_moved(desk: Desk, client: TestClient) -> None:
    for one, to in (("9", "0"), ("-1", "0"), ("x", "y")):
        client.post("/lesson/change", data={"token": desk.token, "one": one, "to": to, "do": "move"})
    client.post("/lesson/add", data={"token": desk.token, "game": "../../etc/passwd"})
    assert planned(desk.shelf, desk.sheets()) == ()


@pytest.mark.parametrize(
    ("long", "language", "said"),
    [("15", "en", "Not yet for your class"), ("15", "fr", "Pas encore pour votre classe"), ("28", "en", "")],
)
def test_a_lesson_says_of_which_game_its_hall_is_too_small(desk: Desk, long: str, language: str, said: str) -> None:
    client = browser(desk, **{"accept-language": language})
    told = {"pupils": "24", "youngest": "9", "oldest": "10", "minutes": "45", "long": long, "wide": "14"}
    client.post("/class", data={"token": desk.token, **told})
    client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row"})
    for text in (client.get("/lesson").text, client.get("/lesson/minutes").text):
        before, heading, after = text.partition(said) if said else (text, "", "")
        assert ('class="finding mend"' in text) == bool(said)
        assert not said or (heading and "Lantern Row</strong>" in after and "finding mend" not in before)
