"""Lines of which the sheet alone shows that nothing comes of them: what play shows of it is told there, not again."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.barren import Barren
from compose.net.lower.builder import Builder
from compose.net.lower.tokens import in_play
from compose.net.lower.without_consequence import fruitless
from compose.staging.reach import ON_THE_FLOOR, reaches
from grammar.core.play import AtPlayers, AtThing, Offer, Through
from grammar.core.renaming import unlike
from grammar.core.rules import Happening
from grammar.core.success import success_of
from grammar.core.values import SideId, Skill, Thing


def barren_lines(builder: Builder) -> Iterator[Barren]:
    """What is rolled at what it cannot reach, with what would come of it; hits and touches of which nothing comes; and
    what lies with one of several sides alone that are called alike; and lives, for where nobody ever loses one."""
    play = builder.play
    for offer, attempt in play.tries:
        if attempt.skill in ON_THE_FLOOR and isinstance(attempt.aim, AtThing | Through):
            ball = play.kind(attempt.ball) if attempt.ball else None
            if not reaches(play.kind(attempt.aim.thing.kind), ball, isinstance(attempt.aim, Through)):
                about = _about(builder, offer, attempt.skill, attempt.aim)
                spans = frozenset(builder.core.lines[line].span for line in about)
                at, aimed = builder.core.lines[offer.lines[0]].span, _places_of(builder, attempt.aim.thing)
                yield Barren(at, frozenset(aimed), spans)
    granted = frozenset(number for number, line in enumerate(builder.core.lines) if line.granted)
    alone = set(unlike(play, play.mirrored, granted)) if play.mirrored else set()
    for start in play.starts:
        if start.lines[0] in alone and isinstance(start.what, Thing):
            yield Barren(builder.core.lines[start.lines[0]].span, frozenset(_of_kind(builder, start.what)))
    for each in play.lives:
        yield Barren(builder.core.lines[each.lines[0]].span, frozenset(_with_lives(builder, each.who.side)))
    for line, offers in fruitless(builder.core).items():
        aims = (attempt.aim for offer in offers for attempt in offer.attempts)
        who = (one for aim in aims if isinstance(aim, AtPlayers) for one in aim.of)
        yield Barren(builder.core.lines[line].span, frozenset(in_play(builder, *who)))


def _places_of(builder: Builder, thing: Thing) -> Iterator[int]:
    """Where a thing stands or lies."""
    for number, place in enumerate(builder.places):
        if place.token == "target" and place.kind == thing.kind.key:
            yield number


def _with_lives(builder: Builder, side: SideId) -> Iterator[int]:
    """Where players of a side stand by how many lives they have left."""
    for number, place in enumerate(builder.places):
        if place.side == side.key and place.lives is not None:
            yield number


def _of_kind(builder: Builder, thing: Thing) -> Iterator[int]:
    """Wherever things of a kind may be, whosever they are."""
    for number, place in enumerate(builder.places):
        if place.kind == thing.kind.key and place.token != "player":
            yield number


def _about(builder: Builder, offer: Offer, skill: Skill, aim: AtThing | Through) -> Iterator[int]:
    """The lines about what an attempt is made for."""
    success = success_of(skill, aim)
    for rule in builder.play.rules:
        trigger = rule.trigger
        if rule.granted or not isinstance(trigger, Happening) or trigger.result is not success:
            continue
        if offer.by in trigger.by and (not trigger.to or aim.thing in trigger.to):
            yield rule.lines[0]
