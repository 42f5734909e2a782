"""Lines that earlier programs read otherwise: "a cone" of which only the first counted, "all cones" that were those of
one side. Both readings are told, for whoever wrote the line may have meant the other."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core, Play
from grammar.core.guards import Compare, Count, ThingsAt
from grammar.core.rules import Becomes, Finish, Nothing, PutOnStep, Rule, StandAgain, StartAgain
from grammar.finding import Basis, Finding, Severity
from grammar.words import plural

CODE = "N-meant-anew"


def meant_anew(core: Core) -> Iterator[Finding]:
    """One note for each such line."""
    told: set[int] = set()
    for rule in (each for each in core.play.rules if not each.granted and each.lines[0] not in told):
        place = core.lines[rule.lines[0]].span
        if those := _widened(rule):
            title = f"All {those} of every side stand up again; earlier programs stood up those of that side alone."
            hint = f"For these alone write: all its {those} stand up again"
        elif any(isinstance(effect, Nothing) for effect in rule.effects):
            title = "Nothing else follows then; in earlier programs what wider lines say of it followed all the same."
            hint = "If something shall follow all the same, say it in this line, too."
        elif _of_each(core.play, rule):
            title = "This happens with each one that comes to be there; in earlier programs only with the first."
            hint = "For the first alone write `at least 1` instead of `a`."
        else:
            continue
        told.add(rule.lines[0])
        yield Finding(CODE, Severity.NOTE, title, place, hint, basis=Basis.PROVED)


def _widened(rule: Rule) -> str | None:
    """What stands up again of every side where the line speaks of one side, and does not say whose."""
    for effect in rule.effects:
        if isinstance(effect, StandAgain) and effect.unsaid and effect.all:
            return plural(min(thing.kind for thing in effect.things).key)
    return None


def _of_each(play: Play, rule: Rule) -> bool:
    """Whether it matters that each counts: what begins anew, ends the round or puts it away leaves none of them."""
    trigger = rule.trigger
    if not isinstance(trigger, Becomes) or not trigger.each or not isinstance(trigger.guard, Compare):
        return False
    alone = any(isinstance(each, Finish | PutOnStep | StartAgain) for each in rule.effects)
    return not alone and _several(play, trigger.guard.count)


def _several(play: Play, count: Count) -> bool:
    """Whether there can be more than one."""
    if not isinstance(count, ThingsAt):
        return True
    supplies = [supply for supply in play.supplies if supply.thing in count.of]
    return sum(supply.count * play.kind(supply.thing.kind).parts for supply in supplies) > 1
