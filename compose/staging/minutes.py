"""The minutes of a lesson: what the timetable says, and what the parts around the game take."""

from __future__ import annotations

import math
from typing import Any

from compose.staging.norms import Ability, Ages
from compose.staging.school_class import SchoolClass
from grammar.amounts import as_told
from grammar.frozen import evolve, frozen
from library import Norms

PARTS = {"setting up": "setting_up", "explaining": "explaining", "clearing away": "clearing"}


@frozen
class Rounds:
    """Whole rounds that follow one another, in minutes, each as it is told, so that a reader can add them up.

    `number` is 0 where not even one fits: then one is played that is stopped.
    """

    number: int
    each: float
    pause: float

    @property
    def paused(self) -> float:
        """The minutes of all pauses: one between two rounds."""
        return max(0, self.number - 1) * self.pause

    @property
    def minutes(self) -> float:
        """From the first round's beginning to the last one's end."""
        return self.number * self.each + self.paused


def whole_rounds(round_min: float | None, pause: float, within: float) -> Rounds:
    """As many whole rounds as fit into so many minutes; none of whose length nobody knows."""
    each, between = as_told(round_min or 0.0), as_told(pause)
    if not round_min or each > within or each + between <= 0:
        return Rounds(0, each, between)
    return Rounds(math.floor((within + between) / (each + between) + 1e-9), each, between)


@frozen
class Lesson:
    """A lesson in minutes: what the timetable says, and what the parts around the game take.

    `again` passes between two rounds. `class_time` is what is left after changing and arriving, `play` what is left
    for rounds, `warm_play` what is left of that where the class warms up before and talks at the end. `usual`: nobody
    said how long this lesson is.
    """

    minutes: float
    changing: float
    setting_up: float
    explaining: float
    again: float
    clearing: float
    warm_up: float
    talk: float
    usual: bool = True

    @property
    def class_time(self) -> float:
        return max(0.0, self.minutes - self.changing)

    @property
    def play(self) -> float:
        return max(0.0, self.class_time - self.setting_up - self.explaining - self.clearing)

    @property
    def warm_play(self) -> float:
        return max(0.0, self.play - self.warm_up - self.talk)

    def whole_rounds(self, round_min: float | None) -> Rounds:
        """The whole rounds that there is time for."""
        return whole_rounds(round_min, self.again, self.play)

    def warm_rounds(self, round_min: float | None) -> Rounds:
        """The same where the class warms up before and talks at the end."""
        return whole_rounds(round_min, self.again, self.warm_play)

    def rounds(self, mean_minutes: float) -> float:
        """How many rounds of that mean length play is made of: the last one is cut short, or the only one."""
        if self.play <= 0:
            return 0.0
        if mean_minutes >= self.play:
            return self.play / mean_minutes
        return (self.play + self.again) / (mean_minutes + self.again) if mean_minutes + self.again > 0 else math.inf


def lesson_of(norms: Norms, ages: Ages, minutes: float | None = None) -> Lesson:
    """The usual lesson of the norms, or one of so many minutes with the usual parts around the game."""
    ability = Ability(norms)

    def usual(name: str) -> float:
        return ability.read("lesson minutes", name, ages).value

    found = Lesson(
        minutes=usual("lesson"),
        changing=usual("changing and arriving"),
        setting_up=usual("setting up"),
        explaining=usual("explaining"),
        again=usual("setting up again"),
        clearing=usual("clearing away"),
        warm_up=usual("warming up"),
        talk=usual("talking at the end"),
    )
    return found if minutes is None else evolve(found, minutes=minutes, usual=False)


def lesson_for(norms: Norms, school_class: SchoolClass, ages_of_game: Ages) -> Lesson:
    """The lesson of a class: what its sheet says, else what is usual at its ages or at those of the game."""
    lesson = lesson_of(norms, school_class.ages_years or ages_of_game, school_class.lesson_min)
    said: dict[str, Any] = {PARTS[name]: each for name, each in school_class.ready_min.items() if name in PARTS}
    return evolve(lesson, **said)
