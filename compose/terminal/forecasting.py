"""The answer of the forecast, in words and as JSON."""

from __future__ import annotations

import sys
import textwrap
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

import library
from compose.answer.answer import Answer
from compose.answer.foreseeing import foreseen
from compose.check import Budget
from compose.check.space import USUAL
from compose.forecast.answers import Answers
from compose.forecast.forecast import Forecast
from compose.forecast.rounds.simulate import Play
from compose.forecast.telling.speech import ENGLISH_SPEECH, Speech
from compose.forecast.telling.telling import Section, told_first, told_in_detail, told_then
from compose.forecast.telling.to_json import answers_json, forecast_json
from compose.staging.moving import active_in_whole_lesson
from compose.staging.norms import Ability
from compose.staging.resolved import resolved
from compose.telling.amounts import rounds_in_lesson
from compose.telling.for_class import class_lines, people
from compose.telling.voice import Voice
from compose.telling.wording import Wording
from compose.terminal.answer import WIDTH, WRONG, exit_code, refuse, say, say_findings, say_json, stop
from compose.terminal.answering import answer_json, in_language, verdict
from compose.terminal.checking import head_json, headline
from compose.terminal.patience import INTERRUPTED, Patience
from compose.terminal.sharing.observed_rounds import Kept, correction, correction_json, correction_lines, seen_rounds
from compose.terminal.stages import Ready, checked, ready
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import kit
from grammar.frozen import evolve, field, frozen
from grammar.words import count


@frozen
class Asked:
    """What a forecast is asked for: how many are away, how much work may be spent,
    whose kept rounds are weighed in (None: nobody's), after how many seconds to stop (None: never), whether to
    tell what it rests on, too, and in which language."""

    absent: int = 0
    budget: Budget = USUAL
    play: Play = field(factory=Play)
    kept: Kept | None = None
    seconds: float | None = None
    details: bool = False
    language: str = "en"


def show_forecast(name: str, modifiers: Sequence[str], who: Who, asked: Asked, as_json: bool) -> int:
    """Forecast a game and print it with what is proved; the exit code."""
    wording = wording_named(asked.language, as_json)
    prepared = ready(name, modifiers, who, as_json)
    fewer = _fewer(name, modifiers, prepared, who, asked.absent, as_json)
    speech = _speech(prepared, wording)
    with Patience(asked.seconds) as patience:
        asked = evolve(
            asked,
            budget=evolve(asked.budget, keep_going=patience.keep_going),
            play=evolve(asked.play, keep_going=patience.keep_going),
        )

        def first(known: Forecast) -> None:
            patience.rest()
            say_first(prepared, known, speech)

        answer = _answer(prepared, asked, compare=True, first=None if as_json else first)
        told = answer.forecast
        short = _answer(fewer, asked).numbers if fewer is not None and told is not None else None
    if told is None:
        return _nothing_known(answer, patience, wording, as_json)
    seen = seen_rounds(prepared, asked.kept, as_json) if asked.kept is not None else None
    # Rounds are kept one by one: they are held against the odds of one.
    of_a_round = evolve(told.band.usual, wins=told.odds.wins)
    change = correction(prepared, of_a_round, seen) if seen is not None else ()
    if as_json:
        with_seen = {"with_own_rounds": correction_json(seen, change)} if seen is not None else {}
        stopped = {"stopped": patience.broken_off}
        say_json(_json(prepared, fewer, answer, told, short) | with_seen | stopped)
    else:
        say_all_pupils(answer, speech)
        _say_then(fewer, told, short, speech)
        if asked.details:
            _say_sections(told_in_detail(told, speech))
        for line in correction_lines(seen, change, speech) if seen is not None else ():
            say(line)
        say_findings(in_language(answer, wording) if not wording.english else answer.findings, wording=wording)
        say(textwrap.fill(verdict(answer, wording), WIDTH))
        if not asked.details:
            say(wording.say("What it rests on and how it was found: --details"))
        if patience.broken_off:
            say(patience.broken_off)
    return INTERRUPTED if patience.stopped else exit_code(answer.findings)


def _answer(
    prepared: Ready, asked: Asked, compare: bool = False, first: Callable[[Forecast], None] | None = None
) -> Answer:
    """What is proved and forecast of a prepared game; `first` hears of the forecast while it is not compared yet."""
    return foreseen(
        checked(prepared, asked.budget),
        library.norms(),
        kit(),
        play=asked.play,
        budget=asked.budget,
        compare=compare,
        first=first,
    )


def _fewer(name: str, modifiers: Sequence[str], prepared: Ready, who: Who, absent: int, as_json: bool) -> Ready | None:
    if not absent:
        return None
    present = prepared.staging.pupils - absent
    if present < 1:
        title = f"With {absent} away nobody is left."
        refuse(title, f"{count(present + absent, 'pupil')} play this game.", as_json)
    return ready(name, modifiers, evolve(who, pupils=present), as_json)


def _speech(prepared: Ready, wording: Wording) -> Speech:
    return ENGLISH_SPEECH if wording.english else Speech(Voice(resolved(prepared.game), wording))


