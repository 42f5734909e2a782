"""The first of a queue in which players of several roles wait: who that is depends on who waits there.

Places count players by role and keep no order, so each role that waits is the first with the chance of its
share of the queue (by symmetry exact where all come and go alike; assumption otherwise).
"""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.builder import Builder, at_least, none_in
from compose.net.lower.moment import Moment, queue_side
from compose.net.lower.tokens import player_place, roles_of
from compose.net.net import Condition, Ratio
from grammar.meanings import PlaceMeaning
from grammar.sentences import play, when

Turn = tuple[Moment, tuple[Condition, ...], tuple[Ratio, ...]]


def turns(builder: Builder, rules: tuple[when.When, ...], moment: Moment) -> Iterator[Turn]:
    """The moment for each role that the first in line may have, with its guard and its share.

    Where nobody waited before, the moment stays as it is: whoever then is in the queue has only just come.
    """
    queued = _first_spoken_of(rules)
    side = queue_side(builder, queued.where, moment, moment.other) if queued else moment.other
    roles = roles_of(builder, side)
    if queued is None or len(roles) == 1:
        yield moment, (), ()
        return
    meaning = builder.game.meaning(queued.where.name)
    assert isinstance(meaning, PlaceMeaning)
    places = {role: player_place(builder, side, role, meaning.place) for role in roles}
    waiting = tuple(places.values())
    for role, place in places.items():
        yield evolve(moment, first=role or "-"), (at_least((place,)),), (Ratio((place,), waiting),)
    yield moment, (none_in(waiting),), ()


def _first_spoken_of(rules: tuple[when.When, ...]) -> play.Queued | None:
    for rule in rules:
        for consequence in rule.consequences:
            who = getattr(consequence, "who", None)
            if isinstance(who, play.Queued):
                return who
    return None
