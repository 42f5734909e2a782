"""What happens without an attempt: a ball held too long, everyone with a ball, a count that becomes true."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.attempts import case_effects, case_guard
from compose.net.lower.builder import Builder, at_least
from compose.net.lower.cast import casts
from compose.net.lower.dispatch import cases_of
from compose.net.lower.fouls import fouls
from compose.net.lower.guards import condition_of, whole
from compose.net.lower.last_life import settled
from compose.net.lower.own_ground import spots_at_hand
from compose.net.lower.runs import row_place, rows_begun_anew
from compose.net.lower.services import act
from compose.net.lower.tokens import ball_place, balls_lying, in_play
from compose.net.net import All, Assign, Comparison, Effect, Move, Rate, Reaction, Transition
from compose.net.outcome import Moment, fires
from compose.net.told import AllHeld, BecameSo, Held, RanOn
from grammar.core.guards import ALWAYS, Compare, Guard
from grammar.core.rules import AllHold, Becomes, KeptFor, Rule, SendBall
from grammar.core.runs import InARow
from grammar.core.values import KindId, Population, SideId, Sort, Spot


def lower_spontaneous(builder: Builder) -> None:
    """The transitions and reactions of all of them."""
    for side in builder.play.side_ids:
        for who in builder.play.populations(side):
            builder.transitions.extend(fouls(builder, who))
            for kind in builder.play.of_sort(Sort.BALL):
                for spot in spots_at_hand(builder.play, who):
                    builder.transitions.extend(_kept(builder, who, kind, spot))
    for rule in builder.play.rules:
        alike = [each for each in builder.play.rules if each.trigger == rule.trigger]  # several lines are one event
        if isinstance(rule.trigger, Becomes):
            builder.reactions.extend(_becomes(builder, rule, rule.trigger))
        elif isinstance(rule.trigger, AllHold) and rule is alike[0]:
            builder.transitions.extend(_all_hold(builder, alike, rule.trigger))
        elif isinstance(rule.trigger, InARow) and rule is alike[0]:
            builder.reactions.extend(_in_a_row(builder, alike, rule.trigger))


def _kept(builder: Builder, who: Population, kind: KindId, spot: Spot) -> Iterator[Transition]:
    """A ball held longer than its limit: the referee's switch, which nobody may refuse."""
    others = builder.play.others(who.side)
    concerned: SideId | None = others[0] if len(others) == 1 else None
    moment = Moment(who, concerned, concerned or who.side, ball=kind, ball_at=spot)
    rules = [rule for rule in builder.play.rules if fires(rule.trigger, moment)]
    if not rules:
        return
    trigger = rules[0].trigger
    assert isinstance(trigger, KeptFor)
    source, holders = ball_place(builder, kind, spot), in_play(builder, who)
    for each in cases_of(builder.play, rules):
        for case, cast in settled(builder, moment, each):
            sent = [(effect.to, rule) for effect, rule in case.effects if isinstance(effect, SendBall)]
            moves: tuple[Effect, ...] = tuple(
                Move(source, ball_place(builder, kind, to), 1, builder.rule(rule.lines))
                for to, rule in sent
                if to != spot
            )
            yield Transition(
                Held(who, kind, case.done),
                None,
                True,
                evolve(act(builder, "hold", rules[0].lines, None), hold_limit_s=float(trigger.limit_s)),
                "always",
                Rate((holders, (source,)), cast.share),
                All((at_least(holders), at_least((source,)), *case_guard(builder, case), *cast.guard)),
                (*moves, *case_effects(builder, case, moment, cast), *rows_begun_anew(builder, who.side, case)),
                tuple(builder.rule(lines) for lines in case.lines),
            )


def _all_hold(builder: Builder, rules: list[Rule], trigger: AllHold) -> Iterator[Transition]:
    """Every player in play holds a ball: possible while there are balls enough."""
    players = in_play(builder, *(each for each in builder.play.populations() if each in trigger.who))
    balls = tuple(place for kind in builder.play.of_sort(Sort.BALL) for place in balls_lying(builder, kind))
    enough = Comparison((*((1, ball) for ball in balls), *((-1, player) for player in players)), ">=", 0)
    moment = Moment(builder.play.populations()[0], None, builder.play.side_ids[0])
    for case in cases_of(builder.play, rules):
        if not case.effects:
            continue
        for cast in casts(builder, moment, case.done):
            yield Transition(
                AllHeld(trigger.time_s, case.done),
                None,
                True,
                act(builder, "hold", rules[0].lines, 60.0 / max(float(trigger.time_s), 1.0)),
                "always",
                Rate((), cast.share),
                All((enough, at_least(players), *case_guard(builder, case), *cast.guard)),
                case_effects(builder, case, None, cast),
                tuple(builder.rule(lines) for lines in case.lines),
            )


def _becomes(builder: Builder, rule: Rule, trigger: Becomes) -> Iterator[Reaction]:
    """What follows at once when a count becomes true; where each counts, at each number that there can be."""
    for asked in _asked(builder, trigger):
        yield from _become(builder, rule, asked)


def _asked(builder: Builder, trigger: Becomes) -> Iterator[Guard]:
    if not trigger.each or not isinstance(trigger.guard, Compare):
        yield trigger.guard
        return
    yield from (evolve(trigger.guard, bound=number + 1) for number in range(whole(builder, trigger.guard.count)))


def _become(builder: Builder, rule: Rule, asked: Guard) -> Iterator[Reaction]:
    moment = Moment(builder.play.populations()[0], None, builder.play.side_ids[0])
    guard = [condition_of(builder, asked)]
    if rule.guard != ALWAYS:
        guard.append(condition_of(builder, rule.guard))
    for case in cases_of(builder.play, [_without_guard(rule)]):
        for cast in casts(builder, moment, rule.effects):
            told = BecameSo(asked, case.done)
            effects, rules = case_effects(builder, case, None, cast), tuple(builder.rule(each) for each in case.lines)
            yield Reaction(told, All((*guard, *cast.guard)), effects, rules, All(case_guard(builder, case)))


def _in_a_row(builder: Builder, rules: list[Rule], run: InARow) -> Iterator[Reaction]:
    """What follows at once from so many successes, which are counted anew from then on."""
    place, moment = row_place(builder, run), Moment(builder.play.populations(run.side)[0], None, run.side)
    for case in cases_of(builder.play, rules):
        for cast in casts(builder, moment, case.done):
            anew = Assign(place, 0, builder.rule(rules[0].lines))
            yield Reaction(
                RanOn(run, case.done),
                All((Comparison(((1, place),), ">=", run.number), *cast.guard)),
                (anew, *case_effects(builder, case, None, cast)),
                (builder.rule(rules[0].lines), *(builder.rule(each) for each in case.lines)),
                All(case_guard(builder, case)),
            )


def _without_guard(rule: Rule) -> Rule:
    return Rule(rule.trigger, ALWAYS, rule.effects, rule.lines, rule.granted)
