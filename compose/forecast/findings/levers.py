"""What there is in a game that makes a round longer or shorter: nothing is advised of kit that it has not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.check.condition import places_read
from compose.net.attempt import Attempt
from compose.net.net import Comparison, Condition, Net, Not
from compose.net.on_the_way import taken_about
from compose.net.told import Cause, Ended
from grammar.said import Chain, Value, said

_THINGS = ("target", "load", "body")


def has(net: Net, token: str) -> bool:
    """Whether the game counts such tokens: "ball", "target", "points"."""
    return any(place.token == token for place in net.places)


def balls_sent(net: Net) -> int:
    """How many balls are thrown, rolled and the like: what is taken from place to place is none."""
    balls = (place for place in net.places if place.token == "ball")
    return sum(place.start for place in balls if not taken_about(net, place))


def one_of(ways: Sequence[str]) -> Value:
    """Such as "Take fewer balls, or play best of several rounds."."""
    *others, last = ways
    if not others:
        return said("{way}.", way=last)
    return said("{ways}, or {way}.", ways=Chain(tuple(others), ", "), way=last)


def to_make_longer(net: Net, clock_stops: bool) -> Iterator[str]:
    """What would make a round longer; `clock_stops`: it is mostly the clock that ends it."""
    if clock_stops:
        yield "give the clock more time"
    else:
        yield from _harder(net)
    if net.match.one_round:
        yield "play best of several rounds"


def _harder(net: Net) -> Iterator[str]:
    asked, aims = _asked(net), _aims(net)
    if "points" in asked:
        yield "ask for more points"
    if asked & {*_THINGS}:
        yield "take more targets" if "target" in asked else "take more of what is to be brought"
    if "target" in aims:
        yield "take smaller targets"
    if any(_is_aimed(move.attempt) for move in net.transitions):
        yield "aim from farther away"
    if balls_sent(net) > 1:
        yield "use fewer balls"
    if "player" in asked:
        yield "let players come back"


def to_make_shorter(net: Net) -> Iterator[str]:
    """What would make a round shorter."""
    if net.bell is not None:
        yield "give the clock less time"
    elif _is_played_on(net):
        yield 'let a level score be a draw ("else a draw")'
        yield "give the clock less time"
    else:
        yield 'set a clock ("after 6 min: ...")'
    yield from to_reach(net)


def _is_played_on(net: Net) -> bool:
    """Whether there is a clock after which a level score is played on."""
    return any(isinstance(end.told, Ended) and end.told.because is Cause.OVER_OR_NEXT for end in net.ends)


def to_reach(net: Net) -> Iterator[str]:
    """What would bring an end of play nearer."""
    asked, aims = _asked(net), _aims(net)
    if "points" in asked:
        yield "ask for fewer points"
    if asked & {*_THINGS}:
        yield "take fewer targets" if "target" in asked else "take fewer of what is to be brought"
    if aims & {"target", "ring"}:
        yield "make them easier to hit" if "target" in asked else "take larger targets"
    if balls_sent(net):
        yield "use more balls"


def _asked(net: Net) -> frozenset[str]:
    """What the ends of play count: points where so many are asked for, and what is taken about as a load."""
    read = {place for end in net.ends for place in places_read(end.guard)}
    tokens = {"load" if taken_about(net, net.places[place]) else net.places[place].token for place in read}
    numbered = any(_asks_for_points(net, end.guard) for end in net.ends)
    return frozenset(tokens if numbered else tokens - {"points"})


def _asks_for_points(net: Net, condition: Condition) -> bool:
    """Whether so many points are asked for, not only more than others have."""
    if isinstance(condition, Not):
        return _asks_for_points(net, condition.part)
    if not isinstance(condition, Comparison):
        return any(_asks_for_points(net, part) for part in condition.parts)
    points = any(net.places[place].token == "points" for _, place in condition.terms)
    return points and all(times > 0 for times, _ in condition.terms)


def _is_aimed(attempt: Attempt) -> bool:
    """Whether a ball is sent at something from a distance that may be larger."""
    return attempt.distance_m > 0 and attempt.aim not in ("mate", "none") and attempt.ball is not None


def _aims(net: Net) -> frozenset[str]:
    return frozenset(move.attempt.aim for move in net.transitions)
