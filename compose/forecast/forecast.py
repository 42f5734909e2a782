"""The forecast of a game: what a teacher may expect of a round, of the match and of the lesson."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import numpy as np

from compose.check.match import whole_sides_change
from compose.check.space import StateSpace
from compose.forecast.activity import Activity, activity
from compose.forecast.answers import Answers, answers
from compose.forecast.assumptions import Assumption, ages_of, assumptions
from compose.forecast.chain.chain import Floats
from compose.forecast.chances.chances import explain_chances
from compose.forecast.course import SURE, Course, Figure
from compose.forecast.lesson import Active, active_time
from compose.forecast.matches import GameOdds, game_odds
from compose.forecast.odds import Odds, odds
from compose.forecast.rounds.simulate import Play
from compose.forecast.rounds.waits import Waits
from compose.forecast.sensitivity import Swing, swings
from compose.forecast.standings import Standing, standings
from compose.forecast.turns import Turns, turns
from compose.forecast.work import Band, Usual, Work, usual_course
from compose.net.net import Net
from compose.staging.minutes import Lesson
from compose.staging.norms import Ability, Level
from grammar.core.values import Presence
from grammar.frozen import evolve, frozen
from library import KitItem, Norms


@frozen(eq=False)
class Forecast:
    """What is to be expected of a game; every number of a simulation has its margin, those worked out have none.

    `course` is the round itself with its `odds`; those of the whole game, with all rounds and both halves, are
    `game`. `waits` are the waits of the places in which pupils do not play, always simulated, in the order in which
    the rules let them go. `swings` come largest first. `points` are the mean points of each side when play stops.
    Where the check counts points only to a bound and play passes it, rounds are played at random
    with more room: `passed_bound` is True, and the points (with all else that the result hangs on) are simulated.
    """

    net: Net
    course: Course
    odds: Odds
    standings: tuple[Standing, ...]
    turns: Turns
    waits: tuple[Waits, ...]
    lesson: Lesson
    active: Active
    game: GameOdds
    band: Band
    swings: tuple[Swing, ...]
    assumptions: tuple[Assumption, ...]
    points: tuple[tuple[str, Figure], ...]
    passed_bound: bool

    @property
    def simulated(self) -> bool:
        """Whether the course was played at random instead of worked out."""
        return self.course.rounds is not None

    @property
    def longest_wait(self) -> Waits | None:
        """The wait of the place where nine in ten waits end latest, None where nobody waits. For a turn nobody waits to
        the end who changes tasks with the other side before."""
        passing = whole_sides_change(self.net)
        turns = [passing and self.net.places[wait.place].standing is Presence.PLAYING for wait in self.waits]
        some = [wait for wait, turn in zip(self.waits, turns, strict=True) if wait.in_a_round > 0 and not turn]
        return max(some, key=lambda wait: wait.ninety.value, default=None)


def forecast(
    source: StateSpace | Net,
    norms: Norms,
    kit: Mapping[str, KitItem],
    *,
    lesson: Lesson | None = None,
    play: Play | None = None,
    other_half: StateSpace | Net | None = None,
    compare: bool = True,
    means_only: bool = False,
    first: Callable[[Forecast], None] | None = None,
) -> Forecast | None:
    """The forecast of an explored game, or of a net that is too large to explore.

    Exact on a whole space that can be solved with the work allowed (`work.py`), else simulated as `play` says.
    `other_half` is the same game with the groups changed over, where there are two halves and they are not equally
    large. Without `compare` band and swings are left out; with it `first` hears of the forecast while they are not
    known yet. `means_only` leaves out the times of half and of nine in ten rounds and waits (nan), which take most
    of the work. None where not even a first batch of rounds was played.
    """
    found = usual_course(source, norms, kit, lesson, play or Play(), other_half, means_only)
    if found is None:
        return None
    known = assumptions(found.work.net, norms, kit)
    round_alone = _round_alone(found, known)
    if not compare:
        return round_alone
    if first is not None:
        first(round_alone)
    return _compared(round_alone, found.work)


def _round_alone(found: Usual, known: tuple[Assumption, ...]) -> Forecast:
    """The forecast without matches, band and swings."""
    work, course, counted, second = found.work, found.course, found.counted, found.second
    net, lesson = work.net, work.lesson
    shares = standings(net, course)
    return Forecast(
        net=net,
        course=course,
        odds=odds(net, course),
        standings=shares,
        turns=turns(net, course),
        waits=found.waits,
        lesson=lesson,
        active=active_time(work.norms, ages_of(net), lesson, shares, _doing(work, course), _minutes(course, lesson)),
        game=game_odds(net, course, second),
        band=Band(None, answers(net, course, second), None),
        swings=(),
        assumptions=known,
        points=tuple((side, _mean(each, counted)) for side, each in counted.score.of_sides),
        passed_bound=found.passed_bound,
    )


def _compared(told: Forecast, work: Work) -> Forecast:
    """The forecast with its band and its swings."""
    usual = told.band.usual
    band = work.band(usual)

    def solve(instead: Mapping[str, Level]) -> Answers | None:
        return work.compared(instead=instead)

    found = swings(work.net, work.norms, work.kit, told.assumptions, told.course, usual, solve, work.wanted)
    return evolve(told, band=band, swings=found)


def _doing(work: Work, course: Course) -> Activity:
    """What pupils do in a round with the usual norms."""
    follow_s = Ability(work.norms).read("pace follow", "any skill", ages_of(work.net)).value
    return activity(work.net, course, explain_chances(work.net, work.norms, work.kit), follow_s)


def _minutes(course: Course, lesson: Lesson) -> float:
    mean = course.length.mean.value
    return mean if math.isfinite(mean) else lesson.play


def _mean(chances_of: Floats, course: Course) -> Figure:
    """The mean of a count with its margin."""
    counts = np.arange(len(chances_of))
    mean = float(chances_of @ counts)
    if course.rounds is None:
        return Figure(mean)
    spread = math.sqrt(max(0.0, float(chances_of @ counts**2) - mean**2))
    return Figure(mean, SURE * spread / math.sqrt(course.rounds))
