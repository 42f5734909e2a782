"""What belongs to others where each plays for themselves: "their cones" would be everybody's own."""

from __future__ import annotations

from collections.abc import Collection

from compose.telling.nouns import PLAYER
from compose.telling.voice import Voice
from grammar.core.values import SHARED, Thing
from grammar.frozen import evolve


def of_others(voice: Voice, things: Collection[Thing], several: bool | None = None, determiner: str = "the") -> str:
    """Things that somebody aims at: whoever plays alone aims at those of the others."""
    solo = {side.id for side in voice.play.sides if side.solo}
    if {thing.owner for thing in things} - solo:
        return voice.things(things, several, determiner)
    many = voice.several(things) if several is None else several
    bare = voice.things([evolve(each, owner=SHARED) for each in things], many, determiner)
    players = voice.nouns.player_of(next(iter(solo))) or voice.nouns.noun(PLAYER)
    pattern = "{things} of other {player}" if many else "{things} of another {player}"
    return voice.say(pattern, things=bare, player=players.form(many))
