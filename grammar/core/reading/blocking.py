"""Who blocks what, and how many of them there are to each thing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import suppress

from grammar.core.reading.aims import spoken_by
from grammar.core.reading.offers import acting
from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Senseless
from grammar.core.stopping import Blocking, Means
from grammar.core.values import SHARED, Sort, Thing
from grammar.sentences.blocking import Blocks

MEANS = {
    None: Means.BODY,
    "with the body": Means.BODY,
    "with the hands": Means.HANDS,
    "with the feet": Means.FEET,
    "with a mat": Means.MAT,
    "with a tray": Means.TRAY,
}


def read_blocks(reader: Reader, sentence: Blocks, line: int) -> Iterator[Blocking]:
    """Players of the side whose the thing is; of what is nobody's, players of every side."""
    role = reader.player_phrase(sentence.who)[1]
    if sentence.count is None and role is None:
        hint = "Write how many, such as: 1 player stands before each target"
        raise Senseless(sentence.who, "How many block is not said.", hint)
    each = sentence.count.whole if sentence.count else None
    if sentence.who.determiner in ("a", "an") and sentence.what.determiner in ("each", "every"):
        each = 1
    found = list(_by_side(reader, sentence, each, line))
    if not found:
        raise Senseless(sentence.who, "Nobody blocks what belongs to others.", "Name players of the side whose it is.")
    for blocking in found:
        _enough(reader, sentence, blocking)
    yield from found


def blocked_things(reader: Reader, lines: Iterable[tuple[Blocks, int]]) -> Iterator[Thing]:
    """The things that somebody may block; a line that means nothing is told where it is read."""
    for sentence, line in lines:
        with suppress(Senseless):
            yield from (each.thing for each in read_blocks(reader, sentence, line))


def _by_side(reader: Reader, sentence: Blocks, each: int | None, line: int) -> Iterator[Blocking]:
    """Their own, or what is nobody's."""
    who = acting(reader, sentence.who)
    for side in reader.side_ids:
        own = frozenset(one for one in who if one.side == side)
        if own:
            phrase, spoken = sentence.what, spoken_by(reader, side)
            for thing in reader.thing_phrase(phrase, spoken, frozenset({side}), Sort.TARGET, Sort.RING, some=False):
                if thing.owner in (side, SHARED):
                    yield Blocking(own, thing, each, MEANS[sentence.means], (line,))


def _enough(reader: Reader, sentence: Blocks, blocking: Blocking) -> None:
    """So many stand before each thing at once: the role has as many, or the side."""
    there = sum(supply.count for supply in reader.supplies if supply.thing == blocking.thing)
    most = 0
    for who in blocking.who:
        side = next(one for one in reader.sides if one.id == who.side)
        role = next((one for one in reader.roles if (one.side, one.id) == (who.side, who.role)), None)
        most = max(most, role.most if role else side.most)
    if blocking.each is not None and blocking.each * there > most:
        title = f"{blocking.each * there} would stand before {there}; there are at most {most}."
        raise Senseless(sentence, title, "Let fewer stand before each, or add to the role.")
