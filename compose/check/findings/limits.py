"""What to say where the whole game was not explored: nothing is then claimed to be absent."""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.explore import TooLarge
from compose.check.space import StateSpace
from grammar.finding import Basis, Finding, Severity
from grammar.span import nowhere
from grammar.words import listing

BUDGET = "C-budget"
TOO_LARGE = "C-too-large"
UNFINISHED = "C-unfinished"
_SMALLER = "Check it with fewer players, targets or balls; the forecast can still be simulated."


def over_budget(space: StateSpace) -> list[Finding]:
    """One finding where exploration stopped early."""
    if space.complete:
        return []
    return [
        Finding(
            code=BUDGET,
            severity=Severity.WARNING,
            title=f"The game is too large to prove everything: {space.states:,} situations were found, "
            f"{space.unexpanded:,} of them not looked into.",
            place=nowhere(),
            hint=f"What is said below is so; what is not said may still be. {_SMALLER}",
            basis=Basis.COMPUTED,
            numbers=(("states", float(space.states)), ("not looked into", float(space.unexpanded))),
        )
    ]


def out_of_time(missed: Sequence[str]) -> list[Finding]:
    """One finding where the time was up before everything was looked for."""
    if not missed:
        return []
    return [
        Finding(
            code=UNFINISHED,
            severity=Severity.WARNING,
            title=f"The time was up before these were looked for: {listing(missed)}.",
            place=nowhere(),
            hint="Give it more time, or check the game with fewer players, targets or balls.",
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
        hint=_SMALLER,
        basis=Basis.COMPUTED,
        numbers=(("possible situations", float(found.size)),),
    )
