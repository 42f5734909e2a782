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
from compose.telling.wording import ENGLISH
from compose.terminal.answer import exit_code, say, say_findings, say_json
from compose.terminal.answering import answer_json, say_care, verdict
from compose.terminal.patience import INTERRUPTED, Patience
from compose.terminal.stages import Ready, checked, ready
from compose.terminal.typed.classes import Who
from grammar.words import listing


def show_check(
    name: str, modifiers: Sequence[str], who: Who, budget: Budget, seconds: float | None, as_json: bool
) -> int:
    """Check a game and print what is proved; the exit code. It is stopped after so many `seconds`, if any."""
    prepared = ready(name, modifiers, who, as_json)
    with Patience(seconds) as patience:
        answer = checked(prepared, evolve(budget, keep_going=patience.keep_going))
    if as_json:
        stopped = {"stopped": patience.broken_off}
        say_json(head_json(prepared) | {"facts": _facts_json(answer.facts)} | answer_json(answer) | stopped)
        return INTERRUPTED if patience.stopped else exit_code(answer.findings)
    say(headline(prepared))
    say()
    say_findings(answer.findings)
    for sentence in (*summary(answer), verdict(answer)):
        for line in textwrap.wrap(sentence, 78):
            say(line)
    say_care(answer)
    for line in textwrap.wrap(how_found(answer), 78):
        say(line)
    if patience.broken_off:
        say(patience.broken_off)
    return INTERRUPTED if patience.stopped else exit_code(answer.findings)


def headline(prepared: Ready) -> str:
    """Such as "Lantern Row Remix: 10 north, 10 south; with kick instead"."""
    people = ", ".join(f"{number} {side}" for side, number in prepared.players.items())
    if len(prepared.staging.courts) > 1:
        people = teams_said(prepared.staging)
    uses = "".join(f"; with {listing(use.label for use in prepared.remix.uses)}" for _ in prepared.remix.uses[:1])
    return textwrap.fill(f"{remix_title(prepared.remix)}: {people}{uses}", 78, subsequent_indent="  ")


def head_json(prepared: Ready) -> dict[str, Any]:
    """Which game this is, with what and for whom."""
    return {
        "game": remix_title(prepared.remix),
        "modifiers": [use.label for use in prepared.remix.uses],
        "players": dict(prepared.players),
    }


def summary(answer: Answer) -> Iterator[str]:
    """What the check found out besides its findings."""
    facts = answer.facts
    if facts is None:
        return
    yield from fact_lines(answer, ENGLISH)
    if not facts.complete:
        yield "Not all that can happen was looked at, so this is not a proof."


def _number(number: int, one: str) -> str:
    return f"{number:,} {one if number == 1 else f'{one}s'}"


def how_found(answer: Answer) -> str:
    """How much was looked at, for those who want to know."""
    facts = answer.facts
    if facts is None:
        return "How it was found: from the sheet alone; there is too much that can happen to look at any of it."
    looked = f"{_number(facts.looked, 'situation')} and {_number(facts.edges, 'move')} were"
    all_of_them = "all there are" if facts.complete else "there are more"
    return f"How it was found: {looked} looked at, {all_of_them}."


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
