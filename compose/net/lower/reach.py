"""What must not be or cannot come off: a ball used for what it is not fit for, a rolled one at what hangs."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

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


@frozen
class TooHigh:
    """A sentence that rolls a ball at a thing whose lower edge is `foot_m` above the floor."""

    sentence: play.Attempt
    thing: GameKit
    foot_m: float


def too_high(game: Game) -> Iterator[TooHigh]:
    """Every thing that a sentence of the play rolls at and that no rolled ball can reach."""
    for sentence in game.all_of("play", play.Attempt):
        if not set(sentence.skills) & set(ON_THE_FLOOR):
            continue
        for aim in sentence.aims:
            if isinstance(aim, play.AimAt | play.AimThrough):
                through = isinstance(aim, play.AimThrough)
                for thing in _things(game, aim):
                    for ball in _balls(game, sentence):
                        if not _reaches(thing, ball, through):
                            yield TooHigh(sentence, thing, _foot_m(thing))
                            break


def tell_too_high(builder: Builder) -> None:
    """One warning for each thing; the success of such an attempt is left out of the net."""
    for found in too_high(builder.game):
        ring = found.thing.category == "ring"
        verb = "go through" if ring else "reach"
        title = f"A rolled ball cannot {verb} {article(found.thing.name)}: its lower edge is {found.foot_m:g} m high."
        builder.findings.append(
            Finding(
                "N-too-high",
                Severity.WARNING,
                title,
                found.sentence.span,
                "Throw at it, or take one that stands on the floor.",
                basis=Basis.COMPUTED,
                numbers=(("metres above the floor", found.foot_m),),
            )
        )


def tell_unfit(builder: Builder) -> None:
    """A warning for every ball that is asked for more than it is fit for."""
    for found in unfit(builder.game, library.kit_names()):
        said = f"{found.words[:1].upper()}{found.words[1:]}."
        hint = "Take another ball, or another skill."
        builder.findings.append(Finding("N-unfit", Severity.WARNING, said, found.sentence.span, hint))


def tell_hard(builder: Builder) -> None:
    """A warning for every hard ball that is aimed at people."""
    for sentence, line in hard_at_people(builder.game, library.kit_names()):
        title = f"Players are aimed at with {article(line.name)}, which is not soft."
        hint = "Take a soft ball, or aim at something else."
        builder.findings.append(Finding("N-hard-ball", Severity.WARNING, title, sentence.span, hint))


def can_succeed(builder: Builder, skill: str, moment: Moment) -> bool:
    """Whether an attempt can reach what it is aimed at, as far as heights go."""
    if skill not in ON_THE_FLOOR or moment.thing is None:
        return True
    ball = builder.game.kit_named(moment.ball[0]) if moment.ball else None
    return _reaches(builder.game.kit_named(moment.thing), ball, moment.aim == "ring")


def _reaches(thing: GameKit, ball: GameKit | None, through: bool) -> bool:
    foot = _foot_m(thing)
    return foot <= (0.0 if through else _ball_m(ball))


def _foot_m(thing: GameKit) -> float:
    item = library.kit_names().get(thing.like)
    return item.stands_above_floor_cm.usual / 100 if item and item.stands_above_floor_cm else 0.0


def _ball_m(ball: GameKit | None) -> float:
    item = library.kit_names().get(ball.like) if ball else None
    return item.diameter_cm.usual / 100 if item and item.diameter_cm else USUAL_BALL_M


def _things(game: Game, aim: play.AimAt | play.AimThrough) -> Iterator[GameKit]:
    yield from (line for line in game.kit_meant(aim.what.name) if line.category in ("target", "ring"))


def _balls(game: Game, sentence: play.Attempt) -> tuple[GameKit | None, ...]:
    return (game.kit_meant(sentence.ball.name) if sentence.ball else ()) or (None,)
