"""The court in the hall: whether it fits, what stands in its way, how near the walls are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from attrs import evolve

from compose.staging.clear_floor import apart_m, fixed_boxes
from compose.staging.floor.no_room import tenths_up
from compose.staging.floor.values import Rectangle
from compose.staging.floor_to_use import FLOOR_TO_USE
from compose.staging.found import note, warning
from compose.staging.limit import Limit
from compose.staging.open_floor import OPEN_FLOOR
from compose.staging.room import Room
from compose.staging.where import beside_court, of_court, of_safe_places
from grammar.finding import Finding
from grammar.game import Game
from grammar.resolve.possible_counts import LEAST_COURT_M
from grammar.said import Figure, Many, Named, Value, Written, said
from library.records import UNNAMED

HALL_FLOOR = "hall floor for each pupil"
CLEAR_OF_FIXED = "clear strip to what stands fixed in the hall"
TOO_SMALL = (
    "{hall} is {short} m too small: {courts} needs {long} m by {wide} m with what lies beside it and {strip} m all "
    "round, the hall is {length} m by {width} m."
)
TOO_SMALL_FOR_ALL = (
    "{hall} is {short} m too small: {courts} need {long} m by {wide} m with what lies beside and between them and "
    "{strip} m all round, the hall is {length} m by {width} m."
)
NO_COURT = "Play in a larger hall, or clear its floor: no court has the least strip all round there."
LEFT_CLEAR = "{too_small} Of it {length} m by {width} m is clear of what stands there."
_MENDS = {
    "F-area": "Play with fewer at a time, or on a larger court.",
    "F-run-off": "Play on a smaller court, or pad what is near.",
    HALL_FLOOR: "Let some pupils keep the score and take turns, or play in a larger hall.",
    FLOOR_TO_USE: "Leave them more of the court, play with fewer at a time, or on a larger court.",
    OPEN_FLOOR: "Make the places where nobody is touched less deep, play with fewer at a time, or on a larger court.",
}  # by what is too small, or else by the finding


def room_findings(game: Game, room: Room | None, courts: Sequence[Rectangle]) -> Iterator[Finding]:
    """The court in the hall: its size, with the least strip around it, and fixed things in its way."""
    if room is None:
        return
    if not room.fits:
        short = tenths_up(room.short_m)
        title = _too_small(room, short)
        beside = beside_court(game)
        hint: Value = "Make the court smaller, or lay nothing beside it." if beside else "Make the court smaller."
        hint = hint if _has_a_court(room) else NO_COURT
        yield evolve(warning("F-hall", title, of_court(game), hint, short_m=short), others=beside)
        return
    yield from _fixed_things(game, room, courts)


def _has_a_court(room: Room) -> bool:
    """Whether any court at all lies on the clear floor with the least strip all round."""
    clear = room.best_floor(room.least_m)
    return min(clear.length, clear.width) - 2 * room.least_m >= LEAST_COURT_M


def _too_small(room: Room, short_m: float) -> Value:
    """By how much the hall is too small, and of what that is reckoned."""
    hall, least_m = room.hall, room.least_m
    clear = room.best_floor(least_m)
    title = said(
        TOO_SMALL if room.courts == 1 else TOO_SMALL_FOR_ALL,
        hall="The hall" if hall.name == UNNAMED else said("The {hall}", hall=Named(hall.name)),
        short=Figure(short_m, ".1f"),
        courts=Many(room.courts, "court", "courts"),
        long=Figure(tenths_up(room.box.length + 2 * least_m)),
        wide=Figure(tenths_up(room.box.width + 2 * least_m)),
        strip=Figure(least_m),
        length=Figure(hall.length_m.usual),
        width=Figure(hall.width_m.usual),
    )
    if clear.length >= hall.length_m.usual and clear.width >= hall.width_m.usual:
        return title
    return said(LEFT_CLEAR, too_small=title, length=Figure(clear.length, ".4g"), width=Figure(clear.width, ".4g"))


def asks_mending(each: Limit) -> bool:
    """Whether there is less than the least of something that another court or game would have more of."""
    return each.broken and each.what != HALL_FLOOR


def limit_findings(game: Game, limits: Sequence[Limit]) -> Iterator[Finding]:
    """Floor for each pupil and strips to the walls that are less than usual. That the hall is small for the class is
    only to know: no game changes it, and whether there is room to play the court says."""
    for each in limits:
        if each.kept:
            continue
        pattern = "The {what} is {there} {unit}; {usual} {unit} is usual, {least} {unit} the least."
        if each.what == HALL_FLOOR:
            pattern = "The {what} is {there} {unit}; {usual} {unit} is usual, and no game changes that."
        title = said(
            pattern,
            what=each.what,
            there=Figure(each.there, ".3g"),
            unit=Written(each.unit),
            usual=Figure(each.usual),
            least=Figure(each.least),
        )
        code = "F-area" if each.unit == "m2" else "F-run-off"
        mend = _MENDS.get(each.what) or _MENDS[code]
        hint = Named(f"{mend} Source: {each.said_by()}.")  # sources are English: others are told by the code what to do
        make = warning if asks_mending(each) else note
        found = make(code, title, of_court(game), hint, there=each.there, least=each.least, usual=each.usual)
        others = beside_court(game) if code == "F-run-off" else ()
        yield evolve(found, others=of_safe_places(game) if each.what == OPEN_FLOOR else others)


def clear_of_fixed_m(room: Room, courts: Sequence[Rectangle]) -> float | None:
    """How near the nearest thing fixed in the hall is to a court, where that is less than to the walls; None where it
    is not, and of what stands in a court, which is told by itself."""
    boxes = fixed_boxes(room.hall)
    apart = [far for box in boxes for court in courts if (far := apart_m(box, court)) >= 0]
    return min(apart) if apart and min(apart) < room.run_off - 1e-9 else None


def _fixed_things(game: Game, room: Room, courts: Sequence[Rectangle]) -> Iterator[Finding]:
    """Things fixed in the hall that reach into a court."""
    for fixed, box in zip(room.hall.obstacles, fixed_boxes(room.hall), strict=True):
        reached = [court for court in courts if box.overlaps(court)]
        if reached:
            into = max(-apart_m(box, court) for court in reached)
            where: Value = "where the court should lie"
            if len(courts) > 1:
                where = said("on {courts}", courts=Many(len(reached), "court", "courts"))
            title = said(
                "The {thing} of the {hall} stands {where}, {into} m into it.",
                thing=Named(fixed.name),
                hall=Named(room.hall.name),
                where=where,
                into=Figure(into, ".3g"),
            )
            short = tenths_up(room.short_m)
            hint: Value = NO_COURT
            if _has_a_court(room):
                hint = said(
                    "Make the court {short} m smaller: it lies where most is clear, and {strip} m all round is the "
                    "least.",
                    short=Figure(short, ".1f"),
                    strip=Figure(room.least_m),
                )
            yield warning("F-fixed", title, of_court(game), hint, into_m=into, short_m=short)
