"""An answer as every command says it: which sets it shows, what is to mend, and as JSON."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Any

from compose.answer.answer import CARE, CLASS, FORECAST, PROVED, Answer, more_to_know, not_proved, to_mend
from compose.care.scene import LAST_WORD
from compose.net.net import Net
from compose.staging.resolved import resolved
from compose.telling.english.matches import match_words
from compose.telling.findings import finding_said
from compose.telling.unread import without_lines
from compose.telling.wording import ENGLISH, Wording
from compose.terminal.answer import WIDTH, finding_json, say, say_findings
from compose.terminal.staging_json import all_pupils_json, staging_json
from grammar.finding import Finding


def verdict(answer: Answer, wording: Wording = ENGLISH) -> str:
    """Such as "Proved: nothing to mend. The forecast may find more."."""
    return _verdict(answer, answer.findings, wording)


def _verdict(answer: Answer, findings: Sequence[Finding], wording: Wording) -> str:
    things = things_to_mend(findings, wording)
    unread = without_lines(resolved(answer.staged.staging.game), wording)
    part = bool(not_proved(findings))
    if answer.added is None:
        whole = "Proved: {things} to mend{unread}. The forecast may find more."
        pattern = "Looked at in part: {things} to mend{unread}. The forecast may find more." if part else whole
        return wording.say(pattern, things=things, unread=unread)
    whole = "Proved and forecast: {things} to mend{unread}."
    pattern = "Looked at in part, and forecast: {things} to mend{unread}." if part else whole
    return wording.say(pattern, things=things, unread=unread)


def things_to_mend(findings: Sequence[Finding], wording: Wording) -> str:
    """Such as "2 things", or "nothing"."""
    number = len(to_mend(findings))
    return wording.counted(number, "thing", "things") if number else wording.say("nothing")


def mend_first(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings: what is to mend, then that not all is proved, then what there is only to know."""
    first = (*to_mend(findings), *not_proved(findings))
    return (*first, *(each for each in findings if each not in first))


def in_language(answer: Answer, wording: Wording) -> tuple[Finding, ...]:
    """All findings of an answer, those to mend first, with their lines of play in the words of the language."""
    ordered = mend_first(answer.findings)
    if wording.english:
        return ordered
    from compose.telling.voice import Voice
    from compose.telling.witness import said_of_net

    voice = Voice(resolved(answer.staged.staging.game), wording)

    def played_in(finding: Finding) -> Net:
        return next((other.staged.net for other in answer.others if finding in other.proved), answer.staged.net)

    return tuple(said_of_net(each, played_in(each), voice) for each in ordered)


def say_in_short(answer: Answer, wording: Wording = ENGLISH) -> None:
    """What is to mend of the game, and how much more there is to know; for outputs that tell what is of the class."""
    findings = [each for each in answer.findings if each not in answer.of_class]
    mend = (*to_mend(findings), *not_proved(findings))
    say_findings(mend, wording=wording)
    say(textwrap.fill(_verdict(answer, findings, wording), WIDTH))
    if more := more_to_know(findings, wording):
        say(more)


def say_care(answer: Answer, wording: Wording = ENGLISH) -> None:
    """All reminders, a paragraph each."""
    if not answer.care:
        return
    say()
    say(wording.say("Reminders, the gravest first; local rules and the teacher in charge decide:"))
    for each in (finding_said(one, wording) for one in answer.care):
        text = f"{each.title} {each.hint.removesuffix(LAST_WORD).strip()}".strip()
        for line in textwrap.wrap(text, WIDTH, initial_indent="  - ", subsequent_indent="    "):
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
