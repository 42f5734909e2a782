"""Whether the set-up gives every thing one place: none is left without, and none is put to two."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.declared import ALL, AllBut, Per, Start
from grammar.core.game import Core
from grammar.core.values import Sort, Thing
from grammar.finding import Finding, mistake
from grammar.said import quoting
from grammar.span import Span


def places_of_things(core: Core) -> Iterator[Finding]:
    """One mistake for each thing of which some are put nowhere, and for each line about things that have a place."""
    for thing in dict.fromkeys(supply.thing for supply in core.play.supplies if supply.per is Per.OWNER):
        yield from _left_over(core, thing)
    yield from _placed_already(core)


def _left_over(core: Core, thing: Thing) -> Iterator[Finding]:
    """Balls are counted where the kit is: some of them may come in later."""
    starts = [start for start in core.play.starts if start.what == thing]
    there = sum(supply.count for supply in core.play.supplies if supply.thing == thing)
    least = sum(_number(start, there) for start in starts)
    if starts and least < there and core.play.kind(thing.kind).sort not in (Sort.BALL, Sort.FURNITURE):
        title = quoting(
            "The set-up says where {least} of {there} {things} are.",
            least=least,
            there=there,
            things=dict(core.plurals)[thing.kind],
        )
        place = core.lines[starts[-1].lines[0]].span
        yield mistake("G-no-place", title, place, "Say where the others are at the start.")


def _number(start: Start, there: int) -> int:
    if isinstance(start.count, int):
        return start.count
    return there - start.count.count if isinstance(start.count, AllBut) else there


def _placed_already(core: Core) -> Iterator[Finding]:
    """A line for all that are left of things that an earlier line has put somewhere."""
    first: dict[Thing, int] = {}
    about: dict[int, list[Thing]] = {}
    for start in core.play.starts:
        if isinstance(start.what, Thing) and start.count is ALL:
            about.setdefault(start.lines[0], []).append(start.what)
    for line, things in about.items():
        earlier = [first[thing] for thing in things if first.get(thing, line) != line]
        if earlier:
            places = core.lines[line].span, core.lines[earlier[0]].span
            title = "Some of these have a place by then: another line says where they all are."
            yield mistake("G-contradiction", title, places[0], "Keep one of the two.", *places[1:])
        elif all(taken := [_all_counted_out(core, thing) for thing in things]):
            title = "None of these is left for this line: another line puts them all somewhere."
            yield mistake("G-contradiction", title, core.lines[line].span, "Keep one of the two.", taken[0][0])
        for thing in things:
            first.setdefault(thing, line)


def _all_counted_out(core: Core, thing: Thing) -> list[Span]:
    """The lines that put so many of a thing somewhere, where that makes all there are."""
    counted = [start for start in core.play.starts if start.what == thing and isinstance(start.count, int)]
    supplies = [supply for supply in core.play.supplies if supply.thing == thing]
    there = sum(supply.count for supply in supplies)
    known = all(supply.per is Per.OWNER for supply in supplies)
    if not known or sum(_number(start, there) for start in counted) < there:
        return []
    return [core.lines[start.lines[0]].span for start in counted]
