"""What must not be or cannot come off: a ball used for what it is not fit for, a rolled one at what hangs."""

from __future__ import annotations

from collections.abc import Iterator

import attrs

import library
from compose.modifiers.fit_for import hard_at_people, unfit
from compose.net.lower.builder import Builder
from compose.net.lower.moment import Moment
from grammar.finding import Basis, Finding, Severity
from grammar.game import Game, GameKit
from grammar.sentences import play
from grammar.words import article

ON_THE_FLOOR = ("roll",)  # skills whose ball stays on the floor
USUAL_BALL_M = 0.2  # assumption: how high a ball is that the kit does not know


def doubts(game: Game) -> Iterator[Finding]:
    """A warning for each ball that is not fit for its skill, each hard one aimed at people, each thing out of reach."""
    for found in unfit(game, library.kit_names()):
        said = f"{found.words[:1].upper()}{found.words[1:]}."
        yield _doubt("N-unfit", said, found.sentence, "Take another ball, or another skill.")
    for sentence, line in hard_at_people(game, library.kit_names()):
        title = f"Players are aimed at with {article(line.name)}, which is not soft."
        yield _doubt("N-hard-ball", title, sentence, "Take a soft ball, or aim at something else.")
    for sentence in game.all_of("play", play.Attempt):
        if set(sentence.skills) & set(ON_THE_FLOOR):
            for aim in sentence.aims:
                yield from _too_high(game, sentence, aim)


def _too_high(game: Game, sentence: play.Attempt, aim: play.Aim) -> Iterator[Finding]:
    """What a ball is rolled at and hangs too high for it; the success of such an attempt is left out of the net."""
    if not isinstance(aim, play.AimAt | play.AimThrough):
        return
    balls = (game.kit_meant(sentence.ball.name) if sentence.ball else ()) or (None,)
    for thing in game.kit_meant(aim.what.name):
        ring = thing.category == "ring"
        through = ring or isinstance(aim, play.AimThrough)
        if (ring or thing.category == "target") and not all(_reaches(thing, ball, through) for ball in balls):
            verb, foot = "go through" if ring else "reach", _foot_m(thing)
            title = f"A rolled ball cannot {verb} {article(thing.name)}: its lower edge is {foot:g} m high."
            hint = "Throw at it, or take one that stands on the floor."
            numbers = (("metres above the floor", foot),)
            yield attrs.evolve(_doubt("N-too-high", title, sentence, hint), basis=Basis.COMPUTED, numbers=numbers)


def _doubt(code: str, title: str, sentence: play.Attempt, hint: str) -> Finding:
    return Finding(code, Severity.WARNING, title, sentence.span, hint)


def can_succeed(builder: Builder, skill: str, moment: Moment) -> bool:
    """Whether an attempt can reach what it is aimed at, as far as heights go."""
    if skill not in ON_THE_FLOOR or moment.thing is None:
        return True
    ball = builder.game.kit_named(moment.ball[0]) if moment.ball else None
    return _reaches(builder.game.kit_named(moment.thing), ball, moment.aim == "ring")


def _reaches(thing: GameKit, ball: GameKit | None, through: bool) -> bool:
    """Whether a rolled ball meets a thing, or goes `through` it: only where that stands on the floor."""
    return _foot_m(thing) <= (0.0 if through else _ball_m(ball))


def _foot_m(thing: GameKit) -> float:
    item = library.kit_names().get(thing.like)
    return item.stands_above_floor_cm.usual / 100 if item and item.stands_above_floor_cm else 0.0


def _ball_m(ball: GameKit | None) -> float:
    item = library.kit_names().get(ball.like) if ball else None
    return item.diameter_cm.usual / 100 if item and item.diameter_cm else USUAL_BALL_M
