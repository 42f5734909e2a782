"""A staging as JSON: the same in every command."""

from __future__ import annotations

from typing import Any

from compose.answer.answer import Answer
from compose.staging.staging import Staging
from compose.telling.cautions import cautions_told
from compose.telling.for_class import floor_size_m


def staging_json(staging: Staging) -> dict[str, Any]:
    """For whom, in which teams, on which courts, with what, for how long; lengths in metres, times in minutes."""
    room = staging.room
    return {
        "class": staging.school_class.name,
        "pupils": staging.pupils,
        "teams": [dict(sides) for sides in staging.teams.games],
        "over": staging.teams.over,
        "odd_pupil": staging.teams.odd,
        "hall": room.hall.name if room is not None else None,
        "court_m": list(staging.game.court_m),
        "floor_m": list(floor_size_m(staging)) if staging.courts else None,
        "courts": [
            {
                "left_m": round(court.box.left, 3),
                "bottom_m": round(court.box.bottom, 3),
                "right_m": round(court.box.right, 3),
                "top_m": round(court.box.top, 3),
                "turned": court.turned,
            }
            for court in staging.courts
        ],
        "run_off_m": [round(room.beside, 3), round(room.behind, 3)] if room is not None else None,
        "kit": [
            {
                "name": row.line.plural,
                "sort": row.line.category,
                "needed": row.needed,
                "there": row.in_cupboard if staging.school_class.lists_kit else None,
                "stand_ins": {each.name: each.count for each in row.stand_ins},
                "short": max(0, row.short),
            }
            for row in staging.kit
        ],
        "benches": staging.benches.needed if staging.benches is not None else 0,
        "cautions": list(cautions_told(staging.cautions)),
        "lesson_minutes": staging.lesson.minutes,
        "play_minutes": round(staging.lesson.play, 3),
        "warm_play_minutes": round(staging.lesson.warm_play, 3),
    }


def all_pupils_json(answer: Answer) -> dict[str, Any] | None:
    """What the forecast says of all pupils of the class; None where nothing was forecast."""
    numbers = answer.numbers
    if numbers is None:
        return None
    return {
        "not_playing": numbers.idle.value,
        "turns_a_minute": numbers.turns.value,
        "active_in_round": answer.active_in_round,
    }
