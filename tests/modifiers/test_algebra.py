"""The algebra of modifiers, with any values and on any game: identity, idempotence, inverse pairs, commuting pairs."""

from __future__ import annotations

import pytest
from algebra import algebra, commute, twice_is_once, undoes
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from mixtures import ROW, game_of, library_games, made, mixed, modifier_in, modifiers_by_name, row, use
from strategies import games, uses

from compose.modifiers.clash import clash
from compose.modifiers.difference.same_game import same_game, same_meaning
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from grammar.game import Game

library_game = st.sampled_from([*library_games().values(), row()])
any_game = st.one_of(library_game, games().map(game_of))

SETS = ("hold limit", "time limit", "aiming line", "no-guard strip", "best of rounds", "draw at once", "low targets")
SKILLS = ("overarm instead", "underarm instead", "roll instead", "kick instead", "strike instead", "pass instead")
IDEMPOTENT = (
    *SETS,
    *SKILLS,
    "softer balls",
    "big light balls",
    "nobody is out",
    "catch brings back",
    "catch brings back all",
    "hit changes sides",
    "nearer targets",
    "farther targets",
    "targets in order",
    "below the shoulder",
    "points for targets",
    "change ends",
    "change tasks",
    "odd pupil keeps the score",
    "until the clock",
    "plain rules",
)
GROWING = (
    "add balls",
    "more targets",
    "bigger targets",
    "shorter court",
    "weaker hand",
    "walking play",
    "uneven sides",
)


@given(any_game, uses())
def test_identity_may_stand_before_and_after(game: Game, chosen: Use) -> None:
    nothing = modifier_in('take from care\n  "Nobody has written this."')
    alone = mixed(game, chosen).value
    for order in ((nothing, chosen), (chosen, nothing)):
        both = mixed(game, *order).value
        assert (both is None) == (alone is None)
        assert both is None or (alone is not None and same_game(both.game, alone.game))


@given(any_game, st.sampled_from(IDEMPOTENT))
def test_what_sets_a_thing_may_be_repeated(game: Game, name: str) -> None:
    assert twice_is_once(game, use(name)) in (True, None)


@given(library_game, st.sampled_from(GROWING))
def test_what_adds_to_a_thing_adds_again(game: Game, name: str) -> None:
    once = mixed(game, use(name)).value
    assume(once is not None and mixed(once.game, use(name)).value is not None)
    assert twice_is_once(game, use(name)) is False


@given(library_game, uses())
def test_repeating_is_either_idle_refused_or_seen(game: Game, chosen: Use) -> None:
    """`twice_is_once` says what applying says."""
    once = mixed(game, chosen).value
    verdict = twice_is_once(game, chosen)
    if once is None:
        assert verdict is None
        return
    again = mixed(once.game, chosen)
    if verdict and again.value is not None:
        assert same_game(again.value.game, once.game)


@given(any_game, st.integers(1, 12))
def test_added_balls_taken_away_give_the_canonical_game(game: Game, number: int) -> None:
    there_and_back(game, use("add balls", n=number), use("fewer balls", n=number))


@given(any_game, st.integers(1, 6))
def test_added_targets_taken_away_give_the_canonical_game(game: Game, number: int) -> None:
    there_and_back(game, use("more targets", n=number), use("fewer targets", n=number))


@given(any_game, st.sampled_from((125, 160, 200)))
def test_court_made_longer_and_shorter_again(game: Game, part: int) -> None:
    there_and_back(game, use("longer court", part=part), use("shorter court", part=10_000 / part))


@given(any_game, st.sampled_from((125, 160, 200, 250)))
def test_targets_made_bigger_and_smaller_again(game: Game, size: int) -> None:
    there_and_back(game, use("bigger targets", size=size), use("smaller targets", size=10_000 / size))


def there_and_back(game: Game, there: Use, back: Use) -> None:
    """A modifier and its inverse give the game itself, where both fit."""
    if mixed(game, there, back).value is not None:
        assert undoes(game, there, back)


@given(library_game, uses(), uses())
@settings(max_examples=40)
def test_commuting_is_the_same_both_ways_and_told_rightly(game: Game, first: Use, second: Use) -> None:
    verdict = commute(game, first, second)
    assert verdict == commute(game, second, first)
    one, other = mixed(game, first, second).value, mixed(game, second, first).value
    if verdict:
        assert one is not None and other is not None
        assert same_meaning(one.game, other.game), "sheets of the same lines that mean something else"
        assert players(one) == players(other)


