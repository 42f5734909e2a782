"""Why not: a finding with the play that leads to it, stepped on the plan, and its mends as buttons."""

from __future__ import annotations

import re
from collections.abc import Sequence

from compose.page.answers.values import Mend, Why
from compose.page.call import PATIENT, SOON, Call, Reply, Shown, address
from compose.page.screens.remix import asked_of, no_such_game, trail_of, turn_of

MOST_MENDS = 4  # our choice: what somebody reads
PLACE = re.compile(r"[rct]\d{1,3}")


def show(call: Call) -> Reply:
    """One moment of the line of play."""
    asked, place = asked_of(call), call.one("finding")
    if asked is None or not PLACE.fullmatch(place):
        return no_such_game(call)
    why: Why | None = call.ask("why:why", asked, place, turn=_turn(call))
    if why is None:
        return no_such_game(call)
    trail, last = trail_of(call), len(why.pictures) - 1
    step = _number(call, "step", last)

    def at(number: int) -> str:
        return address(f"/why/{trail.slug}", **{"with": trail.uses, "finding": place, "step": str(number)})

    mends = _every(call) if call.whole else None
    values = {
        "why": why,
        "trail": trail,
        "step": step,
        "in_sheet": place[0] == "r",
        "back": at(step - 1) if step > 0 else "",
        "on": at(step + 1) if step < last else "",
        "mends": mends,
        "costly": _brings(mends or ()),
        "later": _later(call),
        "more": "",
    }
    return Shown("why.html", values)


def show_mends(call: Call) -> Reply:
    """What mends it by taking away; where that is not much, the search for what could be added follows."""
    if asked_of(call) is None or not PLACE.fullmatch(call.one("finding")):
        return no_such_game(call)
    less = _less(call)
    costly = "yes" if _brings(less) else ""
    more = _later(call, "more-mends", before=str(len(less)), costly=costly) if len(less) < MOST_MENDS else ""
    return Shown("why-mends.html", {"mends": less, "more": more, "costly": costly})


def show_more_mends(call: Call) -> Reply:
    """What was found to add, alone."""
    if asked_of(call) is None or not PLACE.fullmatch(call.one("finding")):
        return no_such_game(call)
    before = _number(call, "before", MOST_MENDS)
    mends = _more(call, before)
    costly = call.one("costly") or _brings(mends)
    return Shown("why-mends.html", {"mends": mends, "before": before, "more": "", "costly": costly})


def _number(call: Call, name: str, most: int) -> int:
    typed = call.one(name, "0")
    return min(int(typed), most) if typed.isdecimal() and len(typed) < 4 else 0


def _later(call: Call, part: str = "mends", **also: str) -> str:
    trail = trail_of(call)
    same = {"with": trail.uses, "finding": call.one("finding"), "beside": call.one("beside")}
    return address(f"/why/{trail.slug}/{part}", **same, **also)


def _less(call: Call) -> tuple[tuple[Mend, str], ...]:
    found = call.ask("mending:less", asked_of(call), call.one("finding"), rank=SOON, turn=_turn(call))
    return _linked(call, found)


def _more(call: Call, before: int) -> tuple[tuple[Mend, str], ...]:
    """So many that there are not too many with those that are there `before` them."""
    given = (asked_of(call), call.one("finding"), MOST_MENDS - before)
    return _linked(call, call.ask("mending:more", *given, rank=PATIENT, turn=_turn(call)))


def _every(call: Call) -> tuple[tuple[Mend, str], ...]:
    less = _less(call)
    return (*less, *_more(call, len(less)))


def _brings(mends: Sequence[tuple[Mend, str]]) -> bool:
    """Whether one of them brings something else to mend: all that are shown are spoken of together."""
    return any(mend.brings for mend, _ in mends)


def _linked(call: Call, found: Sequence[Mend]) -> tuple[tuple[Mend, str], ...]:
    return tuple((each, trail_of(call).to(each.uses)) for each in found)


def _turn(call: Call) -> str:
    """What the tab looks at; beside the remix itself, what that looks at."""
    if call.one("beside"):
        return turn_of(call)
    return f"{call.parts['slug']} {call.every('with')} {call.one('finding')}"
