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
from compose.staging.room_findings import asks_mending
from compose.telling.amounts import rounds_in_lesson
from compose.telling.cautions import cautions_told
from compose.telling.for_class import class_lines
from compose.telling.wording import ENGLISH, Wording
from compose.terminal.answer import WIDTH, exit_code, finding_json, refuse, say, say_findings, say_json
from compose.terminal.answering import answer_json, mend_first, say_care, say_in_short, things_to_mend
from compose.terminal.checking import headline
from compose.terminal.stages import answered, checked, ready_of, remixed
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import Who, staging_of
from compose.terminal.typed.offering import offered
from grammar.finding import Severity
from grammar.words import capital, listing

IN_LINES = ("F-area", "F-run-off", "F-stand-in")  # notes of which the lines above them say the same


def show_fit(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    quick: bool,
    budget: Budget,
    language: str,
    as_json: bool,
) -> int:
    """Print how a game and a class go together, and what is known of the game for its teams; the exit code.

    `quick` leaves out the forecast."""
    wording = wording_named(language, as_json)
    if who.class_name is None and who.pupils is None:
        refuse("Nobody says for whom.", "Name a class with --class, or how many pupils with --pupils.", as_json)
    made, said = remixed(name, modifiers, as_json)
    staging = staging_of(made.game, who, as_json)
    prepared = ready_of(made, staging, said, as_json) if not staging.refused else None
    answer = None
    if prepared is not None:
        answer = checked(prepared, budget) if quick else answered(prepared, budget)
    found = fit_of(staging, library.norms(), answer.round_minutes if answer is not None else None)
    findings = (*found.findings, *(answer.findings if answer is not None else ()))
    if as_json:
        say_json(_json(found) | {"game": remix_title(made)} | _known_json(found, answer))
        return exit_code(findings)
    _say(remix_title(made), found, wording)
    if prepared is not None and answer is not None:
        say()
        say(headline(prepared, wording))
        say_in_short(answer, wording)
        say_care(answer, wording)
    say()
    say("\n".join(textwrap.wrap(wording.say(_in_one(found, answer)), WIDTH)))
    if to_mend(found.findings):
        say(wording.say("To look for modifiers that mend it:"))
        say("  " + " ".join(offered("suggest", name, modifiers, who, wording.language)))
    return exit_code(findings)


def _say(title: str, found: Fit, wording: Wording) -> None:
    """How the class, the hall and the cupboard go with the game."""
    group = found.staging.school_class
    pupils = wording.counted(group.pupils, "pupil", "pupils")
    whom = wording.say("{name}: {pupils}", name=group.name, pupils=pupils) if group.name else pupils
    say(wording.say("{game} for {whom}", game=title, whom=whom))
    say()
    for line in fit_lines(found, wording):
        for part in textwrap.wrap(line, WIDTH, subsequent_indent="  "):
            say(part)
    say()
    untold = [each for each in found.findings if each.severity is not Severity.NOTE or each.code not in IN_LINES]
    say_findings(mend_first(untold), wording=wording, notes_framed=False)
    things = things_to_mend(found.findings, wording)
    say(wording.say("Class, hall and cupboard: {things} to mend.", things=things))


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


def fit_lines(found: Fit, wording: Wording = ENGLISH) -> Iterator[str]:
    """The fit as sentences."""
    staging, say = found.staging, wording.say
    yield from class_lines(staging, wording)
    for each in staging.limits:
        what = capital(say(each.what))
        there, usual = (_figure(number, wording) for number in (each.there, each.usual))
        pattern = "{what}: {there} {unit} ({usual} usual, kept)."
        if not each.kept:
            pattern = "{what}: {there} {unit} ({usual} usual, less than usual)."
        if asks_mending(each):
            pattern = "{what}: {there} {unit} ({usual} usual, too little)."
        yield say(pattern, what=what, there=there, unit=each.unit, usual=usual)
    yield from _lesson(found, wording)
    for caution in cautions_told(staging.cautions, wording):
        yield say("Mind: {what}", what=caution)


def _figure(number: float, wording: Wording) -> str:
    return wording.figure(float(f"{number:.3g}"))


def _lesson(found: Fit, wording: Wording) -> Iterator[str]:
    plan, say = found.lesson, wording.say
    lesson = plan.lesson
    yield say(
        "Lesson: {lesson} min; changing {changing}, setting up {set_up}, explaining {explaining}, "
        "clearing away {clearing}: {play} min of play; warm-up {warm_up}, talk {talk}: {warm}.",
        lesson=_figure(lesson.minutes, wording),
        changing=_figure(lesson.changing, wording),
        set_up=_figure(lesson.setting_up, wording),
        explaining=_figure(lesson.explaining, wording),
        clearing=_figure(lesson.clearing, wording),
        play=_figure(lesson.play, wording),
        warm_up=_figure(lesson.warm_up, wording),
        talk=_figure(lesson.talk, wording),
        warm=_figure(lesson.warm_play, wording),
    )
    if plan.round_min and found.staging.courts:
        yield say(
            "Rounds ({known_by}): {rounds}; the game asks for {wanted}.",
            rounds=rounds_in_lesson(plan.fitting, plan.warm, wording),
            known_by=say(plan.known_by),
            wanted=str(plan.wanted),
        )
    if wording.english:
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
        "cautions": list(cautions_told(staging.cautions)),
    }
