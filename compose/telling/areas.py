"""The places of the floor in words: where each lies, and who may be or do what there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from attrs import evolve

from compose.telling.nouns import PLAYER, Noun
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.declared import Area, Doing, Room
from grammar.core.values import Population, RoleId, SideId, without_load

NOBODY_THERE = {
    Doing.GUARD: "nobody guards there",
    Doing.ENTER: "nobody enters there",
    Doing.ACT: "nobody acts there",
    Doing.TOUCH: "nobody is touched there",
    Doing.HIT: "nobody is hit there",
}


def areas_told(voice: Voice, areas: Sequence[Area]) -> Iterator[str]:
    """Where an area lies and what nobody does in it."""
    for area in areas:
        owner = area.owner if isinstance(area.owner, SideId) else None
        own = (owner,) if owner else ()
        near = voice.about(owner, Subject.SIDE) if voice.me is not None else voice
        name = voice.calling("each").of(voice.nouns.area(area.id), False, own, None)
        deep = voice.say("{depth} deep, ", depth=voice.metres(area.depth_m)) if area.depth_m else ""
        rules = [voice.say(NOBODY_THERE[doing]) for doing in Doing if doing in area.shut]
        for room in area.room if area.only is None else ():
            noun = _of_whom(voice, room, owner)
            if room.most:
                most = "at most {who} at each" if area.places > 1 else "at most {who} there"
                rules.append(voice.say(most, who=voice.counted(room.most, noun)))
            else:
                rules.append(voice.say("no {who} there", who=noun.many))
        if area.only is not None:
            rules.append(voice.say("only {who} there", who=_alone(voice, area, area.only)))
        if area.stay_s is not None:
            rules.append(voice.say("at most {time} there", time=voice.time(area.stay_s)))
        said = voice.say("{name}: {rule}", name=name, rule=f"{deep}{near.lies(area)}")
        for rule in rules:
            said = voice.say("{one}; {other}", one=said, other=rule)
        yield said


def _of_whom(voice: Voice, room: Room, owner: SideId | None) -> Noun:
    """The players of a room: by their task, by a side that is called by them, or with whose they are, if not all."""
    roles = [each.role for each in room.who if isinstance(each.role, RoleId)]
    if len(set(roles)) == 1 and len(roles) == len(room.who):
        return voice.nouns.role(roles[0])
    noun, sides = voice.nouns.noun(PLAYER), {each.side for each in room.who}
    if len(sides) == len(voice.play.sides):
        return noun
    called = voice.nouns.player_of(next(iter(sides))) if len(sides) == 1 else None
    whose = partial(voice.about(owner, Subject.PLAYER).of, noun, owners=sides, determiner=None)
    return called or evolve(noun, one=whose(several=False), many=whose(several=True))


def _alone(voice: Voice, area: Area, who: frozenset[Population]) -> str:
    """Those who alone enter an area: by their role where they have one, and the area is said to be their side's or is
    for all of that role."""
    roles = {without_load(each.role) for each in who}
    sides = {role.side for role in voice.play.roles if role.id in roles}
    everybody = isinstance(area.owner, SideId) or {each.side for each in who} == sides
    if len(roles) == 1 and isinstance(role := next(iter(roles)), RoleId) and everybody:
        return voice.nouns.with_article("the", voice.nouns.role(role), True)
    return voice.players(who)
