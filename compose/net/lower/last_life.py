"""What comes of a case for persons that are settled: who loses the last life goes as the rules for that say.

What the event itself says of where they go does not hold then.
"""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.builder import Builder
from compose.net.lower.cast import Cast, casts
from compose.net.lower.dispatch import Case, cases_of
from compose.net.outcome import Moment
from grammar.core.lives import LastLife
from grammar.core.precedence import slots
from grammar.core.rules import Effect, Go, LifeOf, Person, Swap


def settled(builder: Builder, moment: Moment, case: Case) -> Iterator[tuple[Case, Cast]]:
    """The case with each way in which its persons can be settled, and with what follows from a last life."""
    for cast in casts(builder, moment, [effect for effect, _ in case.effects]):
        yield from _with_last_lives(builder, moment, case, cast, tuple(_losing(case, cast)))


def _losing(case: Case, cast: Cast) -> Iterator[Person]:
    for effect, _ in case.effects:
        if isinstance(effect, LifeOf) and effect.by < 0:
            stand = cast.persons.get(effect.who)
            if stand is not None and len(stand) == 3 and stand[2] == 1:
                yield effect.who


def _with_last_lives(
    builder: Builder, moment: Moment, case: Case, cast: Cast, losing: tuple[Person, ...]
) -> Iterator[tuple[Case, Cast]]:
    if not losing:
        yield case, cast
        return
    first, stand = losing[0], cast.persons[losing[0]]
    assert stand is not None
    rules = [each for each in builder.play.rules if isinstance(each.trigger, LastLife) and stand[0] in each.trigger.who]
    for ending in cases_of(builder.play, rules):
        more = tuple((_of(effect, first), rule) for effect, rule in ending.effects)
        where = any(first in slots(effect) for effect, _ in more)
        others = (each for each in case.effects if not where or first not in slots(each[0]))
        both = Case(
            (*others, *more),
            tuple(dict.fromkeys((*case.holds, *ending.holds))),
            tuple(dict.fromkeys((*case.fails, *ending.fails))),
            (*case.besides, *ending.besides),
        )
        lost = evolve(cast, persons={**cast.persons, first: (*stand[:2], 0)})
        for then in casts(builder, moment, [effect for effect, _ in more], lost):
            yield from _with_last_lives(builder, moment, both, then, losing[1:])


def _of(effect: Effect, who: Person) -> Effect:
    """The effect with the person who lost the last life as "that player"."""
    if isinstance(effect, Go | Swap) and effect.who is Person.OBJECT:
        return evolve(effect, who=who)
    return effect
