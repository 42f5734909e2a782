"""The lesson in which a forecast is played, in words: its minutes, its rounds, how active pupils are."""

from __future__ import annotations

import math
from collections.abc import Iterator

from compose.forecast.forecast import Forecast
from compose.forecast.telling.results import row
from compose.forecast.telling.speech import Speech
from compose.staging.minutes import Lesson, Rounds
from compose.telling.amounts import minutes_said


def lesson_heading(lesson: Lesson, speech: Speech) -> str:
    """The heading: a length that nobody said is told as such."""
    usual = "In a lesson of {time}, which is usual (a class says its own)"
    return speech.say(usual if lesson.usual else "In a lesson of {time}", time=speech.minutes(lesson.minutes))


def lesson_lines(forecast: Forecast, speech: Speech) -> Iterator[str]:
    """The minutes left for play, the whole rounds in them, and how active pupils are: one row each."""
    lesson, active, say = forecast.lesson, forecast.active, speech.say
    mean = forecast.course.length.mean.value
    yield row(say("left for play"), minutes_said(lesson.play, speech.wording))
    yield row(say("with a warm-up and a talk"), minutes_said(lesson.warm_play, speech.wording), 4)
    if math.isfinite(mean):
        yield from _rounds(lesson.whole_rounds(mean), lesson.warm_rounds(mean), speech)
    usual, low, high = (speech.percent(share) for share in (active.usual, active.low, active.high))
    band = say("{usual} ({low} to {high})", usual=usual, low=low, high=high)
    yield row(say("a pupil is active, of a round"), speech.percent(active.in_round))
    yield row(say("of class time, with this game alone"), band, 4)
    yield row(say("and with a warm-up and a talk"), speech.percent(active.with_warm_up), 4)
    yield f"    {say(active.counted)}"


def _rounds(fitting: Rounds, warm: Rounds, speech: Speech) -> Iterator[str]:
    """Whole rounds, as fit and the sheet of a lesson count them; a reader can add up their minutes."""
    say, wording = speech.say, speech.wording
    yield row(say("whole rounds that there is time for"), str(fitting.number))
    if fitting.number:
        each, pause = speech.minutes(fitting.each), speech.minutes(fitting.pause)
        about = say("{time} each, {pause} between", time=each, pause=pause)
        yield row(about, minutes_said(fitting.minutes, wording), 4)
        warm_minutes = minutes_said(warm.minutes, wording)
        told = say("{number} in {minutes}", number=str(warm.number), minutes=warm_minutes)
        yield row(say("with a warm-up and a talk"), told, 4)
