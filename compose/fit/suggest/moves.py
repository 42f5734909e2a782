"""The moves of a search: each modifier with the values that are worth a try."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from compose.fit.suggest.played_wishes import RoundLasts
from compose.fit.suggest.sheet_wishes import ForPupils, KitAtMost, OnCourt
from compose.fit.suggest.wish import Wish
from compose.modifiers.modifier import Modifier, Takes, Use, Value
from compose.modifiers.touches import Touch, touches
from grammar.game import Game


def moves(modifiers: Sequence[Modifier], game: Game, wishes: Sequence[Wish]) -> tuple[Use, ...]:
    """Every modifier with its usual values; then all with their least and most and with what a wish asks for."""
    found: dict[tuple[str, tuple[tuple[str, str], ...]], Use] = {}
    for modifier in modifiers:
        for use in _uses(modifier, game, wishes):
            found.setdefault((modifier.name, tuple((n, v.words()) for n, v in use.values.items())), use)
    return tuple(sorted(found.values(), key=lambda use: bool(use.values)))


def _uses(modifier: Modifier, game: Game, wishes: Sequence[Wish]) -> Iterator[Use]:
    yield Use(modifier)
    ranges = [(each.parameter, tuple(_values(modifier, each, game, wishes))) for each in modifier.takes]
    for values in product(*(values for _, values in ranges)):
        given = {name: value for (name, _), value in zip(ranges, values, strict=True) if value is not None}
        if given:
            yield Use(modifier, given)


def _values(modifier: Modifier, takes: Takes, game: Game, wishes: Sequence[Wish]) -> Iterator[Value | None]:
    """The usual value (None), the least, the most, and those that wishes ask for, all within the range."""
    yield None
    asked = (value for wish in wishes for value in _asked(modifier, takes, game, wish))
    for value in (takes.least.value, takes.most.value, *asked):
        if takes.least.value <= value <= takes.most.value and value != takes.usually.value:
            yield modifier.value(takes.parameter, value)


def _asked(modifier: Modifier, takes: Takes, game: Game, wish: Wish) -> Iterator[float]:
    """The values of a parameter that would meet a wish just so."""
    touched = touches(modifier)
    match wish:
        case RoundLasts() if takes.usually.unit in ("min", "s"):
            scale = 1.0 if takes.usually.unit == "min" else 60.0
            yield from (round(wish.most * scale), round((wish.least + wish.most) / 2 * scale))
        case KitAtMost() if touched & {Touch.LESS_KIT, Touch.MORE_KIT}:
            over = wish.there(game) - wish.most
            yield from (float(over), float(-(-over // max(1, len(game.sides)))))
        case OnCourt() if touched & {Touch.LENGTH_OF_COURT, Touch.WIDTH_OF_COURT}:
            along, across = (game.court_m[0], wish.length_m), (game.court_m[1], wish.width_m)
            there, most = along if Touch.LENGTH_OF_COURT in touched else across
            yield float(int(100 * most / there))
        case ForPupils():
            yield float(-(-wish.pupils // max(1, sum(side.most for side in game.sides))))
