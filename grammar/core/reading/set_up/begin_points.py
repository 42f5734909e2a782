"""How many points a side has at the start, or each player where each plays for themselves."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.begin_points import BeginPoints
from grammar.core.declared import Per
from grammar.core.game import Core
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Claimed, Senseless, Whose, whose_side
from grammar.finding import Finding, mistake
from grammar.said import quoting, write
from grammar.sentences.base import Np, SideNamed
from grammar.sentences.determiners import ALL
from grammar.sentences.points import BeginsPoints

MOST = 99  # our choice


def read_begin_points(reader: Reader, sentence: BeginsPoints, line: int) -> Iterator[BeginPoints]:
    """The points of each side that is meant, or of each of its players. Raises Senseless."""
    number = sentence.number
    if number.value != number.whole or not 1 <= number.whole <= MOST:
        hint = quoting("Write a number from 1 to {most}.", most=MOST)
        raise Senseless(number, "Nobody begins with {said} points.", hint)
    said, solo = _whom(reader, sentence), reader.solo
    players = said is None
    if players != solo:
        title = "Each plays for themselves here." if solo else "The points of a side are counted, not of each player."
        who = "each player" if solo else "each side"
        raise Senseless(sentence.who, title, write(f"{who} begins with {number.words()} points"))
    for side in reader.side_ids:
        if said is None or said.whose is Whose.ONE_EACH or said.side == side:
            yield BeginPoints(side, number.whole, Per.PLAYER if players else Per.OWNER, (line,))


def _whom(reader: Reader, sentence: BeginsPoints) -> Claimed | None:
    """The sides of a phrase, None for each player. Raises Senseless for some of them."""
    who = sentence.who
    named = Np(who.determiner, None, None, who.name, span=who.span) if isinstance(who, SideNamed) else who
    if isinstance(named, Np):
        said, role = reader.player_phrase(named)
        of_each = said.whose is Whose.UNSAID or reader.solo
        if role is None and of_each and named.determiner in (*ALL, None):
            return None
        if role is None and said.whose is Whose.NAMED and named.determiner in (None, "the"):
            return said
    elif (said := whose_side(reader.game, named)).whose is Whose.ONE_EACH:
        return said
    raise Senseless(who, "`{said}`: it is not clear which.", "Write: each side, or name one.")


def points_at_first(core: Core) -> Iterator[Finding]:
    """Points that nothing changes, and two lines that say how many a side begins with."""
    found = core.play.begin_points
    if not found:
        return
    place = core.lines[found[0].lines[0]].span
    if not core.play.gives_points:
        hint = "Say what wins or loses some, such as: a player is hit: its side loses 1 point"
        title = "Nothing wins or loses a point."
        yield mistake("G-no-points", title, place, hint)
    twice = [each for each in found if any(each.side == one.side and each.lines != one.lines for one in found)]
    if twice:
        title = "Two lines say how many points a side begins with."
        last, first = core.lines[twice[-1].lines[0]].span, core.lines[twice[0].lines[0]].span
        yield mistake("G-contradiction", title, last, "Keep one of the two.", first)
