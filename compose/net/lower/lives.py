"""How many lives players may have left where they are: in play, and wherever they come with some of them left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from grammar.core.game import Play
from grammar.core.guards import LivesOf, counts_in
from grammar.core.lives import LastLife
from grammar.core.play import Waiting
from grammar.core.rules import AllPlaying, Go, Happening, Person, Rule, Swap
from grammar.core.schedule import compared, guards_of
from grammar.core.values import AreaId, At, Landmark, Population, Presence, Spot

Kept = Mapping[AreaId | Landmark, int]


def where_kept(play: Play) -> Kept:
    """The places to which somebody comes with lives left, each with the fewest that anybody has there.

    Where nobody comes but for the last life, all who wait are alike: they have all lives again as they come back.
    Where lives are counted whoever waits from the start has all of theirs.
    """
    sent = [(each, isinstance(rule.trigger, LastLife)) for rule in play.rules for each in _sent(rule)]
    if _are_counted(play):
        starts = (each.at for each in play.starts if isinstance(each.what, Population))
        sent += [(at.of, False) for at in starts if isinstance(at, Spot)]
    last = {each for each, of_the_last in sent if of_the_last}
    return {each: 0 if each in last else 1 for each, of_the_last in sent if not of_the_last} if play.lives else {}


def _are_counted(play: Play) -> bool:
    """Whether anything hangs on how many lives a side has left."""
    asked = (count for guard, _ in guards_of(play) for count in counts_in(guard))
    return any(isinstance(each, LivesOf) for each in (*asked, *(count for count, _ in compared(play))))


def _sent(rule: Rule) -> Iterator[AreaId | Landmark]:
    """The places to which a rule sends players one by one; of all who change places at once nobody keeps lives."""
    for effect in rule.effects:
        if isinstance(effect, Go) and isinstance(effect.to, At):
            yield effect.to.spot.of
        elif isinstance(effect, Swap) and isinstance(effect.other, Waiting) and not isinstance(effect.who, AllPlaying):
            yield from {spot.of for spot in effect.other.at}
        elif isinstance(effect, Swap) and effect.other is Person.MATE and isinstance(rule.trigger, Happening):
            yield from {each.spot.of for each in rule.trigger.at if isinstance(each, At)}


def lives_at(play: Play, kept: Kept, who: Population, standing: Presence | At) -> tuple[int, ...]:
    """How many lives players who stand so may have left, all of them first; nothing where that is not counted."""
    most = play.lives_of(who)
    if most is None or standing is Presence.OUT or (isinstance(standing, At) and standing.spot.of not in kept):
        return ()
    fewest = kept[standing.spot.of] if isinstance(standing, At) else 1
    return tuple(range(most, fewest - 1, -1))


def left_at(play: Play, kept: Kept, who: Population, standing: Presence | At, lives: int | None) -> int | None:
    """With how many lives somebody comes to stand so who has so many: who had none left plays with all again."""
    there = lives_at(play, kept, who, standing)
    if not there:
        return None
    return there[0] if lives is None or lives not in there else lives
