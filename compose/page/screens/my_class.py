"""My class: pupils, ages, minutes, hall, and what lies in the cupboard."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

import library
from compose.page.answers.said import said
from compose.page.call import Call, Go, Reply, Shown
from compose.page.kept import is_kept, keep_group
from compose.page.loading import load
from compose.page.wording import NAMES
from compose.telling.wording import Wording
from grammar.finding import Finding
from grammar.frozen import field, frozen

if TYPE_CHECKING:
    from compose.staging.school_class import SchoolClass

GROUP = "compose.page.answers.group"
CATEGORIES = ("ball", "target", "ring", "body", "furniture")
TYPED = ("pupils", "youngest", "oldest", "minutes", "hall", "long", "wide")


def home(call: Call) -> Reply:
    """The way in: to the class where none is kept yet, else to the games."""
    return Go("/games" if is_kept(call.desk.shelf) else "/class")


@frozen
class Fields:
    """What stands in the form."""

    pupils: str = "24"
    youngest: str = "9"
    oldest: str = "10"
    minutes: str = "40"
    hall: str = ""
    long: str = ""
    wide: str = ""
    counts: Mapping[str, str] = field(factory=dict)


def show(call: Call) -> Reply:
    """The class as it is kept; as it usually is where none is."""
    if not is_kept(call.desk.shelf):
        return _shown(call, Fields())
    load(GROUP)
    from compose.page.answers.group import group_of  # the first page is quick without it

    outcome = group_of(call.desk.group)
    if outcome.value is None:
        return _shown(call, Fields(), outcome.findings)
    group = outcome.value
    youngest, oldest = group.ages_years or (9, 10)
    return _shown(
        call,
        Fields(
            str(group.pupils),
            f"{float(youngest):g}",
            f"{float(oldest):g}",
            f"{group.lesson_min or 40:g}",
            *_hall(group),
            {each.like: str(each.count) for each in group.cupboard},
        ),
    )


def _hall(group: SchoolClass) -> tuple[str, str, str]:
    """The hall by its name, else by its size."""
    if group.hall is None:
        return "", "", ""
    if group.hall.name in library.halls():
        return group.hall.name, "", ""
    return "", f"{group.hall.length_m.usual:g}", f"{group.hall.width_m.usual:g}"


def save(call: Call) -> Reply:
    """Keep the class as the form says it, and go on to the games; with the reasons where it cannot be."""
    load(GROUP)
    from compose.page.answers.group import group_of

    text = sheet_of(call)
    outcome = group_of(text)
    if outcome.value is None:
        counts = {name: call.one(f"kit-{name}") for name in library.kit_catalogue()}
        told = [call.one(name) for name in TYPED]
        typed = Fields(told[0], told[1], told[2], told[3], told[4], told[5], told[6], counts)
        return _shown(call, typed, outcome.findings)
    keep_group(call.desk.shelf, text)
    return Go("/games")


def sheet_of(call: Call) -> str:
    """The form as a sheet; what cannot stand in a sheet is said by reading it."""
    return "\n".join(("class My class", *(f"  {line}" for line in _lines(call)))) + "\n"


def _lines(call: Call) -> Iterator[str]:
    yield f"class of {_number(call, 'pupils')}"
    yield f"ages {_number(call, 'youngest')} to {_number(call, 'oldest')}"
    yield f"lesson of {_number(call, 'minutes')} min"
    hall = call.one("hall")
    if hall in library.halls():
        yield f'in the hall "{hall}"'
    if call.one("long") or call.one("wide"):  # beside a name it is refused, not dropped
        yield f"the hall is {_metres(call, 'long')} m by {_metres(call, 'wide')} m"
    for name, item in library.kit_catalogue().items():
        count = _number(call, f"kit-{name}")
        if count.isdigit() and int(count) > 0:
            yield f"{count} {name if count == '1' else item.plural}"


def _number(call: Call, name: str) -> str:
    """What was typed, if it is a number; else as much of it as shows what is wrong."""
    typed = call.one(name).strip()
    return typed if typed.isdecimal() and len(typed) < 5 else "0"


def _metres(call: Call, name: str) -> str:
    typed = call.one(name).strip().replace(",", ".")
    return typed if re.fullmatch(r"\d{1,3}(\.\d{1,2})?", typed) else "0"


def _shown(call: Call, fields: Fields, wrong: tuple[Finding, ...] = ()) -> Reply:
    values = {
        "fields": fields,
        "halls": [(name, hall) for name, hall in library.halls().items()],
        "kit": list(_cupboard(fields.counts, call.wording)),
        "wrong": tuple(said(each, call.wording) for each in wrong),
        "kept": is_kept(call.desk.shelf),
    }
    return Shown("my-class.html", values, 422 if wrong else 200)


Shelf = tuple[str, list[tuple[str, str, str]]]


def _cupboard(counts: Mapping[str, str], wording: Wording) -> Iterator[Shelf]:
    """What games of the library ask for or what is there, by its sort; then all other kit together."""
    asked = "\n".join(path.read_text(encoding="utf-8") for path in library.game_paths())
    catalogue = library.kit_catalogue().values()
    usual = [
        item for item in catalogue if item.plural in asked or item.name in asked or counts.get(item.name, "0") != "0"
    ]
    rest = [item for item in catalogue if item not in usual]
    for category, things in (*((each, usual) for each in CATEGORIES), ("rest", rest)):
        fitting = [item for item in things if category in (item.category, "rest")]
        named = [(item.name, wording.named(item.plural), counts.get(item.name, "0")) for item in fitting]
        yield category, sorted(named, key=lambda each: each[1])


def choose_language(call: Call) -> Reply:
    """Keep the language, and stay where one is."""
    language, back = call.one("language"), call.one("back", "/")
    inside = back if back.startswith("/") and not back.startswith(("//", "/\\")) else "/"
    return Go(inside, language if language in NAMES else "")
