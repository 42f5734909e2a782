"""Options → transitions: one for each outcome, each case of the rules, each person, each place where the ball stops."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.attempt_numbers import can_bounce
from compose.net.lower.blocking import blocking_of
from compose.net.lower.builder import Builder, at_least, none_in
from compose.net.lower.carrying import carried_about, hands_emptied
from compose.net.lower.cast import Cast
from compose.net.lower.catches import caught, share_of_catchers, somebody_catches, without_mate
from compose.net.lower.consequences import counted, leaves_a_task, lives_changed
from compose.net.lower.dispatch import Case, cases_of
from compose.net.lower.guards import condition_of
from compose.net.lower.heights import can_succeed
from compose.net.lower.landings import landings
from compose.net.lower.last_life import settled
from compose.net.lower.options import options_of
from compose.net.lower.relays import runs_counted
from compose.net.lower.runs import row_effects, rows_begun_anew
from compose.net.lower.shares import Option
from compose.net.lower.tokens import ball_place, target_place
from compose.net.net import All, Condition, Effect, Move, Not, Ratio, Rule, Transition
from compose.net.on_the_way import is_picked_up
from compose.net.outcome import Moment, fires
from compose.net.told import Strayed, Tried
from grammar.core.play import Along, PickUp
from grammar.core.rules import Happening, Result, SendBall
from grammar.core.values import At, Posture, SideId, Spot

OUTCOMES = {
    Result.CAUGHT: "caught",
    Result.MISSED: "missed",
    Result.LEFT: "left",
    Result.BLOCKED: "blocked",
    Result.HIGH: "high",
}


def lower_attempts(builder: Builder) -> None:
    """The transitions of all attempts."""
    for option in options_of(builder):
        builder.rule(option.offer.lines)
        outcomes = _outcomes(builder, option)
        for moment in (each for outcome in outcomes for each in _bounced_or_not(builder, outcome)):
            builder.transitions.extend(_transitions(builder, option, moment))


def _outcomes(builder: Builder, option: Option) -> Iterator[Moment]:
    """What may come of an option."""
    success = option.moment
    assert success.skill is not None
    if can_succeed(builder, success):
        yield success
        if option.attempt.blockers:
            yield evolve(success, result=Result.BLOCKED)
        if success.result is Result.HIT and _speaks_of(builder, evolve(success, result=Result.HIGH)):
            yield evolve(success, result=Result.HIGH)
    if _always(option):
        return
    if option.attempt.catchable:
        yield from caught(builder, option)
    yield evolve(without_mate(success), result=Result.MISSED)
    leaving = any(
        isinstance(rule.trigger, Happening) and rule.trigger.result is Result.LEFT for rule in builder.play.rules
    )
    if success.ball is not None and leaving:
        yield evolve(without_mate(success), result=Result.LEFT)


def _speaks_of(builder: Builder, moment: Moment) -> bool:
    """Whether a line says what follows: else it is a miss as any other."""
    return any(fires(rule.trigger, moment) for rule in builder.play.rules)


def _bounced_or_not(builder: Builder, moment: Moment) -> Iterator[Moment]:
    """The moment straight and, where a rule speaks of that, after a bounce."""
    yield moment
    if can_bounce(moment) and moment.result not in (Result.MISSED, Result.LEFT, Result.BLOCKED, Result.HIGH):
        after = evolve(moment, bounced=True)
        rules = (rule.trigger for rule in builder.play.rules)
        if any(isinstance(each, Happening) and each.bounced and fires(each, after) for each in rules):
            yield after


def _always(option: Option) -> bool:
    """Whether the attempt has only one outcome: nothing is aimed at and the text gives no chance."""
    return isinstance(option.moment.aim, Along | PickUp) and option.attempt.said_chance is None


def _outcome(moment: Moment) -> str:
    outcome = OUTCOMES.get(moment.result, "success") if moment.result else "success"
    return f"{outcome}-bounced" if moment.bounced else outcome


def _transitions(builder: Builder, option: Option, moment: Moment) -> Iterator[Transition]:
    stray = option.offer.figures.stray
    if moment.result is Result.MISSED and stray is not None:
        yield from _strays(builder, option, moment)
        return
    succeeds = moment.result == option.moment.result
    extra = option.standing_ratio if succeeds else share_of_catchers(builder, option, moment)
    yield from _cases(builder, option, moment, extra)
    if succeeds and option.down_ratio:
        missed = evolve(option.moment, result=Result.MISSED)
        said = _outcome(moment)
        for aimed_at_one_down in _cases(builder, option, missed, option.down_ratio):
            yield evolve(aimed_at_one_down, outcome=said)


def _cases(builder: Builder, option: Option, moment: Moment, extra: tuple[Ratio, ...]) -> Iterator[Transition]:
    """One transition for every way in which the rules for the event can apply ("while ...")."""
    for case in cases_of(builder.play, [rule for rule in builder.play.rules if fires(rule.trigger, moment)]):
        for then, cast in settled(builder, moment, case):
            yield from _landed(builder, option, moment, then, cast, extra)


def case_guard(builder: Builder, case: Case) -> tuple[Condition, ...]:
    """What must be so for a case to hold."""
    holds = tuple(condition_of(builder, guard) for guard in case.holds)
    return (*holds, *(Not(condition_of(builder, guard)) for guard in case.fails))


def case_effects(builder: Builder, case: Case, moment: Moment | None, cast: Cast) -> tuple[Effect, ...]:
    """What a case does to the counts."""
    persons = dict(cast.persons)
    first = (*lives_changed(builder, case, persons), *hands_emptied(builder, case, persons))
    return first + tuple(
        done
        for effect, rule in sorted(case.effects, key=lambda each: not leaves_a_task(each[0]))
        for done in counted(builder, effect, moment, persons, builder.rule(rule.lines))
    )


def _landed(
    builder: Builder, option: Option, moment: Moment, case: Case, cast: Cast, extra: tuple[Ratio, ...]
) -> Iterator[Transition]:
    """One transition for every place where the ball may come to rest."""
    limits = tuple(builder.rule(hold.lines) for hold in builder.play.holds if hold.ball == moment.ball)
    rules = (builder.rule(option.offer.lines), *(builder.rule(lines) for lines in case.lines))
    if moment.result is Result.BLOCKED:
        rules = (*rules, *(builder.rule(each.lines) for each in blocking_of(builder, moment)))
    told = Tried(moment, case.done)
    whole = Transition(
        told,
        moment.by.side.key,
        bool(limits) and not is_picked_up(moment),
        option.attempt,
        "always" if _always(option) else _outcome(moment),
        evolve(option.rate, ratios=option.rate.ratios + extra + cast.share),
        All((*option.guard, *case_guard(builder, case), *cast.guard, *somebody_catches(builder, moment))),
        (
            *_brought(builder, moment, rules[0]),
            *case_effects(builder, case, moment, cast),
            *row_effects(builder, moment, option.offer),
            *runs_counted(builder, moment, option.offer),
        ),
        tuple(dict.fromkeys((*rules, *limits))),
    )
    sent = [(effect.to, builder.rule(rule.lines)) for effect, rule in case.effects if isinstance(effect, SendBall)]
    if moment.ball is None or moment.ball_at is None or moment.result is Result.TAKEN:
        yield evolve(whole, effects=(*_lost(builder, moment, sent, case), *whole.effects))
        return
    source = ball_place(builder, moment.ball, moment.ball_at)
    for landing in landings(builder, moment, sent[-1] if sent else None, rules[0]):
        target = ball_place(builder, moment.ball, landing.spot)
        moved = (Move(source, target, 1, landing.rule),) if source != target else ()
        yield evolve(
            whole,
            told=evolve(told, stops=landing.spot if landing.shut else None),
            effects=(*moved, *whole.effects),
            rules=(*rules, *(() if sent else (landing.rule,)), *limits),
            part=landing.share,
            keeping=() if moved else (landing.rule,),
        )


def _lost(builder: Builder, moment: Moment, sent: list[tuple[Spot, Rule]], case: Case) -> Iterator[Effect]:
    """Whoever is touched loses the ball that they have, where a rule says so: their side counts anew then."""
    if moment.result is not Result.TOUCHED or moment.held is None or not sent:
        return
    assert moment.person is not None, "somebody holds it"
    source, target = ball_place(builder, *moment.held), ball_place(builder, moment.held[0], sent[-1][0])
    if source != target:
        yield Move(source, target, 1, sent[-1][1])
        yield from rows_begun_anew(builder, moment.person.side, case)


def _brought(builder: Builder, moment: Moment, rule: Rule) -> Iterator[Move]:
    """A load that is brought somewhere for good lies there; what is taken up is on its way."""
    yield from carried_about(builder, moment, rule)
    if moment.result is Result.ARRIVED and isinstance(moment.aim, Along) and moment.thing and not moment.aim.again:
        standing = target_place(builder, moment.thing, Posture.UP)
        yield Move(standing, target_place(builder, moment.thing, At(moment.aim.goal)), 1, rule)


def _strays(builder: Builder, option: Option, missed: Moment) -> Iterator[Transition]:
    """Misses of which a part hits something else, as long as that stands."""
    stray = option.offer.figures.stray
    assert stray is not None
    part = float(stray.share)
    plains = list(_cases(builder, option, missed, ()))
    yield from (evolve(each, part=each.part * (1 - part)) for each in plains)
    things = sorted(stray.at, key=repr)
    for thing in things:
        standing = target_place(builder, thing, Posture.UP)
        owner = thing.owner
        concerned = owner if isinstance(owner, SideId) else missed.concerned
        hit = evolve(missed, result=Result.KNOCKED, thing=thing, against=owner, concerned=concerned, person=None)
        for other in _cases(builder, option, hit, ()):
            assert isinstance(plains[0].told, Tried) and isinstance(other.told, Tried)
            yield evolve(
                other,
                told=Strayed(plains[0].told, other.told),
                outcome="missed",
                part=other.part * part / len(things),
                guard=All((other.guard, at_least((standing,)))),
            )
        for each in plains:
            gone = All((each.guard, none_in((standing,))))
            yield evolve(each, part=each.part * part / len(things), guard=gone)
