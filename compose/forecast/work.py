"""How the courses of one game are found: exactly or by playing, and how much work is left for comparing.

Work is counted in products and rounds, never in seconds: the same game gets the same forecast on any machine.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np

from compose.check.space import StateSpace
from compose.forecast.answers import Answers, answers
from compose.forecast.assumptions import ages_of
from compose.forecast.chain.chain import Floats
from compose.forecast.chain.exact import exact_course, solving_products
from compose.forecast.chances.chances import chances
from compose.forecast.course import Course, Figure
from compose.forecast.points import passes_bound, points_decide, with_room
from compose.forecast.rounds.in_turn import has_runs_in_turn
from compose.forecast.rounds.on_space import SpaceRounds
from compose.forecast.rounds.simulate import FEWER, FIRST, Play, finish, simulate
from compose.forecast.rounds.waits import Waits, waits_of
from compose.forecast.sensitivity import ENDS
from compose.forecast.standings import idle_places
from compose.net.net import Net
from compose.staging.minutes import Lesson, lesson_of
from compose.staging.norms import Ability, Level
from grammar.frozen import evolve, frozen
from library import KitItem, Norms

FOR_WAITS = 1_000  # rounds played for the waits where all else is exact
PLAYED = 4  # a simulation looks at so many assumptions
LIKELY = 5  # an exact forecast looks at so many assumptions, and at more while that is quick
MOST_PRODUCTS = 2e9  # of one exact course: past that it takes longer than playing rounds (measured: 4 to 7 s)
MOST_EDGES = 6_000_000  # of a space whose course is worked out, at some 120 bytes each (measured)
QUICK_PRODUCTS = 6e8  # of all courses together, up to which looking at assumptions is quick
ALL_PRODUCTS = 5e9  # of all courses together; then no more assumptions are looked at
ROUGH = 4  # a course that is only compared takes so many times fewer rounds
LEAST_FOLLOWED = 10.0  # minutes that a round without a clock is followed for, however short the lesson


@frozen
class Band:
    """The answers for a class of low, usual and high ability; None where somebody stopped the work before."""

    low: Answers | None
    usual: Answers
    high: Answers | None


class Work:
    """One game being forecast: how its courses are found, and how much work went into them.

    `second` is the work of the half with the groups changed over, where they are not equally large.
    """

    def __init__(
        self,
        source: StateSpace | Net,
        norms: Norms,
        kit: Mapping[str, KitItem],
        lesson: Lesson | None,
        play: Play,
        second: StateSpace | Net | None = None,
    ) -> None:
        net = source.net if isinstance(source, StateSpace) else source
        self.norms, self.kit, self.play = norms, kit, play
        self.lesson = lesson or lesson_of(norms, ages_of(net))
        self.followed = max(self.lesson.play, LEAST_FOLLOWED)
        self._products = 0.0
        self._in_turn = has_runs_in_turn(net)
        self.space = self._solvable(source)
        self.net = net if self.space is not None else with_room(net)
        self.second = Work(second, norms, kit, lesson, play) if second is not None else None

    def _solvable(self, source: StateSpace | Net) -> StateSpace | None:
        """The space, where it is whole and its course can be worked out with the work and the memory allowed."""
        if not isinstance(source, StateSpace) or not source.complete or source.edges > MOST_EDGES:
            return None
        if self._in_turn:  # a run that is half over is no state of the space
            return None
        products = solving_products(source, chances(source.net, self.norms, self.kit), self.followed)
        return source if products <= MOST_PRODUCTS else None

    def _solved(self, space: StateSpace, constants: Floats, quantiles: bool = True) -> Course:
        self._products += solving_products(space, constants, self.followed)
        return exact_course(space, constants, self.followed, quantiles=quantiles)

    def usual(self, means_only: bool = False) -> tuple[Course, tuple[Waits, ...]] | None:
        """The course with the usual norms, and the waits; in means alone it takes a fraction of the time."""
        constants = chances(self.net, self.norms, self.kit)
        if self.space is None:
            found = simulate(self.net, constants, self.followed, self.play, idle_places(self.net), self._spread())
            return (found.course, found.waits) if found is not None else None
        course = self._solved(self.space, constants, quantiles=not means_only)
        places = tuple(place for place in idle_places(self.net) if course.tokens[place] > 0)
        return course, self._waits(self.space, constants, course, places, means_only)

    def _waits(
        self, space: StateSpace, constants: Floats, course: Course, places: tuple[int, ...], means_only: bool
    ) -> tuple[Waits, ...]:
        if not places:
            return ()
        # Where play may go on for very long, the lesson's end stops it.
        limit = min(course.clock_minutes, self.followed)
        count = FOR_WAITS
        while count > 0:
            rounds = SpaceRounds(space, constants, count, np.random.default_rng(self.play.seed), limit, places)
            if means_only:
                return tuple(_mean_wait(rounds, course, place) for place in places)
            cost = finish(rounds, evolve(self.play, rounds=count), most=self.play.events)
            if cost is None:
                return ()
            if cost <= self.play.events:
                return tuple(self._wait(rounds, count, course, place) for place in places)
            count //= FEWER
        return ()

    def _wait(self, rounds: SpaceRounds, count: int, course: Course, place: int) -> Waits:
        """The waits in a place, of which the mean is no matter of chance; of those with a fixed time it is seen, for
        the chain knows it as a mean alone."""
        seen = waits_of(place, [(rounds.log, count)])
        known = _mean_wait(rounds, course, place)
        if known.in_a_round > 0:
            mean = known.mean if math.isinf(seen.longest) else seen.mean
            seen = evolve(seen, in_a_round=known.in_a_round, mean=mean)
        return evolve(seen, rounds=count, seed=self.play.seed)

    def compared(self, level: Level = "usual", instead: Mapping[str, Level] | None = None) -> Answers | None:
        """The answers with other norms, to be compared; None where somebody stopped the work."""
        course = self.rough(level, instead)
        second = self.second.rough(level, instead) if self.second is not None else None
        if course is None or (second is None and self.second is not None):
            return None
        return answers(self.net, course, second)

    def rough(self, level: Level = "usual", instead: Mapping[str, Level] | None = None) -> Course | None:
        """A course to be compared: without quantiles, or of fewer rounds, as where deciding points pass their bound."""
        constants, net = chances(self.net, self.norms, self.kit, level, instead), self.net
        if self.space is not None:
            course = self._solved(self.space, constants, quantiles=False)
            if not (points_decide(net) and passes_bound(net, course)):
                return course
            self._products += QUICK_PRODUCTS / (len(ENDS) * PLAYED)
            net = with_room(net)
        rounds = max(1, self.play.rounds // ROUGH)
        # All in one batch, the first of which is `FIRST` times smaller.
        play = evolve(self.play, rounds=rounds, batch=FIRST * rounds, events=self.play.events // ROUGH)
        found = simulate(net, constants, self.followed, play, spread=self._spread(level, instead))
        return found.course if found is not None else None

    def _spread(self, level: Level = "usual", instead: Mapping[str, Level] | None = None) -> float:
        """How far one run in turn is from their mean, as a share of it; 0 where nobody runs so."""
        ability = Ability(self.norms, level, instead or {})
        return ability.read("pace spread", "run in turn", ages_of(self.net)).value if self._in_turn else 0.0

    def counted(self, course: Course) -> Course:
        """The course with points counted as far as they go: as it is where that is so, else played at random."""
        if self.space is None:
            return course
        net = with_room(self.net)
        found = simulate(net, chances(net, self.norms, self.kit), self.followed, self.play, spread=self._spread())
        return found.course if found is not None else course

    def wanted(self, found: int) -> bool:
        """Whether to look for one more swing."""
        if not self.play.keep_going("assumptions tried", found, 0):
            return False
        if self.space is None:
            return found < PLAYED
        return self._products < QUICK_PRODUCTS or (found < LIKELY and self._products < ALL_PRODUCTS)

    def band(self, usual: Answers) -> Band:
        """The answers at either end of ability."""
        low, high = (
            self.compared(level) if self.play.keep_going("assumptions tried", 0, 0) else None for level in ENDS
        )
        return Band(low, usual, high)


def _mean_wait(rounds: SpaceRounds, course: Course, place: int) -> Waits:
    """How many come to a place in a round and the mean of their waits: J. D. C. Little, "A proof for the queuing
    formula L = lambda W", Operations Research 9(3), 1961, 383-387 (from memory)."""
    comings = rounds.comings(place, course.spent, course.moments) if course.spent is not None else 0.0
    mean = float(course.tokens[place]) / comings if comings > 0 else 0.0
    return Waits(place, max(0.0, comings), Figure(mean), Figure(math.nan))


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
    lesson: Lesson | None,
    play: Play,
    other_half: StateSpace | Net | None = None,
    means_only: bool = False,
) -> Usual | None:
    """The usual course; a result that hangs on points past the bound is found by playing. None where stopped."""
    work = Work(source, norms, kit, lesson, play, other_half)
    found = work.usual(means_only)
    passed = found is not None and passes_bound(work.net, found[0])
    if passed and points_decide(work.net):
        other = with_room(work.second.net) if work.second is not None else None
        work = Work(with_room(work.net), norms, kit, lesson, play, other)
        found = work.usual()
    if found is None:
        return None
    course, waits = found
    second = work.second.rough() if work.second is not None else None
    return Usual(work, course, second, work.counted(course) if passed else course, waits, passed)
