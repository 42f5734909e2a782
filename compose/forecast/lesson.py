"""The round within the lesson: how many rounds there is time for, and how much of class time pupils are active."""

from __future__ import annotations

import math

from attrs import evolve, frozen

from compose.forecast.norms import Ability, Ages, Level
from compose.forecast.standings import BENCH, OUT, PLAYING, WAITING, Standing
from library import Norms

ACTIVE = {PLAYING: "playing", WAITING: "waiting", BENCH: "bench", OUT: "bench"}  # rows of norms/effort.toml
COUNTED = "as a watcher counts who walks briskly or moves faster, not as a worn meter does"


@frozen
class Lesson:
    """A lesson in minutes: what the timetable says, and what the parts around the game take.

    `again` passes between two rounds. `class_time` is what is left after changing and arriving, `play`
    what is left for rounds.
    """

    minutes: float
    changing: float
    setting_up: float
    explaining: float
    again: float
    clearing: float

    @property
    def class_time(self) -> float:
        return max(0.0, self.minutes - self.changing)

    @property
    def play(self) -> float:
        return max(0.0, self.class_time - self.setting_up - self.explaining - self.clearing)

    def rounds(self, mean_minutes: float) -> float:
        """How many rounds of that mean length there is time for; a part of one where not even one is."""
        if self.play <= 0:
            return 0.0
        if mean_minutes >= self.play:
            return self.play / mean_minutes
        return (self.play + self.again) / (mean_minutes + self.again) if mean_minutes + self.again > 0 else math.inf


@frozen
class Active:
    """Share of class time in which a pupil is active, by the ends of the effort norms."""

    low: float
    usual: float
    high: float
    in_round: float
    counted: str = COUNTED


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
    )
    return found if minutes is None else evolve(found, minutes=minutes)


def active_time(
    norms: Norms, ages: Ages, lesson: Lesson, standings: tuple[Standing, ...], round_minutes: float
) -> Active:
    """The active share of class time with as many rounds as there is time for."""
    low, usual, high = (_active(norms, ages, lesson, standings, round_minutes, end) for end in ("low", "usual", "high"))
    return Active(low[0], usual[0], high[0], usual[1])


def _active(
    norms: Norms, ages: Ages, lesson: Lesson, standings: tuple[Standing, ...], round_minutes: float, end: Level
) -> tuple[float, float]:
    """The active share of class time, and of the round alone, at one end of the effort norms."""
    ability = Ability(norms, instead={"effort active": end})

    def share(name: str) -> float:
        return ability.read("effort active", name, ages).value

    in_round = sum(each.share.value * share(ACTIVE[each.name]) for each in standings)
    if lesson.class_time <= 0:
        return 0.0, in_round
    rounds = lesson.rounds(round_minutes)
    between = max(0.0, rounds - 1) * lesson.again if math.isfinite(rounds) else lesson.play
    played = lesson.play - between
    minutes = played * in_round + (lesson.setting_up + between + lesson.clearing) * share("setting up")
    return (minutes + lesson.explaining * share("listening")) / lesson.class_time, in_round
