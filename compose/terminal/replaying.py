"""A line of play told step by step: the witness of a finding, or a round played at random."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from attrs import evolve

import library
from compose.answer.answer import to_mend
from compose.check import Budget
from compose.check.walk import walk
from compose.forecast.chances.chances import chances, said_too_much
from compose.forecast.rounds.sample import Event, Sample, sample_round
from compose.modifiers.remix_sheet import remix_title
from compose.net.net import Net
from compose.telling.english.ends import end_words
from compose.telling.english.findings import SET_UP
from compose.telling.english.moves import move_words
from compose.telling.english.states import state_in_words
from compose.terminal.answer import exit_code, finding_json, refuse, say, say_findings, say_json, stop
from compose.terminal.checking import headline
from compose.terminal.patience import Patience
from compose.terminal.stages import Ready, checked, ready
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import kit
from grammar.finding import Finding
from grammar.words import count, listing

WIDTH = 78


def show_replay(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    finding: str | None,
    seed: int,
    whole: bool,
    budget: Budget,
    seconds: float | None,
    as_json: bool,
) -> int:
    """Replay the witness of a finding of the check, or a round with this seed; the exit code."""
    prepared = ready(name, modifiers, who, as_json)
    if finding is not None:
        return _witness(prepared, finding, budget, seconds, as_json)
    wrong = said_too_much(prepared.net)
    if wrong:
        stop((*prepared.findings, *wrong), as_json)
    constants = chances(prepared.net, library.norms(), kit())
    return _round(prepared, sample_round(prepared.net, constants, seed), seed, whole, as_json)


def _witness(prepared: Ready, code: str, budget: Budget, seconds: float | None, as_json: bool) -> int:
    with Patience(seconds) as patience:
        found = checked(prepared, evolve(budget, keep_going=patience.keep_going))
    told = [finding for finding in found.findings if finding.witness]
    chosen = next((finding for finding in told if finding.code.lower() == code.lower()), None)
    if chosen is None:
        codes = listing(dict.fromkeys(finding.code for finding in told))
        hint = f"There are lines of play for {codes}." if codes else "The check found nothing with a line of play."
        refuse(f"The check has no line of play for `{code}`.", hint, as_json)
    net = prepared.net
    moves = [step.transition for step in (*chosen.witness, *chosen.loop) if step.transition >= 0]
    markings = walk(net, moves)
    if as_json:
        say_json(_witness_json(prepared, chosen, moves, markings))
        return exit_code(prepared.staging.findings)
    _head(prepared)
    for line in textwrap.wrap(f"{chosen.code}: {chosen.title}", WIDTH):
        say(line)
    say()
    _step("0.", SET_UP, state_in_words(net, markings[0]))
    for number, (move, after) in enumerate(zip(moves, markings[1:], strict=True), start=1):
        if number == len(chosen.witness):
            say("and from here round and round:")
        _step(f"{number}.", move_words(net, net.transitions[move]), state_in_words(net, after))
    say(f"{count(len(moves), 'move')}." if moves else "It is so from the start, without a move.")
    return _of_class(prepared)


def _head(prepared: Ready) -> None:
    say(headline(prepared))
    if len(prepared.staging.courts) > 1:
        people = listing(f"{number} {side}" for side, number in prepared.players.items())
        say(f"On one of the {len(prepared.staging.courts)} courts, with {people}.")


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
            {"move": move_words(net, net.transitions[move]), "after": _counts(net, after)}
            for move, after in zip(moves, markings[1:], strict=True)
        ],
        "loop_moves": len(chosen.loop),
        "findings": [finding_json(each) for each in prepared.staging.findings],
    }


def _round(prepared: Ready, sample: Sample, seed: int, whole: bool, as_json: bool) -> int:
    net = prepared.net
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
                        "move": move_words(net, net.transitions[event.transition]),
                        "after": _counts(net, event.marking),
                    }
                    for event in sample.events
                ],
                "findings": [finding_json(each) for each in prepared.staging.findings],
            }
        )
        return exit_code(prepared.staging.findings)
    _head(prepared)
    say(f"A round played at random (seed {seed}).")
    say()
    _step("0:00", SET_UP, state_in_words(net, net.start()))
    for stamp, words, after in _told(net, sample, whole):
        _step(stamp, words, after)
    say(f"{_stamp(sample.minutes)}  {_result(net, sample)}")
    return _of_class(prepared)


def _of_class(prepared: Ready) -> int:
    """What is to mend for the class, after all else; the exit code."""
    mend = to_mend(prepared.staging.findings)
    if mend:
        say()
        say_findings(mend)
    return exit_code(mend)


def _told(net: Net, sample: Sample, whole: bool) -> Iterator[tuple[str, str, str]]:
    """The events worth a line; those after which only balls lie elsewhere are counted, unless all are asked for."""
    before, passed = net.start(), 0
    for event in sample.events:
        changed = frozenset(place for place, count_now in enumerate(event.marking) if count_now != before[place])
        before = event.marking
        telling = [place for place in changed if net.places[place].token != "ball"]
        if not whole and not telling:
            passed += 1
            continue
        if passed:
            yield "", f"({count(passed, 'attempt')} without effect but on where balls lie)", ""
            passed = 0
        yield _line(net, event, changed if whole else frozenset(telling))
    if passed:
        yield "", f"({count(passed, 'attempt')} without effect but on where balls lie)", ""


def _line(net: Net, event: Event, shown: frozenset[int]) -> tuple[str, str, str]:
    move = net.transitions[event.transition]
    return _stamp(event.minutes), move_words(net, move), state_in_words(net, event.marking, shown)


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
