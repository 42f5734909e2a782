"""A remix for a class: the quick answer (is it sound, who can win), and the forecast that follows it."""

from __future__ import annotations

import attrs

from compose.answer.answer import Answer, to_mend
from compose.draw.card.proof import fact_lines, forecast_lines, looked_lines
from compose.fit.fit import Fit
from compose.modifiers.difference.difference import differences
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from compose.modifiers.remix_sheet import remix_title
from compose.page.answers.at_hand import orders, remixed, use_of
from compose.page.answers.for_class import fit_by_forecast, for_class
from compose.page.answers.known import first_look, fit_of_asked, forecast_of, proved_of
from compose.page.answers.said import in_order, lines_of, said
from compose.page.answers.values import Amount, Asked, Odds, Proof, Quick, Used
from compose.page.wording import page_wording
from compose.staging.resolved import resolved
from compose.telling.amounts import minutes_said, rounds_in_lesson, time_said
from compose.telling.read_back import read_back
from compose.telling.unread import without_lines
from compose.telling.uses import label_said
from compose.telling.wording import Wording
from grammar.finding import NOT_PROVED
from grammar.game import Game

NEARLY_NONE = 0.005  # of the round: what is told as 0 %


def quick(asked: Asked) -> Quick:
    """Sound or not, as far as a first look shows, and what changes."""
    wording = page_wording(asked.language)
    outcome = remixed(asked.texts, asked.uses)
    if outcome.value is None:
        read = [use.value for use in map(use_of, asked.uses) if use.value is not None]
        used = tuple(_used(each, wording) for each in read) if len(read) == len(asked.uses) else ()
        return Quick("", used, tuple(said(each, wording) for each in outcome.findings))
    made, found = outcome.value, fit_of_asked(asked)
    used = tuple(_used(each, wording) for each in made.uses)
    answer, changes = first_look(asked), _changes(made, wording)
    if isinstance(answer, tuple):
        told = (*answer, *orders(asked.texts, asked.uses))  # nothing follows that could tell it
        return Quick(remix_title(made), used, tuple(said(each, wording) for each in told), changes)
    of_class = tuple(said(each, wording) for each in in_order(found.staging.findings))
    played = for_class(found, wording, "plan-")
    first = _proof(answer, found, made, wording, not answer.whole)
    return Quick(remix_title(made), used, (), changes, played, first, of_class)


def proof(asked: Asked) -> Proof | None:
    """The same after a longer look; None where there is nothing to look at."""
    made = remixed(asked.texts, asked.uses).value
    answer = proved_of(asked) if made is not None else ()
    if made is None or isinstance(answer, tuple):
        return None
    return _proof(answer, fit_of_asked(asked), made, page_wording(asked.language), False)


def _proof(answer: Answer, found: Fit, made: Remix, wording: Wording, going_on: bool) -> Proof:
    """`places` are those of the findings in the order in which `why` lists them."""
    lines = lines_of(made.game)
    ordered = list(enumerate(in_order(answer.proved)))
    listed = [(place, each) for place, each in ordered if each.code not in NOT_PROVED]  # that stands in the verdict
    return Proof(
        not to_mend([each for _, each in listed]),
        not to_mend(found.staging.findings),
        answer.whole,
        going_on and answer.facts is not None,
        without_lines(resolved(answer.staged.staging.game), wording),
        (*fact_lines(answer, wording), *looked_lines(answer, wording)),
        tuple((f"r{place}", said(each, wording, lines)) for place, each in listed),
    )


