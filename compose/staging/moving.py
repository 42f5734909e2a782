"""How much of class time pupils move, by what they do in it: one sum for the lesson and for the forecast."""

from __future__ import annotations

from collections.abc import Iterable

from compose.staging.minutes import Lesson, Rounds
from compose.staging.norms import Ability

LISTENING, SETTING_UP = "listening", "setting up"  # rows of norms/effort.toml
WARMING_UP, COOLING_DOWN = "warming up", "cooling down"


def active_share(ability: Ability, ages: tuple[float, float], parts: Iterable[tuple[float | str, float]]) -> float:
    """The share of some minutes in which a pupil is active, of what they are made of: the share of each part, or the
    row of the effort norms that says it, and its minutes."""

    def share(part: float | str) -> float:
        return ability.read("effort active", part, ages).value if isinstance(part, str) else part

    known = list(parts)
    whole = sum(minutes for _, minutes in known)
    return sum(share(part) * minutes for part, minutes in known) / whole if whole > 0 else 0.0


def played(rounds: Rounds, minutes: float, in_round: float) -> tuple[tuple[float | str, float], ...]:
    """What so many minutes of play are made of: rounds, in which a pupil is active for such a share, and pauses between
    them, in which things are set up again."""
    return (in_round, minutes - rounds.paused), (SETTING_UP, rounds.paused)


def active_in_whole_lesson(
    ability: Ability, ages: tuple[float, float], lesson: Lesson, round_min: float, in_round: float
) -> float:
    """The share of class time in which a pupil is active, in a lesson of one game with a warm-up and a talk at the
    end; whatever is left after the last whole round goes to the talk."""
    rounds = lesson.warm_rounds(round_min)
    minutes = rounds.minutes if rounds.number else lesson.warm_play
    parts: list[tuple[float | str, float]] = [
        (WARMING_UP, lesson.warm_up),
        (SETTING_UP, lesson.setting_up),
        (LISTENING, lesson.explaining),
        *played(rounds, minutes, in_round),
        (COOLING_DOWN, lesson.talk + lesson.warm_play - minutes),
        (SETTING_UP, lesson.clearing),
    ]
    return active_share(ability, ages, parts)
