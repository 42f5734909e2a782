"""The round within the lesson: how many rounds there is time for, and how much of class time pupils are active."""

from __future__ import annotations

import math

from compose.forecast.activity import Activity
from compose.forecast.standings import BENCH, OUT, PLAYING, RESTING, WAITING, Standing
from compose.staging.minutes import Lesson
from compose.staging.moving import active_in_whole_lesson
from compose.staging.norms import Ability, Ages, Level
from grammar.frozen import frozen
from library import Norms

STILL = {WAITING: "waiting", BENCH: "bench", OUT: "bench", RESTING: "bench"}  # rows of norms/effort.toml
COUNTED = "brisk walking or faster, as a watcher counts it"


@frozen
class Active:
    """Share of class time in which a pupil is active, by the ends of the effort norms, where this game alone is played:
    all play, no warm-up. `in_round` is that of a round, `with_warm_up` that of class time with a warm-up, a talk at the
    end and whole rounds, as the sheet of a lesson has it; both by the usual norms."""

    low: float
    usual: float
    high: float
    in_round: float
    with_warm_up: float
    counted: str = COUNTED


def active_time(
    norms: Norms,
    ages: Ages,
    lesson: Lesson,
    standings: tuple[Standing, ...],
    doing: Activity,
    round_minutes: float,
) -> Active:
    """How active pupils are in a round of so many minutes, and in a lesson of such rounds."""
    low, usual, high = (
        _active(norms, ages, lesson, standings, doing, round_minutes, end) for end in ("low", "usual", "high")
    )
    whole = active_in_whole_lesson(Ability(norms), ages, lesson, round_minutes, usual[1])
    return Active(low[0], usual[0], high[0], usual[1], whole)


def _active(
    norms: Norms,
    ages: Ages,
    lesson: Lesson,
    standings: tuple[Standing, ...],
    doing: Activity,
    round_minutes: float,
    end: Level,
) -> tuple[float, float]:
    """The active share of class time, and of the round alone, at one end of the effort norms."""
    ability = Ability(norms, instead={"effort active": end})

    def share(name: str) -> float:
        return ability.read("effort active", name, ages).value

    playing = doing.active(share("own turn"), share("following the ball"), share("between turns"))
    in_round = sum(
        each.share.value * (playing if each.name == PLAYING else share(STILL[each.name])) for each in standings
    )
    if lesson.class_time <= 0:
        return 0.0, in_round
    rounds = lesson.rounds(round_minutes)
    between = max(0.0, rounds - 1) * lesson.again if math.isfinite(rounds) else lesson.play
    played = lesson.play - between
    minutes = played * in_round + (lesson.setting_up + between + lesson.clearing) * share("setting up")
    return (minutes + lesson.explaining * share("listening")) / lesson.class_time, in_round
