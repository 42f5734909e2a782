"""Named pupils who move on from task to task, each group in a row of its own: from the words of the line alone."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import play
from tests.interpreter.sheet import Sheet


def rows(sheet: Sheet, side: str) -> list[tuple[str, list[str]]]:
    """The tasks of a side in the order of its line, each with its pupils; "" is the task of those without a role."""
    names: list[str] = []
    for line in sheet.said(play.MoveOn):
        names += [folk.role or "" for job in line.jobs.each if (folk := sheet.folk(job)) is not None]
    if sheet.said(play.AllMoveOn):
        names = [role.name for role in sheet.roles.values() if side in role.sides and role.least > 0] + [""]
    left = iter(f"{side} {number}" for number in range(sheet.players[side]))
    numbers = {role.name: role.least for role in sheet.roles.values() if side in role.sides}
    taken = {name: [next(left) for _ in range(number)] for name, number in numbers.items()}
    taken[""] = list(left)
    return [(name, taken[name]) for name in names]


def walked(begin: list[tuple[str, list[str]]], changes: int) -> Iterator[dict[str, list[str]]]:
    """Who has which task, at the beginning and after every change: those who came first to a task leave it first."""
    names, now = [name for name, _ in begin], [list(pupils) for _, pupils in begin]
    leaving = min(len(pupils) for pupils in now)
    for _ in range(changes + 1):
        yield dict(zip(names, [list(pupils) for pupils in now], strict=True))
        gone = [pupils[:leaving] for pupils in now]
        now = [pupils[leaving:] + gone[number - 1] for number, pupils in enumerate(now)]
