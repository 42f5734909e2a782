"""What happens to several balls or targets at once, in words, and how one that was hit stands from then on."""

from __future__ import annotations

from compose.telling.of_time import come_or_go_told
from compose.telling.voice import Voice
from grammar.core.clock import ComeIn, TakeAway
from grammar.core.sets import StandAgain
from grammar.core.values import Posture

STANDS = {
    (Posture.DOWN, False): "{it} stays down",
    (Posture.UP, False): "{it} stands up again",
    (Posture.UP, True): "{it} stays as it is",
}


def several_told(voice: Voice, effect: ComeIn | TakeAway | StandAgain) -> str:
    """Balls that come or go; targets of which those that are down stand again, or one of them."""
    if not isinstance(effect, StandAgain):
        return come_or_go_told(voice, effect)
    if effect.all:
        return voice.say("all fallen {things} stand up again", things=voice.things(effect.things, True, None))
    return voice.say("a fallen {thing} stands up again", thing=voice.things(effect.things, False, None))
