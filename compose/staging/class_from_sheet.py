"""What the sheet of a class says → the class, or what is wrong with it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from compose.staging.school_class import MOST_PUPILS, InCupboard, SchoolClass
from grammar.class_told import Amount, ClassTold, InTheCupboard, class_told
from grammar.finding import Finding, Outcome, Severity
from grammar.resolve.vocabulary import category_of, not_in_the_kit, singular
from grammar.span import Span
from grammar.tree import ClassSheet
from grammar.words import did_you_mean, listing
from library import Hall, own_hall

LONGEST_LESSON_MIN = 240
IN_HALLS = {  # what a teacher may write as kit though it is a part of the hall
    "door": "door in the south wall, 2 m from its west end",
    "stage": "stage along the east wall, 6 m by 2 m, 1.5 m from its south end",
    **dict.fromkeys(
        ("post", "pillar", "column"), "post, 10 cm by 10 cm, 9 m from the west wall and 2 m from the south wall"
    ),
    **dict.fromkeys(("wall bar", "wall bars"), "wall bars along the north wall, 6 m by 20 cm, 4 m from its west end"),
}


def class_of(sheet: ClassSheet, halls: Mapping[str, Hall], catalogue: Mapping[str, str]) -> Outcome[SchoolClass]:
    """The class that a sheet means; `catalogue` maps each thing of the library's kit to its category."""
    told = class_told(sheet)
    own = own_hall(told.own_hall) if told.own_hall.says_something else Outcome[Hall](None)
    findings = (
        *told.findings,
        *_size_findings(told),
        *own.findings,
        *_hall_findings(told, halls),
        *(_error("This is said twice.", each, "Take one of the two lines away.") for each in told.again),
        *_lesson_findings(told.lesson_min),
        *_kit_findings(told.kit, catalogue),
    )
    if findings or told.pupils is None:
        return Outcome(None, findings)
    return Outcome(
        SchoolClass(
            told.title,
            int(told.pupils.number),
            told.ages_years,
            _hall(told.hall.text, halls) if told.hall else own.value,
            told.lesson_min.number if told.lesson_min else None,
            tuple(_in_cupboard(each, catalogue) for each in told.kit),
            told.ready_min,
            told.about,
            told.span,
        )
    )


def _error(title: str, place: Span, hint: str) -> Finding:
    return Finding("F-class", Severity.ERROR, title, place, hint)


def _size_findings(told: ClassTold) -> Iterator[Finding]:
    size = told.pupils
    if size is None:
        yield _error(f"The class `{told.title}` does not say how many pupils it has.", told.span, "Add: class of 27")
    elif not size.is_whole or not 1 <= size.number <= MOST_PUPILS:
        title = f"A class cannot have {size.words} pupils."
        yield _error(title, size.span, f"Write a whole number from 1 to {MOST_PUPILS}.")


def _hall_findings(told: ClassTold, halls: Mapping[str, Hall]) -> Iterator[Finding]:
    if told.hall is None:
        return
    if _hall(told.hall.text, halls) is None:
        hint = did_you_mean(told.hall.text, halls) or f"Known are {listing(halls)}; or say: the hall is 15 m by 12 m"
        yield _error(f"There is no hall called `{told.hall.text}`.", told.hall.span, hint)
    if told.own_hall.says_something:
        hint = "Leave the name out, or write these lines in the sheet of that hall."
        yield _error("The class names a hall and describes one, too.", told.hall.span, hint)


def _hall(name: str, halls: Mapping[str, Hall]) -> Hall | None:
    return next((hall for key, hall in halls.items() if key.lower() == name.lower()), None)


def _lesson_findings(lesson: Amount | None) -> Iterator[Finding]:
    if lesson is not None and not 1 <= lesson.number <= LONGEST_LESSON_MIN:
        title = f"A lesson cannot take {lesson.words}."
        yield _error(title, lesson.span, f"Write 1 min to {LONGEST_LESSON_MIN} min.")


def _kit_findings(kit: Iterable[InTheCupboard], catalogue: Mapping[str, str]) -> Iterator[Finding]:
    for line in kit:
        like = _like(line, catalogue)
        if line.like and like not in catalogue:
            title, hint = not_in_the_kit(line.like.text, catalogue)
            yield _error(title, line.like.span, hint)
        elif like not in catalogue:
            hint = did_you_mean(like, catalogue) or 'Say what it is like, such as "5 stumps, like a plastic pin".'
            if like in IN_HALLS:
                hint = f"What stands in the hall is said with its place, such as: {IN_HALLS[like]}"
            yield _error(f"It is not known what a `{like}` is.", line.name.span, hint)
        elif not line.count.is_whole or line.count.number > 1000:
            title = f"There cannot be {line.count.words} of a thing in the cupboard."
            yield _error(title, line.count.span, "Write a whole number up to 1000.")


def _like(line: InTheCupboard, catalogue: Mapping[str, str]) -> str:
    if line.like:
        return line.like.text
    one = line.singular.text if line.singular else singular(line.name.text, int(line.count.number), catalogue)
    known_sort = one not in catalogue and category_of(one, catalogue)
    return f"foam {known_sort}" if known_sort == "ball" else one


def _in_cupboard(line: InTheCupboard, catalogue: Mapping[str, str]) -> InCupboard:
    return InCupboard(line.name.text, int(line.count.number), _like(line, catalogue), line.span)
