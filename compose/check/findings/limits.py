"""What to say where the whole game was not explored: nothing is then claimed to be absent."""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.explore import TooLarge
from compose.check.found import Found
from compose.check.space import Budget, StateSpace
from grammar.finding import Basis, Severity
from grammar.said import Capital, Figure, Listed, Value, said
from grammar.span import nowhere

BUDGET = "C-budget"
TOO_LARGE = "C-too-large"
UNFINISHED = "C-unfinished"
FURTHER = 4  # times the budget is what the hint offers
_SMALLER = "check it with fewer players, targets or balls; the forecast can still be simulated."


def over_budget(space: StateSpace, budget: Budget) -> list[Found]:
    """One finding where exploration ended early."""
    if space.complete:
        return []
    why = "The check was stopped" if space.stopped else "The game is too large to prove everything"
    more: Value = "Let it go on longer"
    if not space.stopped:
        states, memory = Figure(FURTHER * budget.states, ".0f"), Figure(FURTHER * budget.megabytes, ".0f")
        more = said("Look further with --states {states} --memory {memory}", states=states, memory=memory)
    return [
        Found(
            code=UNFINISHED if space.stopped else BUDGET,
            severity=Severity.WARNING,
            title=said(
                "{why}: {looked} situations were looked into, {more} more were seen.",
                why=why,
                looked=Figure(space.expanded, ","),
                more=Figure(space.unexpanded, ","),
            ),
            place=nowhere(),
            hint=said(
                "What is told of them is so; what is not told may still be. {further}, or {smaller}",
                further=more,
                smaller=_SMALLER,
            ),
            basis=Basis.COMPUTED,
            numbers=(("looked into", float(space.expanded)), ("not looked into", float(space.unexpanded))),
        )
    ]


def unfinished(missed: Sequence[str]) -> list[Found]:
    """One finding where the check was stopped before everything was looked for."""
    if not missed:
        return []
    return [
        Found(
            code=UNFINISHED,
            severity=Severity.WARNING,
            title=said("The check was stopped before these were looked for: {missed}.", missed=Listed(tuple(missed))),
            place=nowhere(),
            hint="Let it go on longer, or check the game with fewer players, targets or balls.",
            basis=Basis.COMPUTED,
        )
    ]


def too_large(found: TooLarge) -> Found:
    """The finding where the situations cannot even be numbered."""
    return Found(
        code=TOO_LARGE,
        severity=Severity.WARNING,
        title=said(
            "The game is too large to prove anything: the number of its situations has {digits} digits.",
            digits=Figure(len(str(int(found.size))), "g"),
        ),
        place=nowhere(),
        hint=Capital(_SMALLER),
        basis=Basis.COMPUTED,
        numbers=(("possible situations", float(found.size)),),
    )
