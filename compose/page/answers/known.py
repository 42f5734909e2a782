"""What is known of a remix for a class: after a first look, after a longer one, and forecast.

The forecast is that of the first look, wherever it is shown: worked out exactly where that was whole, else of rounds
played at random. So the screen, the card and the lesson have the same numbers, whichever was asked for first.
"""

from __future__ import annotations

from functools import lru_cache

from attrs import evolve

import library
from compose.answer.answer import Answer
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved_as_it_stands, with_switches
from compose.answer.staged import Staged, staged
from compose.check import Budget
from compose.fit.fit import Fit
from compose.forecast.rounds.simulate import Play
from compose.page.answers.at_hand import remixed
from compose.page.answers.for_class import fitted
from compose.page.answers.group import group_of
from compose.page.answers.values import Asked
from compose.page.work.worker import keep_going
from compose.staging.school_class import SchoolClass
from grammar.finding import Finding, Outcome

# Our choice: a fifth of a second. Every game of the library but the two largest is whole by then.
FIRST_LOOK = Budget(states=50_000, megabytes=40.0, keep_going=keep_going)
BUDGET = Budget(states=150_000, megabytes=90.0, keep_going=keep_going)  # our choice: within seconds and small
PLAY = Play(rounds=800, events=3_000_000, batch=800, at_once=True, keep_going=keep_going)
Known = Answer | tuple[Finding, ...]
_last: list[tuple[Asked, Budget, Answer]] = []  # of one question alone, for a space of situations is large


def first_look(asked: Asked) -> Known:
    """What is proved at once; the findings instead where it cannot be played."""
    return _looked(asked, FIRST_LOOK)


def proved_of(asked: Asked) -> Known:
    """What is proved, with a longer look where the first one was not whole."""
    first = first_look(asked)
    if not isinstance(first, Answer) or first.whole or first.facts is None:
        return first
    return _looked(asked, BUDGET)


def forecast_of(asked: Asked, compare: bool = False) -> Known:
    """What a first look proves, and the forecast."""
    first = first_look(asked)
    if not isinstance(first, Answer):
        return first
    return foreseen(first, library.norms(), library.kit_names(), play=PLAY, budget=FIRST_LOOK, compare=compare)


def all_of(asked: Asked) -> Known:
    """What a longer look proves, and the forecast."""
    known, told = proved_of(asked), forecast_of(asked)
    if not isinstance(known, Answer) or not isinstance(told, Answer):
        return known
    return with_switches(evolve(told, proved=known.proved, facts=known.facts), FIRST_LOOK)


def _looked(asked: Asked, budget: Budget) -> Known:
    for other, spent, known in _last:
        if other == asked and spent is budget:
            return known
    ready = _ready(asked)
    if ready.value is None:
        return ready.findings
    answer = proved_as_it_stands(ready.value, budget)
    if keep_going("", 0, 0):
        _last[:] = [*(each for each in _last if each[0] == asked), (asked, budget, answer)]
    return answer


@lru_cache(maxsize=2)
def _ready(asked: Asked) -> Outcome[Staged]:
    outcome = remixed(asked.texts, asked.uses)
    return staged(fit_of_asked(asked).staging, library.granted_sheet(), outcome.findings)


def group_in(asked: Asked) -> SchoolClass:
    """The class that was asked for."""
    group = group_of(asked.group).value
    assert group is not None, "a class that is kept can be read"
    return group


@lru_cache(maxsize=4)
def fit_of_asked(asked: Asked) -> Fit:
    """How a remix that can be made and its class go together."""
    made = remixed(asked.texts, asked.uses).value
    assert made is not None, "whoever asks has looked whether it can be made"
    return fitted(made.game, group_in(asked))
