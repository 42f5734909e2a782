"""How the courses of one game are found: exactly or by playing, and how much time is left for comparing."""

from __future__ import annotations

import time
from collections.abc import Mapping

import numpy as np
from attrs import evolve, frozen

from compose.check.space import StateSpace
from compose.forecast.answers import Answers, answers
from compose.forecast.assumptions import ages_of
from compose.forecast.chain import Floats
from compose.forecast.chances import chances
from compose.forecast.course import Course, Figure
from compose.forecast.exact import exact_course, solving_seconds
from compose.forecast.lesson import lesson_of
from compose.forecast.norms import Level
from compose.forecast.points import passes_bound, points_decide, with_room
from compose.forecast.sensitivity import ENDS
from compose.forecast.simulate import LONGEST_MINUTES, Play, finish, simulate
from compose.forecast.space_rounds import SpaceRounds
from compose.forecast.standings import idle_places
from compose.forecast.waits import Waits, waits_of
from compose.net.net import Net
from library import KitItem, Norms

FOR_WAITS = 1_000  # rounds played for the waits where all else is exact
PLAYED = 4  # a simulation looks at so many assumptions
LIKELY = 5  # an exact forecast looks at so many assumptions, and at more while that is quick
QUICK_SECONDS = 2.0
SOLVING = 0.5  # part of the time that one exact course may take
ROUGH = 4  # a course that is only compared takes so many times fewer rounds


@frozen
class Band:
    """The answers for a class of low, usual and high ability; None where time did not do for an end."""

    low: Answers | None
    usual: Answers
    high: Answers | None


class Work:
    """One game being forecast: how its courses are found, and how much time is left for them.

    `second` is the work of the half with the groups changed over, where they are not equally large.
    """

    def __init__(
        self,
        source: StateSpace | Net,
        norms: Norms,
        kit: Mapping[str, KitItem],
        lesson_minutes: float | None,
        play: Play,
        second: StateSpace | Net | None = None,
    ) -> None:
        net = source.net if isinstance(source, StateSpace) else source
        self.norms, self.kit, self.play = norms, kit, play
        self.lesson = lesson_of(norms, ages_of(net), lesson_minutes)
        self.space = self._solvable(source)
        self.net = net if self.space is not None else with_room(net)
        self.second = Work(second, norms, kit, lesson_minutes, play) if second is not None else None
        self._begun = time.perf_counter()

    def _solvable(self, source: StateSpace | Net) -> StateSpace | None:
        """The space, where it is whole and its course can be worked out in a part of the time."""
        if not isinstance(source, StateSpace) or not source.complete:
            return None
        seconds = solving_seconds(source, chances(source.net, self.norms, self.kit), self.lesson.play)
        return source if seconds <= self.play.seconds * SOLVING else None

    def usual(self) -> tuple[Course, tuple[Waits, ...]] | None:
        """The course with the usual norms, and the waits."""
        constants = chances(self.net, self.norms, self.kit)
        if self.space is None:
            found = simulate(self.net, constants, self.lesson.play, self.play, idle_places(self.net))
            return (found.course, found.waits) if found is not None else None
        course = exact_course(self.space, constants, self.lesson.play)
        places = tuple(place for place in idle_places(self.net) if course.tokens[place] > 0)
        return course, self._waits(self.space, constants, course, places)

    def _waits(
        self, space: StateSpace, constants: Floats, course: Course, places: tuple[int, ...]
    ) -> tuple[Waits, ...]:
        if not places:
            return ()
        # Where play may go on for ever, the lesson's end stops it, as it does in the course.
        limit = min(course.clock_minutes, LONGEST_MINUTES)
        rounds = SpaceRounds(space, constants, FOR_WAITS, np.random.default_rng(self.play.seed), limit, places)
        if not finish(rounds, evolve(self.play, rounds=FOR_WAITS), time.perf_counter(), 0):
            return ()
        return tuple(self._wait(rounds, course, place) for place in places)

    def _wait(self, rounds: SpaceRounds, course: Course, place: int) -> Waits:
        """The waits in a place. Their mean is no matter of chance: J. D. C. Little, "A proof for the queuing formula
        L = lambda W", Operations Research 9(3), 1961, 383-387 (from memory)."""
        seen = evolve(waits_of(place, [(rounds.log, FOR_WAITS)]), rounds=FOR_WAITS, seed=self.play.seed)
        comings = rounds.comings(place, course.spent) if course.spent is not None else 0.0
        if comings <= 0:
            return seen
        return evolve(seen, in_a_round=comings, mean=Figure(float(course.tokens[place]) / comings))

    def compared(self, level: Level = "usual", instead: Mapping[str, Level] | None = None) -> Answers | None:
        """The answers with other norms, to be compared; None where time did not do for them."""
        course = self.rough(level, instead)
        second = self.second.rough(level, instead) if self.second is not None else None
        if course is None or (second is None and self.second is not None):
            return None
        return answers(self.net, course, second)

    def rough(self, level: Level = "usual", instead: Mapping[str, Level] | None = None) -> Course | None:
        """A course to be compared: without quantiles, or of fewer rounds."""
        constants = chances(self.net, self.norms, self.kit, level, instead)
        if self.space is not None:
            return exact_course(self.space, constants, self.lesson.play, quantiles=False)
        left = self.play.seconds - (time.perf_counter() - self._begun)
        rounds = max(1, self.play.rounds // ROUGH)
        play = evolve(self.play, rounds=rounds, batch=min(rounds, self.play.batch), seconds=left)
        found = simulate(self.net, constants, self.lesson.play, play)
        return found.course if found is not None else None

    def counted(self, course: Course) -> Course:
        """The course with points counted as far as they go: as it is where that is so, else played at random."""
        if self.space is None:
            return course
        net = with_room(self.net)
        found = simulate(net, chances(net, self.norms, self.kit), self.lesson.play, self.play)
        return found.course if found is not None else course

    def wanted(self, found: int) -> bool:
        """Whether to look for one more swing."""
        spent = time.perf_counter() - self._begun
        if not self.play.keep_going("assumptions tried", found, 0) or spent > self.play.seconds:
            return False
        if self.space is None:
            return found < PLAYED
        return found < LIKELY or spent < QUICK_SECONDS

    def band(self, usual: Answers) -> Band:
        """The answers at either end of ability."""
        low, high = (self.compared(level) if self.wanted(0) else None for level in ENDS)
        return Band(low, usual, high)


@frozen(eq=False)
class Usual:
    """The usual course of a game with its waits, and how it was found.

    `counted` is the course with points counted as far as they go, where they pass the bound of the check
    (`passed_bound`); else it is the course itself. `second` is the course of the other half, where it differs.
    """

    work: Work
    course: Course
    second: Course | None
    counted: Course
    waits: tuple[Waits, ...]
    passed_bound: bool


def usual_course(
    source: StateSpace | Net,
    norms: Norms,
    kit: Mapping[str, KitItem],
    lesson_minutes: float | None,
    play: Play,
    other_half: StateSpace | Net | None = None,
) -> Usual | None:
    """The usual course; a result that hangs on points past the bound is found by playing. None for no time."""
    work = Work(source, norms, kit, lesson_minutes, play, other_half)
    found = work.usual()
    passed = found is not None and passes_bound(work.net, found[0])
    if passed and points_decide(work.net):
        other = with_room(work.second.net) if work.second is not None else None
        work = Work(with_room(work.net), norms, kit, lesson_minutes, play, other)
        found = work.usual()
    if found is None:
        return None
    course, waits = found
    second = work.second.rough() if work.second is not None else None
    return Usual(work, course, second, work.counted(course) if passed else course, waits, passed)
