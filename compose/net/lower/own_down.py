"""Who is said to win with more of their own things down: whoever was hit more often, which hardly anybody means."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.ends import Most
from grammar.core.game import Core, Play
from grammar.core.guards import ThingsAt
from grammar.core.play import AtThing
from grammar.core.values import Posture, SideId, Thing
from grammar.finding import Finding, Severity

CODE = "N-own-down"


def own_down(core: Core) -> Iterator[Finding]:
    """A warning for each such line."""
    bell = core.play.bell
    said = [(end.verdicts, end.lines) for end in (*core.play.ends, *((bell,) if bell else ()))]
    for line in dict.fromkeys(lines[0] for verdicts, lines in said if any(_loser(core.play, v) for v in verdicts)):
        title = "A side is ahead here when more of its own things are down: when it was hit more often."
        hint = "Write, such as: more lanterns standing wins. Or give points for each that falls."
        yield Finding(CODE, Severity.WARNING, title, core.lines[line].span, hint)


def _loser(play: Play, verdict: object) -> bool:
    if not isinstance(verdict, Most) or not verdict.more:
        return False
    down = (count for _, count in verdict.counts if isinstance(count, ThingsAt) and count.at == {Posture.DOWN})
    things = {thing for count in down for thing in count.of if isinstance(thing.owner, SideId)}
    return any(thing in things and by != thing.owner for thing, by in _aimed_at(play))


def _aimed_at(play: Play) -> Iterator[tuple[Thing, SideId]]:
    for offer in play.offers:
        for attempt in offer.attempts:
            if isinstance(attempt.aim, AtThing):
                yield attempt.aim.thing, offer.by.side
