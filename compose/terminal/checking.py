"""The answer of the check, in words and as JSON."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from compose.check import Budget, Facts
from compose.draw.proof import fact_lines
from compose.draw.wording import ENGLISH, Wording
from compose.terminal.answer import exit_code, finding_json, say, say_findings, say_json
from compose.terminal.patience import INTERRUPTED, Patience
from compose.terminal.remixing import remix_title
from compose.terminal.stages import Ready, checked, ready
from grammar.finding import Severity
from grammar.words import count, listing


def show_check(
    name: str, modifiers: Sequence[str], pupils: int | None, states: int, seconds: float, as_json: bool
) -> int:
    """Check a game and print what was found; the exit code."""
    prepared = ready(name, modifiers, pupils, as_json)
    with Patience() as patience:
        result = checked(prepared, Budget(states, seconds, keep_going=patience.keep_going))
    findings = (*prepared.findings, *result.findings)
    if as_json:
        say_json(
            {
                "game": remix_title(prepared.remix),
                "modifiers": [use.label for use in prepared.remix.uses],
                "players": dict(prepared.players),
                "facts": _facts_json(result.facts),
                "findings": [finding_json(finding) for finding in findings],
            }
        )
        return INTERRUPTED if patience.stopped else exit_code(findings)
    say(headline(prepared))
    say()
    say_findings(findings)
    for sentence in summary(prepared, result.facts):
        for line in textwrap.wrap(sentence, 78):
            say(line)
    to_mend = sum(finding.severity is Severity.WARNING for finding in findings)
    say("Nothing to mend." if not to_mend else f"{count(to_mend, 'thing')} to mend.")
    return INTERRUPTED if patience.stopped else exit_code(findings)


def headline(prepared: Ready) -> str:
    """Such as "Lantern Row Remix: 10 north, 10 south; with kick instead"."""
    people = ", ".join(f"{number} {side}" for side, number in prepared.players.items())
    uses = "".join(f"; with {listing(use.label for use in prepared.remix.uses)}" for _ in prepared.remix.uses[:1])
    return f"{remix_title(prepared.remix)}: {people}{uses}"


def summary(prepared: Ready, facts: Facts | None) -> Iterator[str]:
    """What the check found out besides its findings."""
    if facts is None:
        return
    looked = f"Looked at {facts.states:,} situations and {facts.edges:,} moves"
    yield looked + ("." if facts.complete else "; there are more, so this is not a proof.")
    yield from found_out(prepared, facts)


def found_out(prepared: Ready, facts: Facts, wording: Wording = ENGLISH) -> Iterator[str]:
    """The facts that stand on a card, too."""
    bell = prepared.net.bell
    return fact_lines(facts, bell.after_s / 60 if bell else None, wording, prepared.net.match.halves)


def _facts_json(facts: Facts | None) -> dict[str, Any] | None:
    if facts is None:
        return None
    return {
        "situations": facts.states,
        "moves": facts.edges,
        "ends": facts.ends,
        "complete": facts.complete,
        "ends_surely": facts.ends_surely,
        "held_up_by": None if facts.held_up_by is None else list(facts.held_up_by),
        "can_win": list(facts.can_win),
        "shortest_moves": facts.shortest,
        "longest_moves": facts.longest,
    }
