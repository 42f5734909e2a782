"""A merge counted: no line and no note is lost, doubled, or comes back after somebody took it away."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from hypothesis import given, settings
from hypothesis import strategies as st
from shared_games import FELL_GATE, game_sheet

from compose.share.merge.merge import Merge, merge
from grammar.tree import GameSheet

PLAIN = FELL_GATE.partition("\ncare\n")[0]
TEXTS = tuple(f'"{letter * 12}"' for letter in "abcde")  # so unlike each other that none is a new wording of another
NOTES = ("first", "second", "third", "fourth")
LIMITS = tuple(f"a ball is held at most {time} s" for time in (6, 8, 9))
COURT = "court 14 m by 7 m, halved across"


def saying(care: Sequence[str]) -> GameSheet:
    """Fell Gate with these lines under care."""
    return game_sheet("\n".join((PLAIN, *(["care", *(f"  {line}" for line in care)] if care else []), "")))


def noted(where: str, notes: Sequence[str], court: str = COURT) -> GameSheet:
    """Fell Gate with these notes before the line that begins so, and with this court."""
    lines = [line for line in FELL_GATE.replace(COURT, court).splitlines() if not line.startswith("note:")]
    at = next(number for number, line in enumerate(lines) if line.startswith(where))
    lines[at:at] = [f"{' ' * (len(where) - len(where.lstrip()))}note: {note}" for note in notes]
    return game_sheet("\n".join(lines))


def game(made: Merge) -> GameSheet:
    assert isinstance(made.sheet, GameSheet)
    return made.sheet


def said(sheet: GameSheet, section: str) -> list[str]:
    return [line.sentence.words() for line in sheet.lines(section)]


def notes_of(sheet: GameSheet) -> list[str]:
    """Every note of a sheet, wherever it stands."""
    lines = [*sheet.head, *(line for section in sheet.sections for line in section.lines)]
    heads = [*sheet.notes, *(note for section in sheet.sections for note in section.notes)]
    return [*heads, *(note for line in lines for note in line.notes)]


def agreed(base: int, ours: int, theirs: int) -> int | None:
    """How often something is there when two have changed how often it was; None where they do not agree."""
    if ours in (base, theirs):
        return theirs
    return ours if theirs == base else None


lines = st.lists(st.sampled_from(TEXTS), max_size=5)
alike = st.lists(st.sampled_from([f'"Mind the wall, part {number}."' for number in range(6)]), max_size=4)
notes = st.lists(st.sampled_from(NOTES), max_size=4, unique=True)


@settings(max_examples=150, deadline=None)
@given(base=lines, ours=lines, theirs=lines)
def test_each_line_is_there_as_often_as_both_will(base: list[str], ours: list[str], theirs: list[str]) -> None:
    """Where the two do not agree no more of it comes than both together have, and no less than either."""
    found = Counter(said(game(merge(saying(base), saying(ours), saying(theirs), {})), "care"))
    for text in TEXTS:
        before, mine, others = (each.count(text) for each in (base, ours, theirs))
        expected = agreed(before, mine, others)
        if expected is not None:
            assert found[text] == expected
        assert min(mine, others) <= found[text] <= max(before, mine + others)


@settings(max_examples=100, deadline=None)
@given(base=alike, later=alike)
def test_what_one_alone_made_of_lines_that_are_alike_is_taken_as_it_is(base: list[str], later: list[str]) -> None:
    before, after = saying(base), saying(later)
    for ours, theirs in ((before, after), (after, before), (after, after)):
        made = merge(before, ours, theirs, {})
        assert made.conflicts == () and said(game(made), "care") == later


@settings(max_examples=100, deadline=None)
@given(
    where=st.sampled_from(("game ", "  court ", "  players roll ", "  a side wins ")),
    base=notes,
    ours=notes,
    theirs=notes,
    courts=st.permutations((COURT, COURT.replace("14", "16"))),
)
def test_a_note_stays_as_long_as_nobody_takes_it_away(
    where: str, base: list[str], ours: list[str], theirs: list[str], courts: list[str]
) -> None:
    """Also where one of the two changes the line that it stands at: what both had, and what either put there."""
    made = merge(noted(where, base), noted(where, ours, courts[0]), noted(where, theirs, courts[1]), {})
    expected = {note for note in NOTES if agreed(note in base, note in ours, note in theirs)}
    found = notes_of(game(made))
    assert set(found) == expected and len(found) == len(expected)
    assert made.conflicts == () and COURT not in said(game(made), "space")


@settings(max_examples=60, deadline=None)
@given(
    ours=st.lists(st.sampled_from(LIMITS), max_size=3, unique=True),
    theirs=st.lists(st.sampled_from(LIMITS), max_size=3, unique=True),
)
def test_whoever_says_two_things_about_one_keeps_both(ours: list[str], theirs: list[str]) -> None:
    """One new line on each side about the same is asked about; where either has two they stand beside each other."""
    base = game_sheet()
    mine, others = (
        game_sheet(FELL_GATE.replace("play\n", "\n".join(("play", *(f"  {line}" for line in each), ""))))
        for each in (ours, theirs)
    )
    made = merge(base, mine, others, {})
    assert bool(made.conflicts) == (len(ours) == len(theirs) == 1 and ours != theirs)
    kept = [line for line in said(game(made), "play") if line in LIMITS]
    assert sorted(kept) == sorted(ours if made.conflicts else {*ours, *theirs})
