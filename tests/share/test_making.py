"""Remixes made into games from what is at hand, and what has to travel with them."""

from __future__ import annotations

from pathlib import Path

from shared_games import (
    FELL_GATE,
    KICKED_GATE,
    everything,
    game_item,
    game_sheet,
    kicked_gate,
    modifier_item,
    modifier_sheet,
    remix_sheet,
)
from shared_games import MORE_CONES as MORE
from shelves import given, opened

from compose.modifiers.content_hash import content_hash
from compose.share.folder_at_hand import FolderAtHand
from compose.share.making import LibraryAtHand, Sheets, library_contents, parts_of, played
from compose.share.shelf.files import sheet_paths
from compose.share.shelf.find import Wanted, find
from library import remix_paths

AT_HAND = Sheets((game_sheet(), modifier_sheet(), modifier_sheet(MORE)), LibraryAtHand())
AGAIN = """\
remix Fell Gate Kicked Again
  based on "Fell Gate Kicked"
  with "time limit", time 3 min
"""


def test_a_remix_is_made_from_what_is_at_hand() -> None:
    game = given(played(remix_sheet(), AT_HAND))
    assert game.title == "Fell Gate Kicked" and [line.count for line in game.kit] == [2, 5]
    assert "players kick a foam ball" in " ".join(each.words() for each in game.sentences("play"))


def test_a_remix_of_a_remix_is_made_too() -> None:
    at_hand = Sheets((remix_sheet(),), AT_HAND)
    game = given(played(remix_sheet(AGAIN), at_hand))
    assert "after 3 min" in " ".join(each.words() for each in game.sentences("finish"))


def test_what_cannot_be_made_says_why() -> None:
    [finding] = played(remix_sheet(KICKED_GATE.split("  with")[0]), LibraryAtHand()).findings
    assert finding.title.endswith("there is no game called `Fell Gate`.")
    titles = [finding.title for finding in played(remix_sheet(), LibraryAtHand()).findings]
    assert titles == ["There is no modifier called `kick on`.", "There is no modifier called `more cones`."]
    itself = remix_sheet(AGAIN.replace('"Fell Gate Kicked"', '"Fell Gate Kicked Again"'))
    [finding] = played(itself, Sheets((itself,), LibraryAtHand())).findings
    assert "comes from itself" in finding.title
    round_one = remix_sheet('remix One\n  based on "Two"\n')
    round_two = remix_sheet('remix Two\n  based on "One"\n')
    [finding] = played(round_one, Sheets((round_one, round_two))).findings
    assert "comes from itself" in finding.title


def test_what_a_remix_is_made_of_travels_with_it() -> None:
    at_hand = Sheets((remix_sheet(),), AT_HAND)
    parts = {sheet.title for sheet in parts_of([remix_sheet(AGAIN)], at_hand)}
    assert parts == {"Fell Gate Kicked", "Fell Gate", "kick on", "more cones"}
    assert parts_of([game_sheet()], at_hand) == ()


def test_the_library_makes_its_own_remixes() -> None:
    contents = library_contents()
    for path in remix_paths():
        remix = LibraryAtHand().base(path.stem)
        assert remix is not None and content_hash(remix) in contents
        given(played(remix, LibraryAtHand()))
        assert parts_of([remix], LibraryAtHand()) == ()


def test_a_folder_has_at_hand_what_lies_in_it(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        for item in everything():
            given(shelf.put(item))
    assert len(list(sheet_paths(tmp_path))) == 5
    game = given(played(remix_sheet(), FolderAtHand(tmp_path)))
    assert game == given(played(remix_sheet(), AT_HAND))


def test_a_remix_on_the_shelf_changes_with_its_base(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(kicked_gate()))
        [found] = given(find(shelf, Wanted(kind="remix"))).fitting
        assert found.plays == "" and found.court_m is None
        for item in (game_item(), modifier_item(), modifier_item(MORE)):
            given(shelf.put(item))
        [found] = given(find(shelf, Wanted(kind="remix"))).fitting
        assert found.plays == content_hash(given(played(remix_sheet(), AT_HAND)).sheet)
        assert found.court_m == (14, 7) and found.skills == ("kick", "stop")
        given(shelf.replace(game_item(FELL_GATE.replace("14 m", "15 m"))))
        [found] = given(find(shelf, Wanted(kind="remix"))).fitting
        assert found.court_m == (15, 7)
