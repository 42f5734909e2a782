"""A class: its pupils and their ages, its hall, its time, and what lies in the cupboard."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from attrs import field, frozen

from grammar.finding import Finding, Outcome, Severity
from grammar.resolve.vocabulary import category_of, not_in_the_kit, singular
from grammar.sentences.class_sheet import ClassSize, GettingReady, InHall, Lesson
from grammar.sentences.head import Ages, Told
from grammar.sentences.sides import Kit
from grammar.span import Span
from grammar.tree import ClassSheet
from grammar.words import did_you_mean, listing
from library import Hall

MOST_PUPILS = 400
LONGEST_LESSON_MIN = 240


@frozen
class InCupboard:
    """So many of a thing; `like` is its name in the library's kit."""

    name: str
    count: int
    like: str
    span: Span = field(eq=False)


@frozen
class SchoolClass:
    """A class as its sheet says. `ready_min` has what the teacher measured, by "setting up", "explaining",
    "clearing away"; what is None nobody has said."""

    name: str
    pupils: int
    ages_years: tuple[float, float] | None
    hall: Hall | None
    lesson_min: float | None
    cupboard: tuple[InCupboard, ...]
    ready_min: Mapping[str, float]
    about: str
    span: Span = field(eq=False)

    @property
    def lists_kit(self) -> bool:
        """Whether the sheet says at all what lies in the cupboard."""
        return bool(self.cupboard)


def class_of(sheet: ClassSheet, halls: Mapping[str, Hall], catalogue: Mapping[str, str]) -> Outcome[SchoolClass]:
    """The class that a sheet means; `catalogue` maps each thing of the library's kit to its category."""
    sentences = [line.sentence for line in sheet.lines]
    size = next((each for each in sentences if isinstance(each, ClassSize)), None)
    ages = next((each for each in sentences if isinstance(each, Ages)), None)
    named = next((each for each in sentences if isinstance(each, InHall)), None)
    lesson = next((each for each in sentences if isinstance(each, Lesson)), None)
    kit = [each for each in sentences if isinstance(each, Kit)]
    findings = [
        *_size_findings(sheet, size),
        *_hall_findings(named, halls),
        *_lesson_findings(lesson),
        *_kit_findings(kit, catalogue),
    ]
    if findings or size is None:
        return Outcome(None, tuple(findings))
    return Outcome(
        SchoolClass(
            sheet.title,
            size.pupils.whole,
            (ages.least.value, ages.most.value) if ages else None,
            _hall(named.hall, halls) if named else None,
            lesson.time.seconds / 60 if lesson else None,
            tuple(_in_cupboard(each, catalogue) for each in kit),
            {
                each.what.removesuffix(" takes"): each.time.seconds / 60
                for each in sentences
                if isinstance(each, GettingReady)
            },
            " ".join(each.text for each in sentences if isinstance(each, Told) and each.topic == "about"),
            sheet.span,
        )
    )


def _error(title: str, place: Span, hint: str) -> Finding:
    return Finding("F-class", Severity.ERROR, title, place, hint)


def _size_findings(sheet: ClassSheet, size: ClassSize | None) -> Iterator[Finding]:
    if size is None:
        yield _error(f"The class `{sheet.title}` does not say how many pupils it has.", sheet.span, "Add: class of 27")
    elif size.pupils.value != int(size.pupils.value) or not 1 <= size.pupils.value <= MOST_PUPILS:
        title = f"A class cannot have {size.pupils.words()} pupils."
        yield _error(title, size.span, f"Write a whole number from 1 to {MOST_PUPILS}.")


def _hall_findings(named: InHall | None, halls: Mapping[str, Hall]) -> Iterator[Finding]:
    if named is not None and _hall(named.hall, halls) is None:
        hint = did_you_mean(named.hall, halls) or f"The library has {listing(halls)}."
        yield _error(f"There is no hall called `{named.hall}`.", named.span, hint)


def _hall(name: str, halls: Mapping[str, Hall]) -> Hall | None:
    return next((hall for key, hall in halls.items() if key.lower() == name.lower()), None)


def _lesson_findings(lesson: Lesson | None) -> Iterator[Finding]:
    if lesson is not None and not 1 <= lesson.time.seconds / 60 <= LONGEST_LESSON_MIN:
        title = f"A lesson cannot take {lesson.time.words()}."
        yield _error(title, lesson.span, f"Write 1 min to {LONGEST_LESSON_MIN} min.")


def _kit_findings(kit: list[Kit], catalogue: Mapping[str, str]) -> Iterator[Finding]:
    for line in kit:
        like = _like(line, catalogue)
        if line.like and like not in catalogue:
            title, hint = not_in_the_kit(line.like, catalogue)
            yield _error(title, line.like.span, hint)
        elif like not in catalogue:
            hint = did_you_mean(like, catalogue) or 'Say what it is like, such as "5 stumps, like a plastic pin".'
            yield _error(f"It is not known what a `{like}` is.", line.name.span, hint)
        elif line.count.value != int(line.count.value) or line.count.value > 1000:
            title = f"There cannot be {line.count.words()} of a thing in the cupboard."
            yield _error(title, line.count.span, "Write a whole number up to 1000.")


def _like(line: Kit, catalogue: Mapping[str, str]) -> str:
    if line.like:
        return line.like.text
    one = line.singular.text if line.singular else singular(line.name.text, line.count.whole, catalogue)
    known_sort = one not in catalogue and category_of(one, catalogue)
    return f"foam {known_sort}" if known_sort == "ball" else one


def _in_cupboard(line: Kit, catalogue: Mapping[str, str]) -> InCupboard:
    return InCupboard(line.name.text, line.count.whole, _like(line, catalogue), line.span)
