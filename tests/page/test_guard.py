"""Who may ask the page, how much may be sent, and what a browser may do with its answers."""

from __future__ import annotations

import mimetypes
from pathlib import Path

import pytest
from desks import CLASS, browser, desk_in

from compose.page.guard import MOST_SENT, POLICY
from compose.page.kept import is_kept
from compose.share.bounds import MOST_PACK_BYTES


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1", "127.0.0.1:1", "localhost:8730.evil.example", ""])
def test_a_host_that_is_not_ours_is_refused(tmp_path: Path, host: str) -> None:
    assert browser(desk_in(tmp_path)).get("/class", headers={"host": host}).status_code == 421


@pytest.mark.parametrize("host", ["127.0.0.1:8730", "localhost:8730", "[::1]:8730"])
def test_this_machine_is_let_in_by_each_of_its_names(tmp_path: Path, host: str) -> None:
    assert browser(desk_in(tmp_path)).get("/class", headers={"host": host}).status_code == 200


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "http://127.0.0.1:1", "http://localhost"])
def test_a_change_from_elsewhere_is_refused(tmp_path: Path, origin: str) -> None:
    desk = desk_in(tmp_path)
    sent = browser(desk).post("/class", data={**CLASS, "token": desk.token}, headers={"origin": origin})
    assert sent.status_code == 403
    assert not is_kept(desk.shelf)


def test_a_change_without_origin_is_refused(tmp_path: Path) -> None:
    desk = desk_in(tmp_path)
    client = browser(desk)
    del client.headers["origin"]
    assert client.post("/class", data={**CLASS, "token": desk.token}).status_code == 403


@pytest.mark.parametrize("token", ["", "x", "ÿ"])
def test_a_change_without_the_token_is_not_made_and_loses_nothing(tmp_path: Path, token: str) -> None:
    desk = desk_in(tmp_path)
    answer = browser(desk).post("/class", data={**CLASS, "pupils": "31", "token": token})
    assert answer.status_code == 409
    assert not is_kept(desk.shelf)
    assert 'name="pupils" value="31"' in answer.text
    assert desk.token in answer.text


def test_tokens_differ_from_run_to_run(tmp_path: Path) -> None:
    assert desk_in(tmp_path).token != desk_in(tmp_path).token


def test_another_site_cannot_make_us_work(tmp_path: Path) -> None:
    headers = {"sec-fetch-site": "cross-site", "sec-fetch-mode": "no-cors"}
    assert browser(desk_in(tmp_path)).get("/games/rows", headers=headers).status_code == 403


def test_another_way_of_asking_is_refused(tmp_path: Path) -> None:
    assert browser(desk_in(tmp_path)).put("/class").status_code == 405


def test_too_much_is_refused_by_what_is_said_and_by_what_comes(tmp_path: Path) -> None:
    client = browser(desk_in(tmp_path))
    assert client.post("/class", headers={"content-length": str(MOST_SENT + 1)}, content=b"").status_code == 413

    def pieces():
        for _ in range(MOST_SENT // (1 << 20) + 2):
            yield bytes(1 << 20)

    kind = "application/x-www-form-urlencoded"
    assert client.post("/class", headers={"content-type": kind}, content=pieces()).status_code == 413


def test_the_largest_pack_may_be_sent() -> None:
    assert MOST_SENT > MOST_PACK_BYTES


@pytest.mark.parametrize("path", ["/class", "/games", "/nowhere", "/static/page.js", "/remix/no-such-game"])
def test_every_answer_carries_the_policy(tmp_path: Path, path: str) -> None:
    answer = browser(desk_in(tmp_path)).get(path)
    assert answer.headers["content-security-policy"] == POLICY
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["cross-origin-resource-policy"] == "same-origin"
    assert "unsafe" not in POLICY


def test_nothing_is_inline_and_nothing_comes_from_elsewhere(tmp_path: Path) -> None:
    for path in ("/class", "/games?whole=yes", "/remix/lantern-row?with=kick+instead&whole=yes"):
        text = browser(desk_in(tmp_path)).get(path).text
        assert "<style" not in text and " style=" not in text and " onclick=" not in text, path
        assert text.count("<script") == text.count('<script src="/static/') > 0, path
        assert "//" not in text.replace("http://www.w3.org/2000/svg", ""), path


def test_the_language_form_leads_nowhere_else(tmp_path: Path) -> None:
    desk = desk_in(tmp_path)
    for back in ("//evil.example", "http://evil.example", "/\\evil.example"):
        sent = {"language": "fr", "back": back, "token": desk.token}
        answer = browser(desk).post("/language", data=sent, follow_redirects=False)
        assert answer.headers["location"] == "/"


def test_scripts_are_scripts_whatever_the_machine_says(tmp_path: Path) -> None:
    mimetypes.add_type("text/plain", ".js")
    answer = browser(desk_in(tmp_path)).get("/static/page.js")
    assert answer.headers["content-type"].startswith("text/javascript")
