"""The lines of the space and the sides → court, areas, tracks, sides and roles."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.declared import Court, Cut, Odd, Organisation, Role, Side, Track
from grammar.core.reading.sheet.reader import Reader, metres
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import KindId, RoleId, SideId, TrackId
from grammar.said import listed, quoting, write
from grammar.sentences import sides, space
from grammar.sentences.base import Node
from grammar.sentences.base import Owner as OwnerPhrase
from grammar.sentences.determiners import EACH


def read_court(sentence: space.Court, line: int) -> Court:
    """The court; "in equal parts" divides it among the sides as "halved" does between two."""
    cut = Cut.WHOLE if sentence.cut in (None, "in one piece") else Cut.PARTS
    return Court(metres(sentence.length), metres(sentence.width), cut, (line,), sentence.cut == "halved across")


def read_sides(reader: Reader, sentence: sides.Sides, line: int) -> Iterator[Side]:
    """The sides of a line, all of one size."""
    if sentence.headcount.of.text not in ("player", "players"):
        raise Senseless(
            sentence.headcount.of, "A side has players, not {of}.", write("players"), of=sentence.headcount.of.text
        )
    least, most = sentence.headcount.least, sentence.headcount.most or sentence.headcount.least
    solo = "each for themselves" in sentence.options
    if solo and (len(sentence.names) > 1 or "mirrored" in sentence.options):
        raise Senseless(
            sentence, "Where each plays for themselves there are no sides against each other.", "Name one side."
        )
    for name in sentence.names:
        yield Side(SideId(name.text), least.whole, most.whole, solo, (line,))


def refused_sides(reader: Reader) -> Iterator[Side]:
    """The sides of lines that are refused: more is said of no line that speaks of them."""
    known = reader.side_ids
    for side in reader.game.sides:
        if SideId(side.name) not in known:
            yield Side(SideId(side.name), side.least, side.most, False, ())


def _refuse_what_is_no_number(said: sides.Headcount) -> None:
    """Raises Senseless where a role is not so many players of a side."""
    if said.of.text not in ("player", "players"):
        one = "player" if said.least.whole == 1 and said.most is None else "players"
        raise Senseless(said.of, "A role is so many players of a side, not {of}.", write(one), of=said.of.text)
    if said.each:
        raise Senseless(said, "A role is so many players of a side.", write("1 to 2 players of each side"))


def read_role(reader: Reader, sentence: sides.Role, line: int) -> Iterator[Role]:
    """A role, once for each side that has it."""
    _refuse_what_is_no_number(sentence.headcount)
    phrase = sentence.owner
    if isinstance(phrase, OwnerPhrase):
        if phrase.other or phrase.determiner not in EACH:
            raise Senseless(phrase, "`{said}`: of no side has been spoken.", write("of each side", "name a side."))
        owners: tuple[SideId, ...] = reader.side_ids
    else:
        named = reader.game.roles[[each.name for each in reader.game.roles].index(sentence.name.text)].side
        if phrase.other or named is None:
            raise Senseless(phrase, "`{said}` is no side.", write("of each side", "name a side."))
        owners = (SideId(named),)
    details = {type(each): each for each in sentence.details}
    if len(details) < len(sentence.details):
        raise Senseless(sentence, "A detail of this role stands twice.", "Keep one.")
    away, uses = details.get(sides.AimsFrom), details.get(sides.Uses)
    ball: KindId | None = None
    if isinstance(uses, sides.Uses):
        balls = reader.balls(uses.what)
        if len(balls) > 1:
            raise Senseless(uses.what, "`{said}` could be several balls.", "Name one kind of ball of the kit.")
        ball = balls[0]
    least, most = sentence.headcount.least, sentence.headcount.most or sentence.headcount.least
    for side in owners:
        yield Role(
            RoleId(sentence.name.text),
            side,
            least.whole,
            most.whole,
            metres(away.distance) if isinstance(away, sides.AimsFrom) else None,
            ball,
            sides.NeverAimedAt not in details,
            (line,),
        )


def read_organisation(sentences: list[tuple[Node, int]]) -> Organisation:
    """How many courts side by side, and what the odd pupil does."""
    courts, odd, lines = 1, Odd.UNSAID, list[int]()
    for sentence, line in sentences:
        if isinstance(sentence, sides.SideBySide):
            courts = sentence.most.whole
            lines.append(line)
        elif isinstance(sentence, sides.OddPupil):
            odd = Odd(sentence.does)
            lines.append(line)
    return Organisation(courts, odd, tuple(lines))


def read_track(reader: Reader, sentence: space.Track, line: int) -> Iterator[Track]:
    """A track between the homes of two sides."""
    start, goal = SideId(sentence.start.text), SideId(sentence.goal.text)
    if start == goal:
        raise Senseless(
            sentence.goal,
            "A track runs from one side to another.",
            quoting("Sides: {names}.", names=listed(_names(reader))),
        )
    yield Track(TrackId(sentence.name.text), (start, goal), sentence.steps.whole, (line,))


def _names(reader: Reader) -> list[str]:
    return [side.key for side in reader.side_ids]
