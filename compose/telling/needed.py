"""What a teacher gets ready before the game: the kit, then what no kit lists: benches, bibs, marks for the lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import reduce

from compose.staging.cupboard import KitRow
from compose.staging.resolved import resolved
from compose.staging.staging import Staging
from compose.telling.french import joined
from compose.telling.kit import for_each_told, likeness_told
from compose.telling.voice import Voice
from compose.telling.wording import ENGLISH, Wording
from grammar.core.area_kind import AreaKind
from grammar.core.values import KindId, SideId
from grammar.game import GameKit
from library import kit_names

TAPE_OR_CONES, TAPE = "tape or cones to mark the lines", "tape to mark the lines"
MARKERS = ("cone", "marker dome")
FEWEST_MARKERS = 4  # our choice: one for each corner


def kit_lines(staging: Staging, wording: Wording = ENGLISH) -> Iterator[str]:
    """All that has to be there, over all courts; where the class says what it has, what is there of it."""
    core = resolved(staging.game)
    voice, courts = Voice(core, wording), len(staging.courts)
    for row in staging.kit:
        yield f"{_row(voice, row, courts)}{what_is_there(row, staging.school_class.lists_kit, wording)}"
    if staging.benches is not None:
        yield benches_told(voice, staging.benches.needed)
    yield from unlisted_told(voice, _marks(staging))


def _marks(staging: Staging) -> str:
    """With what the lines are marked: with tape alone where a class lists its kit and no cones are left over."""
    if not staging.school_class.lists_kit:
        return TAPE_OR_CONES
    there = sum(each.count for each in staging.school_class.cupboard if _is_marker(each.like))
    used = sum(row.there for row in staging.kit if _is_marker(row.line.like))
    used += sum(each.count for row in staging.kit for each in row.stand_ins if _is_marker(each.like))
    return TAPE_OR_CONES if there - used >= FEWEST_MARKERS else TAPE


def _is_marker(like: str) -> bool:
    item = kit_names().get(like)
    return item is not None and item.name in MARKERS


def benches_told(voice: Voice, number: int) -> str:
    """So many benches, and for which places."""
    places = dict.fromkeys(area.id for area in voice.play.areas if area.kind is AreaKind.BENCH)
    names = ", ".join(voice.nouns.area(place).one for place in places)
    return f"{voice.wording.counted(number, 'bench', 'benches')} ({names})"


def unlisted_told(voice: Voice, marks: str = TAPE_OR_CONES) -> Iterator[str]:
    """What every game needs: the sides are told apart, or in one side those with a task; the lines are seen."""
    yield from _for_those_with_a_task(voice)
    if len(voice.play.sides) > 1:
        sides = voice.wording.listed(voice.name(side) for side in voice.play.side_ids)
        told = voice.say("bibs or bands to tell {sides} apart", sides=sides)
        yield told if voice.wording.english else joined(told)
    yield voice.say(marks)


def _for_those_with_a_task(voice: Voice) -> Iterator[str]:
    if len(voice.play.sides) == 1 and voice.play.roles:
        names = voice.wording.listed(dict.fromkeys(voice.nouns.role(role.id).many for role in voice.play.roles))
        yield voice.say("bibs or bands for {players}", players=names)


def unlisted_of_all(stagings: Sequence[Staging], wording: Wording = ENGLISH) -> Iterator[str]:
    """The same for several games in a row; of one side only those with a task wear bibs."""
    if any(len(each.game.sides) > 1 for each in stagings):
        yield wording.say("bibs or bands to tell the sides apart")
    voices = (Voice(resolved(each.game), wording) for each in stagings)
    yield from dict.fromkeys(line for voice in voices for line in _for_those_with_a_task(voice))
    marks = {_marks(each) for each in stagings}
    yield wording.say(TAPE if TAPE in marks else TAPE_OR_CONES)


def stand_in_lines(staging: Staging, wording: Wording = ENGLISH) -> Iterator[str]:
    """What stands in for things of which the class has too few: "10 lanterns: 6 cones can stand in."."""
    for row in staging.kit:
        if row.stand_ins:
            things = wording.counted(row.needed, row.line.name, row.line.plural)
            yield wording.say("{balls}: {shares}.", balls=things, shares=instead_told(row, wording))


def also_line(staging: Staging, wording: Wording = ENGLISH) -> str:
    """The same in one line, where the kit has lines of its own."""
    voice = Voice(resolved(staging.game), wording)
    benches = (benches_told(voice, staging.benches.needed),) if staging.benches is not None else ()
    things = reduce(
        lambda one, other: voice.say("{one}; {other}", one=one, other=other),
        (*benches, *unlisted_told(voice, _marks(staging))),
    )
    return wording.say("Also needed: {things}.", things=things)


def what_is_there(row: KitRow, listed: bool, wording: Wording) -> str:
    """What of a line of the kit is there, what stands in and what is short; nothing where all is taken to be there."""
    if not listed:
        return ""
    parts = [wording.say("{number} there", number=wording.figure(row.in_cupboard))]
    if row.stand_ins:
        parts.append(instead_told(row, wording))
    said = f", {', '.join(parts)}"
    if row.short > 0:
        said = wording.say(
            "{one}; {other}", one=said, other=wording.say("{number} short", number=wording.figure(row.short))
        )
    return said


def instead_told(row: KitRow, wording: Wording) -> str:
    """ "6 cones can stand in"."""
    names = [wording.counted(each.count, each.name, each.name) for each in row.stand_ins]
    return wording.say("{things} can stand in", things=wording.listed(names))


def _row(voice: Voice, row: KitRow, courts: int) -> str:
    """ "24 soft tennis balls (2 on each court, 1 for each player)"."""
    line, kind = row.line, voice.play.kind(KindId(row.line.name))
    said = voice.counted(row.needed, voice.nouns.kind(kind.id))
    details = []
    if courts > 1 and row.needed % courts == 0 and not line.per_player:
        details.append(voice.say("{count} on each court", count=str(row.needed // courts)))
    details += [*_whose(voice, line), *likeness_told(voice, kind, row.needed)]
    return f"{said} ({', '.join(details)})" if details else said


def _whose(voice: Voice, line: GameKit) -> Iterator[str]:
    """For whom they are: so many for each side, for one of them, for each player."""
    if line.per_player:
        of_side = SideId(line.owner) if line.owner not in (None, "each") else None
        told = for_each_told(voice, of_side)
        yield voice.say("{count} {for_each}", count=str(line.count), for_each=told)
    elif line.owner == "each":
        yield voice.say("{count} for each side", count=str(line.count))
    elif line.owner is not None:
        yield voice.say("for {side}", side=voice.name(SideId(line.owner)))
