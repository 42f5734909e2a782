"""The lesson around the game: what is left for play, and how many rounds that makes."""

from __future__ import annotations

from compose.net.match import match_of
from compose.staging.minutes import PARTS, Lesson, Rounds
from compose.staging.norms import Ability
from compose.staging.resolved import resolved
from compose.staging.school_class import SchoolClass
from compose.staging.staging import Staging
from grammar.frozen import frozen
from library import Norms, Source


@frozen
class LessonPlan:
    """`round_min` is the length of a round and `known_by` says where that comes from ("" where nothing says it).

    `fitting` are the whole rounds that fit, `warm` those with a warm-up and a talk; `wanted` is what the game asks for:
    best of 3 may need 3, two halves need 2.
    """

    lesson: Lesson
    round_min: float | None
    known_by: str
    fitting: Rounds
    warm: Rounds
    wanted: int
    sources: tuple[Source, ...]

    @property
    def rounds(self) -> int:
        """How many whole rounds fit."""
        return self.fitting.number


def lesson_plan(staging: Staging, norms: Norms, round_min: float | None = None) -> LessonPlan:
    """The plan of a lesson with one game."""
    core, lesson = resolved(staging.game), staging.lesson
    known_by = "forecast"
    if round_min is None:
        bell = core.play.bell
        round_min, known_by = (float(bell.after_s) / 60, "the game's clock") if bell else (None, "")
    fitting, warm = lesson.whole_rounds(round_min), lesson.warm_rounds(round_min)
    wanted = match_of(core).most_rounds
    sources = _sources(norms, staging.school_class, staging.ages_years)
    return LessonPlan(lesson, round_min, known_by, fitting, warm, wanted, sources)


def _sources(norms: Norms, school_class: SchoolClass, ages: tuple[float, float]) -> tuple[Source, ...]:
    """Who says how long the parts of the lesson take that the class's own sheet leaves open."""
    asked = [name for name in PARTS if name not in school_class.ready_min]
    asked += ["changing and arriving", "setting up again", *([] if school_class.lesson_min else ["lesson"])]
    read = (Ability(norms).read("lesson minutes", name, ages) for name in asked)
    return tuple(dict.fromkeys(source for reading in read for source in reading.sources))
