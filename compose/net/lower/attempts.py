"""Attempt sentences → transitions: one for every side, ball, aim and outcome."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve, frozen

from compose.net.lower.aims import options_of
from compose.net.lower.builder import Builder, at_least, none_in
from compose.net.lower.claims import lower_condition
from compose.net.lower.consequences import follow
from compose.net.lower.first_in_line import turns
from compose.net.lower.moment import CAUGHT, LEFT, MISSED, SUCCESS, Moment, happens
from compose.net.lower.reach import can_succeed
from compose.net.lower.rests import ball_effect, landings, limits_ball
from compose.net.lower.say import outcome_words
from compose.net.lower.shares import Option
from compose.net.lower.tokens import in_play, kit_meant, lying, of_side, owners, target_place
from compose.net.net import All, Condition, Not, Rate, Ratio, Transition
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
    if can_succeed(builder, option.skill, option.moment):
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
            yield from _landed(builder, option, turn, table, extra + share, rules, guard + waiting)


def _landed(
    builder: Builder,
    option: Option,
    moment: Moment,
    table: Table,
    extra: tuple[Ratio, ...],
    whens: tuple[when.When, ...],
    case_guard: tuple[Condition, ...],
) -> Iterator[Transition]:
    """One transition for every place where the ball may come to rest."""
    follows = [follow(builder, rule, moment, table.result_place) for rule in whens]
    effects = tuple(effect for each in follows for effect in each.effects)
    rules = (builder.rule(option.sentence), *(builder.rule(rule) for rule in whens))
    limits = tuple(builder.rule(limit) for limit in table.limits if limits_ball(builder, limit, moment))
    somebody_catches = (at_least(in_play(builder, moment.other)),) if moment.outcome == CAUGHT else ()
    whole = Transition(
        outcome_words(moment, option.skill, [each.words for each in follows]),
        moment.actor,
        bool(limits),
        option.attempt,
        "always" if _always(option) else moment.outcome,
        Rate(option.rate.limits, option.rate.ratios + extra),
        All((*option.guard, *case_guard, *somebody_catches)),
        effects,
        (*rules, *limits),
    )
    if moment.ball is None:
        yield whole
        return
    sent = [(each.ball_to, builder.rule(rule)) for each, rule in zip(follows, whens, strict=True) if each.ball_to]
    for landing in landings(builder, table.rests, moment, sent[-1] if sent else None):
        yield evolve(
            whole,
            words=whole.words + (f"; the ball stops {lying(landing.shut)}" if landing.shut else ""),
            effects=(*ball_effect(builder, moment, landing), *effects),
            rules=(*rules, *(() if sent else (landing.rule,)), *limits),
            part=landing.share,
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
    plains = list(_cases(builder, option, missed, table, ()))
    yield from (evolve(each, part=each.part * (1 - part)) for each in plains)
    for line in kit_meant(builder, builder.game.meaning(stray.what.name), "target"):
        for owner in owners(builder, line):
            if owner not in (missed.other, None):
                continue
            standing = target_place(builder, line.name, owner, "standing")
            hit = evolve(missed, aim="target", thing=line.name, owner=owner, outcome=SUCCESS)
            words = f"{plains[0].words}, but the ball hits {article(of_side(line.name, owner))}"
            for other in _cases(builder, option, hit, table, ()):
                said = other.words.partition(";")[2]
                yield evolve(
                    other,
                    words=f"{words};{said}" if said else words,
                    outcome=MISSED,
                    part=other.part * part,
                    guard=All((other.guard, at_least((standing,)))),
                )
            for each in plains:
                yield evolve(each, part=each.part * part, guard=All((each.guard, none_in((standing,)))))
