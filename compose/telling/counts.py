"""The counts of a moment, side by side: what players, things and balls are where."""

from __future__ import annotations

from collections.abc import Sequence

from compose.net.net import RESULT, Move, Net, Place
from compose.net.on_the_way import on_the_way
from compose.telling.french import joined
from compose.telling.nouns import Noun
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.values import At, KindId, OnStep, Posture, Presence, RoleId, SideId


def counts_told(voice: Voice, net: Net, counts: Sequence[int]) -> str:
    """Such as "hérons : 11 en jeu, 3 pierres debout ; brochets : ..."; left out is what is and was nothing, and
    what never changes."""
    moved, wording = _moved(net) - ({net.schedule.place} if net.schedule is not None else set()), voice.wording
    told = []
    for side in (*net.sides, None):
        own = [
            _counted(_of(voice, side), place, counts[number])
            for number, place in enumerate(net.places)
            if place.side == side and number in moved and (counts[number] or place.start) and _told(place)
        ]
        if own and side:
            name = voice.nouns.label(SideId(side))
            told.append(wording.say("{name}: {rule}", name=name, rule=", ".join(own)))
        elif own:
            told.append(", ".join(own))
    text = told[0] if told else wording.say("as at the set-up")
    for more in told[1:]:
        text = wording.say("{one}; {other}", one=text, other=more)
    return text if wording.english else joined(text)


def _told(place: Place) -> bool:
    return place.token not in (RESULT, "line") and not on_the_way(place)


def _of(voice: Voice, side: str | None) -> Voice:
    """The voice in which "their half" or "its half" is that of the side."""
    if side is None:
        return voice
    called = voice.nouns.player_of(SideId(side)) is not None
    return voice.about(SideId(side), Subject.PLAYERS if called else Subject.SIDE)


def _moved(net: Net) -> frozenset[int]:
    """The places that any rule changes."""
    found: set[int] = set()
    every = [each.effects for each in net.transitions] + [each.effects for each in net.reactions]
    for effect in (effect for effects in every for effect in effects):
        found |= {effect.source, effect.target} if isinstance(effect, Move) else {effect.place}
    return frozenset(found)


def _counted(voice: Voice, place: Place, number: int) -> str:
    if place.token == "points":
        return voice.counted(number, voice.nouns.noun("point"))
    if place.token == "runs":
        return voice.counted(number, voice.nouns.noun("finished run"))
    if place.token == "row":
        return voice.say("{number} in a row", number=str(number))
    if place.load is not None:
        return voice.say("{number} with {load}", number=str(number), load=voice.any_of({place.load.kind}))
    if place.token == "player":
        role = voice.counted(number, voice.nouns.role(RoleId(place.kind))) if place.kind else str(number)
        return f"{role} {standing(voice, place)}"
    return f"{voice.counted(number, kind_of(voice, place))} {standing(voice, place)}"


def kind_of(voice: Voice, place: Place) -> Noun:
    """The noun of what a place counts."""
    return voice.nouns.kind(KindId(str(place.kind)))


def standing(voice: Voice, place: Place) -> str:
    """How tokens of a place are there: "en jeu", "debout", "dans la file d’attente", "au pas 3"."""
    match place.standing:
        case At(spot):
            return voice.place([spot])
        case OnStep(_, step):
            return voice.say("on step {step}", step=str(step))
        case Posture.UP:
            return voice.say("standing")
        case Posture.DOWN:
            return voice.say("down")
        case Presence.OUT:
            return voice.say("out of play")
    return voice.say("in play")
