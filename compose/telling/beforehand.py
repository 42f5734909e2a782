"""The court, the sides, the kit and the set-up in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from attrs import evolve

from compose.telling.nouns import PLAYER, Noun
from compose.telling.services import grouped
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.declared import (
    ALL,
    AllBut,
    Court,
    Cut,
    Odd,
    Organisation,
    Role,
    Side,
    Start,
    Track,
)
from grammar.core.lives import Lives
from grammar.core.values import PLAIN, OnStep, Part, SideId, Spot, Thing, Upon


def courts_told(voice: Voice, courts: Sequence[Court]) -> Iterator[str]:
    """The court and how it is divided."""
    for court in courts:
        parts = len(voice.play.sides)
        cut = voice.say(" and halve it across")
        if court.cut is Cut.WHOLE:
            cut = voice.say(" in one piece")
        elif parts != 2:
            cut = voice.say(" in quarters" if parts == 4 else " in {parts} equal parts", parts=str(parts))
        size = {"long": voice.metres(court.length_m), "wide": voice.metres(court.width_m)}
        yield voice.say("mark a court {long} by {wide}", **size) + cut


def tracks_told(voice: Voice, tracks: Sequence[Track]) -> Iterator[str]:
    """How long a track is, and whose homes are its ends."""
    home = voice.nouns.noun("home")
    for track in tracks:
        start, goal = (voice.of(home, False, [side]) for side in track.homes)
        steps = voice.wording.counted(track.steps, "step", "steps")
        rule = voice.say("{steps} from {start} to {goal}", steps=steps, start=start, goal=goal)
        yield voice.say("{name}: {rule}", name=voice.nouns.area(track.id).one, rule=rule)


def sides_told(voice: Voice, sides: Sequence[Side]) -> Iterator[str]:
    """How many play on each side; on a card this is a fact and no line."""
    for group in grouped(sides, "id"):
        first: Side = group[0]
        names = voice.wording.listed(voice.name(side.id) for side in group)
        pattern = "{names}: {players} each" if len(group) > 1 else "{names}: {players}"
        said = voice.say(pattern, names=names, players=headcount(voice, first.least, first.most))
        yield voice.say("{one}; {other}", one=said, other=voice.say("each for themselves")) if first.solo else said


def headcount(voice: Voice, least: int, most: int, noun: Noun | None = None) -> str:
    """ "6 to 14 players"."""
    players = voice.counted(most, noun or voice.nouns.noun(PLAYER))
    if least == most:
        return players
    if least == 0:
        return voice.say("up to {players}", players=players)
    return voice.say("{low} to {high}", low=str(least), high=players)


def roles_told(voice: Voice, roles: Sequence[Role]) -> Iterator[str]:
    """How many have a role, and what it changes."""
    for role in roles:
        name, called = voice.nouns.role(role.id).one, voice.nouns.player_of(role.side)
        players = headcount(voice, role.least, role.most, called if voice.me is None else None)
        said = voice.say("{name}: {players}", name=name, players=players)
        if voice.me is not None or called is None:
            side = voice.calling("each").sides([role.side])
            said = voice.say("{name}: {players} of {side}", name=name, players=players, side=side)
        if role.aims_from_m is not None:
            said = _and(voice, said, voice.say("aims from {distance}", distance=voice.metres(role.aims_from_m)))
        if role.uses is not None:
            said = _and(voice, said, voice.say("uses {what}", what=voice.balls([role.uses])))
        if not role.aimed_at:
            said = _and(voice, said, voice.say("nobody aims at them"))
        yield said


def _and(voice: Voice, one: str, other: str) -> str:
    return voice.say("{one}; {other}", one=one, other=other)


def organisations_told(voice: Voice, organisations: Sequence[Organisation]) -> Iterator[str]:
    """Several courts, and the pupil too many."""
    for organisation in organisations:
        if organisation.courts_most > 1:
            yield voice.say("up to {count} courts side by side", count=str(organisation.courts_most))
        if organisation.odd is not Odd.UNSAID:
            yield voice.say(f"an odd pupil {organisation.odd.value}")


def starts_told(voice: Voice, starts: Sequence[Start]) -> Iterator[str]:
    """Where things and players are at the set-up."""
    for start in starts:
        spread = f", {voice.say(start.spread.value, _feminine(voice, start))}" if start.spread else ""
        owner = _owner(start)
        alone = Subject.PLAYER if start.count == 1 else Subject.PLAYERS
        speaking = voice.about(owner, Subject.SIDE if isinstance(start.what, Thing) else alone)
        where = _where(speaking if voice.me is not None and owner else voice.calling("each"), start)
        what = _what(voice.calling("each"), start)
        if isinstance(start.what, Thing):
            placed = (each.count for each in voice.play.starts if each.what == start.what)
            rest = start.count is ALL and any(count is not ALL for count in placed)
            left = voice.say(", as many as are left") if rest else ""
            down = voice.say(", lying down") if start.down else ""
            yield voice.say("put {what} {where}", what=what, where=where) + left + spread + down
        else:
            pattern = "{who} starts {where}" if start.count == 1 else "{who} start {where}"
            yield voice.say(pattern, who=what, where=where) + spread


def _owner(start: Start) -> SideId | None:
    owner = start.what.owner if isinstance(start.what, Thing) else start.what.side
    return owner if isinstance(owner, SideId) else None


def _feminine(voice: Voice, start: Start) -> bool:
    return isinstance(start.what, Thing) and voice.nouns.kind(start.what.kind).feminine


def _what(voice: Voice, start: Start) -> str:
    """ "4 foam balls", "the lanterns of each side", "all but 16 settlers"."""
    if isinstance(start.what, Thing):
        noun, owner = voice.nouns.kind(start.what.kind), _owner(start)
        owners = (owner,) if owner else ()
        if isinstance(start.count, int):
            return voice.of(_numbered(voice, start.count, noun), start.count != 1, owners, None)
        if isinstance(start.count, AllBut):
            return voice.say("all but {things}", things=voice.counted(start.count.count, noun))
        return voice.of(noun, voice.several([start.what]), owners)
    who = (
        [start.what]
        if len(voice.play.roles_of(start.what.side)) == 1 or start.what.role is not PLAIN
        else (voice.play.populations(start.what.side))
    )
    if isinstance(start.count, int):
        said = voice.players(who, None, start.count != 1)
        return f"{voice.wording.figure(start.count)} {said}"
    if isinstance(start.count, AllBut):
        said = voice.players(who, None, start.count.count != 1)
        return voice.say("all but {things}", things=f"{voice.wording.figure(start.count.count)} {said}")
    return voice.players(who)


def _numbered(voice: Voice, number: int, noun: Noun) -> Noun:
    figure = voice.wording.figure(number)
    return evolve(noun, one=f"{figure} {noun.one}", many=f"{figure} {noun.many}")


def _where(voice: Voice, start: Start) -> str:
    at = start.at
    if isinstance(at, Spot):
        return voice.place([at])
    if isinstance(at, Upon):
        where = voice.nouns.with_article("the", voice.nouns.kind(at.kind), True)
        return f"{voice.word('on' if at.part is Part.AT else at.part.value)} {where}"
    return voice.say("on {step}", step=voice.step(at)) + _homes(voice, at)


def _homes(voice: Voice, at: OnStep) -> str:
    """How far it is to either home, where one is nearer."""
    track = next(each for each in voice.play.tracks if each.id == at.track)
    if 2 * at.step == track.steps:
        return ""
    home = voice.nouns.noun("home")
    near, far = (voice.of(home, False, [side]) for side in track.homes)
    steps = voice.wording.counted(at.step, "step", "steps")
    return voice.say(
        ", {steps} from {one} and {left} from {other}",
        steps=steps,
        one=near,
        left=str(track.steps - at.step),
        other=far,
    )


def lives_told(voice: Voice, values: Sequence[Lives]) -> Iterator[str]:
    """How many lives each player has."""
    for group in grouped(values, "who"):
        who = voice.players({each.who for each in group}, "each", False)
        lives = voice.wording.counted(group[0].number, "life", "lives")
        has = "{who} has {lives}; whoever comes back after the last one has all of them again"
        yield voice.say(has, who=who, lives=lives)
