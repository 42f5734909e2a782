"""The form of a class and its sheet. What the form does not ask for stands in it as lines, so that nothing is lost."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

import library
from grammar.finding import Outcome
from grammar.frozen import field, frozen

if TYPE_CHECKING:
    from compose.staging.school_class import SchoolClass

NAME = "My class"
MOST_LINES, LONGEST = 40, 200  # our choice: far more than a hall has


@frozen
class Fields:
    """What stands in the form, as it is typed; `other` are lines of the sheet, `counts` go by the names of the kit."""

    name: str = NAME
    pupils: str = "24"
    youngest: str = "9"
    oldest: str = "10"
    minutes: str = "40"
    hall: str = ""
    long: str = ""
    wide: str = ""
    other: str = ""
    counts: Mapping[str, str] = field(factory=dict)


def fields_of(text: str) -> Outcome[Fields]:
    """The form of a sheet; what is wrong where it cannot be read."""
    from compose.page.answers.group import group_of  # the first page is quick without it

    outcome = group_of(text)
    if outcome.value is None:
        return Outcome(None, outcome.findings)
    group = outcome.value
    youngest, oldest = group.ages_years or (9, 10)
    numbers = str(group.pupils), f"{float(youngest):g}", f"{float(oldest):g}", f"{group.lesson_min or 40:g}"
    counts = {each.like: str(each.count) for each in group.cupboard if _plainly_called(each.name, each.like)}
    return Outcome(Fields(group.name, *numbers, *_hall(group), "\n".join(_other(text)), counts))


def _plainly_called(name: str, like: str) -> bool:
    return name in (like, library.kit_catalogue()[like].plural)


def _hall(group: SchoolClass) -> tuple[str, str, str]:
    """The hall by its name, else by its size."""
    if group.hall is None:
        return "", "", ""
    if group.hall.name in library.halls():
        return group.hall.name, "", ""
    return "", f"{group.hall.length_m.usual:g}", f"{group.hall.width_m.usual:g}"


def _other(text: str) -> tuple[str, ...]:
    """The lines that no field stands for."""
    from grammar.class_told import told_besides
    from grammar.parse import parse_bytes

    rules = parse_bytes(text.encode(), NAME).value
    return tuple(told_besides(rules.classes[0])) if rules is not None else ()


def sheet_of(fields: Fields) -> str:
    """The form as a sheet; what cannot stand in a sheet is said by reading it."""
    name = " ".join(fields.name.split())[:LONGEST] or NAME
    return "\n".join((f"class {name}", *(f"  {line}" for line in _lines(fields)))) + "\n"


def _lines(fields: Fields) -> Iterator[str]:
    yield f"class of {_number(fields.pupils)}"
    yield f"ages {_number(fields.youngest)} to {_number(fields.oldest)}"
    yield f"lesson of {_number(fields.minutes)} min"
    if fields.hall in library.halls():
        yield f'in the hall "{fields.hall}"'
    if fields.long or fields.wide:  # beside a name it is refused, not dropped
        yield f"the hall is {_metres(fields.long)} m by {_metres(fields.wide)} m"
    yield from (line.strip()[:LONGEST] for line in fields.other.splitlines()[:MOST_LINES] if line.strip())
    for name, item in library.kit_catalogue().items():
        count = _number(fields.counts.get(name, "0"))
        if int(count) > 0:
            yield f"{count} {name if count == '1' else item.plural}"


def _number(typed: str) -> str:
    """What was typed, if it is a number; else as much of it as shows what is wrong."""
    typed = typed.strip()
    return typed if typed.isdecimal() and len(typed) < 5 else "0"


def _metres(typed: str) -> str:
    typed = typed.strip().replace(",", ".")
    return typed if re.fullmatch(r"\d{1,3}(\.\d{1,2})?", typed) else "0"
