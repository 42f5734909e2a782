"""Merging: what one side changed is taken, what both changed is asked, and the laws of a three-way merge hold."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

import attrs
import pytest
from hypothesis import given as given_by
from hypothesis import settings
from hypothesis import strategies as st
from shared_games import FELL_GATE, MORE_CONES, game_item, game_sheet, modifier_sheet
from shelves import given, opened

from compose.modifiers.content_hash import content_hash, plain_text
from compose.share.merge.merge import Merge, Side, blank, common_base, merge
from compose.share.shelf.files import Origin
from grammar.format import format_file, format_game
from grammar.parse import parse
from grammar.tree import GameSheet


def changed(*changes: tuple[str, str], text: str = FELL_GATE) -> GameSheet:
    """Fell Gate with pieces of its text replaced; each must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return game_sheet(text)


def merged(ours: GameSheet, theirs: GameSheet, choices: Mapping[int, Side] | None = None) -> Merge:
    return merge(game_sheet(), ours, theirs, choices or {})


def text(made: Merge) -> str:
    assert isinstance(made.sheet, GameSheet)
    return format_game(made.sheet)


COURT = ("14 m by 7 m", "16 m by 8 m")
BALLS = ("2 foam balls", "4 foam balls")
PLACED = ("1 foam ball in", "2 foam balls in")
RULE = ("it stays down", "it stays down\n  a player is hit: play goes on")
LIMIT = ("after 5 min", "after 8 min")


def test_changes_in_different_lines_come_together() -> None:
    made = merged(changed(COURT), changed(BALLS, PLACED, RULE))
    assert made.conflicts == ()
    assert text(made) == format_game(changed(COURT, BALLS, PLACED, RULE))


def test_the_same_change_on_both_sides_is_made_once() -> None:
    made = merged(changed(COURT, RULE), changed(COURT, RULE, LIMIT))
    assert made.conflicts == () and text(made) == format_game(changed(COURT, RULE, LIMIT))


def test_a_line_that_both_changed_is_asked_about_in_a_sentence() -> None:
    ours, theirs = changed(COURT), changed(("14 m by 7 m", "12 m by 6 m"))
    made = merged(ours, theirs)
    assert [each.words() for each in made.open] == [
        "Both changed a line under space. It was: court 14 m by 7 m, halved across. "
        "Ours: court 16 m by 8 m, halved across. Theirs: court 12 m by 6 m, halved across."
    ]
    for side, expected in ((Side.OURS, ours), (Side.THEIRS, theirs), (Side.BASE, game_sheet())):
        chosen = merged(ours, theirs, {1: side})
        assert chosen.open == () and len(chosen.conflicts) == 1
        assert text(chosen) == format_game(expected)


def test_another_skill_on_each_side_is_one_conflict_and_not_two_rules() -> None:
    made = merged(changed(("players roll", "players kick")), changed(("players roll", "players underarm throw")))
    assert [each.section for each in made.open] == ["play"]
    assert text(made).count("at the cones of the other side") == 1


def test_a_line_taken_away_here_and_changed_there() -> None:
    gone = ("  after 5 min: more cones standing wins, else a draw\n", "")
    assert [each.words() for each in merged(changed(gone), changed(LIMIT)).open] == [
        "Ours took a line away under finish that theirs changed. "
        "It was: after 5 min: more cones standing wins, else a draw. "
        "Theirs: after 8 min: more cones standing wins, else a draw."
    ]
    [conflict] = merged(changed(LIMIT), changed(gone)).open
    assert conflict.words().startswith("Theirs took a line away under finish that ours changed.")
    settled = merged(changed(LIMIT), changed(gone), {1: Side.THEIRS})
    assert text(settled) == format_game(changed(gone))
    assert merged(changed(gone), game_sheet()).conflicts == ()


