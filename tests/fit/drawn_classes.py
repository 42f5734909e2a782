"""Classes drawn from a seed, each with a game of the library that it is to play, and all sets tried one by one."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator, Sequence
from math import inf

from attrs import frozen
from playing_games import granted_rules, library_games

import library
from compose.fit.suggest.class_wishes import fits
from compose.fit.suggest.collecting import rarely_collected
from compose.fit.suggest.larger import together
from compose.fit.suggest.look import Looker
from compose.fit.suggest.played_wishes import no_worse
from compose.fit.suggest.score import Scored, Scorer, Uses
from compose.modifiers.modifier import Use
from compose.staging.class_from_sheet import class_of
from compose.staging.school_class import SchoolClass
from grammar.game import Game
from grammar.parse import parse
from library import Hall
from library.records import Figure


@frozen
class Drawn:
    """A class and the game that it is to play."""

    school_class: SchoolClass
    game: Game

    def scorer(self) -> Scorer:
        """What asks of a set of modifiers whether the class can play what it makes of the game."""
        looker = Looker(granted_rules(), library.kit_names(), library.norms(), group=self.school_class)
        return Scorer(self.game, (*fits(self.school_class, self.game), *no_worse(self.game, looker)), looker)


def class_in(text: str, length_m: float, width_m: float) -> SchoolClass:
    """The class of a text whose hall, called Drawn Hall, is so large."""
    rules = parse(text).value
    assert rules is not None
    found = class_of(rules.classes[0], {"Drawn Hall": _hall(length_m, width_m)}, library.kit_categories())
    assert found.value is not None, [each.title for each in found.findings]
    return found.value


def _hall(length_m: float, width_m: float) -> Hall:
    source = next(iter(library.halls().values())).length_m.source
    length, width, height = (Figure(each, each, each, source) for each in (length_m, width_m, 6.0))
    return Hall("Drawn Hall", "", True, length, width, height)


DRAWN_FROM = ("ferry-bench", "lantern-row", "millrace-roll", "heather-raid", "quarry-row", "cairn-keepers")
EVERYDAY = """class Everyday
  class of 27
  ages 9 to 9
  in the hall "Drawn Hall"
  lesson of 40 min
  5 foam balls
  6 cones
"""


def everyday() -> SchoolClass:
    """Twenty-seven pupils of nine years in a hall of 15 m by 12 m, with five foam balls and six cones, for 40 min."""
    return class_in(EVERYDAY, 15, 12)


def drawn(seed: int) -> Drawn:
    """A class near to what its game asks for: a little less hall and kit than it needs, or some more."""
    chance = random.Random(seed)
    game = library_games()[chance.choice(DRAWN_FROM)]
    least, most = sum(side.least for side in game.sides), sum(side.most for side in game.sides)
    pupils = chance.randint(least, max(least, min(32, most)))
    length, width = game.court_m
    young = chance.randint(int(game.ages_years[0]), int(game.ages_years[1]) - 1)
    lines = [f"class of {pupils}", f"ages {young} to {young + 1}", 'in the hall "Drawn Hall"', "lesson of 45 min"]
    for line in game.kit:
        number = max(1, round(line.total({side.name: side.most for side in game.sides}) * chance.uniform(0.6, 1.3)))
        lines.append(f"{number} {line.plural}, like a {line.like}")
    text = "\n  ".join(["class Drawn", *lines]) + "\n"
    return Drawn(class_in(text, length + chance.randint(-4, 8), width + chance.randint(-1, 6)), game)


def exhaustive(scorer: Scorer, singles: Sequence[Use], pairs: Sequence[Use], lines: float = inf) -> Scored | None:
    """The least change that meets all wishes: of single modifiers, or where none does it of pairs that change fewer
    than so many lines."""
    with rarely_collected():
        return _least(scorer, ((use,) for use in singles)) or _least(scorer, _pairs(scorer, pairs, lines))


def _pairs(scorer: Scorer, uses: Sequence[Use], lines: float) -> Iterator[Uses]:
    """Every pair that changes fewer than so many lines, of which each of the two changes at least one: one before the
    other as they are given, and the other way round where they do not go together so."""
    gone = set[frozenset[int]]()
    for number, one in enumerate(uses):
        first = scorer.made((one,))
        if first is not None and first[1] + 1 < lines:
            for place, other in enumerate(uses):
                both = frozenset((number, place))
                made = scorer.made((one, other)) if both not in gone and together((one,), other) else None
                if made is not None:
                    gone.add(both)
                    if made[1] < lines:
                        yield one, other


def _least(scorer: Scorer, sets: Iterable[Uses]) -> Scored | None:
    met = (each for uses in sets if (each := scorer(uses)) is not None and each.met)
    return min(met, key=lambda each: each.change[:2], default=None)
