"""Wishes that play answers: how long a round lasts, who waits, who gets turns, what the check finds."""

from __future__ import annotations

import math

from attrs import frozen

from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import CHECK, FORECAST, UNKNOWN
from grammar.game import Game
from grammar.words import count


@frozen
class RoundLasts:
    """The mean round takes so many minutes."""

    least: float
    most: float
    cost: int = FORECAST

    def words(self) -> str:
        return f"rounds of {self.least:g} to {self.most:g} min"

    def gap(self, game: Game, looker: Looker) -> float:
        numbers = looker.numbers(game)
        if numbers is None:
            return UNKNOWN
        minutes = numbers.minutes
        if self.least <= minutes <= self.most:
            return 0.0
        if minutes <= 0 or math.isinf(minutes):
            return UNKNOWN
        edge = self.least if minutes < self.least else self.most
        return min(UNKNOWN, 0.1 + abs(math.log(minutes / edge)))


@frozen
class WaitsAtMost:
    """Nobody waits longer than so many minutes, in the mean."""

    most: float
    cost: int = FORECAST

    def words(self) -> str:
        return f"waits of at most {self.most:g} min in the mean"

    def gap(self, game: Game, looker: Looker) -> float:
        numbers = looker.numbers(game)
        if numbers is None or math.isinf(numbers.wait):
            return UNKNOWN
        return 0.0 if numbers.wait <= self.most else min(UNKNOWN, 0.1 + math.log(numbers.wait / self.most))


@frozen
class TurnsAtLeast:
    """Each pupil has so many turns a minute."""

    least: float
    cost: int = FORECAST

    def words(self) -> str:
        return f"at least {count(self.least, 'turn')} a minute for each pupil"

    def gap(self, game: Game, looker: Looker) -> float:
        numbers = looker.numbers(game)
        if numbers is None or numbers.turns <= 0:
            return UNKNOWN
        return 0.0 if numbers.turns >= self.least else min(UNKNOWN, 0.1 + math.log(self.least / numbers.turns))


@frozen
class Mended:
    """A finding of the check is gone: all of its code."""

    code: str
    title: str
    cost: int = CHECK

    def words(self) -> str:
        return f"no more {self.code}: {self.title.rstrip('.')}"

    def gap(self, game: Game, looker: Looker) -> float:
        found = looker.findings(game)
        if found.broken:
            return UNKNOWN
        return 1.0 if any(each.code == self.code for each in found.to_mend) else 0.0


@frozen
class NothingNew:
    """The check finds nothing to mend besides what it found before, and could look at everything."""

    known: tuple[str, ...]
    cost: int = CHECK

    def words(self) -> str:
        return "nothing new to mend"

    def gap(self, game: Game, looker: Looker) -> float:
        found = looker.findings(game)
        if found.broken or not found.whole:
            return UNKNOWN
        return float(len({each.code for each in found.to_mend} - set(self.known)))


def no_worse(game: Game, looker: Looker) -> tuple[NothingNew, ...]:
    """The wish that a game gets nothing to mend that it did not have before."""
    return (NothingNew(tuple({each.code: None for each in looker.findings(game).to_mend})),)


def mends(game: Game, looker: Looker) -> tuple[Mended | NothingNew, ...]:
    """The wishes that stand for "nothing to mend" in this game."""
    found = looker.findings(game).to_mend
    codes = {each.code: each.title for each in reversed(found)}
    return (*(Mended(code, title) for code, title in codes.items()), NothingNew(tuple(codes)))