def test_two_rules_for_one_event_do_not_stand_side_by_side() -> None:
    ours = changed(("it stays down", "it stays down\n  a player is hit: play goes on"))
    theirs = changed(("it stays down", "it stays down\n  a player is hit: that player is out"))
    made = merged(ours, theirs)
    assert [each.words() for each in made.open] == [
        "Both added a line under when about the same thing. "
        "Ours: a player is hit: play goes on. Theirs: a player is hit: that player is out."
    ]
    assert "that player is out" in text(merged(ours, theirs, {1: Side.THEIRS}))
    assert "a player is hit" not in text(merged(ours, theirs, {1: Side.BASE}))


def test_notes_of_both_are_kept_and_the_title_stays_ours() -> None:
    ours = changed(("play\n", "play\n  note: ours\n"), ("game Fell Gate", "game Fell Gate 2"))
    theirs = changed(("play\n", "play\n  note: theirs\n"), ("game Fell Gate", "game Their Gate"), COURT)
    made = merged(ours, theirs)
    assert made.conflicts == () and made.sheet.title == "Fell Gate 2"
    assert "  note: ours\n  note: theirs\n  players stay" in text(made)


def test_an_order_that_theirs_changed_is_kept() -> None:
    swapped = FELL_GATE.splitlines()
    at = swapped.index("finish")
    swapped[at + 1], swapped[at + 2] = swapped[at + 2], swapped[at + 1]
    theirs = game_sheet("\n".join(swapped))
    assert text(merged(changed(COURT), theirs)) == format_game(changed(COURT, text=format_game(theirs)))
    assert text(merged(theirs, changed(COURT))) == format_game(changed(COURT, text=format_game(theirs)))


def test_without_a_common_state_every_difference_is_asked_or_kept() -> None:
    ours, theirs = changed(COURT), changed(RULE)
    made = merge(blank(ours), ours, theirs, {})
    assert [each.section for each in made.open] == ["space"]
    assert "a player is hit: play goes on" in text(made)


def test_modifiers_merge_too() -> None:
    base = modifier_sheet(MORE_CONES)
    ours = modifier_sheet(MORE_CONES.replace("after 4 min", "after 6 min"))
    theirs = modifier_sheet(MORE_CONES.replace("1 to 6", "1 to 8"))
    made = merge(base, ours, theirs, {})
    both = MORE_CONES.replace("1 to 6", "1 to 8").replace("after 4 min", "after 6 min")
    assert made.conflicts == () and content_hash(made.sheet) == content_hash(modifier_sheet(both))
    clash = merge(base, ours, modifier_sheet(MORE_CONES.replace("after 4 min", "after 9 min")), {})
    assert "after 6 min" in clash.open[0].ours and "after 9 min" in clash.open[0].theirs


POOL = (
    ("when", "a player is hit: play goes on"),
    ("when", "a player is hit: that player is out"),
    ("when", "a ball is caught: everything starts again"),
    ("play", "a ball is held at most 6 s"),
    ("play", "a ball is held at most 9 s"),
    ("play", "players kick a foam ball at the cones of the other side"),
    ("care", '"Mind the wall."'),
    ("finish", "a side loses when it has no players in"),
)
EDITS = st.lists(
    st.one_of(
        st.tuples(st.just("number"), st.integers(0, 30), st.integers(1, 9)),
        st.tuples(st.just("drop"), st.integers(0, 30), st.just(0)),
        st.tuples(st.just("add"), st.integers(0, len(POOL) - 1), st.integers(0, 3)),
    ),
    max_size=4,
)


def edited(edits: list[tuple[str, int, int]]) -> GameSheet:
    """Fell Gate with lines dropped and added and numbers changed, whether or not a game comes of it."""
    lines = FELL_GATE.splitlines()
    for what, at, value in edits:
        inner = [number for number, line in enumerate(lines) if line.startswith("  ")]
        here = inner[at % len(inner)]
        if what == "number":
            lines[here] = re.sub(r"\d+", str(value), lines[here], count=1)
        elif what == "drop" and len(inner) > 12:
            del lines[here]
        elif what == "add":
            section, sentence = POOL[at]
            if f"  {sentence}" not in lines and section in lines:
                lines.insert(lines.index(section) + 1 + value % 2, f"  {sentence}")
    rules = parse("\n".join(lines)).value
    sheet = rules.games[0] if rules else game_sheet()
    return attrs.evolve(sheet, sections=tuple(section for section in sheet.sections if section.lines))


