"""Attempt sentences → transitions: one for every side, ball, aim and outcome."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve, frozen

from compose.net.lower.aims import Option, options_of
from compose.net.lower.builder import Builder, Key, at_least, none_in
from compose.net.lower.claims import lower_condition
from compose.net.lower.consequences import follow
from compose.net.lower.moment import CAUGHT, LEFT, MISSED, SUCCESS, Moment, happens, rest_key
from compose.net.lower.say import outcome_words
from compose.net.lower.tokens import ball_place, in_play, kit_meant, of_side, owners, target_place
from compose.net.net import All, Attempt, Condition, Effect, Move, Rate, Ratio, Rule, Transition
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
    yield _transition(builder, option, moment, table, option.standing_ratio if outcome == SUCCESS else ())
    if outcome == SUCCESS and option.down_ratio:
        missed = evolve(option.moment, outcome=MISSED)
        aimed_at_one_down = _transition(builder, option, missed, table, option.down_ratio)
        yield evolve(aimed_at_one_down, outcome=SUCCESS)


def _transition(builder: Builder, option: Option, moment: Moment, table: Table, extra: tuple[Ratio, ...]) -> Transition:
    rules: list[Rule] = [builder.rule(option.sentence)]
    effects: list[Effect] = []
    guard: list[Condition] = list(option.guard)
    if moment.outcome == CAUGHT:
        guard.append(at_least(in_play(builder, moment.other)))
    said: list[str] = []
    ball_to: tuple[Key, Rule] | None = None
    for rule in matching(builder, table.whens, moment):
        follows = follow(builder, rule, moment, table.result_place)
        effects.extend(follows.effects)
        if follows.ball_to:
            ball_to = follows.ball_to, builder.rule(rule)
        rules.append(builder.rule(rule))
        said.append(follows.words)
        if rule.condition:
            guard.append(lower_condition(builder, rule.condition, moment.other, table.counted_to))
    if moment.ball:
        effects[:0] = _ball_effect(builder, moment, table, ball_to, rules)
    forced = any(_limits(builder, limit, moment) for limit in table.limits)
    rules.extend(builder.rule(limit) for limit in table.limits if _limits(builder, limit, moment))
    attempt = option.attempt
    return Transition(
        outcome_words(moment, option.skill, said),
        moment.actor,
        forced,
        attempt,
        "always" if _always(option) else moment.outcome,
        Rate(option.rate.limits, option.rate.ratios + extra),
        All(tuple(guard)),
        tuple(effects),
        tuple(rules),
    )


def _always(option: Option) -> bool:
    """Whether the attempt has only one outcome: nothing is aimed at and the text gives no chance."""
    return option.moment.aim == "none" and option.attempt.said_chance is None


def _strays(builder: Builder, option: Option, missed: Moment, table: Table, stray: play.Stray) -> Iterator[Transition]:
    """Misses of which a part hits something else, as long as that stands."""
    part = stray.times.value / stray.of.value
    plain = _transition(builder, option, missed, table, ())
    yield evolve(plain, part=1 - part)
    for line in kit_meant(builder, builder.game.meaning(stray.what.name), "target"):
        for owner in owners(builder, line):
            if owner not in (missed.other, None):
                continue
            standing = target_place(builder, line.name, owner, "standing")
            hit = evolve(missed, aim="target", thing=line.name, owner=owner, outcome=SUCCESS)
            other = _transition(builder, option, hit, table, ())
            words = f"{plain.words}, but the ball hits {article(of_side(line.name, owner))}"
            said = other.words.partition(";")[2]
            yield evolve(
                other,
                words=f"{words};{said}" if said else words,
                outcome=MISSED,
                part=part,
                guard=All((other.guard, at_least((standing,)))),
            )
            yield evolve(plain, part=part, guard=All((plain.guard, none_in((standing,)))))


def matching(builder: Builder, whens: tuple[when.When, ...], moment: Moment) -> tuple[when.When, ...]:
    """The rules for what happened; the game's own, or else those taken for granted."""
    found = [rule for rule in whens if happens(builder, rule.event, moment)]
    own = [rule for rule in found if builder.own(rule)]
    return tuple(own or found)


def _ball_effect(
    builder: Builder, moment: Moment, table: Table, said: tuple[Key, Rule] | None, rules: list[Rule]
) -> Iterator[Effect]:
    assert moment.ball is not None
    kind, origin = moment.ball
    if said is None:
        sentence = rest_sentence(builder, table.rests, moment)
        said = rest_key(builder, sentence.place, moment), builder.rule(sentence)
        rules.append(said[1])
    source = ball_place(builder, kind, origin)
    target = ball_place(builder, kind, said[0])
    if source != target:
        yield Move(source, target, 1, said[1])


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


def _limits(builder: Builder, limit: play.HoldLimit, moment: Moment) -> bool:
    if moment.ball is None:
        return False
    return limit.ball.name.text in ("ball", "balls", moment.ball[0], builder.game.plural_of(moment.ball[0]))
