"""The answer of the check, in words and as JSON."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from attrs import evolve

from compose.answer.answer import Answer
from compose.check import Budget, Facts
from compose.draw.card.proof import fact_lines
from compose.modifiers.remix_sheet import remix_title
from compose.telling.for_class import teams_said
from compose.telling.uses import label_said
from compose.telling.wording import ENGLISH, Wording
from compose.terminal.answer import WIDTH, exit_code, refuse, say, say_findings, say_json
from compose.terminal.answering import answer_json, in_language, say_care, verdict
from compose.terminal.patience import INTERRUPTED, Patience
from compose.terminal.stages import Ready, checked, ready
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import Who
from grammar.finding import Finding
from grammar.words import listing, players_said


def show_check(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    budget: Budget,
    seconds: float | None,
    language: str,
    as_json: bool,
) -> int:
    """Check a game and print what is proved; the exit code. It is stopped after so many `seconds`, if any."""
    wording = wording_named(language, as_json)
    prepared = ready(name, modifiers, who, as_json)
    with Patience(seconds) as patience:
        answer = checked(prepared, evolve(budget, keep_going=patience.keep_going))
    if as_json:
        stopped = {"stopped": patience.broken_off}
        say_json(head_json(prepared) | {"facts": _facts_json(answer.facts)} | answer_json(answer) | stopped)
        return INTERRUPTED if patience.stopped else exit_code(answer.findings)
    say(headline(prepared, wording))
    say()
    say_findings(in_language(answer, wording), wording=wording)
    for sentence in (*summary(answer, wording), verdict(answer, wording)):
        for line in textwrap.wrap(sentence, WIDTH):
            say(line)
    say_care(answer, wording)
    for line in textwrap.wrap(how_found(answer, wording), WIDTH):
        say(line)
    if patience.broken_off:
        say(patience.broken_off)
    return INTERRUPTED if patience.stopped else exit_code(answer.findings)


def headline(prepared: Ready, wording: Wording = ENGLISH) -> str:
    """Such as "Lantern Row Remix: 10 north, 10 south; with kick instead"."""
    people = ", ".join(players_said(side, number) for side, number in prepared.players.items())
    if len(prepared.staging.courts) > 1 or not wording.english:
        people = teams_said(prepared.staging, wording)
    told = wording.say("{name}: {rule}", name=remix_title(prepared.remix), rule=people)
    if prepared.remix.uses:
        uses = wording.listed(label_said(use, wording) for use in prepared.remix.uses)
        told = wording.say("{game}; with {modifiers}", game=told, modifiers=uses)
    return textwrap.fill(told, WIDTH, subsequent_indent="  ")


def head_json(prepared: Ready) -> dict[str, Any]:
    """Which game this is, with what and for whom."""
    return {
        "game": remix_title(prepared.remix),
        "modifiers": [use.label for use in prepared.remix.uses],
        "players": dict(prepared.players),
    }


def summary(answer: Answer, wording: Wording) -> Iterator[str]:
    """What the check found out besides its findings."""
    facts = answer.facts
    if facts is None:
        return
    yield from fact_lines(answer, wording)
    if not facts.complete:
        yield wording.say("Not all that can happen was looked at, so this is not a proof.")


def _number(number: int, one: str, wording: Wording) -> str:
    if wording.english:
        return f"{number:,} {one if number == 1 else f'{one}s'}"
    return wording.counted(number, one, f"{one}s")


def how_found(answer: Answer, wording: Wording = ENGLISH) -> str:
    """How much was looked at, for those who want to know."""
    facts, say = answer.facts, wording.say
    if facts is None:
        return say(
            "How it was found: from how many there can be of each at least and at most; "
            "there is too much that can happen to look at any of it."
        )
    pattern = "How it was found: {situations} and {moves} were looked at, there are more."
    if facts.complete:
        pattern = "How it was found: {situations} and {moves} were looked at, all there are."
    situations, moves = _number(facts.looked, "situation", wording), _number(facts.edges, "move", wording)
    return say(pattern, situations=situations, moves=moves)


def _facts_json(facts: Facts | None) -> dict[str, Any] | None:
    if facts is None:
        return None
    return {
        "situations": facts.states,
        "looked_into": facts.looked,
        "moves": facts.edges,
        "ends": facts.ends,
        "complete": facts.complete,
        "ends_surely": facts.ends_surely,
        "held_up_by": None if facts.held_up_by is None else list(facts.held_up_by),
        "can_win": list(facts.can_win),
        "shortest_moves": facts.shortest,
        "longest_moves": facts.longest,
    }


def with_line_of_play(prepared: Ready, code: str, budget: Budget, seconds: float | None, as_json: bool) -> Finding:
    """The finding of this code that shows a line of play; ends the command where the check has none."""
    with Patience(seconds) as patience:
        found = checked(prepared, evolve(budget, keep_going=patience.keep_going))
    told = [finding for finding in found.findings if finding.witness]
    chosen = next((finding for finding in told if finding.code.lower() == code.lower()), None)
    if chosen is None:
        codes = listing(dict.fromkeys(finding.code for finding in told))
        hint = f"There are lines of play for {codes}." if codes else "The check found nothing with a line of play."
        refuse(f"The check has no line of play for `{code}`.", hint, as_json)
    return chosen
