"""Who stops balls before a target, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped, guards
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.stopping import Blocking, Means


def blockings_told(voice: Voice, values: Sequence[Blocking]) -> Iterator[str]:
    """Who stops balls, where and with what."""
    for group in grouped(values, "thing"):
        first: Blocking = group[0]
        side = next(iter(first.who)).side
        theirs = voice.about(side, Subject.PLAYERS)
        what = theirs.things({each.thing for each in group}, None if first.each is None else False, _which(first))
        if first.each is None or first.near:
            who = voice.calling("each").players(first.who)
        else:
            who = f"{voice.wording.figure(first.each)} {guards(voice, first.who, first.each != 1)}"
        if first.near:
            pattern = "{who} block shots at {what} {means}: whoever is near, one at a time (an assumption)"
            yield voice.say(pattern, who=who, what=what, means=voice.say(WITH[first.means]))
            continue
        pattern = "{who} block shots at {what} {means}" if first.each != 1 else "{who} blocks shots at {what} {means}"
        yield voice.say(pattern, who=who, what=what, means=voice.say(WITH[first.means]))


def _which(blocking: Blocking) -> str:
    return "the" if blocking.each is None else "each"


WITH = {
    Means.BODY: "with the body",
    Means.HANDS: "with the hands",
    Means.FEET: "with the feet",
    Means.HANDS_AND_FEET: "with the hands and feet",
    Means.HANDS_AND_BODY: "with the hands and body",
    Means.FEET_AND_BODY: "with the feet and body",
    Means.ALL_OF_IT: "with the hands, feet and body",
    Means.MAT: "with a mat",
    Means.TRAY: "with a tray",
}
