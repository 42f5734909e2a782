"""My class: pupils, ages, minutes, hall, and what lies in the cupboard; and the other classes of the same teacher."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import library
from compose.page import classes
from compose.page.answers.values import Said
from compose.page.call import Call, Go, Reply, Shown
from compose.page.class_form import Fields, fields_of, sheet_of
from compose.page.kept import is_kept, keep_group
from compose.page.loading import load
from compose.page.wording import NAMES
from compose.share.naming import slug
from compose.telling.wording import Wording
from grammar.finding import Finding

GROUP = "compose.page.answers.group"
CATEGORIES = ("ball", "target", "ring", "body", "furniture")
TYPED = ("name", "pupils", "youngest", "oldest", "minutes", "hall", "long", "wide", "other")
# What a teacher may add to a hall, with a line to change; walls are called as they lie on the plan.
IN_A_HALL = {
    "door": "door in the south wall, 2 m from its west end",
    "stage": "stage along the east wall, 6 m by 2 m, 1.5 m from its south end",
    "flat": "wall bars along the north wall, 6 m by 20 cm, 4 m from its west end",
    "post": "post, 20 cm by 20 cm, 9 m from the west wall and 2 m from the south wall",
}


def home(call: Call) -> Reply:
    """The way in: to the class where none is kept yet, else to the games."""
    return Go("/games" if is_kept(call.desk.shelf) else "/class")


def show(call: Call) -> Reply:
    """The class as it is kept; as it usually is where none is."""
    if not is_kept(call.desk.shelf):
        return _shown(call, Fields(name=call.wording.say("My class")))
    load(GROUP)
    outcome = fields_of(call.desk.group)
    return _shown(call, outcome.value or Fields(), _said(call, outcome.findings))


def save(call: Call) -> Reply:
    """Keep the class as the form says it, and go on to the games; with the reasons where it cannot be."""
    load(GROUP)
    from compose.page.answers.group import group_of

    shelf, counts = call.desk.shelf, {name: call.one(f"kit-{name}") for name in library.kit_catalogue()}
    typed = Fields(**{name: call.one(name) for name in TYPED}, counts=counts)
    text = sheet_of(typed)
    _back_to(call)
    read = group_of(text)
    wrong = _said(call, read.findings if read.value is None else ())
    if any(slug(each.name) == slug(classes.name_of(text)) for each in classes.others(shelf)):
        wrong += (Said("", "mistake", call.wording.say("Another class is called so, too."), "", "", "", 0),)
    if wrong:
        return _shown(call, typed, wrong)
    keep_group(shelf, text)
    if call.one("shared"):
        classes.share_cupboard(shelf)
    return Go("/games")


def _back_to(call: Call) -> None:
    """The class that the form was opened with: another tab may have chosen another one since."""
    shelf, opened = call.desk.shelf, call.one("opened")
    if opened and is_kept(shelf) and classes.name_of(call.desk.group) != opened:
        there = next((each for each in classes.others(shelf) if each.name == opened), None)
        if there is not None:
            classes.choose(shelf, there.slug)


def choose(call: Call) -> Reply:
    """Take another class at hand, begin one more, or take the one at hand away."""
    _back_to(call)
    if call.one("do") == "more":
        classes.begin(call.desk.shelf, call.wording.say("My class"))
    elif call.one("do") == "away":
        classes.take_away(call.desk.shelf)
    else:
        classes.choose(call.desk.shelf, call.one("class"))
    return Go("/class")


def _said(call: Call, findings: tuple[Finding, ...]) -> tuple[Said, ...]:
    if not findings:
        return ()
    from compose.page.answers.said import said  # the first page is quick without it

    return tuple(said(each, call.wording) for each in findings)


def _shown(call: Call, fields: Fields, wrong: tuple[Said, ...] = ()) -> Reply:
    kept, others = is_kept(call.desk.shelf), classes.others(call.desk.shelf)
    values = {
        "fields": fields,
        "halls": [(name, hall) for name, hall in library.halls().items()],
        "kit": list(_cupboard(fields.counts, call.wording)),
        "wrong": wrong,
        "kept": kept,
        "opened": classes.name_of(call.desk.group) if kept else "",
        "others": others,
        "shared": bool(others) and classes.one_cupboard(call.desk.shelf),
        "in_a_hall": IN_A_HALL,
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
