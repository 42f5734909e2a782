"""Games of one skeleton have nets of one shape: checked on every modifier of the library with every game."""

from __future__ import annotations

import pytest
from playing_games import every_modifier, granted_rules, library_games

from compose.fit.suggest.skeleton import skeleton
from compose.modifiers.apply import apply
from compose.modifiers.modifier import Use
from compose.net.from_game import net_of
from compose.net.net import Effect, Net, Transition
from grammar.game import Game
from library import kit_names

INERT = ("shorter court", "bigger targets", "walking play", "weaker hand", "sound cue", "small balls")
TOLD_BY_CHECK = ("best of rounds",)  # a best-of that nobody can win is a finding
TRIED = ("lantern-row", "heron-and-pike", "cloud-drift", "sledge-road", "toll-stone")


def fewest(game: Game) -> dict[str, int]:
    return {side.name: side.least for side in game.sides}


def shape(game: Game) -> tuple[object, ...]:
    """All of a net that decides what can happen, without words and numbers of chance and time; places by name, so
    that their order does not count."""
    net = net_of(game, granted_rules(), fewest(game)).value
    assert net is not None
    names = [place.name for place in net.places]
    places = sorted((place.name, place.token, place.capacity, place.start, place.final) for place in net.places)
    bell = [(named(end.guard, names), end.winner) for end in net.bell.results] if net.bell else None
    return (
        places,
        sorted(str(_move(each, names)) for each in net.transitions),
        sorted(str((named(each.guard, names), [_effect(e, names) for e in each.effects])) for each in net.reactions),
        [(named(end.guard, names), end.winner) for end in net.ends],
        bell,
        _marks(net),
    )


def _move(move: Transition, names: list[str]) -> tuple[object, ...]:
    effects = [_effect(each, names) for each in move.effects]
    act = (move.attempt.skill, move.attempt.aim, move.attempt.share > 0, move.attempt.catchable)
    return (move.side, move.forced, move.outcome, act, named(move.guard, names), named(move.rate, names), effects)


def _effect(effect: Effect, names: list[str]) -> object:
    return named(effect, names)


def named(value: object, names: list[str]) -> object:
    """A value of the net with the names of its places for their numbers, and without its rules."""
    kind = type(value).__name__
    if kind in ("Rule", "Span"):
        return None
    if kind == "Comparison":
        return ("is", sorted((c, names[p]) for c, p in value.terms), value.relation, value.bound)  # type: ignore[attr-defined]
    if kind == "Move":
        move = (names[value.source], names[value.target], value.amount)  # type: ignore[attr-defined]
        rooms = [(sorted(names[p] for p in room.places), room.most) for room in value.rooms]  # type: ignore[attr-defined]
        return ("move", *move, sorted(map(str, rooms)))
    if kind in ("Shift", "Assign"):
        return (kind, names[value.place], getattr(value, "by", None), getattr(value, "value", None))  # type: ignore[attr-defined]
    if kind == "Rate":
        limits = [sorted(names[p] for p in limit) for limit in value.limits]  # type: ignore[attr-defined]
        return ("rate", sorted(map(str, limits)), sorted(str(named(each, names)) for each in value.ratios))  # type: ignore[attr-defined]
    if kind == "Ratio":
        below = value.denominator  # type: ignore[attr-defined]
        told = below if isinstance(below, int) else sorted(names[p] for p in below)
        return ("ratio", sorted(names[p] for p in value.numerator), told)  # type: ignore[attr-defined]
    parts = getattr(value, "parts", None)
    if parts is not None:
        return (kind, [named(each, names) for each in parts])
    part = getattr(value, "part", None)
    return (kind, named(part, names)) if part is not None else value


def _marks(net: Net) -> tuple[object, ...]:
    return (net.sides, net.open_ended, net.mirrored)


@pytest.mark.sample(1)
@pytest.mark.parametrize("stem", TRIED)
def test_one_skeleton_one_shape(stem: str) -> None:
    game = library_games()[stem]
    first, shapes = {skeleton(game, fewest(game)): game}, dict[str, tuple[object, ...]]()
    met = 0
    for modifier in every_modifier():
        outcome = apply(game, Use(modifier), kit_names())
        if outcome.value is None:
            continue
        made = outcome.value[0]
        key = skeleton(made, fewest(made))
        if first.setdefault(key, made) is made:
            continue
        met += 1
        if key not in shapes:
            shapes[key] = shape(first[key])
        assert shapes[key] == shape(made), modifier.name
    assert met >= 10


@pytest.mark.parametrize("name", INERT)
def test_what_changes_only_numbers_keeps_the_skeleton(name: str) -> None:
    game = library_games()["lantern-row"]
    outcome = apply(game, Use(next(each for each in every_modifier() if each.name == name)), kit_names())
    assert outcome.value is not None and outcome.value[1]
    assert skeleton(outcome.value[0], fewest(game)) == skeleton(game, fewest(game))


def test_players_are_part_of_it() -> None:
    game = library_games()["lantern-row"]
    assert skeleton(game, {"north": 6, "south": 6}) != skeleton(game, {"north": 6, "south": 7})


@pytest.mark.parametrize("name", TOLD_BY_CHECK)
def test_what_the_check_speaks_of_is_part_of_it(name: str) -> None:
    game = library_games()["lantern-row"]
    made = apply(game, Use(next(each for each in every_modifier() if each.name == name)), kit_names()).value
    assert made is not None and skeleton(made[0], fewest(game)) != skeleton(game, fewest(game))
