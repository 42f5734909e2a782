"""What happens to all targets of a side at once, in words."""

from __future__ import annotations

from compose.telling.voice import Voice
from grammar.core.sets import StandAgain


def stood_up_told(voice: Voice, effect: StandAgain) -> str:
    """Those that are down stand again, or one of them."""
    if effect.all:
        return voice.say("all fallen {things} stand up again", things=voice.things(effect.things, True, None))
    return voice.say("a fallen {thing} stands up again", thing=voice.things(effect.things, False, None))
