"""A forecast as plain values for JSON: minutes, shares from 0 to 1, each with its margin where it has one."""

from __future__ import annotations

import math
from typing import Any

from compose.forecast.answers import Answers
from compose.forecast.assumptions import Assumption
from compose.forecast.course import Figure
from compose.forecast.forecast import Forecast
from compose.forecast.sensitivity import Swing
from compose.telling.english.ends import way_words
from compose.telling.english.matches import match_words
from compose.telling.english.nouns import where


def forecast_json(told: Forecast) -> dict[str, Any]:
    """Everything that a forecast says."""
    course = told.course
    return {
        "method": method_json(told),
        "length_minutes": {
            "mean": figure_json(course.length.mean),
            "median": figure_json(course.length.median),
            "ninety_percent": figure_json(course.length.ninety),
            "over_by": [{"minutes": time, "chance": figure_json(over)} for time, over in course.length.over_by],
            "clock": finite(course.clock_minutes),
        },
        "odds": _odds(told),
        "points": {side: figure_json(points) for side, points in told.points},
        "match": _match(told),
        "pupil": _pupil(told),
        "lesson": _lesson(told),
        "band": {
            "low": answers_json(told.band.low),
            "usual": answers_json(told.band.usual),
            "high": answers_json(told.band.high),
        },
        "moves_most": [_swing(swing) for swing in told.swings],
        "assumptions": [_assumption(each) for each in told.assumptions],
    }


def finite(value: float) -> float | None:
    """The number, or nothing where it is without end: JSON has no infinity."""
    return value if math.isfinite(value) else None


def figure_json(figure: Figure) -> dict[str, float | None]:
    """A number with its margin (95 %), which is 0 where it was worked out."""
    return {"value": finite(figure.value), "margin": finite(figure.margin)}


def answers_json(answers: Answers | None) -> dict[str, Any] | None:
    """The few numbers by which forecasts are compared."""
    if answers is None:
        return None
    return {
        "minutes": figure_json(answers.minutes),
        "wins": {side: figure_json(chance) for side, chance in answers.wins},
        "stopped_by_clock": figure_json(answers.stopped),
        "turns_per_minute": figure_json(answers.turns),
        "not_playing": figure_json(answers.idle),
    }


def method_json(told: Forecast) -> dict[str, Any]:
    """How the numbers were found, and how far they can be off."""
    course = told.course
    if course.rounds is None:
        return {"name": "exact", "chance_error": course.chance_error, "minutes_error": course.minutes_error}
    return {"name": "simulated", "rounds": course.rounds, "seed": course.seed, "margin_level": 0.95}


def _odds(told: Forecast) -> dict[str, Any]:
    odds = told.odds
    return {
        "wins": {side: figure_json(chance) for side, chance in odds.wins},
        "draw": figure_json(odds.draw),
        "nobody": figure_json(odds.nobody),
        "unsaid": figure_json(odds.unsaid),
        "never": figure_json(odds.never),
        "stopped_by_clock": figure_json(odds.running),
        "ways": [
            {
                "winner": way.winner,
                "way": way_words(told.net, way.end),
                "at_bell": way.at_bell,
                "chance": figure_json(way.chance),
            }
            for way in odds.ways
        ],
    }


def _match(told: Forecast) -> dict[str, Any] | None:
    game = told.game
    if game.match.one_round:
        return None
    return {
        "rule": match_words(game.match),
        "wins": {side: figure_json(chance) for side, chance in game.wins},
        "drawn": figure_json(game.drawn),
        "mean_rounds": game.rounds,
        "minutes": finite(game.minutes),
    }


def _pupil(told: Forecast) -> dict[str, Any]:
    places = told.net.places
    return {
        "standings": {
            each.name: {"share": figure_json(each.share), "by_side": dict(each.by_side)} for each in told.standings
        },
        "waits": [
            {
                "where": where(places[wait.place]),
                "side": places[wait.place].side,
                "in_a_round": wait.in_a_round,
                "mean_minutes": figure_json(wait.mean),
                "ninety_percent_minutes": figure_json(wait.ninety),
                "rounds": wait.rounds,
                "seed": wait.seed,
            }
            for wait in told.waits
        ],
        "turns_per_minute": {
            "each": figure_json(told.turns.each),
            "by_side": {side: figure_json(figure) for side, figure in told.turns.by_side},
            "by_skill": {skill: figure_json(figure) for skill, figure in told.turns.by_skill},
        },
    }


def _lesson(told: Forecast) -> dict[str, Any]:
    active, lesson = told.active, told.lesson
    mean = finite(told.course.length.mean.value)
    return {
        "minutes": told.lesson.minutes,
        "play_minutes": told.lesson.play,
        "rounds": lesson.whole_rounds(mean).number if mean is not None else None,
        "warm_rounds": lesson.warm_rounds(mean).number if mean is not None else None,
        "pause_minutes": lesson.again,
        "active_share": {
            "low": active.low,
            "usual": active.usual,
            "high": active.high,
            "in_round": active.in_round,
            "with_warm_up": active.with_warm_up,
        },
        "active_counted": active.counted,
    }


def _swing(swing: Swing) -> dict[str, Any]:
    return {
        "norm": swing.table,
        "about": swing.about,
        "moves_most": swing.most,
        "by": swing.by,
        "beyond_chance": swing.beyond_chance,
        "low": answers_json(swing.low),
        "high": answers_json(swing.high),
    }


def _assumption(each: Assumption) -> dict[str, Any]:
    return {
        "norm": each.table,
        "name": each.name,
        "about": each.about,
        "unit": each.unit,
        "low": each.low,
        "usual": each.usual,
        "high": each.high,
        "assumed": each.assumed,
        "sources": [str(source) for source in each.sources],
    }