@settings(max_examples=60, deadline=None)
@given_by(EDITS, EDITS)
def test_laws_of_a_three_way_merge(one: list[tuple[str, int, int]], other: list[tuple[str, int, int]]) -> None:
    base, ours, theirs = game_sheet(), edited(one), edited(other)
    assert plain_text(merge(base, ours, base, {}).sheet) == plain_text(ours)
    assert plain_text(merge(base, base, theirs, {}).sheet) == plain_text(theirs)
    assert plain_text(merge(base, ours, ours, {}).sheet) == plain_text(ours)
    forth, back = merge(base, ours, theirs, {}), merge(base, theirs, ours, {})
    assert {(c.section, c.base, c.ours, c.theirs) for c in forth.conflicts} == {
        (c.section, c.base, c.theirs, c.ours) for c in back.conflicts
    }
    if not forth.conflicts:
        assert sorted(plain_text(forth.sheet).splitlines()) == sorted(plain_text(back.sheet).splitlines())
    all_theirs = merge(base, ours, theirs, {}, Side.THEIRS)
    mirrored = merge(base, theirs, ours, {}, Side.OURS)
    assert all_theirs.open == mirrored.open == ()
    assert sorted(plain_text(all_theirs.sheet).splitlines()) == sorted(plain_text(mirrored.sheet).splitlines())


def test_the_state_that_both_came_from_is_found_on_the_shelf(tmp_path: Path) -> None:
    first, second = game_item(), game_item(FELL_GATE.replace("14 m", "15 m"))
    theirs = game_item(FELL_GATE.replace("7 to 11", "8 to 11"), (first.content,))
    with opened(tmp_path) as shelf:
        given(shelf.put(first))
        given(shelf.replace(second))
        ours = given(shelf.named("Fell Gate")).item
        found = given(common_base(shelf, ours, theirs))
        assert content_hash(found) == first.content
        stranger = game_item(FELL_GATE.replace("14 m", "16 m"))
        assert common_base(shelf, ours, stranger).value is None


def test_what_was_taken_and_is_as_it_came_is_brought_up_to_date(tmp_path: Path) -> None:
    """No state is known that both came from, but nothing of ours stands in it: one's own change makes it ours."""
    origin, newer = Origin("Fell School", "Games", "0" * 64, "2026-01-02"), game_item(FELL_GATE.replace("14 m", "16 m"))
    with opened(tmp_path / "shelf") as shelf:
        given(shelf.put(game_item(FELL_GATE), origin))
        ours = given(shelf.named("Fell Gate")).item
        base = given(common_base(shelf, ours, newer))
        made = merge(base, game_sheet(ours.text), game_sheet(newer.text), {})
        assert made.conflicts == () and content_hash(made.sheet) == newer.content
        given(shelf.replace(game_item(FELL_GATE.replace("2 foam", "4 foam"))))
        changed_by_us = given(shelf.named("Fell Gate")).item
        assert common_base(shelf, changed_by_us, newer).value is None


@pytest.mark.parametrize("path", ["lantern-row", "ferry-bench"])
def test_library_games_merge_with_themselves(path: str) -> None:
    import library

    [file] = [each for each in library.game_paths() if each.stem == path]
    rules = parse(file.read_text(encoding="utf-8")).value
    assert rules is not None
    sheet = rules.games[0]
    made = merge(sheet, sheet, sheet, {})
    assert made.conflicts == () and isinstance(made.sheet, GameSheet)
    assert format_game(made.sheet) == format_file(rules)
