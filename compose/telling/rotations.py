"""Tasks that pass from pupil to pupil, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.rotation import Occasion, Rotation, Tries, circle_of
from grammar.core.values import Population
from grammar.frozen import evolve

OCCASIONS = {
    Occasion.ROUND: "after each round",
    Occasion.POINT: "after each point of any side",
    Occasion.AGAINST: "after each point against them",
}


def rotations_told(voice: Voice, rotations: Sequence[Rotation]) -> Iterator[str]:
    """Tasks that pass from pupil to pupil."""
    yield from _in_circles(voice, [each for each in rotations if each.onward is not None])
    for alike in grouped(rotations, "who"):
        rotation: Rotation = alike[0]
        if rotation.onward is not None:
            continue
        who = voice.calling("each").players([each.who for each in alike])
        if voice.me is not None:
            who = voice.calling("each").players([each.who for each in alike if each.who.side == voice.me])
        if voice.play.role(rotation.who) is None:
            yield _with_another_side(voice, rotation, who)
        else:
            yield voice.say("{who} change {occasion}, in turn", who=who, occasion=_occasion(voice, rotation))


def _in_circles(voice: Voice, moving: Sequence[Rotation]) -> Iterator[str]:
    """Tasks through which all move on, one circle after the other."""
    told: set[Population] = set()
    for rotation in moving:
        if rotation.who in told or voice.me not in (None, rotation.who.side):
            continue
        circle = circle_of(rotation, moving)
        told.update(circle)
        across = len({who.side for who in circle}) > 1
        speaking = evolve(voice, me=None, other=None) if across else voice.calling("each")
        after = speaking if across else voice.about(rotation.who.side, Subject.PLAYERS)
        jobs = voice.wording.listed([speaking.players(circle[:1]), *(after.players([who]) for who in circle[1:])])
        pattern = "{jobs} move on {occasion}, each to the next task, the last to the first, as many as the fewest are"
        yield voice.say(pattern, jobs=jobs, occasion=_occasion(voice, rotation))


def _occasion(voice: Voice, rotation: Rotation) -> str:
    if isinstance(rotation.every, Occasion):
        return voice.say(OCCASIONS[rotation.every])
    if isinstance(rotation.every, Tries):
        return voice.say("after {tries}", tries=voice.wording.counted(rotation.every.number, "attempt", "attempts"))
    return voice.say("after {time}", time=voice.time(rotation.every))


def _with_another_side(voice: Voice, rotation: Rotation, who: str) -> str:
    others = voice.players([each for each in voice.play.populations() if each.side != rotation.who.side])
    pattern = "{who} change with {others} {occasion}, in turn"
    return voice.say(pattern, who=who, others=others, occasion=_occasion(voice, rotation))
