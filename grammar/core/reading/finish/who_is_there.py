"""Who is where nobody is sent: players run about, and where each of them is just then is not counted."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.area_kind import AreaKind
from grammar.core.game import Core
from grammar.core.guards import PlayersAt, counts_in
from grammar.core.rules import Go, Rule
from grammar.core.values import AreaId, At, Spot
from grammar.finding import Finding, mistake
from grammar.said import quoting


def counted_where_nobody_is_sent(core: Core) -> Iterator[Finding]:
    """A mistake for each end that counts the players of places to which nothing ever brings anybody."""
    play = core.play
    hanging = (each for choice in play.choices for each in choice.hanging)
    rules = (each for each in (*play.rules, *hanging) if isinstance(each, Rule))
    gone = (effect.to for rule in rules for effect in rule.effects if isinstance(effect, Go))
    known = {to.spot for to in gone if isinstance(to, At)} | {start.at for start in (*play.starts, *core.facts.posts)}
    open_floor = {area.id for area in play.areas if area.kind in (AreaKind.STRIP, AreaKind.ZONE)}
    for end in play.ends:
        asked = {spot for count in counts_in(end.guard) if isinstance(count, PlayersAt) for spot in _spots(count)}
        if asked and not asked & known and {spot.of for spot in asked} <= open_floor:
            area = min(spot.of.key for spot in asked if isinstance(spot.of, AreaId))
            title = quoting("Who is in the {area} is not counted: players run there as they like.", area=area)
            hint = "Name an area to which a rule or the set-up sends players, or write in."
            yield mistake("G-sense", title, core.lines[end.lines[0]].span, hint)
            return


def _spots(count: PlayersAt) -> Iterator[Spot]:
    yield from (each.spot for each in count.at if isinstance(each, At))
