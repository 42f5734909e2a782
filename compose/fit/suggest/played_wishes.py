"""Wishes that play answers: how long a round lasts, who waits, who gets turns, what the check finds."""

from __future__ import annotations

import math
from collections.abc import Iterator

from attrs import frozen

from compose.fit.suggest.look import Findings, Looker
from compose.fit.suggest.wish import (
    CHECK,
    FORECAST,
    MET,
    UNKNOWN,
    UNKNOWN_GAP,
    Miss,
    Told,
    in_words,
    missed,
    of_finding,
)
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game
from grammar.said import Figure


@frozen
class RoundLasts:
    """The mean round takes so many minutes."""

    least: float
    most: float
    cost: int = FORECAST

    def words(self, wording: Wording = ENGLISH) -> str:
        least, most = wording.figure(self.least), wording.figure(self.most)
        return wording.say("rounds of {least} to {most} min", least=least, most=most)

    def miss(self, game: Game, looker: Looker) -> Miss:
        numbers = looker.numbers(game)
        minutes = numbers.minutes if numbers is not None else math.nan
        if self.least <= minutes <= self.most:
            return MET
        if math.isnan(minutes) or minutes <= 0:
            return UNKNOWN
        if math.isinf(minutes):
            return missed(UNKNOWN_GAP, "a round may never end")
        below = minutes < self.least
        edge, way = (self.least, "short") if below else (self.most, "long")
        return missed(
            min(UNKNOWN_GAP, 0.1 + abs(math.log(minutes / edge))),
            f"a round lasts {{minutes}} min, {{off}} min too {way}",
            below,
            minutes=Figure(minutes, ".1f"),
            off=Figure(abs(minutes - edge), ".1f"),
        )


@frozen
class WaitsAtMost:
    """Nobody waits longer than so many minutes, in the mean."""

    most: float
    cost: int = FORECAST

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("waits of at most {minutes} min in the mean", minutes=wording.figure(self.most))

    def miss(self, game: Game, looker: Looker) -> Miss:
        numbers = looker.numbers(game)
        if numbers is None:
            return UNKNOWN
        if numbers.wait <= self.most:
            return MET
        if math.isinf(numbers.wait):
            return missed(UNKNOWN_GAP, "who is out waits until the round is over")
        return missed(
            min(UNKNOWN_GAP, 0.1 + math.log(numbers.wait / self.most)),
            "a wait lasts {minutes} min, {off} min too long",
            minutes=Figure(numbers.wait, ".1f"),
            off=Figure(numbers.wait - self.most, ".1f"),
        )


@frozen
class TurnsAtLeast:
    """Each pupil has so many turns a minute."""

    least: float
    cost: int = FORECAST

    def words(self, wording: Wording = ENGLISH) -> str:
        turns = wording.counted(self.least, "turn", "turns")
        return wording.say("at least {turns} a minute for each pupil", turns=turns)

    def miss(self, game: Game, looker: Looker) -> Miss:
        numbers = looker.numbers(game)
        if numbers is None:
            return UNKNOWN
        if numbers.turns >= self.least:
            return MET
        gap = math.log(self.least / numbers.turns) if numbers.turns > 0 else math.inf
        return missed(
            min(UNKNOWN_GAP, 0.1 + gap),
            "a pupil gets {turns} turns a minute, {off} too few",
            True,
            turns=Figure(numbers.turns, ".2g"),
            off=Figure(self.least - numbers.turns, ".2g"),
        )


@frozen
class Mended:
    """A finding is gone: all of its code. `cost` tells whether the check finds it or the forecast."""

    code: str
    title: Told
    cost: int = CHECK

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("mend: {what} [{code}]", what=in_words(self.title, wording), code=self.code)

    def miss(self, game: Game, looker: Looker) -> Miss:
        found = _findings(game, looker, self.cost)
        if found.broken:
            return UNKNOWN
        still = next((each for each in found.to_mend if each.code == self.code), None)
        return Miss(1.0, (of_finding(still),)) if still is not None else MET


@frozen
class NothingNew:
    """The check finds nothing to mend besides what it found before, and could look at everything.

    Of a game too large to prove (not `whole`) the parts that were looked at are compared.
    """

    known: tuple[str, ...]
    whole: bool = True
    cost: int = CHECK

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("nothing new to mend" if self.whole else "nothing new to mend in the part looked at")

    def miss(self, game: Game, looker: Looker) -> Miss:
        found = looker.findings(game)
        if found.broken:
            return UNKNOWN
        if self.whole and not found.whole:
            return missed(UNKNOWN_GAP, "it is too large to prove")
        new = {each.code: of_finding(each) for each in found.to_mend if each.code not in self.known}
        return Miss(float(len(new)), tuple(new.values())) if new else MET


def _findings(game: Game, looker: Looker, cost: int) -> Findings:
    return looker.findings(game) if cost == CHECK else looker.foreseen(game)


def no_worse(game: Game, looker: Looker) -> tuple[NothingNew, ...]:
    """The wish that the check finds nothing to mend that a game did not have before."""
    found = looker.findings(game)
    return (NothingNew(tuple({each.code: None for each in found.to_mend}), found.whole),)


def mends(game: Game, looker: Looker) -> tuple[Mended | NothingNew, ...]:
    """The wishes that stand for mending what is proved and forecast of this game, and nothing new proved."""
    mended = (wish for cost in (CHECK, FORECAST) for wish in _mends(_findings(game, looker, cost), cost))
    return (*mended, *no_worse(game, looker))


def _mends(found: Findings, cost: int) -> Iterator[Mended]:
    codes = {each.code: of_finding(each) for each in reversed(found.to_mend)}
    yield from (Mended(code, title, cost) for code, title in codes.items())
