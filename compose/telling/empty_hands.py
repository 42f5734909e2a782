"""Players of whom a line speaks only while they carry nothing."""

from __future__ import annotations

from compose.telling.voice import Voice
from grammar.core.values import Laden, Population


def with_empty_hands(voice: Voice, who: frozenset[Population], said: str) -> str:
    """The players as they are called; where others of the same task carry something, that these do not."""
    tasks = {(each.side, each.role) for each in who}
    laden = (each for side in {each.side for each in who} for each in voice.play.populations(side))
    others = any(isinstance(each.role, Laden) and (each.side, each.role.role) in tasks for each in laden)
    if not others or any(isinstance(each.role, Laden) for each in who):
        return said
    return voice.say("{players} with empty hands", players=said)
