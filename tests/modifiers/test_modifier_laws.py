"""Laws of remixing that hold for every game and every modifier of the library, with any values."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from mixtures import game_of, granted_sheet, library_games
from strategies import games, library_modifiers, modifiers, uses

from compose.modifiers.apply import apply, remix
from compose.modifiers.clash import order_matters
from compose.modifiers.edit import Edit
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Use
from compose.net.from_game import net_of
from grammar.finding import Severity
from grammar.format import format_game
from grammar.game import Game
from grammar.parse import parse
from grammar.span import Span
from library import kit_names


def use_of(text: str) -> Use:
    """The modifier of a text, with its usual values."""
    rules = parse(text).value
    assert rules is not None
    modifier = modifier_of(rules.modifiers[0]).value
    assert modifier is not None
    return Use(modifier)


def made_of(lines: str) -> Use:
    """A modifier that consists of these changes."""
    return use_of(f'modifier test\n  heading task\n  about "A test."\n{lines}\n')


def lines_by_place(game: Game) -> list[tuple[Span, str]]:
    """Each line with where it stands: two that a modifier has made of one stand in the same place."""
    lines = (*game.sheet.head, *(line for part in game.sheet.sections for line in part.lines))
    return [(line.span, line.sentence.words()) for line in lines]


def changed_into(place: Span) -> str:
    """What the place says that a modifier has made of the line that stood there."""
    return place.changed.words if place.changed else ""


any_use = st.one_of(uses(), uses(), modifiers().map(use_of))
any_game = st.one_of(st.sampled_from([*library_games().values()]), games().map(game_of))


@given(any_game, any_use)
def test_modifier_gives_a_game_that_compiles_or_says_why_not(game: Game, use: Use) -> None:
    outcome = apply(game, use, kit_names())
    if outcome.value is None:
        assert all(finding.title and finding.severity is Severity.ERROR for finding in outcome.findings)
        assert outcome.findings
        return
    remixed, edits = outcome.value
    assert game_of(format_game(remixed.sheet)) == remixed
    assert edits or any(finding.code == "M-no-effect" for finding in outcome.findings)
    was = dict(lines_by_place(game))
    now = lines_by_place(remixed)
    assert all(words == was.get(place, words) or words == changed_into(place) for place, words in now)
    net = net_of(remixed, granted_sheet())
    assert net.value is not None or all(finding.title for finding in net.findings)
    assert net.value is not None or net.findings
    edits_say_what_changed(game, remixed, edits)


def edits_say_what_changed(game: Game, remixed: Game, edits: tuple[Edit, ...]) -> None:
    """Lines that no edit speaks of are in the remix as they were; lines that came or went are in an edit."""
    for section in ("head", "space", "sides", "kit", "set-up", "play", "when", "finish", "care"):
        before = [line.sentence.words() for line in game.sheet.lines(section)]
        after = [line.sentence.words() for line in remixed.sheet.lines(section)]
        gone = {edit.before for edit in edits if edit.section == section}
        come = {edit.after for edit in edits if edit.section == section}
        assert set(before) - set(after) <= gone
        assert set(after) - set(before) <= come


@given(any_game)
def test_empty_remix_is_the_same_game(game: Game) -> None:
    made = remix(game, (), kit_names()).value
    assert made is not None
    assert made.game == game
    assert not made.edits


@given(any_game, st.lists(uses(), max_size=3))
def test_same_modifiers_give_the_same_game_and_leave_the_base_as_it_was(game: Game, chosen: list[Use]) -> None:
    before, labels = format_game(game.sheet), [use.label for use in chosen]
    first, second = (remix(game, chosen, kit_names()) for _ in range(2))
    assert first.findings == second.findings
    assert (first.value is None) == (second.value is None)
    if first.value and second.value:
        assert format_game(first.value.game.sheet) == format_game(second.value.game.sheet)
        assert first.value.base is game
    assert format_game(game.sheet) == before
    assert [use.label for use in chosen] == labels


LINES = (
    ("care", '"Mind the owl."'),
    ("play", "players fetch balls from behind the wall"),
    ("space", "owl zone: 1 m deep, across the middle"),
)


@pytest.mark.parametrize(("section", "line"), LINES, ids=["care", "play", "space"])
@given(game=any_game)
@settings(max_examples=10)
def test_what_was_put_in_can_be_taken_out_again(section: str, line: str, game: Game) -> None:
    both = made_of(f"  put in {section}\n    {line}"), made_of(f"  take from {section}\n    {line}")
    if remix(game, both[:1], kit_names()).value is None:
        assert section == "play", "only balls to fetch are not in every game"
        return
    made = remix(game, both, kit_names()).value
    assert made is not None
    assert made.game == game


@given(any_game, uses(), uses())
@settings(max_examples=10)
def test_pairs_whose_order_matters_are_told_both_ways(game: Game, first: Use, second: Use) -> None:
    one = [finding.code for finding in order_matters(game, (first, second), kit_names())]
    other = [finding.code for finding in order_matters(game, (second, first), kit_names())]
    assert one == other


@pytest.mark.parametrize("number", range(len(library_modifiers())), ids=[each.name for each in library_modifiers()])
def test_every_modifier_fits_some_game(number: int) -> None:
    use = Use(library_modifiers()[number])
    outcomes = (apply(game, use, kit_names()) for game in library_games().values())
    assert any(outcome.value and outcome.value[1] for outcome in outcomes)
