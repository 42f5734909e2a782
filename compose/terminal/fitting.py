"""Does a game fit a class? The answer in words and as JSON."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

import library
from compose.answer.answer import CLASS, Answer, to_mend
from compose.check import Budget
from compose.fit.fit import Fit, fit_of
from compose.modifiers.remix_sheet import remix_title
from compose.staging.staging import stage
from compose.telling.for_class import class_lines
from compose.terminal.answer import exit_code, finding_json, say, say_findings, say_json
from compose.terminal.answering import answer_json, say_care, say_in_short
from compose.terminal.checking import headline
from compose.terminal.stages import answered, checked, ready_of, remixed
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.classes import school_class
from compose.terminal.typed.finding_games import kit
from grammar.words import capital, count, listing


def show_fit(
    name: str,
    modifiers: Sequence[str],
    class_name: str,
    hall: str | None,
    quick: bool,
    budget: Budget,
    as_json: bool,
) -> int:
    """Print how a game and a class go together, and what is known of the game for its teams; the exit code.

    `quick` leaves out the forecast."""
    group = school_class(class_name, as_json, hall)
    made, said = remixed(name, modifiers, as_json)
    staging = stage(made.game, library.norms(), kit(), group)
    prepared = ready_of(made, staging, said, as_json) if not staging.refused else None
    answer = None
    if prepared is not None:
        answer = checked(prepared, budget) if quick else answered(prepared, budget)
    found = fit_of(staging, library.norms(), answer.round_minutes if answer is not None else None)
    findings = (*found.findings, *(answer.findings if answer is not None else ()))
    if as_json:
        say_json(_json(found) | {"game": remix_title(made)} | _known_json(found, answer))
        return exit_code(findings)
    say(f"{remix_title(made)} for {group.name}: {count(group.pupils, 'pupil')}")
    say()
    for line in fit_lines(found):
        for part in textwrap.wrap(line, 78, subsequent_indent="  "):
            say(part)
    say()
    say_findings(found.findings)
    wrong = len(to_mend(found.findings))
    say(f"Class, hall and cupboard: {count(wrong, 'thing') if wrong else 'nothing'} to mend.")
    if prepared is not None and answer is not None:
        say()
        say(headline(prepared))
        say_in_short(answer)
        say_care(answer)
    say()
    say(_in_one(found, answer))
    return exit_code(findings)


def _in_one(found: Fit, answer: Answer | None) -> str:
    """The last word, of which the exit code says the same."""
    of_class = bool(to_mend(found.findings))
    of_game = answer is not None and bool(to_mend([each for each in answer.findings if each not in found.findings]))
    if not of_class and not of_game:
        return "The game fits the class."
    if of_class and of_game:
        return "The game does not fit the class as it is, and has something to mend of its own."
    return "The game does not fit the class as it is." if of_class else "The game fits the class; mend what is its own."


def _known_json(found: Fit, answer: Answer | None) -> dict[str, Any]:
    """What is known of the game, with what was found of the class and the minutes among the findings."""
    told: dict[str, Any] = (
        answer_json(answer) if answer is not None else {"findings": [], "staging": staging_json(found.staging)}
    )
    of_game = [each for each in told["findings"] if each["set"] != CLASS]
    return told | {"findings": [*(finding_json(each) | {"set": CLASS} for each in found.findings), *of_game]}


def fit_lines(found: Fit) -> Iterator[str]:
    """The fit as sentences."""
    staging = found.staging
    yield from class_lines(staging)
    for each in staging.limits:
        verdict = "kept" if each.kept else "less than usual" if not each.broken else "too little"
        yield f"{capital(each.what)}: {each.there:.3g} {each.unit} ({each.usual:g} usual, {verdict})."
    yield from _lesson(found)
    for caution in staging.cautions:
        yield f"Mind: {caution}"


def _lesson(found: Fit) -> Iterator[str]:
    plan = found.lesson
    lesson = plan.lesson
    yield (
        f"Lesson: {lesson.minutes:.3g} min; changing {lesson.changing:.3g}, setting up {lesson.setting_up:.3g}, "
        f"explaining {lesson.explaining:.3g}, clearing away {lesson.clearing:.3g}: {lesson.play:.3g} min of play."
    )
    if plan.round_min:
        yield f"Rounds: {plan.rounds} of {plan.round_min:.3g} min ({plan.known_by}); the game asks for {plan.wanted}."
    yield f"Times by: {listing(str(source) for source in plan.sources)}."


def _json(found: Fit) -> dict[str, Any]:
    plan, staging = found.lesson, found.staging
    return {
        "limits": [
            {
                "what": each.what,
                "unit": each.unit,
                "there": round(each.there, 3),
                "least": each.least,
                "usual": each.usual,
                "kept": each.kept,
                "sources": [str(source) for source in each.sources],
                "why": list(each.why),
            }
            for each in staging.limits
        ],
        "lesson": {
            "minutes": plan.lesson.minutes,
            "play_minutes": plan.lesson.play,
            "round_minutes": plan.round_min,
            "known_by": plan.known_by,
            "rounds": plan.rounds,
            "wanted": plan.wanted,
        },
        "cautions": list(staging.cautions),
    }
