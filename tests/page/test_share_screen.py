"""Packs on the page: looked into, taken in, merged sentence by sentence, given away, undone."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from attrs import evolve
from desks import BEGIN, browser, desk_in
from starlette.testclient import TestClient

import library
from compose.page.answers.sharing import remix_of_lesson
from compose.page.answers.values import Asked
from compose.page.desk import Desk
from compose.page.shelved import keep_sheet
from compose.share.pack.pack import read_pack


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return desk_in(tmp_path)


@pytest.fixture
def client(desk: Desk) -> TestClient:
    return browser(desk)


def given_by(folder: Path, text: str) -> bytes:
    """The pack of another school that has this sheet."""
    desk = desk_in(folder)
    assert not keep_sheet(desk.shelf, text, "").wrong
    asked = {"token": desk.token, "item": "games/my-game.rules", "title": "Theirs", "origin": "An invented school"}
    return browser(desk).post("/share/give", data=asked).content


def looked(client: TestClient, desk: Desk, pack: bytes) -> tuple[str, str]:
    page = client.post("/share/look", data={"token": desk.token}, files={"pack": ("a.zip", pack)}).text
    found = re.search(r'name="pack" value="([0-9a-f]{64})"', page)
    return page, found.group(1) if found else ""


def test_a_pack_goes_from_school_to_school_and_is_undone(desk: Desk, client: TestClient, tmp_path: Path) -> None:
    pack = given_by(tmp_path / "theirs", BEGIN)
    assert read_pack(pack, "x").value is not None
    page, sha = looked(client, desk, pack)
    assert "<h2>New</h2>" in page and "An invented school" in page
    assert "my-game" not in desk.sheets(), "looking takes nothing in"
    assert "Taken in: 1 sheet" in client.post("/share/take", data={"token": desk.token, "pack": sha}).text
    assert desk.sheets()["my-game"].own
    again = looked(client, desk, pack)[0]
    assert "The same as yours" in again and "nothing that you do not have" in again
    assert "Take it in" not in again, "there is nothing to take in"
    assert "is undone" in client.post("/share/undo", data={"token": desk.token}).text
    assert "my-game" not in desk.sheets()


def test_what_both_changed_is_merged_sentence_by_sentence(desk: Desk, client: TestClient, tmp_path: Path) -> None:
    keep_sheet(desk.shelf, BEGIN.replace("after 6 min", "after 4 min"), "")
    pack = given_by(tmp_path / "theirs", BEGIN.replace("after 6 min", "after 9 min").replace("aim", "aim"))
    page, sha = looked(client, desk, pack)
    assert "Changed by both" in page
    choice = {"token": desk.token, "pack": sha, "choice-game-my-game": "merge"}
    merging = client.post("/share/take", data=choice)
    assert merging.url.path == "/share/merge"
    assert "4 min" in merging.text and "9 min" in merging.text
    at = {"token": desk.token, "pack": sha, "item": "games/my-game.rules"}
    assert client.post("/share/merge", data=at).status_code == 422, "nothing is chosen"
    numbers = re.findall(r'id="c(\d+)-theirs"', merging.text)
    done = client.post("/share/merge", data={**at, **{f"choice-{number}": "theirs" for number in numbers}})
    assert done.status_code == 200 and "My Game is kept as you chose. The pack brings nothing else." in done.text
    assert "Take it in" not in done.text
    assert "after 9 min" in desk.sheets()["my-game"].texts[0]


@pytest.mark.parametrize("choice", ["ours", "theirs", "both"])
def test_a_choice_is_kept(desk: Desk, client: TestClient, tmp_path: Path, choice: str) -> None:
    keep_sheet(desk.shelf, BEGIN.replace("after 6 min", "after 4 min"), "")
    _, sha = looked(client, desk, given_by(tmp_path / "theirs", BEGIN))
    client.post("/share/take", data={"token": desk.token, "pack": sha, "choice-game-my-game": choice})
    own = [each for each in desk.sheets().values() if each.own]
    assert len(own) == (2 if choice == "both" else 1)
    assert ("after 6 min" in desk.sheets()["my-game"].texts[0]) == (choice == "theirs")


@pytest.mark.parametrize("data", [b"", b"no zip", b"PK\x03\x04" + bytes(60)])
def test_what_is_no_pack_is_refused_in_words(desk: Desk, client: TestClient, data: bytes) -> None:
    answer = client.post("/share/look", data={"token": desk.token}, files={"pack": ("a.zip", data)})
    assert answer.status_code == 422 and 'role="alert"' in answer.text


def test_a_pack_that_is_gone_is_asked_for_again(desk: Desk, client: TestClient) -> None:
    assert "Drop the pack in once more" in client.post("/share/take", data={"token": desk.token, "pack": "0" * 64}).text
    assert client.get("/share/merge?pack=x&item=games/x.rules").status_code == 404


def test_nothing_to_undo_and_nothing_to_give_are_told(desk: Desk, client: TestClient) -> None:
    for path in ("/share/undo", "/share/give"):
        assert client.post(path, data={"token": desk.token}).status_code == 422


@pytest.mark.parametrize(("language", "said"), [("en", "from the lesson"), ("fr", "de la séance")])
def test_a_remix_of_the_lesson_is_given_and_made_again_elsewhere(tmp_path: Path, language: str, said: str) -> None:
    """With its base and its modifiers; two remixes of one game under two names, and the same one once."""
    desk, theirs = desk_in(tmp_path / "mine"), desk_in(tmp_path / "theirs")
    client = browser(desk, **{"accept-language": language})
    assert "from the lesson" not in client.get("/share").text
    for uses in (["kick instead"], ["add balls,n 3"], ["kick instead"], []):
        client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row", "with": uses})
    text = client.get("/share").text
    boxes = re.findall(r'value="(lesson-\d)"><label[^>]*>([^(<]*)\((.*?)\)', text)
    assert [(box, name.strip(), where) for box, name, where in boxes] == [
        ("lesson-0", "Lantern Row Remix", said),
        ("lesson-1", "Lantern Row Remix 2", said),
    ]
    pack = client.post("/share/give", data={"token": desk.token, "item": [box for box, _, _ in boxes]}).content
    there = browser(theirs)
    _, sha = looked(there, theirs, pack)
    there.post("/share/take", data={"token": theirs.token, "pack": sha})
    for slug, told in (("lantern-row-remix", "kick"), ("lantern-row-remix-2", "foam balls")):
        made = there.get(f"/remix/{slug}").text
        assert "the rules work" in made or "to mend" in made
        assert theirs.sheets()[slug].own and told in theirs.sheets()[slug].texts[0].replace("add balls", "foam balls")


def test_a_remix_of_the_lesson_is_given_beside_the_sheet_that_has_its_name(desk: Desk, client: TestClient) -> None:
    keep_sheet(desk.shelf, BEGIN.replace("My Game", "Lantern Row Remix"), "")
    client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row", "with": ["kick instead"]})
    boxes = re.findall(r'name="item" value="([^"]*)"><label[^>]*>([^(<]*)', client.get("/share").text)
    assert [name.strip() for _, name in boxes] == ["Lantern Row Remix", "Lantern Row Remix 2"]
    pack = client.post("/share/give", data={"token": desk.token, "item": [box for box, _ in boxes]})
    assert pack.headers["content-type"] == "application/zip"


def test_what_was_ticked_and_typed_stays_where_the_pack_cannot_be_made(desk: Desk, client: TestClient) -> None:
    keep_sheet(desk.shelf, BEGIN, "")
    (box,) = re.findall(r'name="item" value="([^"]*)"><label', client.get("/share").text)
    given = {"token": desk.token, "item": [box], "title": "a" * 2000, "origin": "Beck School"}
    told = client.post("/share/give", data=given)
    assert told.status_code == 422
    assert f'value="{box}" checked' in told.text and 'value="Beck School"' in told.text


def test_where_the_pack_goes_is_said_with_its_button(desk: Desk, client: TestClient) -> None:
    keep_sheet(desk.shelf, BEGIN, "")
    text = client.get("/share").text
    button, sent = text.index("Make the pack"), text.index("data-sent hidden")
    assert button < text.index("among its downloads") < sent < text.index("The pack is made")


def test_what_cannot_be_made_is_not_given() -> None:
    (text,) = [each.read_text(encoding="utf-8") for each in library.game_paths() if each.stem == "lantern-row"]
    asked = Asked((text,), ("kick instead",), "", "en")
    kicked = remix_of_lesson(asked, "Kicked Row")
    assert kicked is not None and kicked.path == "remixes/kicked-row.rules"
    assert remix_of_lesson(evolve(asked, uses=("kick instead", "roll instead")), "") is None
