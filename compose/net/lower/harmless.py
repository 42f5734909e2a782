"""Lines that do no harm where they never take effect: they say what holds anyway, or that nothing follows."""

from __future__ import annotations

from compose.net.lower.own_ground import lies_in_what_is_shut, spots_at_hand
from compose.net.lower.unaimed import unaimed
from grammar.core.game import Play
from grammar.core.play import AtThing, Fetch, Lines
from grammar.core.rules import Happening, PlayOn, Put, Result, Rule
from grammar.core.values import Posture, Teacher, Thing


def harmless(play: Play) -> frozenset[int]:
    """The numbers of the lines of which no part says more: what they speak of need not come."""
    parts: list[tuple[Lines, bool]] = []
    parts += [(rule.lines, _nothing_follows(rule) or _by_accident(play, rule)) for rule in play.rules]
    parts += [(each.lines, isinstance(each, Fetch) and _at_hand(play, each)) for each in play.services]
    parts += [(each.lines, False) for each in play.offers]
    parts += [(each.lines, False) for each in play.rests]
    parts += [(each.lines, False) for each in play.counting]
    more = {number for lines, idle in parts if not idle for number in lines}
    return frozenset(number for lines, _ in parts for number in lines) - more


def _nothing_follows(rule: Rule) -> bool:
    """Play goes on after it, as it does where it never happens."""
    return isinstance(rule.trigger, Happening) and all(isinstance(effect, PlayOn) for effect in rule.effects)


def _by_accident(play: Play, rule: Rule) -> bool:
    """A thing stays down whoever knocks it: of those who aim at no such thing the line says what holds for those who
    do. Of hits that are too high it says what holds where nobody means to hit anybody."""
    trigger = rule.trigger
    if isinstance(trigger, Happening) and trigger.result is Result.HIGH:
        return rule.lines[0] in unaimed(play)
    if not isinstance(trigger, Happening) or trigger.result is not Result.KNOCKED:
        return False
    aimed = {(offer.by, attempt.aim.thing) for offer, attempt in play.tries if isinstance(attempt.aim, AtThing)}
    kinds = {thing.kind for _, thing in aimed}
    theirs = any(who in trigger.by and thing in trigger.to for who, thing in aimed)
    owners = {thing.owner for thing in trigger.to if isinstance(thing, Thing)}
    if not theirs and owners <= {who.side for who in trigger.by}:
        return True  # nobody aims at what is their own, and accidents are not reckoned with
    falls = rule.effects == (Put(Posture.DOWN),)
    return falls and not theirs and any(getattr(to, "kind", None) in kinds for to in trigger.to)


def _at_hand(play: Play, fetch: Fetch) -> bool:
    """Whoever fetches from there has the balls that lie there at hand anyway."""
    if isinstance(fetch.who, Teacher) or lies_in_what_is_shut(play, fetch.spot):
        return False
    return all(spots_at_hand(play, who)[0] == fetch.spot for who in fetch.who)
