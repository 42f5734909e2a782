"""Finding on a shelf: by every wish, in any spelling, and the nearest where nothing fits."""

from __future__ import annotations

from pathlib import Path

import pytest
from shared_games import FELL_GATE, everything, game_item
from shelves import given, opened, refusal

from compose.share.shelf.files import Note
from compose.share.shelf.find import Search, Wanted, find
from compose.share.shelf.shelf import Shelf
from compose.share.shelf.verdicts import judge


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> Shelf:
    shelf = opened(tmp_path_factory.mktemp("shelf"))
    for item in everything():
        given(shelf.put(item))
    given(shelf.note("Toll Bridge", Note("2025-11-25", "Good before the holidays.")))
    return shelf


def names(shelf: Shelf, wanted: Wanted) -> list[str]:
    return [found.name for found in given(find(shelf, wanted)).fitting]


@pytest.mark.parametrize(
    ("wanted", "expected"),
    [
        (Wanted(), ["Fell Gate", "Fell Gate Kicked", "kick on", "more cones", "Toll Bridge"]),
        (Wanted(kind="modifier"), ["kick on", "more cones"]),
        (Wanted(kind="remix"), ["Fell Gate Kicked"]),
        (Wanted(skill="Overarm throw"), ["Toll Bridge"]),
        (Wanted(age=8), ["Fell Gate", "Fell Gate Kicked"]),
        (Wanted(age=12), ["Toll Bridge"]),
        (Wanted(age=9, skill="kick"), ["Fell Gate Kicked"]),
        (Wanted(players=24), ["Toll Bridge"]),
        (Wanted(kind="game", space_m=(8, 15)), ["Fell Gate"]),
        (Wanted(kind="game", kit=("cones", "soft volleyballs")), ["Toll Bridge"]),
        (Wanted(kind="game", kit=("cone", "balls")), ["Fell Gate", "Toll Bridge"]),
        (Wanted(words="toll"), ["Toll Bridge"]),
        (Wanted(words="holiday"), ["Toll Bridge"]),
        (Wanted(words="SOFT BALLS"), ["kick on"]),
        (Wanted(words="cones standing", kind="game"), ["Fell Gate", "Toll Bridge"]),
    ],
)
def test_every_wish_counts(shelf: Shelf, wanted: Wanted, expected: list[str]) -> None:
    assert names(shelf, wanted) == expected


def nearest(search: Search) -> list[tuple[str, tuple[str, ...]]]:
    assert search.fitting == ()
    return [(found.name, found.lacks) for found in search.nearest]


def test_the_nearest_says_what_it_lacks(shelf: Shelf) -> None:
    search = given(find(shelf, Wanted(kind="game", age=8, space_m=(13, 7))))
    assert nearest(search) == [
        ("Fell Gate", ("needs a court of 14 m by 7 m",)),
        ("Toll Bridge", ("is for ages 9 to 13", "needs a court of 18 m by 9 m")),
    ]
    search = given(find(shelf, Wanted(kind="game", players=5, kit=("cones",))))
    assert nearest(search)[0] == ("Fell Gate", ("is for 8 to 20 players", "needs foam balls"))
    search = given(find(shelf, Wanted(kind="game", skill="tow")))
    assert nearest(search)[0] == ("Fell Gate", ("practises roll and stop",))


def test_words_spelled_otherwise_are_mended(shelf: Shelf) -> None:
    search = given(find(shelf, Wanted(words="tol brigde")))
    assert search.spelling == "tol bridge" and search.fitting == ()
    assert given(find(shelf, Wanted(words="tol bridge"))).fitting != ()


def test_two_letters_that_change_places_still_find_it(shelf: Shelf) -> None:
    words = {word.lower() for name in names(shelf, Wanted()) for word in name.split() if len(word) > 4}
    slips = {f"{word[:at]}{word[at + 1]}{word[at]}{word[at + 2 :]}" for word in words for at in (1, len(word) - 2)}
    assert words and slips - words
    for slip in slips - words:
        search = given(find(shelf, Wanted(words=slip)))
        found = search.fitting or (search.spelling and given(find(shelf, Wanted(words=search.spelling))).fitting)
        assert found, (slip, search.spelling)


@pytest.mark.parametrize("words", ['"', "toll AND OR NOT", "a*b^c(", "NEAR(toll", "x" * 5000, "toll; DROP TABLE items"])
def test_no_words_are_read_as_orders(shelf: Shelf, words: str) -> None:
    outcome = find(shelf, Wanted(words=words))
    assert outcome.value is not None or refusal(outcome)[0] == "S-words"
    assert len(names(shelf, Wanted())) == 5


def test_sound_games_are_those_that_were_checked_and_have_nothing_to_mend(tmp_path: Path) -> None:
    endless = FELL_GATE.replace("game Fell Gate", "game Fell Gate Again").replace("it stays down", "it stands up again")
    endless = endless.replace("  after 5 min: more cones standing wins, else a draw\n", "")
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(shelf.put(game_item(endless)))
        assert names(shelf, Wanted(sound=True)) == []
        assert given(judge(shelf)) == 2 and given(judge(shelf)) == 0
        assert names(shelf, Wanted(sound=True)) == ["Fell Gate"]
        search = given(find(shelf, Wanted(sound=True, words="again")))
        assert nearest(search)[0][0] == "Fell Gate Again"
