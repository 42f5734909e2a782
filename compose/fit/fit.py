"""Does a game fit a class? The staging held against the sheet and the norms, and the lesson in its minutes."""

from __future__ import annotations

from collections.abc import Mapping

from compose.fit.lesson_plan import LessonPlan, lesson_plan
from compose.fit.time_findings import time_findings
from compose.staging.school_class import SchoolClass
from compose.staging.staging import Staging, stage
from grammar.finding import Finding
from grammar.frozen import frozen
from grammar.game import Game
from library import KitItem, Norms


@frozen
class Fit:
    """How a game and a class go together: what was found on staging it, and what of the minutes of the lesson."""

    staging: Staging
    lesson: LessonPlan
    of_time: tuple[Finding, ...]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All of them, those of the minutes last."""
        return (*self.staging.findings, *self.of_time)

    @property
    def fits(self) -> bool:
        """Whether nothing has to be mended before the lesson."""
        return not any(finding.severity.value != "note" for finding in self.findings)


def fit(
    game: Game,
    school_class: SchoolClass,
    norms: Norms,
    kit: Mapping[str, KitItem],
    round_min: float | None = None,
) -> Fit:
    """A game for a class. `round_min` is the mean length of a round in minutes as forecast; without it the game's
    own clock is taken, which no round outlasts."""
    return fit_of(stage(game, norms, kit, school_class), norms, round_min)


def fit_of(staging: Staging, norms: Norms, round_min: float | None = None) -> Fit:
    """The same of a game that is staged."""
    lesson = lesson_plan(staging, norms, round_min)
    return Fit(staging, lesson, tuple(time_findings(staging.game, lesson)))
