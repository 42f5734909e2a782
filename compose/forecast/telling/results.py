"""What a round can come to, in words: who wins how often and in which way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.forecast.course import Figure
from compose.forecast.forecast import Forecast
from compose.forecast.odds import Way
from compose.forecast.standings import pupils_of
from compose.forecast.telling.wording import parts, share_with_margin, whole_percents
from compose.net.net import Net
from compose.net.told import Ended
from compose.telling.english.ends import way_words
from compose.telling.english.matches import match_words, part_words
from compose.telling.sides import wins
from grammar.amounts import SELDOM, minutes, percent
from grammar.core.ends import Best
from grammar.core.values import SideId

NAMES = 44  # letters for what a number is about, before the number


def row(name: str, value: str, indent: int = 0) -> str:
    """A number behind what it is about."""
    return f"{' ' * indent}{name:<{NAMES - indent}} {value}"


def winners(forecast: Forecast) -> Iterator[str]:
    """Who wins how often, and how."""
    odds = forecast.odds
    yield from _match(forecast)
    found = results(forecast)
    shares = [figure.value for _, figure in found]
    said, percents = dict(zip((name for name, _ in found), parts(shares), strict=True)), whole_percents(shares)
    for number, (side, chance) in enumerate(odds.wins):
        yield row(wins(side, forecast.net.solo), share_with_margin(chance, said[side]))
        if _shared_by_the_best(forecast.net, side):
            yield row("each of them, at least", percent(chance.value / pupils_of(forecast.net, side)), 4)
        yield from _ways(forecast.net, [way for way in odds.ways if way.winner == side], percents.get(number, 100))
    for name, figure in found[len(odds.wins) :]:
        if figure.value > SELDOM:
            yield row(name, share_with_margin(figure, said[name]))
    for side, points in forecast.points:
        margin = f" ± {points.margin:.1f}" if points.margin else ""
        if _shared_by_the_best(forecast.net, side):
            yield row("points of each, on average", f"{points.value / pupils_of(forecast.net, side):.1f}")
            continue
        yield row(f"points for {side}, on average", f"{points.value:.1f}{margin}")


def _shared_by_the_best(net: Net, side: str) -> bool:
    """Whether each of a side plays for themselves for the most points: one of them has won, or those who are level."""
    results = net.bell.results if net.bell is not None else ()
    return any(isinstance(each.told, Ended) and each.told.verdict == Best(SideId(side)) for each in results)


def results(forecast: Forecast) -> list[tuple[str, Figure]]:
    """All that a round can come to, which adds up to all rounds but those that never end."""
    odds = forecast.odds
    rest = (("a draw", odds.draw), ("nobody wins", odds.nobody), ("no result is said", odds.unsaid))
    return [*odds.wins, *rest]


def _ways(net: Net, ways: Sequence[Way], whole: int) -> Iterator[str]:
    seen = [way for way in ways if way.chance.value > SELDOM]
    if len(seen) < 2:
        return
    shares = parts([way.chance.value for way in seen], whole)
    for way, share in zip(seen, shares, strict=True):
        clock = "at the bell: " if way.at_bell else ""
        words = f"{clock}{way_words(net, way.end)}"
        yield row(words if len(words) <= NAMES - 4 else f"{words[: NAMES - 7]}...", share, 4)


def _match(forecast: Forecast) -> Iterator[str]:
    game = forecast.game
    if game.match.one_round:
        return
    if game.match.halves:
        yield f"{match_words(game.match)}; whoever begins as"
    else:
        yield f"{match_words(game.match)}:"
    for side, chance in game.wins:
        yield row(wins(side, forecast.net.solo), share_with_margin(chance), 4)
    if game.drawn.value > SELDOM:
        yield row("nobody wins", share_with_margin(game.drawn), 4)
    if len({round(share, 3) for _, share in game.plays}) > 1:
        for side, share in game.plays:
            yield row(f"{side} plays, of the rounds", percent(share), 4)
    rounds = ("halves" if game.match.parts == 2 else "innings") if game.match.halves else "rounds"
    yield row(f"{rounds} in all, on average", f"{game.rounds:.1f}, {minutes(game.minutes)} of play", 4)
    yield f"{part_words(game.match)} by itself:"