def _nothing_known(answer: Answer, patience: Patience, wording: Wording, as_json: bool) -> int:
    if exit_code(answer.findings) == WRONG:
        stop(answer.findings, as_json)
    if patience.late:
        title = "The time was too short to play even a first batch of rounds."
        refuse(title, "Give it more time with --seconds, or fewer rounds with --rounds.", as_json)
    if not patience.stopped:
        title = "So much happens in a round of this game that not even one could be played."
        refuse(
            title, "Look for what happens very often: times a minute, or seconds after which somebody returns.", as_json
        )
    if as_json:
        say_json({"stopped": True, "forecast": None})
    else:
        say(wording.say("Stopped; nothing is known yet."))
    return INTERRUPTED


def say_first(prepared: Ready, known: Forecast, speech: Speech = ENGLISH_SPEECH) -> None:
    """What a teacher asks for, as soon as it is known."""
    say(headline(prepared, speech.wording))
    if prepared.staging.particular:
        for line in class_lines(prepared.staging, speech.wording):
            _say_wrapped(line)
    say()
    _say_sections(told_first(known, speech))
    sys.stdout.flush()


def _say_then(fewer: Ready | None, told: Forecast, short: Answers | None, speech: Speech) -> None:
    _say_sections(told_then(told, speech))
    if fewer is not None and short is not None:
        for line in _with_fewer(fewer, told.net.solo, told.band.usual, short, speech):
            say(line)
        say()


def _say_wrapped(line: str) -> None:
    for part in textwrap.wrap(line, WIDTH, subsequent_indent="  "):
        say(part)


def say_all_pupils(answer: Answer, speech: Speech = ENGLISH_SPEECH) -> None:
    """The numbers of the whole class, where they are not those of a court."""
    numbers, staging, told = answer.numbers, answer.staged.staging, speech.say
    if numbers is None or not (staging.teams.over or answer.others or len(staging.courts) > 1):
        return
    lines = (
        told("over all courts a round lasts {time} on average", time=speech.minutes(numbers.minutes.value)),
        told("turns a minute: {number}", number=speech.figure(numbers.turns.value)),
        told("not playing: {share}", share=speech.percent(numbers.idle.value)),
        *_of_lesson(answer, speech),
    )
    pupils = speech.wording.counted(staging.pupils, "pupil", "pupils")
    _say_sections((Section(told("All {pupils}", pupils=pupils), lines),))


def _of_lesson(answer: Answer, speech: Speech) -> Iterator[str]:
    """The rounds of the class, and how active it is, as the sheet of its lesson has it."""
    staging, round_min, in_round = answer.staged.staging, answer.round_minutes, answer.active_in_round
    if round_min is None or in_round is None:
        return
    lesson, ability = staging.lesson, Ability(library.norms())
    rounds = rounds_in_lesson(lesson.whole_rounds(round_min), lesson.warm_rounds(round_min), speech.wording)
    yield speech.say("in the lesson: {rounds}", rounds=rounds)
    share = active_in_whole_lesson(ability, staging.ages_years, lesson, round_min, in_round)
    active = speech.say("{share} of class time, with a warm-up and a talk", share=speech.percent(share))
    yield speech.say("active: {share}", share=active)


def _say_sections(sections: Sequence[Section]) -> None:
    for section in sections:
        say(section.title)
        for line in section.lines:
            indent = " " * (2 + len(line) - len(line.lstrip()))
            for piece in textwrap.wrap(line.strip(), WIDTH, initial_indent=indent, subsequent_indent=f"{indent}  "):
                say(piece if len(line) + 2 > WIDTH else f"  {line}")
        say()


def _with_fewer(
    fewer: Ready, solo: Mapping[str, bool], all_here: Answers, with_fewer: Answers, speech: Speech
) -> Iterator[str]:
    """What changes when some are away, a line for each number."""
    yield speech.say("With {people}, instead of all:", people=people(fewer.players, speech.wording))

    def row(name: str, tell: Callable[[Answers], str]) -> str:
        return f"  {name:<42} {tell(with_fewer):<10} ({tell(all_here)})"

    yield row(speech.say("a round lasts"), lambda a: speech.minutes(a.minutes.value))
    for number, (side, _) in enumerate(all_here.wins):
        yield row(speech.wins(side, solo), lambda a, n=number: speech.percent(a.wins[n][1].value))  # type: ignore[misc]
    yield row(speech.say("turns a minute"), lambda a: speech.figure(a.turns.value))
    yield row(speech.say("not playing"), lambda a: speech.percent(a.idle.value))


def _json(
    prepared: Ready, fewer: Ready | None, answer: Answer, told: Forecast, short: Answers | None
) -> dict[str, Any]:
    said = head_json(prepared) | {"forecast": forecast_json(told)}
    if fewer is not None and short is not None:
        said["with_fewer"] = {"players": dict(fewer.players), "answers": answers_json(short)}
    return said | answer_json(answer)
