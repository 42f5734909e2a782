"""Find a game: what fits the class first, what each lacks, filters by skill, kit, age and waiting."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from typing import TYPE_CHECKING

from compose.page.answers.values import Row
from compose.page.call import PATIENT, SOON, Call, Reply, Shown, address
from compose.page.glimpse import glimpses
from grammar.frozen import frozen

if TYPE_CHECKING:
    from compose.page.sheets import Sheet

LITTLE_WAITING = 0.2  # our choice: what "hardly anybody waits" means, as a share of the round
NEAREST = 12  # our choice: how many games are shown at least, those that lack least; the others are one tap away
AT_ONCE = 4  # our choice: how many more games are forecast before those found so far are shown


@frozen
class Looking:
    """How many of the games in question were looked at, and where the list with more of them is; "" with all."""

    done: int
    all: int
    later: str


def show(call: Call) -> Reply:
    """The list; only names and lines where the script will ask for what needs thinking."""
    values = _listed(call) if call.whole else _first(call)
    return Shown("find.html", {**values, "later": address("/games/rows", **_chosen(call))})


def show_rows(call: Call) -> Reply:
    """The filters and the rows alone."""
    return Shown("find-rows.html", _listed(call))


def _first(call: Call) -> dict[str, object]:
    """Names and lines, which need no thinking."""
    return {"rows": None, "first": glimpses(call.desk.shelf), "skills": (), "chosen": _chosen(call)}


def _listed(call: Call) -> dict[str, object]:
    """The games that the filters leave, those that fit first; and every skill that one could filter by."""
    known, group, turn = call.desk.sheets(), call.desk.group, call.address

    def row(each: Sheet) -> Row:
        found: Row = call.ask("games:row", each.slug, each.texts, group, call.language, rank=SOON, turn=turn)
        return found

    def idle(each: Row) -> float:
        share = call.ask("games:waiting", known[each.slug].texts, group, rank=PATIENT, turn=turn)
        return 1.0 if share is None else float(share)

    with ThreadPoolExecutor(4) as asking:  # each of the workers always has the next one
        every = list(asking.map(row, known.values()))
        left = [each for each in every if _stays(call, each)]
        rows = sorted(
            left, key=lambda each: (len(each.broken), each.refused, len(each.lacks), each.short_m, each.title)
        )
        number = len(rows) if call.whole or not call.one("waiting") else min(len(rows), _looked(call) + AT_ONCE)
        looking = Looking(number, len(rows), _later(call, number) if number < len(rows) else "")
        if call.one("waiting"):
            looked = rows[:number]
            rows = [
                each for each, share in zip(looked, asking.map(idle, looked), strict=True) if share <= LITTLE_WAITING
            ]
    skills = sorted({skill for each in every for skill in each.skills}, key=lambda skill: skill[1])
    own = [each.slug for each in known.values() if each.own]
    fitting = sum(not each.lacks and not each.broken for each in rows)
    shown = {"rows": rows, "fitting": fitting, "near": max(fitting, NEAREST), "looking": looking}
    return {**shown, "skills": skills, "chosen": _chosen(call), "own": own}


def _looked(call: Call) -> int:
    """How many games the list before this one has looked at."""
    looked = call.one("looked", "0")
    return int(looked) if looked.isdecimal() and len(looked) < 5 else 0


def _later(call: Call, looked: int) -> str:
    """Where the list is with some more games looked at."""
    return address("/games/rows", **_chosen(call), looked=str(looked))


def _stays(call: Call, row: Row) -> bool:
    skill = call.one("skill")
    return (
        (not skill or skill in (name for name, _ in row.skills))
        and (not call.one("kit") or row.kit_there)
        and (not call.one("age") or row.right_age)
    )


def _chosen(call: Call) -> dict[str, str]:
    return {name: call.one(name) for name in ("skill", "kit", "age", "waiting")}
