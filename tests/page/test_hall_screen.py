"""The hall screen: one document, its rounds, and how it is lent."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from desks import browser, desk_in
from starlette.testclient import TestClient

import library
from compose.draw.signs.palette import STYLES
from compose.page.answers.hall import hall
from compose.page.answers.values import Asked
from compose.page.app import STATIC
from compose.page.desk import Desk
from compose.page.hall_document import policy
from compose.page.kept import USUAL
from compose.page.lending import MOST_WRONG, Lender, Lent, Loan
from compose.share.shelf.open_shelf import open_shelf

ROUND = {
    "slug": "lantern-row",
    "day": "2026-01-15",
    "pupils": "24",
    "length_s": "241.3",
    "winner": "north",
    "waited": "2",
}


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return desk_in(tmp_path)


@pytest.fixture
def client(desk: Desk) -> TestClient:
    return browser(desk)


def rounds(desk: Desk) -> tuple[object, ...]:
    opened = open_shelf(desk.shelf).value
    assert opened is not None
    with opened:
        return opened.rounds("Lantern Row").value or ()


@pytest.mark.parametrize("path", ["/hall/lantern-row", "/hall/lantern-row/carry.html"])
def test_it_is_one_document_that_loads_nothing(client: TestClient, path: str) -> None:
    text = client.get(path).text
    assert not re.search(r"<(link|img|script[^>]* src|iframe)", text)
    assert not re.search(r"url\(|@import|https?:", text)


def test_its_policy_names_its_own_look_and_script_only(client: TestClient) -> None:
    answer = client.get("/hall/lantern-row")
    assert answer.headers["content-security-policy"] == policy()
    assert "unsafe" not in policy() and policy().count("sha256-") == 2


def test_a_file_that_is_carried_holds_no_token(desk: Desk, client: TestClient) -> None:
    assert desk.token in client.get("/hall/lantern-row").text
    assert desk.token not in client.get("/hall/lantern-row/carry.html").text


def test_a_round_is_kept_once_however_often_it_is_sent(desk: Desk, client: TestClient) -> None:
    for _ in range(3):
        assert client.post("/hall/rounds", data={**ROUND, "token": desk.token}).status_code == 204
    assert len(rounds(desk)) == 1


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("winner", "Anna"),
        ("pupils", "0"),
        ("length_s", "nan"),
        ("length_s", "-1"),
        ("waited", "99"),
        ("slug", "../x"),
        ("day", "yesterday"),
        ("with", "no such modifier"),
    ],
)
def test_what_is_no_round_is_not_kept(desk: Desk, client: TestClient, field: str, value: str) -> None:
    answer = client.post("/hall/rounds", data={**ROUND, "token": desk.token, field: value})
    assert answer.status_code == 422 and answer.text
    assert rounds(desk) == ()


def test_rounds_of_a_file_are_taken_in(desk: Desk, client: TestClient) -> None:
    told = {"version": 1, "rounds": [{**ROUND, "uses": []}, {**ROUND, "uses": [], "length_s": 100}]}
    sent = {"file": ("rounds.json", json.dumps(told).encode())}
    answer = client.post("/hall/file", data={"token": desk.token}, files=sent)
    assert answer.status_code == 200 and "On the shelf from this file: 2 rounds." in answer.text
    assert len(rounds(desk)) == 2
    for broken in (b"", b"[]", b'{"rounds": 3}', b"\xff", b"[" * 100_000):
        answer = client.post("/hall/file", data={"token": desk.token}, files={"file": ("x", broken)})
        assert answer.status_code == 422


def test_the_lesson_is_in_the_document(desk: Desk, client: TestClient) -> None:
    for slug in ("lantern-row", "toll-stone"):
        client.post("/lesson/add", data={"token": desk.token, "game": slug})
    text = client.get("/hall/lantern-row?in=0").text
    assert "Toll Stone" in text


def lent(lender: Lender) -> TestClient:
    loan = Loan(lambda wrong: f"door {wrong}", lambda code: f"document {code}", "default-src 'none'", lambda told: "")
    lender.lent = Lent("http://10.0.0.2:99/", "ABCDEF", float("inf"))
    headers = {"origin": "http://10.0.0.2:99"}
    return TestClient(lender.app(loan, "10.0.0.2:99"), base_url="http://10.0.0.2:99", headers=headers)


def test_a_loan_opens_with_its_code_only_and_shows_nothing_else() -> None:
    borrower = lent(Lender())
    assert borrower.get("/").text == "door False"
    assert borrower.post("/", data={"code": "XXXXXX"}).status_code == 403
    assert borrower.post("/", data={"code": " abcdef "}).text == "document ABCDEF"
    for path in ("/class", "/games", "/static/page.js", "/hall/lantern-row", "/share", "/lesson"):
        assert borrower.get(path).status_code == 404
    assert borrower.post("/rounds", data={"code": "XXXXXX"}).status_code == 403
    assert borrower.post("/rounds", data={"code": "ABCDEF"}).status_code == 204
    assert borrower.get("/", headers={"host": "evil.example"}).status_code == 421


def test_guessing_shuts_the_door() -> None:
    lender = Lender()
    borrower = lent(lender)
    for _ in range(MOST_WRONG):
        borrower.post("/", data={"code": "XXXXXX"})
    assert borrower.post("/", data={"code": "ABCDEF"}).status_code == 403
    assert lender.lent is None


def test_a_loan_ends_by_itself() -> None:
    lender = Lender()
    borrower = lent(lender)
    lender.lent = Lent("http://10.0.0.2:99/", "ABCDEF", 0.0)
    assert borrower.post("/", data={"code": "ABCDEF"}).status_code == 403


@pytest.mark.sample(8)
@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_each_side_counts_what_decides(path: Path) -> None:
    """Points, or what an end or the bell counts of it; and who may wait is asked for wherever some can."""
    sheet = path.read_text(encoding="utf-8")
    shown = hall(path.stem, Asked((sheet,), (), USUAL, "en"))
    assert shown is not None
    finish = sheet.partition("\nfinish\n")[2].partition("\n\n")[0]
    assert shown.counters
    for each in shown.counters:
        said = each.words.split()[0]
        assert said.removesuffix("s") in finish or said == "points" or "wins when" not in finish, (each, finish)
    assert shown.waits or not re.search(r"(?m)^  (?!with ).*player (waits in|freezes|is out)", sheet)


def test_players_are_counted_where_they_decide() -> None:
    def counted(slug: str, language: str = "en") -> list[tuple[str, int]]:
        path = next(path for path in library.game_paths() if path.stem == slug)
        shown = hall(slug, Asked((path.read_text(encoding="utf-8"),), (), USUAL, language))
        assert shown is not None
        return [(each.words, each.start) for each in shown.counters]

    assert counted("tide-whistle") == [("players in play", 12)] * 2
    far = ["players on the far bench of the owls", "players on the far bench of the larks"]
    assert counted("ferry-bench") == [(far[0], 1), (far[1], 1)]
    assert counted("rime-harbour", "fr") == [("joueurs en jeu", 12)] * 2


def test_the_sides_have_the_signs_of_the_floor_plan() -> None:
    signs = re.findall(r'content: "(.)"', (STATIC / "hall.css").read_text(encoding="utf-8"))
    assert signs == [{"circle": "●", "square": "■", "triangle": "▲", "diamond": "◆"}[style.shape] for style in STYLES]
