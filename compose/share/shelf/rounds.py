"""Observed rounds: how long, who won, how many waited. Never a pupil's name: no field could hold one.

They lie in rounds/NAME.csv of the shelf, one line a round, to be opened with any table program.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable
from datetime import date

from attrs import astuple, fields

from compose.share.fields import HASH
from compose.share.naming import slug
from compose.share.refusal import RefusedError, shown
from grammar.finding import Outcome
from grammar.frozen import frozen
from grammar.words import listing

FOLDER = "rounds"
MOST_BYTES = 4 << 20
MOST_SECONDS = 3 * 3600
MOST_PUPILS = 400
DRAW, NOBODY = "draw", "nobody"
CLASS = re.compile(r"[A-Za-z]?[0-9]{1,2}[A-Za-z]?")
NO_NAMES = "Names of pupils are not kept: a round has a class such as 5a, numbers, and the side that won."


@frozen
class ObservedRound:
    """One round that a class played.

    `content` is the content hash of the game as played, `length_s` is in seconds, `winner` is a side,
    "draw" or "nobody", `waited` is how many of the `pupils` had to wait at the worst moment.
    """

    day: str
    class_code: str
    pupils: int
    length_s: float
    winner: str
    waited: int
    content: str


HEADING = tuple(field.name for field in fields(ObservedRound))


def rounds_path(name: str) -> str:
    """Where the rounds of a game are kept."""
    return f"{FOLDER}/{slug(name)}.csv"


def observed(seen: ObservedRound, sides: Iterable[str]) -> Outcome[ObservedRound]:
    """The round, if it can be kept: everything in range, the winner one of the sides, no free text anywhere."""
    try:
        _in_range(seen)
        allowed = (*sides, DRAW, NOBODY)
        if seen.winner not in allowed:
            title = f"`{shown(seen.winner)}` is not a side of this game."
            raise RefusedError("O-winner", title, f"Write {listing(allowed, 'or')}. {NO_NAMES}")
    except RefusedError as refusal:
        return Outcome(None, (refusal.finding("the observed round"),))
    return Outcome(seen)


def _in_range(seen: ObservedRound) -> None:
    try:
        day = date.fromisoformat(seen.day).isoformat()  # which takes week numbers, too
    except ValueError:
        day = ""
    if day != seen.day:
        raise RefusedError("O-day", f"`{shown(seen.day)}` is not a day.", "Write it such as 2025-11-25.")
    if seen.class_code and not CLASS.fullmatch(seen.class_code):
        raise RefusedError("O-class", f"`{shown(seen.class_code)}` is not a class.", f"Write it such as 5a. {NO_NAMES}")
    if not 1 <= seen.pupils <= MOST_PUPILS:
        raise RefusedError("O-pupils", f"{seen.pupils} pupils are no class.", f"Give 1 to {MOST_PUPILS}.")
    if not 0 < seen.length_s <= MOST_SECONDS:
        title = f"A round of {seen.length_s / 60:g} min is no round."
        raise RefusedError("O-length", title, f"Give more than nothing and at most {MOST_SECONDS // 60} min.")
    if not 0 <= seen.waited <= seen.pupils:
        raise RefusedError("O-waited", f"{seen.waited} of {seen.pupils} pupils cannot have waited.", "Count again.")
    if not HASH.fullmatch(seen.content):
        raise RefusedError("O-content", "The game of this round is not known by its content hash.")


def with_round(before: bytes | None, seen: ObservedRound) -> bytes:
    """The file of rounds with one more; what somebody wrote into it by hand is kept."""
    held = io.StringIO(newline="")
    table = csv.writer(held, lineterminator="\n")
    if not before:
        table.writerow(HEADING)
    table.writerow([f"{cell:g}" if isinstance(cell, float) else cell for cell in astuple(seen)])
    lead = before or b""
    return lead + (b"" if not lead or lead.endswith(b"\n") else b"\n") + held.getvalue().encode()


def rounds_in(data: bytes, file: str) -> tuple[ObservedRound, ...]:
    """The rounds of a file; raises RefusedError for a line that is none."""
    try:
        lines = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline=""), strict=True))
    except (UnicodeDecodeError, csv.Error):
        raise RefusedError("O-file", f"{file} is not a table of rounds.") from None
    if not lines or tuple(lines[0]) != HEADING:
        raise RefusedError("O-file", f"{file} does not begin with the line {','.join(HEADING)}.")
    return tuple(_round(line, number, file) for number, line in enumerate(lines[1:], start=2) if line)


def _round(line: list[str], number: int, file: str) -> ObservedRound:
    try:
        day, class_code, pupils, length_s, winner, waited, content = line
        seen = ObservedRound(day, class_code, int(pupils), float(length_s), winner, int(waited), content)
        _in_range(seen)
    except ValueError:
        raise RefusedError("O-file", f"{file}, line {number}: this is not a round.") from None
    except RefusedError as refusal:
        raise RefusedError(refusal.code, f"{file}, line {number}: {refusal.title}", refusal.hint) from None
    return seen


def table_of(rounds: Iterable[ObservedRound]) -> bytes | None:
    """The file of some rounds, or None for none."""
    held: bytes | None = None
    for seen in rounds:
        held = with_round(held, seen)
    return held
