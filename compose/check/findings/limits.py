"""What to say where the whole game was not explored: nothing is then claimed to be absent."""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.explore import TooLarge
from compose.check.space import Budget, StateSpace
from compose.check.words import sentence
from grammar.finding import Basis, Finding, Severity
from grammar.span import nowhere
from grammar.words import listing

BUDGET = "C-budget"
TOO_LARGE = "C-too-large"
UNFINISHED = "C-unfinished"
FURTHER = 4  # times the budget is what the hint offers
_SMALLER = "check it with fewer players, targets or balls; the forecast can still be simulated."


def over_budget(space: StateSpace, budget: Budget) -> list[Finding]:
    """One finding where exploration ended early."""
    if space.complete:
        return []
    why = "The check was stopped" if space.stopped else "The game is too large to prove everything"
    further = f"--states {FURTHER * budget.states} --memory {FURTHER * budget.megabytes:.0f}"
    more = "Let it go on longer" if space.stopped else f"Look further with {further}"
    return [
        Finding(
            code=UNFINISHED if space.stopped else BUDGET,
            severity=Severity.WARNING,
            title=f"{why}: {space.expanded:,} situations were looked into, {space.unexpanded:,} more were seen.",
            place=nowhere(),
            hint=f"What is told of them is so; what is not told may still be. {more}, or {_SMALLER}",
            basis=Basis.COMPUTED,
            numbers=(("looked into", float(space.expanded)), ("not looked into", float(space.unexpanded))),
        )
    ]


def unfinished(missed: Sequence[str]) -> list[Finding]:
    """One finding where the check was stopped before everything was looked for."""
    if not missed:
        return []
    return [
        Finding(
            code=UNFINISHED,
            severity=Severity.WARNING,
            title=f"The check was stopped before these were looked for: {listing(missed)}.",
            place=nowhere(),
            hint="Let it go on longer, or check the game with fewer players, targets or balls.",
            basis=Basis.COMPUTED,
        )
    ]


def too_large(found: TooLarge) -> Finding:
    """The finding where the situations cannot even be numbered."""
    return Finding(
        code=TOO_LARGE,
        severity=Severity.WARNING,
        title=f"The game is too large to prove anything: some {found.size:.0e} situations are possible.",
        place=nowhere(),
        hint=sentence(_SMALLER),
        basis=Basis.COMPUTED,
        numbers=(("possible situations", float(found.size)),),
    )
