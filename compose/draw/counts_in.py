"""The counts of a moment, side by side, in another language than English."""

from __future__ import annotations

import re
from collections.abc import Sequence

from compose.check.words import RESULT
from compose.net.lower.say_places import ON
from compose.net.net import Move, Net, Place
from compose.net.side_words import is_plural
from compose.telling.french import definite, feminine, joined, noun, side_label, side_noun
from compose.telling.wording import Wording
from grammar.words import plural

_SPOT = re.compile(r"(behind|on|beside|before) (?:the )?(.+)")


def counts_in(net: Net, counts: Sequence[int], wording: Wording) -> str:
    """Such as "hérons : 11 en jeu, 3 pierres debout ; brochets : ..."; left out is what is and was nothing, and
    what never changes."""
    moved = _moved(net)
    told = []
    for side in (*net.sides, None):
        own = [
            _counted(net, place, counts[number], wording)
            for number, place in enumerate(net.places)
            if place.side == side and place.token != RESULT and number in moved and (counts[number] or place.start)
        ]
        if own and side:
            told.append(wording.say("{name}: {rule}", name=side_label(wording, side), rule=", ".join(own)))
        elif own:
            told.append(", ".join(own))
    text = told[0] if told else wording.say("as at the set-up")
    for more in told[1:]:
        text = wording.say("{one}; {other}", one=text, other=more)
    return joined(text)


def _moved(net: Net) -> frozenset[int]:
    """The places that any rule changes."""
    found: set[int] = set()
    every = [each.effects for each in net.transitions] + [each.effects for each in net.reactions]
    for effect in (effect for effects in every for effect in effects):
        found |= {effect.source, effect.target} if isinstance(effect, Move) else {effect.place}
    return frozenset(found)


def _counted(net: Net, place: Place, number: int, wording: Wording) -> str:
    parts = place.name.split("/")
    if place.token == "points":
        return wording.counted(number, "point", "points")
    if place.token == "player":
        role = None if parts[2] == "-" else parts[2]
        who = wording.counted(number, role, plural(role)) if role else wording.figure(number)
        return f"{who} {standing(parts[3], wording)}"
    things = f"{wording.figure(number)} {thing(place, number >= 2, wording)[0]}"
    if place.token == "target":
        return f"{things} {wording.say('standing' if parts[3] == 'standing' else 'down')}"
    if place.token == "body":
        return wording.say("{things} on step {step}", things=things, step=parts[2])
    where = "part" if parts[2] == "half" and len(net.sides) > 2 else parts[2]
    return f"{things} {spot(where, wording)}"


def thing(place: Place, several: bool, wording: Wording) -> tuple[str, bool]:
    """A kind of thing in a number, and whether it is feminine."""
    kind = str(place.kind)
    return noun(wording, kind, several, plural(kind) if several else kind)


def standing(name: str, wording: Wording) -> str:
    """Where players are: "en jeu", "hors jeu", "dans la file d’attente"."""
    if name in ("in", "out"):
        return wording.say("in play" if name == "in" else "out of play")
    return spot(name, wording)


def spot(name: str, wording: Wording) -> str:
    """Where something lies or somebody stands: a place that the rules know, or an area."""
    if name == "middle":
        return wording.say("in the middle")
    before = _SPOT.fullmatch(name)
    word = before[1] if before else "on" if name.rsplit(maxsplit=1)[-1] in ("court", *ON) else "in"
    where = definite(wording, before[2] if before else name)
    return f"{wording.known('preposition', word) or word} {where}"


def who(side: str, number: int, wording: Wording) -> str:
    """ "un héron", "3 joueurs du Nord"."""
    if not is_plural(side):
        one = wording.say("one {player} of {side}", player=wording.named("player"), side=definite(wording, side))
        players = wording.counted(number, "player", "players")
        return one if number == 1 else wording.say("{players} of {side}", players=players, side=definite(wording, side))
    text, female = side_noun(wording, side, number >= 2)
    return one_or_more(text, female, number, wording)


def one_or_more(text: str, female: bool, number: int, wording: Wording) -> str:
    """ "une pierre", "3 pierres"."""
    return wording.say("one {thing}", female, thing=text) if number == 1 else f"{wording.figure(number)} {text}"


def is_feminine(side: str, wording: Wording) -> bool:
    """Whether what agrees with players of a side is feminine."""
    return side_noun(wording, side, False)[1] if is_plural(side) else feminine(wording, "player")
