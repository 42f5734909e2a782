"""All reminders of a game on its floor, the gravest first. They remind; they prove nothing and mend nothing."""

from __future__ import annotations

from collections.abc import Iterable

from compose.care.furniture import furniture_reminders
from compose.care.people import people_reminders
from compose.care.scene import Scene
from compose.care.tasks import task_reminders
from compose.care.ways import way_reminders
from grammar.finding import Finding

# Our choice of order: what strikes a face comes before what makes somebody stumble.
AT_PEOPLE = ("S-hard-ball", "S-kick", "S-low", "S-young", "S-near")
GRAVEST_FIRST = (
    *AT_PEOPLE,
    *("S-in-fire", "S-wall", "S-stop", "S-wall-thing", "S-crossing", "S-bench", "S-tow", "S-eyes"),
)


def reminders(scene: Scene) -> tuple[Finding, ...]:
    """What can hurt in a game, by age and skill."""
    found = (
        *people_reminders(scene),
        *task_reminders(scene),
        *way_reminders(scene),
        *furniture_reminders(scene),
    )
    return by_gravity(found)


def by_gravity(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Reminders, the gravest first; of those of young players that which lacks most years."""

    def gravity(each: Finding) -> tuple[int, float]:
        told = dict(each.numbers)
        lacking = told["usual"] - told["youngest"] if "youngest" in told else 0.0
        return GRAVEST_FIRST.index(each.code), -lacking

    return tuple(sorted(found, key=gravity))
