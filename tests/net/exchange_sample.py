"""A sample of exchanges from a seed, the same every time, and what became of each."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence

from attrs import frozen

from tests.grammar.exchanges import Exchange, exchanges, names_of
from tests.net.exchange_sheets import Place
from tests.net.exchange_verdicts import Verdict, verdict


@frozen
class Tried:
    """An exchange, where it was tried, and what became of it."""

    place: Place
    exchange: Exchange
    verdict: Verdict

    def words(self) -> str:
        """Such as "play Np.owner: `a` instead of `b`"."""
        line = self.place.before.game.sheet.lines(self.place.section)[self.place.at].sentence
        return (
            f"{self.place.section} {self.exchange.slot}: {self.exchange.sentence.words()} "
            f"(was: {line.words()}; in {self.place.before.game.title})"
        )


def every_exchange(places: Sequence[Place]) -> list[tuple[Place, Exchange]]:
    """All exchanges of all lines."""
    found = []
    for place in places:
        game = place.before.game
        sentence = game.sheet.lines(place.section)[place.at].sentence
        found += [(place, exchange) for exchange in exchanges(sentence, names_of(game))]
    return found


def sample(places: Sequence[Place], seed: int, turn: int = 0, of: int = 1) -> Iterator[Tried]:
    """One exchange after the other, in an order that the seed decides; what is no sentence is left out. Where several
    work side by side each takes its turn of so many."""
    found = every_exchange(places)
    random.Random(seed).shuffle(found)
    for place, exchange in found[turn::of]:
        tried = Tried(place, exchange, _tried(place, exchange))
        if tried.verdict is not Verdict.UNREAD:
            yield tried


def _tried(place: Place, exchange: Exchange) -> Verdict:
    """What becomes of it; a sheet at which the reader itself breaks down is told as such, and the rest is tried."""
    try:
        return verdict(place.before, place.section, place.at, exchange)
    except Exception:
        return Verdict.TRACEBACK
