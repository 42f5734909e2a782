"""Where balls come to rest: what a rule says, else the most particular resting sentence."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from compose.net.lower.builder import Builder, Key
from compose.net.lower.closed import stops
from compose.net.lower.moment import CAUGHT, LEFT, MISSED, SUCCESS, Moment, rest_key
from compose.net.lower.tokens import ball_place
from compose.net.net import Effect, Move, Rule
from grammar.sentences import play


@frozen
class Landing:
    """Where the ball of an outcome comes to rest, by which rule, in which share of all cases.

    `shut` names the area in which nobody may follow it, None where it lies at hand.
    """

    key: Key
    rule: Rule
    share: float = 1.0
    shut: str | None = None


def landings(
    builder: Builder, rests: tuple[play.Rest, ...], moment: Moment, said: tuple[Key, Rule] | None
) -> tuple[Landing, ...]:
    """All places where the ball of a moment may come to rest; `said` is what the rule for the event says."""
    if said is not None:
        return (Landing(*said),)
    sentence = rest_sentence(builder, rests, moment)
    key, rule = rest_key(builder, sentence.place, moment), builder.rule(sentence)
    flew_there = moment.outcome in (MISSED, SUCCESS) and moment.aim != "mate"
    if not isinstance(sentence.place, play.RestInHalf) or not flew_there:
        return (Landing(key, rule),)
    kind = moment.ball[0] if moment.ball else ""
    passed = moment.outcome == SUCCESS and moment.aim in ("line", "ring")
    shares = stops(builder, key, kind, moment.other, passed)
    return tuple(Landing(stop, rule, share, None if stop == key else str(stop[0])) for stop, share in shares.items())


def ball_effect(builder: Builder, moment: Moment, landing: Landing) -> Iterator[Effect]:
    """Move the ball from where it was thrown to where it comes to rest."""
    assert moment.ball is not None
    kind, origin = moment.ball
    source, target = ball_place(builder, kind, origin), ball_place(builder, kind, landing.key)
    if source != target:
        yield Move(source, target, 1, landing.rule)


def rest_sentence(builder: Builder, rests: tuple[play.Rest, ...], moment: Moment) -> play.Rest:
    """The sentence that says where the ball comes to rest: the most particular one."""
    state = {CAUGHT: "caught", MISSED: "missed", LEFT: "missed", SUCCESS: "scored"}[moment.outcome]
    if moment.aim == "mate" and moment.outcome == SUCCESS:
        state = "passed"
    kind = moment.ball[0] if moment.ball else ""

    def fit(rest: play.Rest) -> tuple[bool, bool, bool] | None:
        if rest.state not in (None, state) or rest.ball.text not in (
            "ball",
            "balls",
            kind,
            builder.game.plural_of(kind),
        ):
            return None
        own = builder.own(rest)
        return own, rest.state is not None, rest.ball.text not in ("ball", "balls")

    fitting = [(found, number) for number, rest in enumerate(rests) if (found := fit(rest)) is not None]
    return rests[max(fitting)[1]]


def limits_ball(builder: Builder, limit: play.HoldLimit, moment: Moment) -> bool:
    """Whether a hold limit is about the ball of this moment."""
    if moment.ball is None:
        return False
    return limit.ball.name.text in ("ball", "balls", moment.ball[0], builder.game.plural_of(moment.ball[0]))
