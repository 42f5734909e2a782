"""What players carry from place to place: taken up, brought, set down where somebody is stopped or leaves.

Whoever carries something is counted apart, one thing each; the things on the way have a place of their own.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.cast import Stand
from compose.net.lower.dispatch import Case
from compose.net.lower.own_ground import own_part
from compose.net.lower.tokens import ball_place, how_many, player_place
from compose.net.net import Move, Place, Rule
from compose.net.outcome import Moment
from grammar.core.loads import Lies, SetDown
from grammar.core.play import PickUp, Waiting
from grammar.core.rules import Go, Person, Result, Swap
from grammar.core.values import SHARED, Laden, Landmark, Population, Presence, SideId, Spot, without_load


def carried_place(builder: Builder, who: Population) -> int:
    """The place of the things that these players carry."""
    assert isinstance(who.role, Laden)
    key, kind, side = ("carried", who), who.role.kind, who.side.key
    if (found := builder.number(key)) is not None:
        return found
    number = sum(isinstance(each[0], str) and each[0] == "carried" for each in builder.numbers)
    name = f"carried/{kind.key}/{side}/{number}"
    return builder.add_place(key, Place(name, "load", how_many(builder, kind), 0, side, kind.key))


def free_handed(who: Population) -> Population:
    """The same players with nothing in their hands."""
    return Population(who.side, without_load(who.role))


def carried_about(builder: Builder, moment: Moment, rule: Rule) -> Iterator[Move]:
    """A thing is taken up by a player, or lies where it was to be brought."""
    if moment.result is Result.TAKEN and isinstance(moment.aim, PickUp) and moment.ball is not None:
        role = Laden(without_load(moment.by.role), moment.ball, moment.aim.start, moment.aim.goal)
        laden = Population(moment.by.side, role)
        yield Move(ball_place(builder, moment.ball, moment.aim.start), carried_place(builder, laden), 1, rule)
        yield _turned(builder, moment.by, laden, 1, rule)
    elif moment.result is Result.ARRIVED and isinstance(moment.by.role, Laden):
        yield from set_down(builder, moment.by, moment.by.role.goal, 1, rule)


def set_down(builder: Builder, who: Population, to: Spot | Lies, amount: int | None, rule: Rule) -> Iterator[Move]:
    """Somebody (or all of them) has nothing in their hands any more."""
    role = who.role
    assert isinstance(role, Laden)
    spot = to if isinstance(to, Spot) else role.start
    if to is Lies.THERE:
        owner = role.start.owner
        spot = own_part(builder.play, owner) if isinstance(owner, SideId) else Spot(Landmark.COURT, SHARED)
    yield Move(carried_place(builder, who), ball_place(builder, role.kind, spot), amount, rule)
    yield _turned(builder, who, free_handed(who), amount, rule)


def _turned(builder: Builder, who: Population, into: Population, amount: int | None, rule: Rule) -> Move:
    source, target = (player_place(builder, each, Presence.PLAYING) for each in (who, into))
    return Move(source, target, amount, rule)


def hands_emptied(builder: Builder, case: Case, persons: dict[Person | Waiting, Stand | None]) -> Iterator[Move]:
    """Whoever drops what they carry, or leaves with it, sets it down first; unless a rule says where, it goes back.

    Changes in `persons` those who have nothing any more.
    """
    for person, stand in tuple(persons.items()):
        if not isinstance(person, Person) or stand is None or stand[1] is not Presence.PLAYING:
            continue
        if not isinstance(stand[0].role, Laden):
            continue
        said = [(each, rule) for each, rule in case.effects if _sets_down(each, person, stand[0].role)]
        going = [(each, rule) for each, rule in case.effects if _leaves(each, person)]
        for effect, rule in (said or going)[:1]:
            to = effect.to if isinstance(effect, SetDown) else Lies.BACK
            yield from set_down(builder, stand[0], to, 1, builder.rule(rule.lines))
            persons[person] = (free_handed(stand[0]), Presence.PLAYING)


def _sets_down(effect: object, person: Person, role: Laden) -> bool:
    return isinstance(effect, SetDown) and person is Person.OBJECT and role.kind in effect.what


def _leaves(effect: object, person: Person) -> bool:
    if isinstance(effect, Swap):
        return person in (effect.who, effect.other)
    return isinstance(effect, Go) and effect.who is person