def odds(asked: Asked) -> Odds:
    """How long, who wins, who waits, how many turns, how many rounds of the lesson; and what the order of the modifiers
    decides, for which the quick answer does not wait."""
    wording, made = page_wording(asked.language), remixed(asked.texts, asked.uses).value
    answer = forecast_of(asked) if made is not None else ()
    if made is None or not isinstance(answer, Answer):  # the quick answer has said why
        return Odds((), (), (), False)
    found = fit_by_forecast(fit_of_asked(asked), answer.round_minutes)
    if answer.numbers is None:
        lines: tuple[str, ...] = ()
    else:
        plan = found.lesson
        rounds, time = rounds_in_lesson(plan.fitting, plan.warm, wording), minutes_said(plan.lesson.play, wording)
        play = wording.say("{time} of play in the lesson: {rounds}.", time=time, rounds=rounds)
        if plan.wanted > 1:
            wanted = wording.counted(plan.wanted, "round", "rounds")
            play = f"{play} {wording.say('The game asks for up to {rounds}.', rounds=wanted)}"
        told = forecast_lines(answer.numbers, answer.match, wording, answer.staged.net.solo)
        lines = (*told, *_waits(answer, wording), play)
    by_order = orders(asked.texts, asked.uses)
    placed = {each: f"t{place}" for place, each in enumerate(found.of_time)}
    added = in_order((*found.of_time, *(answer.added or ()), *by_order))
    findings = tuple((placed.get(each, ""), said(each, wording)) for each in added)
    return Odds(lines, findings, _known_by(answer, wording), not to_mend(added))


def _waits(answer: Answer, wording: Wording) -> tuple[str, ...]:
    longest = answer.forecast.longest_wait if answer.forecast is not None else None
    if longest is None:  # whoever has no turn yet stands in no queue, and plays not either
        all_play = answer.numbers is not None and answer.numbers.idle.value < NEARLY_NONE
        return (wording.say("Nobody waits."),) if all_play else ()
    usual, most = time_said(longest.mean.value, wording), time_said(longest.ninety.value, wording)
    return (
        wording.say(
            "Who waits, waits {usual} on average; nine in ten waits are over within {most}.", usual=usual, most=most
        ),
    )


def _known_by(answer: Answer, wording: Wording) -> tuple[str, ...]:
    if answer.forecast is None:
        return ()
    course = answer.forecast.course
    if course.rounds is None:
        how = wording.say("Worked out exactly from every situation that play can reach.")
    else:
        rounds = wording.counted(course.rounds, "round", "rounds")
        how = wording.say("From {rounds} played at random.", rounds=rounds)
    mostly = wording.say("The chances come from a plain aiming model; the library names the source of each number.")
    return (how, mostly)


def _changes(made: Remix, wording: Wording) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What the modifiers change, under headings; in another language by what is then understood, and what no longer
    is."""
    if not made.uses:
        return ()
    if not wording.english:
        before, after = (_understood(game, wording) for game in (made.base, made.game))
        parts = (
            (wording.say("New"), [each for each in after if each not in before]),
            (wording.say("Gone"), [each for each in before if each not in after]),
        )
        return tuple((heading, tuple(words)) for heading, words in parts if words)
    found: dict[str, list[str]] = {}
    for each in differences(made.base, made.game):
        found.setdefault(each.heading.capitalize(), []).append(each.words)
    return tuple((heading, tuple(words)) for heading, words in found.items())


def _understood(game: Game, wording: Wording) -> list[str]:
    return [each.text for part in read_back(resolved(game), wording).sections for each in part.said]


def _used(use: Use, wording: Wording) -> Used:
    values = {each.parameter: use.values.get(each.parameter, each.usually) for each in use.modifier.takes}
    amounts = []
    for each in use.modifier.takes:
        value = values[each.parameter]
        step = 1.0 if each.most.value - each.least.value >= 2 and float(each.usually.value).is_integer() else 0.5

        def with_value(number: float, of: str = each.parameter) -> str:
            return written(use.modifier.name, {name: v.value for name, v in values.items()} | {of: number})

        less, more = value.value - step, value.value + step
        amounts.append(
            Amount(
                each.parameter,
                value.words(),
                with_value(less) if less >= each.least.value else None,
                with_value(more) if more <= each.most.value else None,
            )
        )
    now = written(use.modifier.name, {name: each.value for name, each in use.values.items()})
    return Used(now, label_said(attrs.evolve(use, values={}), wording), tuple(amounts))


def written(name: str, values: dict[str, float]) -> str:
    """A modifier as it stands in an address."""
    return ",".join((name, *(f"{parameter} {number:g}" for parameter, number in values.items())))
