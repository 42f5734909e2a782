"""The forecast in two sentences, worked out once and without bands or waits: quick enough for a card."""

from __future__ import annotations

from collections.abc import Mapping

import library
from compose.check import StateSpace
from compose.forecast.answers import Answers, answers
from compose.forecast.chances import chances
from compose.forecast.exact import exact_course
from compose.forecast.wording import SELDOM, minutes, percent
from compose.net.lower.tokens import does
from grammar.words import listing
from library import KitItem

MOST_STATES = 60_000  # a larger space takes longer than a card may
USUAL_LESSON_MINUTES = 40.0  # assumption: only how long an endless round is followed hangs on it


def forecast_in_short(space: StateSpace, kit: Mapping[str, KitItem]) -> tuple[str, ...]:
    """How long a round lasts and who wins, how often it is a pupil's turn; nothing where that would take long."""
    if not space.complete or not 1 < space.states <= MOST_STATES:
        return ()
    constants = chances(space.net, library.norms(), kit)
    course = exact_course(space, constants, USUAL_LESSON_MINUTES, quantiles=False)
    return _sentences(answers(space.net, course))


def _sentences(found: Answers) -> tuple[str, ...]:
    length = f"A round lasts {minutes(found.minutes.value)} on average"
    if found.stopped.value > SELDOM:
        length += f"; the clock stops {percent(found.stopped.value)} of the rounds"
    wins = listing(f"{does(side, 'wins', 'win')} {percent(chance.value)}" for side, chance in found.wins)
    turns = f"A pupil gets {found.turns.value:.1f} turns a minute"
    if found.idle.value > SELDOM:
        turns += f" and spends {percent(found.idle.value)} of the round not playing"
    second = f"{turns}; {wins} of the rounds" if any(chance.value > SELDOM for _, chance in found.wins) else turns
    return f"{length} (forecast).", f"{second}."
