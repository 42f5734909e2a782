"""The forecast in its few numbers, worked out once and without bands or waits: quick enough for a card."""

from __future__ import annotations

from collections.abc import Mapping

import library
from compose.check import StateSpace
from compose.forecast.answers import Answers, answers
from compose.forecast.chances import chances
from compose.forecast.exact import exact_course
from library import KitItem

MOST_STATES = 60_000  # a larger space takes longer than a card may
USUAL_LESSON_MINUTES = 40.0  # assumption: only how long an endless round is followed hangs on it


def forecast_in_short(space: StateSpace, kit: Mapping[str, KitItem]) -> Answers | None:
    """How long a round lasts and who wins, how often it is a pupil's turn; nothing where that would take long."""
    if not space.complete or not 1 < space.states <= MOST_STATES:
        return None
    constants = chances(space.net, library.norms(), kit)
    course = exact_course(space, constants, USUAL_LESSON_MINUTES, quantiles=False)
    return answers(space.net, course)
