"""From where nobody fetches, or nobody but the teacher."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import in_both
from compose.telling.voice import Voice
from grammar.core.play import Fetch, Unfetched
from grammar.core.values import KindId, Spot, Teacher


def unfetched_told(voice: Voice, lines: Sequence[Unfetched]) -> Iterator[str]:
    """From where nobody fetches."""
    by_teacher = {
        (each.ball, each.spot)
        for each in voice.play.services
        if isinstance(each, Fetch) and not each.granted and isinstance(each.who, Teacher)
    }
    for group in in_both(lines):
        but_the_teacher = all((each.ball, each.spot) in by_teacher for each in group)
        yield nobody_fetches(voice, {each.ball for each in group}, {each.spot for each in group}, but_the_teacher)


def nobody_fetches(voice: Voice, balls: set[KindId], spots: set[Spot], but_the_teacher: bool = False) -> str:
    """The sentence for such a place."""
    what, where = voice.balls(balls), voice.calling("a").source(spots)
    if but_the_teacher:
        return voice.say("nobody but the teacher fetches {what} {where}", what=what, where=where)
    return voice.say("nobody fetches {what} {where}", what=what, where=where)
