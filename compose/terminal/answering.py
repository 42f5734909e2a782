"""An answer as every command says it: which sets it shows, what is to mend, and as JSON."""

from __future__ import annotations

from typing import Any

from compose.answer.answer import FORECAST, PROVED, Answer, to_mend
from compose.terminal.answer import finding_json
from grammar.words import count

MORE = "The forecast may find more."


def verdict(answer: Answer) -> str:
    """Such as "Proved: nothing to mend. The forecast may find more."."""
    number = len(to_mend(answer.findings))
    things = count(number, "thing") if number else "nothing"
    if answer.added is None:
        return f"Proved: {things} to mend. {MORE}"
    return f"Proved and forecast: {things} to mend."


def answer_json(answer: Answer) -> dict[str, Any]:
    """The same in every command: what is shown, its findings, how much was looked at, odds and length."""
    facts, odds, numbers = answer.facts, answer.odds, answer.numbers
    known = numbers is not None and odds is not None
    return {
        "shows": list(answer.shows),
        "to_mend": len(to_mend(answer.findings)),
        "findings": [
            *(finding_json(each) | {"set": PROVED} for each in answer.proved),
            *(finding_json(each) | {"set": FORECAST} for each in answer.added or ()),
        ],
        "looked_at": {
            "situations": facts.states if facts is not None else 0,
            "whole": answer.whole,
        },
        "match": answer.match.words or None,
        "odds": {side: chance.value for side, chance in odds.wins} if known and odds else None,
        "round_minutes": _finite(numbers.minutes.value) if numbers else None,
    }


def _finite(value: float) -> float | None:
    """The number, or nothing where it is without end: JSON has no infinity."""
    return value if value < float("inf") else None
