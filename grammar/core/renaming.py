"""The same play under other names of its sides, and what of it is then another: mirrored sides must be alike."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence, Set
from functools import cache
from itertools import islice, pairwise, permutations
from typing import Any, TypeVar

import attrs

from grammar.core.declared import Per, Start, Supply, Track
from grammar.core.game import Play
from grammar.core.rules import Rule, Shift
from grammar.core.values import Landmark, OnStep, SideId, Sort, Spot, Thing, TrackId

_MOST_RINGS = 120  # all those of six sides
Names = Mapping[SideId, SideId]
Value = TypeVar("Value")


def renamed(value: Value, names: Names, turned: Mapping[TrackId, int]) -> Value:
    """A value with other sides in it. On a track that is `turned` (its steps), steps are counted from the other end."""

    def change(part: Any) -> Any:
        match part:
            case SideId():
                return names.get(part, part)
            case OnStep() if part.track in turned:
                return OnStep(part.track, turned[part.track] - part.step)
            case Shift() if turned:
                return Shift(-part.steps)
            case Track() if part.id in turned:
                return part
        return None

    return changed(value, change)  # type: ignore[no-any-return]


def changed(value: Any, change: Callable[[Any], Any]) -> Any:
    """A value of which each part is another that `change` has another for: None where it looks further in."""
    parts = _parts(value.__class__)
    if not parts and not isinstance(value, tuple | frozenset):
        return value
    if (other := change(value)) is not None:
        return other
    if isinstance(value, tuple):
        others = tuple(changed(each, change) for each in value)
        return others if any(one is not other for one, other in zip(others, value, strict=True)) else value
    if isinstance(value, frozenset):
        return frozenset(changed(each, change) for each in value)
    new = dict[str, Any]()
    for name in parts:
        part = getattr(value, name)
        other = changed(part, change)
        if other is not part:
            new[name] = other
    return attrs.evolve(value, **new) if new else value


@cache
def _parts(kind: type) -> tuple[str, ...]:
    """The names of what a value of this class is made of; none where it is a number, a text or a choice."""
    return tuple(field.name for field in attrs.fields(kind) if field.name != "lines") if attrs.has(kind) else ()


def unlike(play: Play, sides: frozenset[SideId], granted: Set[int] = frozenset()) -> tuple[int, ...]:
    """The lines, but those granted, of whatever is not the same when two of these sides change names; none where all
    are in a ring in which each has before and behind it what every other has, which is as fair."""
    those = [side for side in play.side_ids if side in sides]
    swaps = [{one: other, other: one} for one, other in pairwise(those)]
    found = tuple(line for names in swaps for line in _others_under(play, names) if line not in granted)
    return () if found and _in_a_ring(play, those, granted) else found


def _in_a_ring(play: Play, those: Sequence[SideId], granted: Set[int]) -> bool:
    """Whether the play stays the same when each of three or more sides takes the name of the next in some ring."""
    if len(those) < 3 or play.tracks:
        return False
    first, *rest = those
    rings = ((first, *others) for others in islice(permutations(rest), _MOST_RINGS))
    turns = (dict(zip(ring, (*ring[1:], first), strict=True)) for ring in rings)
    return any(granted >= frozenset(_others_under(play, names)) for names in turns)


def _others_under(play: Play, names: Names) -> Iterator[int]:
    """The lines of whatever is not the same when sides take these names."""
    turned = {track.id: track.steps for track in play.tracks if {*track.homes} == {*names}}
    for values in _decisive(play):
        there = {in_any_order(renamed(value, names, turned)) for value in values}
        yield from (line for value in values if in_any_order(value) not in there for line in value.lines)


def in_any_order(value: Any) -> Any:
    """What follows from a rule for each side is the same in whichever order the sides come."""
    return (attrs.evolve(value, effects=()), frozenset(value.effects)) if isinstance(value, Rule) else value


def _by_lot(play: Play, start: Start) -> bool:
    """Which of two mirrored sides has the ball first is decided by lot: the one that they hold, or the only one."""
    if isinstance(start.at, Spot) and start.at.of is Landmark.HANDS:
        return True
    alike = [supply for supply in play.supplies if supply.thing == start.what]
    a_ball = isinstance(start.what, Thing) and play.kind(start.what.kind).sort is Sort.BALL
    return a_ball and [(each.count, each.per) for each in alike] == [(1, Per.OWNER)]


def _decisive(play: Play) -> tuple[tuple[Any, ...], ...]:
    """Everything of a play that has lines and can differ from side to side."""
    placed = {start.what for start in play.starts}
    worn = (each for each in play.supplies if play.kind(each.thing.kind).sort is Sort.FURNITURE)
    idle = {each.thing for each in worn} - placed  # bibs of one side change no count
    supplies: tuple[Supply, ...] = tuple(each for each in play.supplies if each.thing not in idle)
    return (
        play.sides,
        play.roles,
        play.areas,
        supplies,
        tuple(start for start in play.starts if not _by_lot(play, start)),
        play.homes,
        play.offers,
        play.services,
        play.unfetched,
        play.guarding,
        play.blocking,
        play.rests,
        play.rules,
        play.counting,
        play.ends,
    )
