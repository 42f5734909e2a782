"""A ball that somebody stops on its way: before a target, or as a pass of the other side."""

from __future__ import annotations

from grammar.core.reading.reader import ALL_SKILLS, Reader, with_which
from grammar.core.reading.whose import Senseless
from grammar.core.rules import Happening, Result
from grammar.core.values import Owner, Population, Skill
from grammar.sentences.ball import Intercepted
from grammar.sentences.blocking import Blocked


def stopped(
    reader: Reader, event: Blocked | Intercepted, by: frozenset[Population], owner: frozenset[Owner]
) -> Happening | None:
    """What has to happen, where it can between these two."""
    skills, balls = with_which(reader, event.what)
    if isinstance(event, Blocked):
        aimed = frozenset(thing for thing in reader.blocked if thing.owner in owner)
        return Happening(Result.BLOCKED, by, skills, balls, owner, aimed) if aimed else None
    passes = skills & {Skill.PASS} if skills != ALL_SKILLS else frozenset({Skill.PASS})
    if not passes:
        raise Senseless(event.what, f"`{event.what.words()}` is no pass.", "Write: a ball is caught")
    own = {who.side for who in by} & owner
    return Happening(Result.CAUGHT, by, passes, balls, owner) if not own or len(reader.sides) == 1 else None
