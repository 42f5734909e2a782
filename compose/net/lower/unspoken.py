"""Places, and things in the corners, of which no rule speaks: they are laid out, and the check reckons with them
nowhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import attrs

from grammar.core.game import Core
from grammar.core.renaming import changed
from grammar.core.values import AreaId, KindId, Landmark, OnStep, Part, Sort, Spot, Thing, Upon
from grammar.finding import Finding, Severity, spoken
from grammar.said import quoting
from grammar.words import plural

_Name = AreaId | KindId


def unspoken(core: Core, code: str) -> Iterator[tuple[Finding, int]]:
    """The lines that lay out such places and things, each with a note of that code; those that a line in quotes names
    are for people."""
    play = core.play
    spots = tuple(area.lies for area in play.areas)
    used = _named_in((attrs.evolve(play, areas=(), kinds=(), supplies=()), core.facts.posts, spots))
    for area in play.areas:
        says_more = bool(area.shut or area.room) or area.only is not None or area.stay_s is not None
        marks = area.lies.part is Part.AROUND  # a ring, of what lies within it
        if area.id not in used and not says_more and not marks and not is_quoted(core, area.id.key):
            title = quoting("No rule speaks of the {place}: the check reckons without it.", place=area.id.key)
            hint = "Leave it out, or say who waits, stays or starts there, or what is brought there."
            yield spoken(code, Severity.NOTE, title, core.lines[area.lines[0]].span, hint), area.lines[0]
    used = _named_in(attrs.evolve(play, rules=(), kinds=(), supplies=(), starts=()))
    for start in play.starts:
        kind = start.what.kind if isinstance(start.what, Thing) and _in_a_corner(start.at) else None
        if kind is None or kind in used or play.kind(kind).sort is not Sort.TARGET or is_quoted(core, kind.key):
            continue
        title = quoting("Nobody aims at any {thing}: the check reckons without it.", thing=kind.key)
        hint = "Say who aims there or takes it, if play has to do with it; what only marks the court needs no rule."
        yield spoken(code, Severity.NOTE, title, core.lines[start.lines[0]].span, hint), start.lines[0]


def _in_a_corner(at: Spot | OnStep | Upon) -> bool:
    return isinstance(at, Spot) and at.of is Landmark.CORNER


def _named_in(value: Any) -> frozenset[_Name]:
    """The areas and kinds of things of which a value holds a name."""
    found: set[_Name] = set()

    def see(part: Any) -> None:
        if isinstance(part, AreaId | KindId):
            found.add(part)

    changed(value, see)
    return frozenset(found)


def is_quoted(core: Core, name: str) -> bool:
    """Whether a line in quotes speaks of it: then it is there for people."""
    quoted = " ".join(words for _, words in core.told.quotes)
    return re.search(rf"\b({re.escape(name)}|{re.escape(plural(name))})\b", quoted, re.IGNORECASE) is not None
