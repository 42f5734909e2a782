"""Players of whom a line speaks only while they carry nothing, or while they have a ball."""

from __future__ import annotations

from compose.telling.voice import Voice
from grammar.core.values import KindId, Laden, Population


def with_empty_hands(voice: Voice, who: frozenset[Population], said: str) -> str:
    """The players as they are called; where others of the same task carry something, that these do not."""
    tasks = {(each.side, each.role) for each in who}
    laden = (each for side in {each.side for each in who} for each in voice.play.populations(side))
    others = any(isinstance(each.role, Laden) and (each.side, each.role.role) in tasks for each in laden)
    if not others or any(isinstance(each.role, Laden) for each in who):
        return said
    return voice.say("{players} with empty hands", players=said)


def with_a_ball(voice: Voice, balls: frozenset[KindId], said: str, several: bool) -> str:
    """The players as they are called, where only those are meant who have one of these balls."""
    if not balls:
        return said
    pattern = "{players} who have {ball}" if several else "{player} who has {ball}"
    return voice.say(pattern, players=said, player=said, ball=voice.balls(balls))
