"""What the sheet of a class says, as values; whether it can be so is for others to say."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from grammar.finding import Finding
from grammar.frozen import field, frozen
from grammar.hall_told import HallTold, told_of
from grammar.resolve.possible_counts import age_findings
from grammar.sentences.base import Node, Quantity
from grammar.sentences.class_sheet import ClassSize, GettingReady, InHall, Lesson
from grammar.sentences.hall_sheet import HallSize
from grammar.sentences.head import Ages, Told
from grammar.sentences.sides import Kit
from grammar.span import Span
from grammar.tree import ClassSheet

_PARTS = {
    "setting up takes": "setting up",
    "explaining takes": "explaining",
    "clearing away takes": "clearing away",
}


@frozen
class Amount:
    """A number as it is written, and where."""

    number: float
    words: str
    span: Span = field(eq=False)

    @property
    def is_whole(self) -> bool:
        """Whether nothing stands after its point."""
        return self.number == int(self.number)


@frozen
class Word:
    """A name, and where it stands."""

    text: str
    span: Span = field(eq=False)


@frozen
class InTheCupboard:
    """A line about the cupboard: how many of what, its odd singular, and what it is like."""

    count: Amount
    name: Word
    singular: Word | None
    like: Word | None
    span: Span = field(eq=False)


@frozen
class ClassTold:
    """All that a class's sheet says; times are in minutes, `ready_min` by what is got ready.

    `own_hall` is what it tells of a hall that has no sheet of its own, `again` where something is said twice,
    `findings` what cannot be so.
    """

    title: str
    pupils: Amount | None
    ages_years: tuple[float, float] | None
    hall: Word | None
    own_hall: HallTold
    again: tuple[Span, ...] = field(eq=False)
    findings: tuple[Finding, ...]
    lesson_min: Amount | None
    kit: tuple[InTheCupboard, ...]
    ready_min: Mapping[str, float]
    about: str
    span: Span = field(eq=False)


def class_told(sheet: ClassSheet) -> ClassTold:
    """The sheet's sentences as values."""
    said = [line.sentence for line in sheet.lines]
    size = next((each for each in said if isinstance(each, ClassSize)), None)
    ages = next((each for each in said if isinstance(each, Ages)), None)
    hall = next((each for each in said if isinstance(each, InHall)), None)
    lesson = next((each for each in said if isinstance(each, Lesson)), None)
    return ClassTold(
        sheet.title,
        _amount(size.pupils, size.span) if size else None,
        (ages.least.value, ages.most.value) if ages else None,
        Word(hall.hall, hall.span) if hall else None,
        told_of(sheet.title, said, sheet.span),
        tuple(_again(said)),
        tuple(age_findings(ages)) if ages else (),
        Amount(lesson.time.seconds / 60, lesson.time.words(), lesson.span) if lesson else None,
        tuple(_in_the_cupboard(each) for each in said if isinstance(each, Kit)),
        {_PARTS[each.what]: each.time.seconds / 60 for each in said if isinstance(each, GettingReady)},
        " ".join(each.text for each in said if isinstance(each, Told) and each.topic == "about"),
        sheet.span,
    )


def told_besides(sheet: ClassSheet) -> Iterator[str]:
    """The lines that say something else than how many pupils of which age play how long, in which hall or how large a
    one, and with so many of what: doors and a stage, names of the school's own, what was measured."""
    for line in sheet.lines:
        said = line.sentence
        plain = isinstance(said, Kit) and said.like is None
        if not plain and not isinstance(said, ClassSize | Ages | Lesson | InHall | HallSize):
            yield said.words()


def _again(said: Sequence[Node]) -> Iterator[Span]:
    """Sentences of which a class has one, where they stand a second time."""
    seen = set[object]()
    for each in said:
        if isinstance(each, ClassSize | Ages | InHall | Lesson | GettingReady):
            about = (type(each), each.what if isinstance(each, GettingReady) else "")
            if about in seen:
                yield each.span
            seen.add(about)


def _amount(quantity: Quantity, place: Span) -> Amount:
    return Amount(quantity.value, quantity.words(), place)


def _in_the_cupboard(line: Kit) -> InTheCupboard:
    name, one, like = (Word(each.text, each.span) if each else None for each in (line.name, line.singular, line.like))
    assert name is not None
    return InTheCupboard(_amount(line.count, line.count.span), name, one, like, line.span)
