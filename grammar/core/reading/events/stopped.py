"""A ball that does not come to its aim, or to a team-mate: who stops it, who catches it."""

from __future__ import annotations

from grammar.core.reading.events.event_phrases import mates_at
from grammar.core.reading.sheet.pairs import among_mates
from grammar.core.reading.sheet.reader import ALL_SKILLS, Reader, with_which
from grammar.core.reading.sheet.whose import Senseless, Spoken
from grammar.core.rules import Happening, Result
from grammar.core.values import Owner, Population, SideId, Skill
from grammar.said import quoting, write
from grammar.sentences import events
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import spoken as spoken_of
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
        raise Senseless(event.what, "`{said}` is no pass.", write("a ball is caught"))
    own = {who.side for who in by} & owner
    return Happening(Result.CAUGHT, by, passes, balls, owner) if not own or len(reader.sides) == 1 else None


def caught(reader: Reader, event: events.Caught, side: SideId, against: Owner, spoken: Spoken) -> Happening | None:
    """Caught by the other side; a pass, which alone is caught at a place or by who froze, by a team-mate."""
    skills, balls = with_which(reader, event.what)
    by = frozenset(reader.populations([side]))
    if not among_mates(reader, event):
        caught = Happening(Result.CAUGHT, by, skills, balls, frozenset({against}))
        return caught if against != side or len(reader.sides) == 1 else None
    if reader.shot(event.what) != (Skill.PASS,):
        raise _no_pass(event)
    at = mates_at(reader, event, spoken) if event.where is not None else frozenset()
    return Happening(Result.PASSED, by, ALL_SKILLS, balls, frozenset(), frozenset(), at)


def _no_pass(event: events.Caught) -> Senseless:
    """Who waits or froze may catch what the others throw, too: a ball caught there need not be a pass."""
    there = spoken_of(event.preposition, event.where)
    title = quoting(
        "What is caught {there} is a pass of one's own side: of other balls it cannot be said yet.", there=there
    )
    hint = quoting(
        "For a pass write: a pass is caught {there}. A throw of the other side is put in quotes under play.",
        there=there,
    )
    return Senseless(event.what, title, hint)
