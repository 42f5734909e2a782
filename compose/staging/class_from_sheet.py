"""What the sheet of a class says → the class, or what is wrong with it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from compose.staging.school_class import MOST_PUPILS, InCupboard, SchoolClass
from grammar.class_told import Amount, ClassTold, InTheCupboard, class_told
from grammar.finding import Finding, Outcome, mistake
from grammar.resolve.vocabulary import category_of, not_in_the_kit, singular
from grammar.said import Value, listed, perhaps_meant, quoting, said
from grammar.span import Span
from grammar.tree import ClassSheet
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


def _error(title: Value, place: Span, hint: Value) -> Finding:
    return mistake("F-class", title, place, hint)


def _size_findings(told: ClassTold) -> Iterator[Finding]:
    size = told.pupils
    if size is None:
        yield _error(
            quoting(
                "The class `{title}` does not say how many pupils it has."
                if told.title
                else "The class does not say how many pupils it has.",
                title=told.title,
            ),
            told.span,
            "Add: class of 27",
        )
    elif not size.is_whole or not 1 <= size.number <= MOST_PUPILS:
        title = quoting("A class cannot have {words} pupils.", words=size.words)
        yield _error(title, size.span, quoting("Write a whole number from 1 to {most}.", most=MOST_PUPILS))


def _hall_findings(told: ClassTold, halls: Mapping[str, Hall]) -> Iterator[Finding]:
    if told.hall is None:
        return
    if _hall(told.hall.text, halls) is None:
        known = quoting("Known are {halls}; or say: the hall is 15 m by 12 m", halls=listed(halls))
        hint = perhaps_meant(told.hall.text, halls) or known
        yield _error(quoting("There is no hall called `{hall}`.", hall=told.hall.text), told.hall.span, hint)
    if told.own_hall.says_something:
        own = "Leave the name out, or write these lines in the sheet of that hall."
        yield _error("The class names a hall and describes one, too.", told.hall.span, own)


def _hall(name: str, halls: Mapping[str, Hall]) -> Hall | None:
    return next((hall for key, hall in halls.items() if key.lower() == name.lower()), None)


def _lesson_findings(lesson: Amount | None) -> Iterator[Finding]:
    if lesson is not None and not 1 <= lesson.number <= LONGEST_LESSON_MIN:
        title = quoting("A lesson cannot take {words}.", words=lesson.words)
        yield _error(title, lesson.span, quoting("Write 1 min to {most} min.", most=LONGEST_LESSON_MIN))


def _kit_findings(kit: Iterable[InTheCupboard], catalogue: Mapping[str, str]) -> Iterator[Finding]:
    for line in kit:
        like = _like(line, catalogue)
        if line.like and like not in catalogue:
            title, hint = not_in_the_kit(line.like.text, catalogue)
            yield _error(title, line.like.span, hint)
        elif like not in catalogue:
            say = perhaps_meant(like, catalogue) or said('Say what it is like, such as "5 stumps, like a plastic pin".')
            if like in IN_HALLS:
                say = quoting("What stands in the hall is said with its place, such as: {line}", line=IN_HALLS[like])
            yield _error(quoting("It is not known what a `{like}` is.", like=like), line.name.span, say)
        elif not line.count.is_whole or line.count.number > 1000:
            title = quoting("There cannot be {words} of a thing in the cupboard.", words=line.count.words)
            yield _error(title, line.count.span, "Write a whole number up to 1000.")


def _like(line: InTheCupboard, catalogue: Mapping[str, str]) -> str:
    if line.like:
        return line.like.text
    one = line.singular.text if line.singular else singular(line.name.text, int(line.count.number), catalogue)
    known_sort = one not in catalogue and category_of(one, catalogue)
    return f"foam {known_sort}" if known_sort == "ball" else one


def _in_cupboard(line: InTheCupboard, catalogue: Mapping[str, str]) -> InCupboard:
    return InCupboard(line.name.text, int(line.count.number), _like(line, catalogue), line.span)
