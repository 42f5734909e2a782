"""Who is touched or hit, and nothing follows: a line that looks like a defence and is none."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core
from grammar.core.play import AtPlayers, Offer
from grammar.core.rules import Happening, Result, Rule
from grammar.core.success import success_of
from grammar.core.values import Population, SideId, Skill
from grammar.finding import IDLE, Basis, Finding, Severity, spoken
from grammar.said import quoting, said

ON_PLAYERS = (Result.TOUCHED, Result.HIT)
OF_A_SHOT = {Result.HIT, Result.HIGH, Result.CAUGHT, Result.BLOCKED, Result.MISSED, Result.LEFT}


def without_consequence(core: Core) -> Iterator[Finding]:
    """One finding for each line by which somebody is only touched or hit, where no line says what follows of it, be it
    that play goes on, nor of anything else that may come of it. Where what follows hangs on a switch, it is named."""
    for line, offers in fruitless(core).items():
        results = {success_of(attempt.skill, attempt.aim) for offer in offers for attempt in offer.attempts}
        title = said("Nothing follows when somebody is touched so: the line changes nothing.")
        if Result.TOUCHED not in results:
            title = said("Nothing follows when somebody is hit so: the line changes nothing.")
        hint = said("Say under when what follows of it, or that play goes on.")
        for choice in core.play.choices:
            kept_off = [each for each in (choice.without if choice.on else choice.hanging) if isinstance(each, Rule)]
            if any(_speaks_of(rule, offer) for rule in kept_off for offer in offers):
                pattern = "What follows hangs on `{switch}`, which is off: turn it on, or say what follows without it."
                if choice.on:
                    pattern = "What follows holds without `{switch}`, which is on: turn it off, or say what follows."
                hint = quoting(pattern, switch=choice.id.key)
        yield spoken(IDLE, Severity.WARNING, title, core.lines[line].span, hint, basis=Basis.PROVED)


def fruitless(core: Core) -> dict[int, list[Offer]]:
    """What may be tried by the lines by which somebody is only touched or hit, and no line says what follows of it."""
    by_line: dict[int, list[Offer]] = {}
    found = {}
    for offer in core.play.offers:
        by_line.setdefault(offer.lines[0], []).append(offer)
    for line, offers in by_line.items():
        tries = [(offer, attempt) for offer in offers for attempt in offer.attempts]
        if not tries or not all(isinstance(attempt.aim, AtPlayers) for _, attempt in tries):
            continue
        results = {success_of(attempt.skill, attempt.aim) for _, attempt in tries}
        if results <= {*ON_PLAYERS} and not any(_follows(core, offer) for offer in offers):
            found[line] = offers
    return found


def _follows(core: Core, offer: Offer) -> bool:
    """Whether a line of the sheet speaks of what may come of an offer."""
    return any(_speaks_of(rule, offer) for rule in core.play.rules)


def _speaks_of(rule: Rule, offer: Offer) -> bool:
    """Whether a rule is about what may come of an offer."""
    trigger = rule.trigger
    if rule.granted or not isinstance(trigger, Happening) or offer.by not in trigger.by:
        return False
    aimed = {one.side for attempt in offer.attempts if isinstance(attempt.aim, AtPlayers) for one in attempt.aim.of}
    by_touch = any(attempt.skill is Skill.TOUCH for attempt in offer.attempts)
    may_come = {Result.TOUCHED} if by_touch else OF_A_SHOT
    return trigger.result in may_come and (not trigger.to or bool(aimed & _sides(trigger)))


def _sides(trigger: Happening) -> set[SideId]:
    return {each.side for each in trigger.to if isinstance(each, Population)}
