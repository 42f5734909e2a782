"""Tasks that pass from pupil to pupil, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped
from compose.telling.voice import Voice
from grammar.core.rotation import Occasion, Rotation


def rotations_told(voice: Voice, rotations: Sequence[Rotation]) -> Iterator[str]:
    """Tasks that pass from pupil to pupil."""
    for alike in grouped(rotations, "who"):
        rotation: Rotation = alike[0]
        who = voice.calling("each").players([each.who for each in alike])
        if voice.me is not None:
            who = voice.calling("each").players([each.who for each in alike if each.who.side == voice.me])
        if voice.play.role(rotation.who) is None:
            yield _with_another_side(voice, rotation, who)
        elif rotation.every is Occasion.ROUND:
            yield voice.say("{who} change after each round, in turn", who=who)
        elif rotation.every is Occasion.POINT:
            yield voice.say("{who} change after each point, in turn", who=who)
        else:
            yield voice.say("{who} change after {time}, in turn", who=who, time=voice.time(rotation.every))


def _with_another_side(voice: Voice, rotation: Rotation, who: str) -> str:
    others = voice.players([each for each in voice.play.populations() if each.side != rotation.who.side])
    if isinstance(rotation.every, Occasion):
        return voice.say("{who} change with {others} after each round, in turn", who=who, others=others)
    time = voice.time(rotation.every)
    return voice.say("{who} change with {others} after {time}, in turn", who=who, others=others, time=time)
