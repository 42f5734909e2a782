"""What a line that never takes effect would change, by what it says: other findings may come of the same cause."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.check.helping import freed_by_pass
from compose.net.net import Net, Rule
from grammar.core.play import Waiting
from grammar.core.rules import Add, Go
from grammar.core.values import At, Presence


def scoring(net: Net, rule: Rule) -> Iterator[str]:
    """The sides to whom a line would give points."""
    yield from (each.side for each in net.at_the_end if each.rule == rule)
    given = (each for of, effects in net.following if of == rule for each in effects)
    yield from (each.side.key for each in given if isinstance(each, Add) and each.points > 0)


def freed_by_line(net: Net, rule: Rule) -> frozenset[int]:
    """The places of those who would come back by a line: who waits, and who froze and has a pass of their side."""
    goes = [each for of, effects in net.following if of == rule for each in effects if isinstance(each, Go)]
    spots = {spot for each in goes if isinstance(each.who, Waiting) for spot in each.who.at}
    waiting = frozenset(
        number for number, place in enumerate(net.places)
        if place.token == "player" and isinstance(place.standing, At) and place.standing.spot in spots
    )  # fmt: skip
    return waiting | freed_by_pass(net, rule)


def said_to_go(net: Net, rule: Rule) -> frozenset[int]:
    """All in play, where a line that nothing leads to would have somebody go elsewhere."""
    goes = any(isinstance(each, Go) for of, effects in net.following if of == rule for each in effects)
    playing = (number for number, place in enumerate(net.places) if place.standing is Presence.PLAYING)
    return frozenset(playing) if goes else frozenset()


def of_their_kind(net: Net, still: Iterable[int]) -> frozenset[int]:
    """All places of the balls, loads or bodies of which a line is short, wherever they lie."""
    lacking = [net.places[place] for place in still]
    short = {(place.token, place.kind) for place in lacking}
    short |= {("load", place.load.kind.key) for place in lacking if place.load is not None}
    return frozenset(
        number for number, place in enumerate(net.places)
        if place.token in ("ball", "load", "body") and (place.token, place.kind) in short
    )  # fmt: skip
