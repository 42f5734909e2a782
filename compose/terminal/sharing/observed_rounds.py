"""The rounds of a class that the shelf keeps, and what they make of a forecast, in words and as JSON."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import attrs

import library
from compose.forecast.answers import Answers
from compose.forecast.observed import Corrected, SeenRound, corrected
from compose.forecast.telling.speech import Speech
from compose.modifiers.content_hash import content_hash
from compose.share.shelf.rounds import DRAW, NOBODY
from compose.staging.norms import bands_used
from compose.terminal.sharing.shelf_door import given, own_shelf, shelf_folder
from compose.terminal.stages import Ready
from grammar.frozen import frozen


@frozen
class Kept:
    """Which rounds are meant: those of a shelf (None: the usual one), of all classes or of one."""

    shelf: Path | None = None
    class_code: str = ""


def seen_rounds(prepared: Ready, kept: Kept, as_json: bool) -> tuple[SeenRound, ...]:
    """The rounds of just this game, with just these modifiers, that the shelf keeps."""
    if not shelf_folder(kept.shelf).is_dir():
        return ()
    content = content_hash(prepared.game.sheet)
    with own_shelf(kept.shelf, as_json) as shelf:
        every = given(shelf.rounds(prepared.remix.base.title), as_json)
    return tuple(
        SeenRound(each.length_s / 60, "" if each.winner in (DRAW, NOBODY) else each.winner)
        for each in every
        if each.content == content and kept.class_code in ("", each.class_code)
    )


def correction(prepared: Ready, usual: Answers, seen: Sequence[SeenRound]) -> tuple[Corrected, ...]:
    """The forecast before and after the rounds that were seen."""
    bell = prepared.net.bell
    row = library.norms().tables["lesson observed"].rows["weight"]
    weight = bands_used(row, prepared.game.ages_years)[0].figure.usual
    return corrected(usual, seen, bell.after_s / 60 if bell else None, weight)


def correction_lines(seen: Sequence[SeenRound], found: Sequence[Corrected], speech: Speech) -> Iterator[str]:
    """What the kept rounds change, a line for each number."""
    if not seen:
        yield speech.say("No round of just this game is on the shelf; keep one with: shelf played")
        return
    rounds = speech.wording.counted(len(seen), "round", "rounds")
    before, after, band = (speech.say(name) for name in ("before", "after", "nine in ten"))
    lead = speech.say("With {rounds} of your own weighed in", rounds=rounds)
    yield f"{lead:<40} {before:>8} {after:>8}  {band}"
    for each in found:
        tell = speech.minutes if each.name == "mean length" else speech.percent
        ends = speech.say("{low} to {high}", low=tell(each.low), high=tell(each.high))
        yield f"  {speech.say(each.name):<38} {tell(each.before):>8} {tell(each.after):>8}  {ends}"


def correction_json(seen: Sequence[SeenRound], found: Sequence[Corrected]) -> dict[str, Any]:
    """The same as JSON; lengths in minutes, chances from 0 to 1."""
    return {"rounds": len(seen), "numbers": [attrs.asdict(each) for each in found]}
