"""Which games are as wished: those that are, in the order asked for, and what the others lack."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import CHECK, COSTS, FORECAST, MET, SHEET, Miss, Wish, missed, of_finding
from compose.staging.cupboard import kit_rows
from compose.staging.kit_findings import kit_findings
from compose.staging.resolved import resolved
from compose.staging.school_class import InCupboard
from compose.staging.teams import least_pupils, most_pupils
from compose.telling.wording import ENGLISH, Wording
from grammar.finding import Severity
from grammar.frozen import frozen
from grammar.game import Game
from grammar.said import Figure


@frozen
class KitAtHand:
    """The cupboard has all that a game needs, or what can stand in."""

    cupboard: tuple[InCupboard, ...]
    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        things = wording.listed(wording.named(each.name) for each in self.cupboard)
        return wording.say("played with {things}", things=things)

    def miss(self, game: Game, looker: Looker) -> Miss:
        rows = kit_rows(game, looker.teams(game).games, self.cupboard, looker.kit)
        short = [each for each in kit_findings(rows) if each.severity is Severity.WARNING]
        return Miss(float(len(short)), tuple(map(of_finding, short))) if short else MET


@frozen
class OverWithin:
    """A round is over within so many minutes: by the game's own clock, or else in the mean as forecast."""

    minutes: float
    cost: int = FORECAST

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("over within {minutes} min", minutes=wording.figure(self.minutes))

    def miss(self, game: Game, looker: Looker) -> Miss:
        bell = resolved(game).play.bell
        if bell is not None and float(bell.after_s) / 60 <= self.minutes:
            return MET
        numbers = looker.numbers(game)
        if numbers is None:
            return missed(1.0, "nobody can say how long a round lasts")
        over = numbers.minutes - self.minutes
        if over <= 0:
            return MET
        return missed(over / self.minutes, "a round lasts {minutes} min", minutes=Figure(numbers.minutes, ".1f"))


@frozen
class Choice:
    """A game, and what it lacks of what is wished: nothing where it is as wished."""

    game: Game
    lacks: tuple[Miss, ...]
    gap: float


def choices(games: Iterable[Game], wishes: Callable[[Game], Sequence[Wish]], looker: Looker) -> tuple[Choice, ...]:
    """Every game against what is wished of it; what costs more to find out is asked only where the rest is met."""
    return tuple(_choice(game, wishes(game), looker) for game in games)


def _choice(game: Game, wishes: Sequence[Wish], looker: Looker) -> Choice:
    lacking: list[tuple[Wish, Miss]] = []
    for cost in COSTS:
        if not lacking or cost == CHECK:
            asked = ((wish, wish.miss(game, looker)) for wish in wishes if wish.cost == cost)
            lacking += [(wish, miss) for wish, miss in asked if not miss.met]
    return Choice(game, tuple(miss for _, miss in lacking), sum(miss.gap for _, miss in lacking))


def _youngest(game: Game, looker: Looker) -> float:
    return game.ages_years[0]


def _fewest(game: Game, looker: Looker) -> float:
    return least_pupils(game)


def _most(game: Game, looker: Looker) -> float:
    return -most_pupils(game)


def _minutes(game: Game, looker: Looker) -> float:
    numbers = looker.numbers(game)
    return numbers.minutes if numbers is not None else float("inf")


def _wait(game: Game, looker: Looker) -> float:
    numbers = looker.numbers(game)
    return numbers.wait if numbers is not None else float("inf")


ORDERS: Mapping[str, Callable[[Game, Looker], float]] = {
    "age": _youngest,
    "few pupils": _fewest,
    "many pupils": _most,
    "minutes": _minutes,
    "wait": _wait,
}


def in_order(found: Iterable[Choice], by: str, looker: Looker) -> tuple[Choice, ...]:
    """The choices by one of ORDERS, then by name; by name alone where `by` is none of them."""
    order = ORDERS.get(by)

    def key(each: Choice) -> tuple[float, str]:
        return order(each.game, looker) if order is not None else 0.0, each.game.title.casefold()

    return tuple(sorted(found, key=key))
