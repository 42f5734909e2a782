"""A line of play told step by step: the witness of a finding, or a round played at random."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

import library
from compose.answer.answer import to_mend
from compose.check import Budget
from compose.check.walk import walk
from compose.draw.strip.line_of_play import counts_in, steps_behind, told_moves
from compose.forecast.chances.chances import chances, said_too_much
from compose.forecast.rounds.sample import Sample, sample_round
from compose.modifiers.remix_sheet import remix_title
from compose.net.net import Net
from compose.staging.resolved import resolved
from compose.telling.english.ends import end_words
from compose.telling.english.findings import SET_UP
from compose.telling.english.moves import step_words
from compose.telling.english.states import state_in_words
from compose.telling.findings import finding_said
from compose.telling.for_class import people
from compose.telling.moves import Happenings
from compose.telling.voice import Voice
from compose.telling.wording import Wording
from compose.terminal.answer import WIDTH, exit_code, finding_json, say, say_findings, say_json, stop
from compose.terminal.checking import headline, with_line_of_play
from compose.terminal.stages import Ready, ready
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import kit
from grammar.finding import Finding


def show_replay(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    finding: str | None,
    seed: int,
    whole: bool,
    budget: Budget,
    seconds: float | None,
    language: str,
    as_json: bool,
) -> int:
    """Replay the witness of a finding of the check, or a round with this seed; the exit code."""
    wording = wording_named(language, as_json)
    prepared = ready(name, modifiers, who, as_json)
    if finding is not None:
        return _witness(prepared, finding, budget, seconds, wording, as_json)
    wrong = said_too_much(prepared.net)
    if wrong:
        stop((*prepared.findings, *wrong), as_json)
    constants = chances(prepared.net, library.norms(), kit())
    return _round(prepared, sample_round(prepared.net, constants, seed), seed, whole, wording, as_json)


def _witness(prepared: Ready, code: str, budget: Budget, seconds: float | None, wording: Wording, as_json: bool) -> int:
    chosen = with_line_of_play(prepared, code, budget, seconds, as_json)
    net = prepared.net
    moves = [step.transition for step in (*chosen.witness, *chosen.loop) if step.transition >= 0]
    markings = walk(net, moves)
    if as_json:
        say_json(_witness_json(prepared, chosen, moves, markings))
        return exit_code(prepared.staging.findings)
    _head(prepared, wording)
    title = finding_said(chosen, wording).title
    for line in textwrap.wrap(wording.say("{name}: {rule}", name=chosen.code, rule=title), WIDTH):
        say(line)
    say()
    counts = counts_in(prepared.game, wording) or state_in_words
    _step("0.", wording.say(SET_UP), counts(net, markings[0]))
    played = told_moves(prepared.game, net, steps_behind(net, chosen), wording)
    for number, each in enumerate(played, start=1):
        if number == len(chosen.witness):
            say(wording.say("and from here round and round:"))
        _step(f"{number}.", each.words, counts(net, each.marking))
    number_of_moves = f"{wording.counted(len(moves), 'move', 'moves')}."
    say(number_of_moves if moves else wording.say("It is so from the start, without a move."))
    return _of_class(prepared, wording)


def _head(prepared: Ready, wording: Wording) -> None:
    say(headline(prepared, wording))
    courts = len(prepared.staging.courts)
    if courts > 1:
        with_whom = people(prepared.players, wording)
        say(wording.say("On one of the {courts} courts, with {people}.", courts=courts, people=with_whom))


def _witness_json(
    prepared: Ready, chosen: Finding, moves: list[int], markings: tuple[tuple[int, ...], ...]
) -> dict[str, Any]:
    net = prepared.net
    return {
        "game": remix_title(prepared.remix),
        "players": dict(prepared.players),
        "finding": chosen.code,
        "title": chosen.title,
        "start": _counts(net, markings[0]),
        "moves": [
            {"move": step_words(net, before, move), "after": _counts(net, after)}
            for move, before, after in zip(moves, markings, markings[1:], strict=False)
        ],
        "loop_moves": len(chosen.loop),
        "findings": [finding_json(each) for each in prepared.staging.findings],
    }


def _round(prepared: Ready, sample: Sample, seed: int, whole: bool, wording: Wording, as_json: bool) -> int:
    net = prepared.net
    befores = (net.start(), *(event.marking for event in sample.events))
    if as_json:
        say_json(
            {
                "game": remix_title(prepared.remix),
                "players": dict(prepared.players),
                "seed": seed,
                "minutes": sample.minutes,
                "result": _result(net, sample),
                "start": _counts(net, net.start()),
                "moves": [
                    {
                        "minutes": event.minutes,
                        "move": step_words(net, before, event.transition),
                        "after": _counts(net, event.marking),
                    }
                    for before, event in zip(befores, sample.events, strict=False)
                ],
                "findings": [finding_json(each) for each in prepared.staging.findings],
            }
        )
        return exit_code(prepared.staging.findings)
    _head(prepared, wording)
    say(wording.say("A round played at random (seed {seed}).", seed=seed))
    say()
    counts = counts_in(prepared.game, wording) or state_in_words
    _step("0:00", wording.say(SET_UP), counts(net, net.start()))
    for stamp, words, after in _told(prepared, sample, whole, wording):
        _step(stamp, words, after)
    say(f"{_stamp(sample.minutes)}  {_ending(prepared, sample, wording)}")
    return _of_class(prepared, wording)


def _ending(prepared: Ready, sample: Sample, wording: Wording) -> str:
    if wording.english or sample.end is None:
        return wording.say(_result(prepared.net, sample))
    return Happenings(Voice(resolved(prepared.game), wording), prepared.net).ended(sample.end, sample.unfinished)


def _of_class(prepared: Ready, wording: Wording) -> int:
    """What is to mend for the class, after all else; the exit code."""
    mend = to_mend(prepared.staging.findings)
    if mend:
        say()
        say_findings(mend, wording=wording)
    return exit_code(mend)


def _told(prepared: Ready, sample: Sample, whole: bool, wording: Wording) -> Iterator[tuple[str, str, str]]:
    """The events worth a line; those after which only balls lie elsewhere are counted, unless all are asked for."""
    net, counts = prepared.net, counts_in(prepared.game, wording)
    before, passed = net.start(), 0
    steps = [(event.transition, event.marking, event.minutes) for event in sample.events]
    for event, move in zip(sample.events, told_moves(prepared.game, net, steps, wording), strict=True):
        changed = frozenset(place for place, count_now in enumerate(event.marking) if count_now != before[place])
        before = event.marking
        telling = [place for place in changed if net.places[place].token != "ball"]
        if not whole and not telling:
            passed += 1
            continue
        if passed:
            yield "", _passed(passed, wording), ""
            passed = 0
        shown = changed if whole else frozenset(telling)
        after = counts(net, event.marking) if counts else state_in_words(net, event.marking, shown)
        yield _stamp(event.minutes), move.words, after
    if passed:
        yield "", _passed(passed, wording), ""


def _passed(number: int, wording: Wording) -> str:
    attempts = wording.counted(number, "attempt", "attempts")
    return wording.say("({attempts} without effect but on where balls lie)", attempts=attempts)


def _result(net: Net, sample: Sample) -> str:
    if sample.unfinished:
        return f"broken off here, after {len(sample.events):,} events"
    if sample.end is not None:
        return end_words(net, sample.end)
    if sample.stuck:
        return "nothing can happen any more, and there is no clock"
    return "the bell rings; no sentence says what the result is"


def _stamp(minutes: float) -> str:
    seconds = int(minutes * 60)
    return f"{seconds // 60}:{seconds % 60:02}"


def _step(mark: str, words: str, after: str) -> None:
    for line in textwrap.wrap(words, WIDTH, initial_indent=f"{mark:>6}  ", subsequent_indent=" " * 8):
        say(line)
    if after:
        for line in textwrap.wrap(after, WIDTH, initial_indent=" " * 8 + "= ", subsequent_indent=" " * 10):
            say(line)


def _counts(net: Net, marking: tuple[int, ...]) -> dict[str, int]:
    return {place.name: number for place, number in zip(net.places, marking, strict=True)}
