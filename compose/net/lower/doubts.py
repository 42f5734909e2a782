"""What must not be or cannot come off: a ball used for what it is not fit for, a hard one at people, one that is
rolled at what hangs."""

from __future__ import annotations

from collections.abc import Iterator

import attrs

import library
from compose.modifiers.fit_for import BEING
from compose.staging.reach import ON_THE_FLOOR, foot_m, reaches, rim_m
from compose.staging.standing_in import AT_PEOPLE, BOUNCE, has_to_bounce
from grammar.core.declared import Kind
from grammar.core.game import Core
from grammar.core.play import AtPlayers, Attempt, AtThing, Lines, Offer, Through
from grammar.core.rules import LifeOf, Rule
from grammar.finding import IDLE, Basis, Finding, Severity, spoken
from grammar.said import Written, said
from grammar.words import article, capital
from library.records import BALL_SKILLS


def doubts(core: Core) -> tuple[Finding, ...]:
    """A warning for each ball that is not fit for its skill, each hard one aimed at people, each thing out of reach."""
    found: dict[tuple[str, str], Finding] = {}
    for offer, attempt in core.play.tries:
        for finding in _of_attempt(core, offer, attempt):
            found.setdefault((finding.code, finding.title + str(finding.place)), finding)
    for finding in _idle_lives(core):
        found.setdefault((finding.code, finding.title), finding)
    return tuple(found.values())


def _idle_lives(core: Core) -> Iterator[Finding]:
    """Lives that nobody ever loses: whoever reads the sheet waits for what never comes."""
    hanging = [value for each in core.play.choices for value in (*each.hanging, *each.without)]
    rules = [*core.play.rules, *(value for value in hanging if isinstance(value, Rule))]
    if any(isinstance(effect, LifeOf) and effect.by < 0 for rule in rules for effect in rule.effects):
        return
    for each in core.play.lives:
        if each.number > 1:
            line = core.lines[each.lines[0]]
            title = said("{line} never takes effect.", line=Written(f'"{line.words}"'))
            hint = "Nobody ever loses a life. Leave the line out, or say what takes one."
            yield spoken(IDLE, Severity.WARNING, title, line.span, hint, basis=Basis.PROVED)


def _of_attempt(core: Core, offer: Offer, attempt: Attempt) -> Iterator[Finding]:
    ball = core.play.kind(attempt.ball) if attempt.ball else None
    item = library.kit_names().get(ball.like.key) if ball else None
    skill = attempt.skill.value
    if item and skill in BALL_SKILLS and skill not in item.may:
        said = f"{article(item.name)} is not fit to be {BEING[skill]}"
        title = f"{capital(said)}."
        yield _doubt(core, offer.lines, "N-unfit", title, "Take another ball, or another skill.")
    if ball and item and not item.soft and isinstance(attempt.aim, AtPlayers):
        title = f"Players are aimed at with {article(ball.id.key)}, which is not soft."
        yield _doubt(core, offer.lines, "N-hard-ball", title, "Take a soft ball, or aim at something else.")
    elif item and item.category == "ball" and AT_PEOPLE not in item.serves and isinstance(attempt.aim, AtPlayers):
        title = f"{capital(article(item.name))} is not fit to be sent at people."
        yield _doubt(core, offer.lines, "N-unfit", title, "Take another ball, or aim at something else.")
    if item and item.category == "ball" and BOUNCE not in item.serves and has_to_bounce(core.play, attempt):
        title = f"{capital(article(item.name))} does not bounce, and here it has to."
        yield _doubt(core, offer.lines, "N-unfit", title, "Take a ball that bounces, or let it count without a bounce.")
    if isinstance(attempt.aim, Through) and attempt.aim.into:
        yield from _closed(core, offer, core.play.kind(attempt.aim.thing.kind))
    if attempt.skill in ON_THE_FLOOR and isinstance(attempt.aim, AtThing | Through):
        yield from _too_high(core, offer, attempt, ball)


def _closed(core: Core, offer: Offer, thing: Kind) -> Iterator[Finding]:
    """What a ball is sent into and has no opening."""
    item = library.kit_names().get(thing.like.key)
    if item is not None and item.category == "target" and not item.opens:
        title = f"A ball does not go into {article(thing.id.key)}: {article(item.name)} is not open."
        hint = "Write at, to knock it over; or let it be like a box, a bucket or a goal."
        yield _doubt(core, offer.lines, "N-unfit", title, hint)


def _too_high(core: Core, offer: Offer, attempt: Attempt, ball: Kind | None) -> Iterator[Finding]:
    """What a ball is rolled at and hangs too high for it; the success of such an attempt is left out of the net."""
    assert isinstance(attempt.aim, AtThing | Through)
    thing, through = core.play.kind(attempt.aim.thing.kind), isinstance(attempt.aim, Through)
    if reaches(thing, ball, through):
        return
    verb, foot = ("go through", rim_m(thing)) if through else ("reach", foot_m(thing))
    verb = "go into" if isinstance(attempt.aim, Through) and attempt.aim.into else verb
    title = f"A rolled ball cannot {verb} {article(thing.id.key)}: its lower edge is {foot:g} m high."
    hint = "Throw at it, or take one that stands on the floor."
    numbers = (("metres above the floor", foot),)
    yield attrs.evolve(_doubt(core, offer.lines, "N-too-high", title, hint), basis=Basis.COMPUTED, numbers=numbers)


def _doubt(core: Core, lines: Lines, code: str, title: str, hint: str) -> Finding:
    return Finding(code, Severity.WARNING, title, core.lines[lines[0]].span, hint)
