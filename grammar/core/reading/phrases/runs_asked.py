"""How many runs of a side a line asks for."""

from __future__ import annotations

from grammar.core.guards import OfEach
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import Skill
from grammar.said import write
from grammar.sentences import attempting, claims
from grammar.sentences.relays import HasRun
from grammar.sentences.runs import CountedRuns


def times_run(reader: Reader, claim: HasRun) -> int | OfEach:
    """The number asked for, in all or with each player. Raises Senseless where none is, or nobody runs for a side."""
    if not any(Skill.RUN.value in each.skills for each in reader.game.all_of("play", attempting.Attempt)):
        hint = write("players run from the start strip to the far strip and back, only 1 player at a time")
        raise Senseless(claim, "No line of play says who runs.", hint)
    if reader.solo:
        title = "Where each plays for themselves nobody runs for a side."
        raise Senseless(claim, title, "Make sides of them, or give points when: a runner arrives")
    count = claim.quantity.count if isinstance(claim.quantity, claims.Exactly) else None
    if count is None or count.value != count.whole or count.whole < 1:
        raise Senseless(claim.quantity, "Nobody has to run for that.", "Write how often, from once.")
    with_each = isinstance(claim.counted, CountedRuns) and claim.counted.with_each is not None
    return OfEach(count.whole) if with_each else count.whole
