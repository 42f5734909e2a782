"""The named areas of the space, each once for every side whose line, half or wall it lies by, or once for all."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.area_kinds import kind_of
from grammar.core.area_kind import AreaKind
from grammar.core.declared import Area, Doing, Room
from grammar.core.reading.set_up.for_all import is_for_all
from grammar.core.reading.sheet.reader import Reader, metres, seconds
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import (
    ONE_OF_SEVERAL,
    SHARED,
    AreaId,
    Landmark,
    Owner,
    Part,
    Population,
    SideId,
    Spot,
)  # fmt: skip
from grammar.said import quoting, write
from grammar.sentences import space
from grammar.sentences.base import Np

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
MOST_PLACES = 12  # our choice: more islands than a hall has mats for
BY_AN_AREA = (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE, Part.AROUND)


def read_area(reader: Reader, sentence: space.Area, line: int) -> Iterator[Area]:
    """An area, once for each side whose line, half or wall it lies by, or once for all."""
    name, spot = AreaId(sentence.name.text), sentence.spot
    of = reader.place(spot)
    by_area = isinstance(of, AreaId)
    part = reader.part(sentence.preposition, spot, *(BY_AN_AREA if isinstance(of, AreaId) else _LIES[of]))
    said = whose(reader.game, spot, place=True)
    owners: tuple[Owner, ...] = reader.owners_of_place(of)
    if said.whose is Whose.OTHER and said.node is spot and of in ONE_OF_SEVERAL:
        of, owners = _other_end(reader, sentence), (SHARED,)
    if said.whose is Whose.UNSAID and spot.determiner in ("a", "an") and of in ONE_OF_SEVERAL:
        owners = (SHARED,)
    places = _places(sentence, of, part)
    if said.node is spot and is_for_all(reader.game, sentence):
        owners, places = (SHARED,), 4 if of is Landmark.CORNER else 2
    elif owners != (SHARED,):
        if said.whose is Whose.UNSAID:
            word = of.key if isinstance(of, AreaId) else of.value
            hint = "Write each {word}, or the {word} of one side."
            if of in ONE_OF_SEVERAL:
                hint = "Write each {word}, or the {word} of one side; a {word}, if this one place is for all."
            raise Senseless(spot, "There is more than one {word}.", quoting(hint, word=word), word=word)
        meant = Spoken(reader.side_ids).meant(said, frozenset())
        owners = tuple(owner for owner in owners if owner in meant)
    elif of is not Landmark.OTHER_END and said.whose not in (Whose.UNSAID, Whose.ONE_EACH):
        raise Senseless(said.node, "`{said}` is nobody's own.", write(f"the {spot.name.text}"), said=spot.words())
    elif said.whose is Whose.ONE_EACH and by_area is False:
        raise Senseless(spot, "There is only one {name}.", write(f"the {spot.name.text}"), name=spot.name.text)
    shut = frozenset(
        Doing(rule.verb.removesuffix(" there")) for rule in sentence.rules if isinstance(rule, space.NobodyThere)
    )
    kind = AreaKind(kind_of(sentence))  # of no kind is no area of a game
    part = _off_the_line(of, part) if kind is AreaKind.BENCH else part
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
        yield Area(name, owner, kind, lies, depth, shut, rooms, (line,), _stay_s(sentence, shut), only, places)


def _off_the_line(of: Landmark | AreaId, part: Part) -> Part:
    """A bench along a line of the court stands behind it, where nobody runs into it."""
    return Part.BEHIND if part is Part.ALONG and of in (Landmark.SIDE_LINE, Landmark.BACK_LINE) else part


def _places(sentence: space.Area, of: Landmark | AreaId, part: Part) -> int:
    """In how many places an area is spread over the court or a half. Raises Senseless."""
    if sentence.places is None:
        return 1
    if of not in (Landmark.COURT, Landmark.HALF) or part is not Part.AT:
        hint = write("in 4 places on the court", "in 2 places in each half")
        raise Senseless(sentence.spot, "`{said}` has no room for several places.", hint)
    if not 2 <= sentence.places.whole <= MOST_PLACES:
        title = quoting(
            "An area lies in 2 to {most} places, not in {places}.", most=MOST_PLACES, places=sentence.places.words()
        )
        raise Senseless(sentence.places, title, "Leave the number out where it is one place.")
    return sentence.places.whole


def _other_end(reader: Reader, sentence: space.Area) -> Landmark:
    """The other back line, where an area lies by "a back line": from that one it is told. Raises Senseless."""
    spots = [area.spot for area in reader.game.all_of("space", space.Area)]
    lines = (spot for spot in spots if spot.determiner in ("a", "an") and spot.owner is None and not spot.other)
    if {reader.place(sentence.spot)} == {Landmark.BACK_LINE} & set(map(reader.place, lines)):
        return Landmark.OTHER_END
    raise _which_other(reader, sentence)


def _which_other(reader: Reader, sentence: space.Area) -> Senseless:
    """The other end, or another corner: of one and the other nothing says which is which."""
    where, name = sentence.preposition, sentence.spot.name.text
    hint = write(f"{where} each {name}")
    one, two = f"{where} a {name}", f"{where} the other {name}"
    other = _side_across(reader, sentence)
    if other is not None:
        hint = write(f"{where} the {name} of {other}")
    elif len(reader.sides) != 2 and reader.place(sentence.spot) is Landmark.BACK_LINE:
        hint = quoting("Where all have both, the one lies {first}, this one {last}.", first=one, last=two)
    elif len(reader.sides) > 1:
        first, last = (f"{where} the {name} of {[side.key for side in reader.side_ids][each]}" for each in (0, -1))
        hint = quoting("Say of both places whose they are: one {first}, one {last}.", first=first, last=last)
    return Senseless(sentence.spot, "`the other {name}`: which is the one is not said.", hint, name=name)


def _side_across(reader: Reader, sentence: space.Area) -> str | None:
    """The side of the other end, where another place lies by the same line of one of two sides."""
    spots = [area.spot for area in reader.game.all_of("space", space.Area)]
    alike = [spot for spot in spots if spot is not sentence.spot and reader.place(spot) is reader.place(sentence.spot)]
    named = {whose(reader.game, spot, place=True).side for spot in alike} - {None}
    across = {side.key for side in reader.side_ids} - {side.key for side in named if side}
    return min(across) if len(reader.sides) == 2 and len(named) == 1 else None


def _only(reader: Reader, sentence: space.Area, owner: Owner, shut: frozenset[Doing]) -> frozenset[Population] | None:
    """Who alone enters an area: of the side whose it is, where the line does not say of which. Raises Senseless."""
    said = [rule for rule in sentence.rules if isinstance(rule, space.OnlyThere)]
    if not said:
        return None
    others = [rule for rule in sentence.rules if isinstance(rule, space.AtMostThere | space.NoneThere)]
    if len({each.words() for each in said}) > 1 or others or Doing.ENTER in shut:
        raise Senseless(said[-1], "This area says twice who enters it.", "Keep one of the two.")
    found = _of(reader, said[0].who, owner, reader.all_sides if owner is SHARED else frozenset({owner}))
    if not found or found == frozenset(reader.populations(reader.side_ids)):
        title = quoting(
            "`{said}` keeps {what} out.", said=said[0].words(), what=quoting("nobody" if found else "everybody")
        )
        raise Senseless(said[0], title, "Name a role of the side, such as: only goalkeepers there")
    return found


def _stay_s(sentence: space.Area, shut: frozenset[Doing]) -> Fraction | None:
    """How long somebody may be in a place that is safe; of other places the check knows no time."""
    limits = [rule for rule in sentence.rules if isinstance(rule, space.StayLimit)]
    if not limits:
        return None
    if len(limits) > 1 or limits[0].time.seconds <= 0:
        raise Senseless(limits[-1], "This says no time for which somebody may be there.", write("at most 10 s there"))
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
    spoken = reader.of_one(owner) if isinstance(owner, SideId) else Spoken(reader.side_ids)
    return frozenset(reader.of_role(spoken.meant(said, unsaid), role))
