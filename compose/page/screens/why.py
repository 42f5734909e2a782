"""Why not: a finding with the play that leads to it, stepped on the plan, and its mends as buttons."""

from __future__ import annotations

import re

from compose.page.answers.values import Mend, Why
from compose.page.call import PATIENT, Call, Reply, Shown, address
from compose.page.screens.remix import Trail, asked_of, no_such_game, trail_of

PLACE = re.compile(r"[rc]\d{1,3}")


def show(call: Call) -> Reply:
    """One moment of the line of play."""
    asked, place = asked_of(call), call.one("finding")
    if asked is None or not PLACE.fullmatch(place):
        return no_such_game(call)
    why: Why | None = call.ask("why:why", asked, place, turn=_turn(call))
    if why is None:
        return no_such_game(call)
    trail, last = trail_of(call), len(why.pictures) - 1
    typed = call.one("step", "0")
    step = min(int(typed), last) if typed.isdecimal() and len(typed) < 4 else 0

    def at(number: int) -> str:
        return address(f"/why/{trail.slug}", **{"with": trail.uses, "finding": place, "step": str(number)})

    values = {
        "why": why,
        "trail": trail,
        "step": step,
        "back": at(step - 1) if step > 0 else "",
        "on": at(step + 1) if step < last else "",
        "mends": _linked(call, trail) if call.whole else None,
        "later": address(f"/why/{trail.slug}/mends", **{"with": trail.uses, "finding": place}),
    }
    return Shown("why.html", values)


def show_mends(call: Call) -> Reply:
    """The mends alone."""
    if asked_of(call) is None or not PLACE.fullmatch(call.one("finding")):
        return no_such_game(call)
    return Shown("why-mends.html", {"mends": _linked(call, trail_of(call))})


def _linked(call: Call, trail: Trail) -> list[tuple[Mend, str]]:
    found = call.ask("mending:mends", asked_of(call), call.one("finding"), rank=PATIENT, turn=_turn(call))
    return [(each, trail.to(each.uses)) for each in found]


def _turn(call: Call) -> str:
    return f"{call.parts['slug']} {call.every('with')} {call.one('finding')}"
