"""Lines that speak of all players where two sides took part, and mean those of one of them: whoever wrote such a line
may have meant everybody, so that it is told once."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core
from grammar.core.rules import AllPlaying, Go, Rule, Swap
from grammar.finding import Basis, Finding, Severity, spoken
from grammar.said import quoting, said

CODE = "N-one-side"


def of_one_side_alone(core: Core) -> Iterator[Finding]:
    """One note for each such line."""
    told: set[int] = set()
    for rule in core.play.rules:
        if rule.granted or rule.lines[0] in told or not any(_unsaid(rule)):
            continue
        told.add(rule.lines[0])
        title = said("Of all players these are one side's alone: whose player or target it is, or who caught it.")
        words = {"that": "all players of that side", "each": "all players of each side"}
        hint = quoting("So it is with `{that}`, too; for everybody write `{each}`.", **words)
        yield spoken(CODE, Severity.NOTE, title, core.lines[rule.lines[0]].span, hint, basis=Basis.PROVED)


def _unsaid(rule: Rule) -> Iterator[bool]:
    for effect in rule.effects:
        if isinstance(effect, Go | Swap) and isinstance(effect.who, AllPlaying):
            yield effect.who.unsaid
