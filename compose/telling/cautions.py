"""The cautions of a game in words, each with the things that it is of; all outputs say these."""

from __future__ import annotations

from collections.abc import Iterable

from compose.staging.cautions import Caution, clauses
from compose.telling.sentences import sentence
from compose.telling.wording import ENGLISH, Wording
from grammar.words import capital


def cautions_told(cautions: Iterable[Caution], wording: Wording = ENGLISH) -> tuple[str, ...]:
    """A sentence each: "Beanbags: not at people."; once where two say the same. Of what a remix has overtaken only the
    rest is said, or all of it as words of before."""
    return tuple(dict.fromkeys(sentence(_told(each, wording)) for each in cautions))


def _told(caution: Caution, wording: Wording) -> str:
    said = wording.author(caution.text)
    if caution.overtaken:
        parts = clauses(said)
        rest = [part for number, part in enumerate(parts) if number not in caution.overtaken]
        if not rest or len(parts) != len(clauses(caution.text)):
            return wording.say("Before it was changed: {words}", words=said)
        return capital("; ".join(rest))
    if not caution.things:
        return said
    names = wording.listed(wording.named(each) for each in caution.things)
    return wording.say("{name}: {rule}", name=names, rule=f"{said[0].lower()}{said[1:]}")
