"""The kit in words: how many of what, for whom, and what it is like."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.voice import Voice
from grammar.core.declared import Kind, Per, Supply
from grammar.core.values import SideId


def supplies_told(voice: Voice, supplies: Sequence[Supply]) -> Iterator[str]:
    """How many of a thing there are: in all, and for each side."""
    for supply in supplies:
        kind = voice.play.kind(supply.thing.kind)
        noun, owner = voice.nouns.kind(kind.id), supply.thing.owner
        number = supply.count
        details = []
        if supply.per is Per.PLAYER:
            details.append(for_each_told(voice, owner))
        elif isinstance(owner, SideId):
            if voice.me is not None:
                number *= len(voice.play.sides)
                details.append(voice.say("{count} for each side", count=str(supply.count)))
            else:
                details.append(voice.say("for {side}", side=voice.name(owner)))
        details += likeness_told(voice, kind, number)
        said = voice.counted(number, noun)
        yield f"{said} ({', '.join(details)})" if details else said


def for_each_told(voice: Voice, owner: object) -> str:
    """Whose players have so many each."""
    if voice.me is not None or not isinstance(owner, SideId) or len(voice.play.sides) == 1:
        return voice.say("for each player")
    player = voice.nouns.player_of(owner)
    if player is not None:
        return voice.say("for each {player}", player=player.one)
    return voice.say("for each player of {side}", side=voice.name(owner))


def likeness_told(voice: Voice, kind: Kind, number: int) -> Iterator[str]:
    """What a thing is like, how large, and in how many parts."""
    if kind.like.key != kind.id.key:
        like = voice.nouns.with_article("a", voice.nouns.like(kind.like), False)
        yield voice.say("like {what}", what=like)
    if kind.scale != 1:
        yield voice.say("{percent} % as big", percent=voice.wording.figure(float(kind.scale * 100)))
    if kind.parts > 1:
        pattern = "each of {parts} parts" if number > 1 else "of {parts} parts"
        yield voice.say(pattern, voice.nouns.kind(kind.id).feminine, parts=str(kind.parts))
