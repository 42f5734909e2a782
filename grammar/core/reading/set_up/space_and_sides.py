"""The lines of the space and the sides → court, areas, tracks, sides and roles."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.declared import Area, AreaKind, Court, Cut, Doing, Odd, Organisation, Role, Room, Side, Track
from grammar.core.reading.set_up.for_all import is_for_all
from grammar.core.reading.sheet.reader import Reader, metres, seconds
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import (
    ONE_OF_SEVERAL,
    SHARED,
    AreaId,
    KindId,
    Landmark,
    Owner,
    Part,
    Population,
    RoleId,
    SideId,
    Spot,
    TrackId,
)
from grammar.sentences import sides, space
from grammar.sentences.base import Node, Np
from grammar.sentences.base import Owner as OwnerPhrase
from grammar.sentences.determiners import EACH
from grammar.words import listing

_LIES = {
    Landmark.HALF: (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE),
    Landmark.BACK_LINE: (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE, Part.ALONG),
    Landmark.SIDE_LINE: (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE, Part.ALONG),
    Landmark.MIDDLE_LINE: (Part.AT, Part.BESIDE, Part.ALONG, Part.ACROSS),
    Landmark.MIDDLE: (Part.AT, Part.ACROSS, Part.BESIDE, Part.AROUND),
    Landmark.COURT: (Part.AT, Part.BESIDE, Part.BEHIND, Part.ACROSS),
    Landmark.WALL: (Part.AT, Part.BEFORE, Part.BESIDE, Part.ALONG),
    Landmark.CORNER: (Part.AT, Part.BEFORE, Part.BESIDE),
}
BY_AN_AREA = (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE, Part.AROUND)


def read_court(sentence: space.Court, line: int) -> Court:
    """The court; "in equal parts" divides it among the sides as "halved" does between two."""
    cut = Cut.WHOLE if sentence.cut in (None, "in one piece") else Cut.PARTS
    return Court(metres(sentence.length), metres(sentence.width), cut, (line,), sentence.cut == "halved across")


def read_sides(reader: Reader, sentence: sides.Sides, line: int) -> Iterator[Side]:
    """The sides of a line, all of one size."""
    if sentence.headcount.of.text not in ("player", "players"):
        raise Senseless(
            sentence.headcount.of, f"A side has players, not {sentence.headcount.of.text}.", "Write: players"
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
        raise Senseless(said.of, f"A role is so many players of a side, not {said.of.text}.", f"Write: {one}")
    if said.each:
        raise Senseless(said, "A role is so many players of a side.", "Write: 1 to 2 players of each side")


def read_role(reader: Reader, sentence: sides.Role, line: int) -> Iterator[Role]:
    """A role, once for each side that has it."""
    _refuse_what_is_no_number(sentence.headcount)
    phrase = sentence.owner
    if isinstance(phrase, OwnerPhrase):
        if phrase.other or phrase.determiner not in EACH:
            raise Senseless(
                phrase, f"`{phrase.words()}`: of no side has been spoken.", "Write: of each side, or name a side."
            )
        owners: tuple[SideId, ...] = reader.side_ids
    else:
        named = reader.game.roles[[each.name for each in reader.game.roles].index(sentence.name.text)].side
        if phrase.other or named is None:
            raise Senseless(phrase, f"`{phrase.words()}` is no side.", "Write: of each side, or name a side.")
        owners = (SideId(named),)
    details = {type(each): each for each in sentence.details}
    if len(details) < len(sentence.details):
        raise Senseless(sentence, "A detail of this role stands twice.", "Keep one.")
    away, uses = details.get(sides.AimsFrom), details.get(sides.Uses)
    ball: KindId | None = None
    if isinstance(uses, sides.Uses):
        balls = reader.balls(uses.what)
        if len(balls) > 1:
            raise Senseless(
                uses.what, f"`{uses.what.words()}` could be several balls.", "Name one kind of ball of the kit."
            )
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


def read_area(reader: Reader, sentence: space.Area, line: int) -> Iterator[Area]:
    """An area, once for each side whose line, half or wall it lies by, or once for all."""
    name, spot = AreaId(sentence.name.text), sentence.spot
    of = reader.place(spot)
    by_area = isinstance(of, AreaId)
    part = reader.part(sentence.preposition, spot, *(BY_AN_AREA if isinstance(of, AreaId) else _LIES[of]))
    said = whose(reader.game, spot, place=True)
    if said.whose is Whose.OTHER and said.node is spot and of in ONE_OF_SEVERAL:
        raise _which_other(reader, sentence)
    owners: tuple[Owner, ...] = reader.owners_of_place(of)
    if said.whose is Whose.UNSAID and spot.determiner in ("a", "an") and of in ONE_OF_SEVERAL:
        owners = (SHARED,)
    everywhere = said.node is spot and is_for_all(reader.game, sentence)
    if everywhere:
        owners = (SHARED,)
    elif owners != (SHARED,):
        if said.whose is Whose.UNSAID:
            word = of.key if isinstance(of, AreaId) else of.value
            hint = f"Write each {word}, or the {word} of one side"
            hint += f"; a {word}, if this one place is for all." if of in ONE_OF_SEVERAL else "."
            raise Senseless(spot, f"There is more than one {word}.", hint)
        meant = Spoken(reader.side_ids).meant(said, frozenset())
        owners = tuple(owner for owner in owners if owner in meant)
    elif said.whose not in (Whose.UNSAID, Whose.ONE_EACH):
        raise Senseless(said.node, f"`{spot.words()}` is nobody's own.", f"Write: the {spot.name.text}")
    elif said.whose is Whose.ONE_EACH and by_area is False:
        raise Senseless(spot, f"There is only one {spot.name.text}.", f"Write: the {spot.name.text}")
    shut = frozenset(
        Doing(rule.verb.removesuffix(" there")) for rule in sentence.rules if isinstance(rule, space.NobodyThere)
    )
    kind = AreaKind(sentence.name.text.split()[-1])
    for owner in owners:
        lies = Spot(of, owner, part)
        rooms = tuple(
            _room(reader, rule, owner)
            for rule in sentence.rules
            if isinstance(rule, space.AtMostThere | space.NoneThere)
        )
        depth = metres(sentence.depth) if sentence.depth else None
        only = _only(reader, sentence, owner, shut)
        if only is not None:
            rooms = (*rooms, Room(frozenset(reader.populations(reader.side_ids)) - only, 0))
        yield Area(name, owner, kind, lies, depth, shut, rooms, (line,), _stay_s(sentence, shut), only, everywhere)


def _which_other(reader: Reader, sentence: space.Area) -> Senseless:
    """The other end, or another corner: of one and the other nothing says which is which."""
    where, name = sentence.preposition, sentence.spot.name.text
    hint = f"Write: {where} each {name}"
    if len(reader.sides) > 1:
        first, last = (f"{where} the {name} of {_names(reader)[each]}" for each in (0, -1))
        hint = f"Say of both places whose they are: one {first}, one {last}."
    return Senseless(sentence.spot, f"`the other {name}`: which is the one is not said.", hint)


def _only(
    reader: Reader, sentence: space.Area, owner: Owner, shut: frozenset[Doing]
) -> frozenset[Population] | None:
    """Who alone enters an area: of the side whose it is, where the line does not say of which. Raises Senseless."""
    said = [rule for rule in sentence.rules if isinstance(rule, space.OnlyThere)]
    if not said:
        return None
    others = [rule for rule in sentence.rules if isinstance(rule, space.AtMostThere | space.NoneThere)]
    if len(said) > 1 or others or Doing.ENTER in shut:
        raise Senseless(said[-1], "This area says twice who enters it.", "Keep one of the two.")
    found = _of(reader, said[0].who, owner, reader.all_sides if owner is SHARED else frozenset({owner}))
    if not found or found == frozenset(reader.populations(reader.side_ids)):
        title = f"`{said[0].words()}` keeps {'nobody' if found else 'everybody'} out."
        raise Senseless(said[0], title, "Name a role of the side, such as: only goalkeepers there")
    return found


def _stay_s(sentence: space.Area, shut: frozenset[Doing]) -> Fraction | None:
    """How long somebody may be in a place that is safe; of other places the check knows no time."""
    limits = [rule for rule in sentence.rules if isinstance(rule, space.StayLimit)]
    if not limits:
        return None
    if len(limits) > 1 or limits[0].time.seconds <= 0:
        raise Senseless(limits[-1], "This says no time for which somebody may be there.", "Write: at most 10 s there")
    if not shut & {Doing.TOUCH, Doing.HIT}:
        hint = 'Write "nobody is touched there, at most 10 s there", or put the limit in quotes, under play.'
        raise Senseless(limits[0], "A time limit is read only of a place where nobody is touched, or hit.", hint)
    return seconds(limits[0].time)


def _room(reader: Reader, rule: space.AtMostThere | space.NoneThere, owner: Owner) -> Room:
    most = rule.most.whole if isinstance(rule, space.AtMostThere) else 0
    return Room(_of(reader, rule.who, owner, reader.all_sides), most)


def _of(reader: Reader, who: Np, owner: Owner, unsaid: frozenset[SideId]) -> frozenset[Population]:
    """The players of a phrase of an area of an owner; those `unsaid` where it does not say of which side."""
    said, role = reader.player_phrase(who)
    own = frozenset({owner}) if isinstance(owner, SideId) else None
    others = reader.others(owner) if isinstance(owner, SideId) else None
    spoken = Spoken(reader.side_ids, own=own, that=own, other=others or None)
    return frozenset(reader.of_role(spoken.meant(said, unsaid), role))


def read_track(reader: Reader, sentence: space.Track, line: int) -> Iterator[Track]:
    """A track between the homes of two sides."""
    start, goal = SideId(sentence.start.text), SideId(sentence.goal.text)
    if start == goal:
        raise Senseless(sentence.goal, "A track runs from one side to another.", f"Sides: {listing(_names(reader))}.")
    yield Track(TrackId(sentence.name.text), (start, goal), sentence.steps.whole, (line,))


def _names(reader: Reader) -> list[str]:
    return [side.key for side in reader.side_ids]
