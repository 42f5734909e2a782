"""Lines by which somebody brings back what never goes away: they never take effect, and need not."""

from __future__ import annotations

from compose.check.seen import Seen, any_in
from compose.net.net import Move, Net, Place, Rule
from grammar.core.persons import Person
from grammar.core.rules import Go
from grammar.core.values import SHARED, At, Landmark, Presence, Spot

HELPING = ("fetch", "free")  # acts that only bring back what went away: where nothing does, they do no harm


def helps_nobody(seen: Seen, rule: Rule) -> bool:
    """Whether the rule only brings back what never goes away: balls that lie on the whole court have gone away, though
    they never lie in its middle."""
    parts = [transition for transition in seen.net.transitions if rule in transition.rules]
    sources = [each.source for part in parts for each in part.effects if isinstance(each, Move)]
    return (
        bool(parts)
        and not any(rule in reaction.rules for reaction in seen.net.reactions)
        and all(part.attempt.skill in HELPING for part in parts)
        and not any_in(seen.live, *sources)
        and not any(_lie_about(seen, seen.net.places[source]) for source in sources)
    )


def freed_by_pass(net: Net, *rules: Rule) -> frozenset[int]:
    """The places of those who froze and whom a pass of their side frees, by one of these lines, or by any line."""
    said = (each for rule, effects in net.following if not rules or rule in rules for each in effects)
    if not any(isinstance(each, Go) and (each.who, each.to) == (Person.MATE, Presence.PLAYING) for each in said):
        return frozenset()
    return frozenset(
        number for number, place in enumerate(net.places)
        if place.token == "player" and isinstance(place.standing, At) and place.standing.spot.of is Landmark.FROZEN
    )  # fmt: skip


def _lie_about(seen: Seen, middle: Place) -> bool:
    """Whether balls of that kind lie anywhere on a court in one piece, of whose middle the rule speaks."""
    court = Spot(Landmark.COURT, SHARED)
    about = (at for at, each in enumerate(seen.net.places) if each.kind == middle.kind and each.standing == At(court))
    return middle.standing == At(Spot(Landmark.MIDDLE, SHARED)) and any_in(seen.live, *about)
