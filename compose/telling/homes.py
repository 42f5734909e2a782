"""Where players stay, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.play import Along, Home, PickUp


def homes_told(voice: Voice, homes: Sequence[Home]) -> Iterator[str]:
    """Where players stay, and that those leave it who take or bring something."""
    for group in grouped(homes, "who"):
        who = frozenset(home.who for home in group)
        where = voice.about(group[0].who.side, Subject.PLAYERS).place([group[0].at])
        runs = any(isinstance(each.aim, Along | PickUp) for offer, each in voice.play.tries if offer.by in who)
        pattern = "{who} stay {where}, but for what they fetch and bring" if runs else "{who} stay {where}"
        yield voice.say(pattern, who=voice.players(who), where=where)
