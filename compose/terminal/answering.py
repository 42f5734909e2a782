"""An answer as every command says it: which sets it shows, what is to mend, and as JSON."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Any

from compose.answer.answer import CARE, CLASS, FORECAST, PROVED, Answer, to_mend
from compose.care.scene import LAST_WORD
from compose.net.net import Net
from compose.staging.resolved import resolved
from compose.telling.english.matches import match_words
from compose.telling.wording import Wording
from compose.terminal.answer import finding_json, say, say_findings
from compose.terminal.staging_json import all_pupils_json, staging_json
from grammar.finding import Finding
from grammar.words import count

MORE = "The forecast may find more."


def verdict(answer: Answer) -> str:
    """Such as "Proved: nothing to mend. The forecast may find more."."""
    return _verdict(answer, answer.findings)


def _verdict(answer: Answer, findings: Sequence[Finding]) -> str:
    number = len(to_mend(findings))
    things = count(number, "thing") if number else "nothing"
    if answer.added is None:
        return f"Proved: {things} to mend. {MORE}"
    return f"Proved and forecast: {things} to mend."


def in_language(answer: Answer, wording: Wording) -> tuple[Finding, ...]:
    """All findings of an answer, those to mend first, with their lines of play in the words of the language."""
    wrong = to_mend(answer.findings)
    ordered = (*wrong, *(each for each in answer.findings if each not in wrong))
    if wording.english or not any(each.witness for each in ordered):
        return ordered
    from compose.telling.voice import Voice
    from compose.telling.witness import witness_said

    voice = Voice(resolved(answer.staged.staging.game), wording)

    def played_in(finding: Finding) -> Net:
        return next((other.staged.net for other in answer.others if finding in other.proved), answer.staged.net)

    return tuple(witness_said(each, played_in(each), voice) for each in ordered)


def say_in_short(answer: Answer) -> None:
    """What is to mend of the game, and how much more there is to know; for outputs that tell what is of the class."""
    findings = [each for each in answer.findings if each not in answer.of_class]
    mend = to_mend(findings)
    say_findings(mend)
    say(_verdict(answer, findings))
    more = len(findings) - len(mend)
    if more:
        say(f"{count(more, 'thing').capitalize()} more to know: see check and forecast.")


def say_care(answer: Answer) -> None:
    """All reminders, a paragraph each."""
    if not answer.care:
        return
    say()
    say("Reminders, the gravest first; local rules and the teacher in charge decide:")
    for each in answer.care:
        text = f"{each.title} {each.hint.removesuffix(LAST_WORD).strip()}".strip()
        for line in textwrap.wrap(text, 78, initial_indent="  - ", subsequent_indent="    "):
            say(line)


def answer_json(answer: Answer) -> dict[str, Any]:
    """The same in every command: what is shown, its findings, how much was looked at, odds and length."""
    facts, odds = answer.facts, answer.odds
    return {
        "shows": list(answer.shows),
        "to_mend": len(to_mend(answer.findings)),
        "findings": [
            *(finding_json(each) | {"set": CLASS} for each in answer.of_class),
            *(finding_json(each) | {"set": CARE} for each in answer.care),
            *(finding_json(each) | {"set": PROVED} for each in answer.proved),
            *(finding_json(each) | {"set": FORECAST} for each in answer.added or ()),
        ],
        "looked_at": {
            "situations": facts.states if facts is not None else 0,
            "whole": answer.whole,
        },
        "staging": staging_json(answer.staged.staging),
        "all_pupils": all_pupils_json(answer),
        "match": match_words(answer.match) or None,
        "odds": {side: chance.value for side, chance in odds.wins} if odds else None,
        "round_minutes": answer.round_minutes,
        "mean_waits_minutes": [wait.mean.value for wait in answer.waits if wait.in_a_round > 0],
    }
