"""Attempt sentences → transitions: one for every side, ball, aim and outcome."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve, frozen

from compose.net.lower.aims import options_of
from compose.net.lower.builder import Builder, Key, at_least, none_in
from compose.net.lower.claims import lower_condition
from compose.net.lower.consequences import follow
from compose.net.lower.first_in_line import turns
from compose.net.lower.moment import CAUGHT, LEFT, MISSED, SUCCESS, Moment, happens
from compose.net.lower.rests import ball_effect, limits_ball
from compose.net.lower.say import outcome_words
from compose.net.lower.shares import Option
from compose.net.lower.tokens import in_play, kit_meant, of_side, owners, target_place
from compose.net.net import All, Condition, Effect, Not, Rate, Ratio, Rule, Transition
from grammar.sentences import play, when
from grammar.words import article


@frozen
class Table:
    """What every attempt of a game looks up: the rules for events, where balls rest, whose acts are forced."""

    whens: tuple[when.When, ...]
    rests: tuple[play.Rest, ...]
    limits: tuple[play.HoldLimit, ...]
    result_place: int | None
    counted_to: int


def lower_attempts(builder: Builder, table: Table) -> None:
    """All transitions of all attempt sentences."""
    for option in options_of(builder):
        for outcome in _outcomes(builder, option, table):
            builder.transitions.extend(_transitions(builder, option, outcome, table))


def _outcomes(builder: Builder, option: Option, table: Table) -> Iterator[str]:
    yield SUCCESS
    if _always(option):
        return
    aims_at_others = option.moment.aim in ("target", "player", "ring")
    if aims_at_others and any(isinstance(rule.event, when.Caught) and not rule.event.where for rule in table.whens):
        yield CAUGHT
    yield MISSED
    if option.moment.ball and any(isinstance(rule.event, when.Leaves) for rule in table.whens):
        yield LEFT


def _transitions(builder: Builder, option: Option, outcome: str, table: Table) -> Iterator[Transition]:
    moment = evolve(option.moment, outcome=outcome)
    stray = option.sentence.told(play.Stray)
    if outcome == MISSED and isinstance(stray, play.Stray):
        yield from _strays(builder, option, moment, table, stray)
        return
    yield from _cases(builder, option, moment, table, option.standing_ratio if outcome == SUCCESS else ())
    if outcome == SUCCESS and option.down_ratio:
        missed = evolve(option.moment, outcome=MISSED)
        for aimed_at_one_down in _cases(builder, option, missed, table, option.down_ratio):
            yield evolve(aimed_at_one_down, outcome=SUCCESS)


def _cases(
    builder: Builder, option: Option, moment: Moment, table: Table, extra: tuple[Ratio, ...]
) -> Iterator[Transition]:
    """One transition for every way in which the rules for the event can apply ("while ...")."""
    for rules, guard in cases(builder, table, moment):
        for turn, waiting, share in turns(builder, rules, moment):
            yield _transition(builder, option, turn, table, extra + share, rules, guard + waiting)


def _transition(
    builder: Builder,
    option: Option,
    moment: Moment,
    table: Table,
    extra: tuple[Ratio, ...],
    whens: tuple[when.When, ...],
    case_guard: tuple[Condition, ...],
) -> Transition:
    rules: list[Rule] = [builder.rule(option.sentence)]
    effects: list[Effect] = []
    guard: list[Condition] = [*option.guard, *case_guard]
    if moment.outcome == CAUGHT:
        guard.append(at_least(in_play(builder, moment.other)))
    said: list[str] = []
    ball_to: tuple[Key, Rule] | None = None
    for rule in whens:
        follows = follow(builder, rule, moment, table.result_place)
        effects.extend(follows.effects)
        if follows.ball_to:
            ball_to = follows.ball_to, builder.rule(rule)
        rules.append(builder.rule(rule))
        said.append(follows.words)
    if moment.ball:
        effects[:0] = ball_effect(builder, table.rests, moment, ball_to, rules)
    limits = [builder.rule(limit) for limit in table.limits if limits_ball(builder, limit, moment)]
    return Transition(
        outcome_words(moment, option.skill, said),
        moment.actor,
        bool(limits),
        option.attempt,
        "always" if _always(option) else moment.outcome,
        Rate(option.rate.limits, option.rate.ratios + extra),
        All(tuple(guard)),
        tuple(effects),
        (*rules, *limits),
    )


def cases(
    builder: Builder, table: Table, moment: Moment
) -> Iterator[tuple[tuple[when.When, ...], tuple[Condition, ...]]]:
    """The rules that apply, with the conditions under which they do; the cases shut each other out."""
    found = [rule for rule in table.whens if happens(builder, rule.event, moment)]
    always = [rule for rule in found if builder.own(rule) and rule.condition is None]
    granted = [rule for rule in found if not builder.own(rule)]
    earlier: list[Condition] = []
    for rule in found:
        if builder.own(rule) and rule.condition is not None:
            condition = lower_condition(builder, rule.condition, moment.other, table.counted_to, moment.actor)
            yield (*always, rule), (*(Not(each) for each in earlier), condition)
            earlier.append(condition)
    yield tuple(always or granted), tuple(Not(each) for each in earlier)


def _always(option: Option) -> bool:
    """Whether the attempt has only one outcome: nothing is aimed at and the text gives no chance."""
    return option.moment.aim == "none" and option.attempt.said_chance is None


def _strays(builder: Builder, option: Option, missed: Moment, table: Table, stray: play.Stray) -> Iterator[Transition]:
    """Misses of which a part hits something else, as long as that stands."""
    part = stray.times.value / stray.of.value
    plain = next(_cases(builder, option, missed, table, ()))
    yield evolve(plain, part=1 - part)
    for line in kit_meant(builder, builder.game.meaning(stray.what.name), "target"):
        for owner in owners(builder, line):
            if owner not in (missed.other, None):
                continue
            standing = target_place(builder, line.name, owner, "standing")
            hit = evolve(missed, aim="target", thing=line.name, owner=owner, outcome=SUCCESS)
            words = f"{plain.words}, but the ball hits {article(of_side(line.name, owner))}"
            for other in _cases(builder, option, hit, table, ()):
                said = other.words.partition(";")[2]
                yield evolve(
                    other,
                    words=f"{words};{said}" if said else words,
                    outcome=MISSED,
                    part=part,
                    guard=All((other.guard, at_least((standing,)))),
                )
            yield evolve(plain, part=part, guard=All((plain.guard, none_in((standing,)))))