def players(made_of: Remix) -> dict[str, tuple[int, int]]:
    """The range of every side."""
    return {side.name: (side.least, side.most) for side in made_of.game.sides}


STEPS = (("space", "equipment"), ("equipment", "people"), ("space", "people"))


@given(library_game, st.sampled_from(STEPS), st.data())
@settings(max_examples=40)
def test_modifiers_of_different_headings_mostly_commute(
    game: Game, steps: tuple[str, str], data: st.DataObject
) -> None:
    """Kit, space and people do not meddle with each other, but where one puts in what the other changes."""
    names = [sorted(each.name for each in modifiers_by_name().values() if each.step == step) for step in steps]
    first, second = (use(data.draw(st.sampled_from(each))) for each in names)
    if commute(game, first, second) is not False or clash(first, second):
        return
    sections = [
        {edit.section for edit in outcome.value.edits}
        for each in (first, second)
        if (outcome := mixed(game, each)).value is not None
    ]
    assert len(sections) < 2 or sections[0] & sections[1]


def test_algebra_of_one_game() -> None:
    chosen = [use(name) for name in ("add balls", "fewer balls", "hold limit", "roll instead", "overarm instead")]
    found = algebra(row(), chosen)
    assert found.fits == ("add balls", "fewer balls", "hold limit", "roll instead", "overarm instead")
    assert found.changes_nothing == ("overarm instead",)
    assert set(found.twice_is_once) == {"hold limit", "roll instead", "overarm instead"}
    assert ("add balls", "fewer balls") in found.undo and ("roll instead", "overarm instead") in found.undo
    assert ("roll instead", "overarm instead") in found.order_matters
    assert ("add balls", "hold limit") not in found.order_matters


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("4 foam balls in each half", "foam balls in each half", True),
        ("      players stay in their half\n", "", True),  # it is taken for granted
        ("a lantern is knocked", "any lantern is knocked", True),
        ("4 foam balls in each half", "3 foam balls in each half\n      2 foam balls in the middle", False),
        ("the lanterns or the players of", "the lanterns of", False),
        (", nobody guards there", "", False),
        ('"Aim low."', '"Aim at the foot of a lantern."', False),
    ],
)
def test_wording_is_told_from_meaning(one: str, other: str, same: bool) -> None:
    assert one in ROW
    assert same_game(row(), game_of(ROW.replace(one, other))) is same


def test_who_throws_may_be_called_the_kicker() -> None:
    text = ROW.replace("it stays down", "the thrower's side scores 1 point and it stands up again")
    assert same_game(game_of(text), game_of(text.replace("thrower's", "kicker's")))
    assert not same_game(game_of(text), game_of(text.replace("1 point", "2 points")))


def test_order_of_ways_to_win_has_a_meaning() -> None:
    lines = "a side wins when the other side has no lanterns standing\n      a side wins when it has 3 players in"
    text = ROW.replace("a side wins when the other side has no lanterns standing", lines)
    swapped = text.replace(lines, "\n      ".join(reversed([each.strip() for each in lines.split("\n")])))
    assert not same_game(game_of(text), game_of(swapped))


def test_lines_of_play_may_stand_in_any_order() -> None:
    first, second = "players stay in their half", "a ball is held at most 9 s"
    one = ROW.replace(first, f"{first}\n      {second}")
    assert same_game(game_of(one), game_of(ROW.replace(first, f"{second}\n      {first}")))
    assert same_game(made(row(), use("hold limit", time=9)), game_of(one))


GUARDED = ("while it has at most 3 lanterns standing", "while it has at most 2 lanterns standing")


def test_modifiers_whose_rules_are_asked_in_turn_do_not_commute() -> None:
    """Of two guarded rules about one happening the first of the sheet that holds is carried out."""
    effects = ("it stands up again", "it stays down")
    one, other = (
        modifier_in(f"put in when\n  a lantern is knocked {when}: {effect}", name)
        for when, effect, name in zip(GUARDED, effects, ("up", "down"), strict=True)
    )
    assert commute(row(), one, other) is False
    assert algebra(row(), [one, other]).order_matters == (("up", "down"),)
    apart = modifier_in(
        f"put in when\n  a lantern is knocked {GUARDED[1]}: the thrower's side scores 1 point", "points"
    )
    assert commute(row(), one, apart) is True
