"""Observed rounds: kept, counted, given back; no field holds a name, and the tool says so."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path

import attrs
import pytest
from shared_games import FELL_GATE, TOLL_BRIDGE, everything, game_item
from shelves import contents, files, given, index_is_true, opened, refusal

from compose.share.shelf.files import Note
from compose.share.shelf.find import Wanted, find
from compose.share.shelf.own_data import forget_everything, forget_notes, forget_rounds, own_data
from compose.share.shelf.rounds import NO_NAMES, ObservedRound, observed

SEEN = ObservedRound("2025-11-25", "5a", 18, 270.5, "ewes", 3, game_item().content)
SIDES = ("ewes", "rams")


def test_rounds_are_kept_in_order_and_can_be_read_as_a_table(tmp_path: Path) -> None:
    later = attrs.evolve(SEEN, winner="draw", class_code="", length_s=300.0)
    with opened(tmp_path) as shelf:
        assert given(shelf.observe("Fell Gate", SEEN)) == 1
        assert given(shelf.observe("fell gate", later)) == 2
        assert given(shelf.rounds("Fell Gate")) == (SEEN, later)
        assert given(shelf.rounds("Toll Bridge")) == ()
        assert index_is_true(shelf)
    table = (tmp_path / "rounds/fell-gate.csv").read_text().splitlines()
    assert table[0] == "day,class_code,pupils,length_s,winner,waited,content"
    assert table[1] == f"2025-11-25,5a,18,270.5,ewes,3,{game_item().content}"


def test_a_game_says_how_often_it_was_played(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(shelf.observe("Fell Gate", SEEN))
        assert [found.rounds for found in given(find(shelf, Wanted())).fitting] == [1]


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"winner": "Anna"}, "O-winner"),
        ({"winner": "ewes, but Tom cried"}, "O-winner"),
        ({"class_code": "Anna"}, "O-class"),
        ({"class_code": "the rowdy ones"}, "O-class"),
        ({"class_code": "5a\n"}, "O-class"),
        ({"day": "yesterday"}, "O-day"),
        ({"pupils": 0}, "O-pupils"),
        ({"pupils": 401}, "O-pupils"),
        ({"length_s": 0.0}, "O-length"),
        ({"length_s": float("nan")}, "O-length"),
        ({"length_s": float("inf")}, "O-length"),
        ({"length_s": 10801.0}, "O-length"),
        ({"waited": 19}, "O-waited"),
        ({"waited": -1}, "O-waited"),
        ({"content": "Anna"}, "O-content"),
    ],
)
def test_what_is_no_count_is_refused(change: dict[str, object], code: str) -> None:
    assert observed(SEEN, SIDES).value == SEEN
    assert refusal(observed(attrs.evolve(SEEN, **change), SIDES))[0] == code  # type: ignore[arg-type]


def test_whoever_writes_a_name_is_told_that_none_is_kept() -> None:
    for change in ({"winner": "Anna"}, {"class_code": "Anna"}):
        [finding] = observed(attrs.evolve(SEEN, **change), SIDES).findings  # type: ignore[arg-type]
        assert NO_NAMES in finding.hint


def test_a_line_written_by_hand_is_read_or_refused_with_its_number(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.observe("Fell Gate", SEEN))
        table = tmp_path / "rounds/fell-gate.csv"
        table.write_text(table.read_text().replace("\n", "\r\n") + f"2025-11-26,,20,100,rams,0,{SEEN.content}")
        given(shelf.observe("Fell Gate", SEEN))
        assert [seen.pupils for seen in given(shelf.rounds("Fell Gate"))] == [18, 20, 18]
        table.write_text(table.read_text() + "2025-11-27,Anna,1,1,rams,0,x\n")
        assert refusal(shelf.rounds("Fell Gate")) == ("O-class", "fell-gate.csv, line 5: `Anna` is not a class.")
        given(shelf.stored())
        assert [trouble.code for trouble in shelf.troubles()] == ["O-class"]


def test_all_of_ones_own_data_is_given_out(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        for item in everything():
            given(shelf.put(item))
        given(shelf.observe("Fell Gate", SEEN))
        given(shelf.note("Toll Bridge", Note("2025-11-25", "Mind the wall.")))
        told = json.loads(json.dumps(given(own_data(shelf))))
    assert told["rounds"] == {"fell-gate": [attrs.asdict(SEEN)]}
    assert len(told["things"]) == 5
    assert [thing["notes"] for thing in told["things"] if thing["name"] == "Toll Bridge"] == [
        [{"day": "2025-11-25", "text": "Mind the wall."}]
    ]


def test_rounds_of_one_class_are_deleted_and_no_other(tmp_path: Path) -> None:
    other = attrs.evolve(SEEN, class_code="6b")
    with opened(tmp_path) as shelf:
        for name in ("Fell Gate", "Toll Bridge"):
            given(shelf.observe(name, SEEN))
            given(shelf.observe(name, other))
        assert refusal(forget_rounds(shelf, class_code="Anna"))[0] == "O-class"
        assert given(forget_rounds(shelf, name="Fell Gate", class_code="5a")) == 1
        assert given(shelf.rounds("Fell Gate")) == (other,)
        assert given(shelf.rounds("Toll Bridge")) == (SEEN, other)
        assert given(forget_rounds(shelf, class_code="6b")) == 2
        assert given(forget_rounds(shelf)) == 1
        assert given(forget_rounds(shelf)) == 0
        assert not list((tmp_path / "rounds").iterdir()) and index_is_true(shelf)


def test_deleted_notes_are_nowhere_any_more(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(shelf.put(game_item(TOLL_BRIDGE)))
        given(shelf.note("Fell Gate", Note("2025-11-25", "Zebrafish were seen.")))
        given(shelf.replace(game_item(FELL_GATE.replace("14 m", "15 m"))))
        assert given(forget_notes(shelf)) == 1
        assert len(contents(shelf)) == 2 and index_is_true(shelf)
    everywhere = b"".join(path.read_bytes() for path in tmp_path.rglob("*") if path.is_file())
    assert b"ebrafish" not in everywhere


def test_everything_is_deleted_but_what_is_not_the_shelfs(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("mine")
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(shelf.observe("Fell Gate", SEEN))
        assert given(forget_everything(shelf)) == 1
        with pytest.raises(sqlite3.ProgrammingError):
            shelf.index.execute("SELECT 1")
    assert files(tmp_path) == {"letter.txt": b"mine"}
    assert sorted(path.name for path in tmp_path.iterdir()) == ["letter.txt"]
