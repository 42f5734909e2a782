"""The second set: what only the forecast knows. It is loaded only where it is asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from attrs import evolve

from compose.answer.answer import Answer, with_new
from compose.check import Budget, StateSpace, explore
from compose.check.findings.no_end import CODE as NO_END
from compose.check.findings.unwinnable import CODE as UNWINNABLE
from compose.check.space import USUAL
from compose.forecast.chances.chances import said_too_much
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.findings.of_length import OUT_OF_REACH
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.rounds.simulate import Play
from compose.net.lower.mirrored import CODE as UNLIKE
from compose.net.net import Net
from grammar.finding import Basis, Finding, Severity, retold
from grammar.said import said
from grammar.span import nowhere
from library import KitItem, Norms

UNKNOWN, LOPSIDED = "F-unknown", "F-lopsided"


def foreseen(
    answer: Answer,
    norms: Norms,
    kit: Mapping[str, KitItem],
    *,
    play: Play | None = None,
    budget: Budget = USUAL,
    compare: bool = False,
    first: Callable[[Forecast], None] | None = None,
) -> Answer:
    """The answer with its forecast: exact where the space is whole, else simulated as `play` says.

    `compare` works out the band and what moves the numbers most, too, for the commonest kind of court; `first` hears
    of the forecast before that.
    """
    others = tuple(foreseen(each, norms, kit, play=play, budget=budget) for each in answer.others)
    wrong = tuple(said_too_much(answer.staged.net))
    if wrong:
        return evolve(answer, added=wrong)
    told = forecast(
        _source(answer),
        norms,
        kit,
        lesson=answer.staged.staging.lesson,
        play=play,
        other_half=_other_half(answer, budget),
        compare=compare,
        first=first,
    )
    never = any(each.code == NO_END for each in answer.proved)  # then no more time brings an end nearer
    added = forecast_findings(told, norms) if told is not None else (_unknown(),)
    added = tuple(each for each in added if not (never and each.code == OUT_OF_REACH))
    if any(each.code in (UNLIKE, UNWINNABLE) and each.severity is Severity.WARNING for each in answer.proved):
        added = tuple(_of_that(each) if each.code == LOPSIDED else each for each in added)
    more = (finding for other in others for finding in other.added or ())
    return evolve(answer, forecast=told, added=with_new(added, more), others=others)


def with_means(answer: Answer, norms: Norms, kit: Mapping[str, KitItem], play: Play, budget: Budget) -> Answer:
    """The answer with its numbers in the mean alone, to compare many games by: what the forecast finds is not asked."""
    if said_too_much(answer.staged.net):
        return answer
    other, lesson = _other_half(answer, budget), answer.staged.staging.lesson
    source, others = _source(answer), tuple(with_means(each, norms, kit, play, budget) for each in answer.others)
    told = forecast(source, norms, kit, lesson=lesson, play=play, other_half=other, compare=False, means_only=True)
    return evolve(answer, forecast=told, others=others)


def _source(answer: Answer) -> StateSpace | Net:
    """The whole space where it is known, else the net, of which rounds are played."""
    return answer.space if answer.space is not None and answer.space.complete else answer.staged.net


def _other_half(answer: Answer, budget: Budget) -> StateSpace | Net | None:
    turned = answer.staged.turned
    return explored(turned, budget) if turned is not None else None


def explored(net: Net, budget: Budget) -> StateSpace | Net:
    """The whole space of a net, or the net itself where that is past the budget."""
    space = explore(net, budget)
    return space if isinstance(space, StateSpace) and space.complete else net


def _of_that(lopsided: Finding) -> Finding:
    """Unequal odds where what makes the sides unlike is told as to mend: one cause is one thing to mend."""
    hint = said("It comes of what is told above of these sides.")
    return evolve(retold(lopsided, hint=hint), severity=Severity.NOTE)


def _unknown() -> Finding:
    return Finding(
        UNKNOWN,
        Severity.NOTE,
        "Not even one round could be played: so much happens in it, or it was stopped.",
        nowhere(),
        "Look for what happens very often: times a minute, or seconds after which somebody returns.",
        basis=Basis.COMPUTED,
    )
