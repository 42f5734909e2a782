"""What a round can come to, in words: who wins how often and in which way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.forecast.course import Figure
from compose.forecast.forecast import Forecast
from compose.forecast.odds import Way
from compose.forecast.standings import pupils_of
from compose.forecast.telling.speech import ENGLISH_SPEECH, Speech
from compose.forecast.telling.wording import whole_percents
from compose.net.net import Net
from compose.net.told import Ended
from grammar.amounts import SELDOM
from grammar.core.ends import Best
from grammar.core.values import SideId

NAMES = 44  # letters for what a number is about, before the number


def row(name: str, value: str, indent: int = 0) -> str:
    """A number behind what it is about."""
    return f"{' ' * indent}{name:<{NAMES - indent}} {value}"


def winners(forecast: Forecast, speech: Speech = ENGLISH_SPEECH) -> Iterator[str]:
    """Who wins how often, and how."""
    odds = forecast.odds
    yield from _match(forecast, speech)
    found = results(forecast)
    shares = [figure.value for _, figure in found]
    said, percents = dict(zip((name for name, _ in found), speech.parts(shares), strict=True)), whole_percents(shares)
    for number, (side, chance) in enumerate(odds.wins):
        yield row(speech.wins(side, forecast.net.solo), speech.share_with_margin(chance, said[side]))
        if _shared_by_the_best(forecast.net, side):
            least = chance.value / pupils_of(forecast.net, side)
            yield row(speech.say("each of them, at least"), speech.percent(least), 4)
        ways = [way for way in odds.ways if way.winner == side]
        yield from _ways(forecast.net, ways, percents.get(number, 100), speech)
    for name, figure in found[len(odds.wins) :]:
        if figure.value > SELDOM:
            yield row(speech.say(name), speech.share_with_margin(figure, said[name]))
    for side, points in forecast.points:
        margin = f" ± {speech.figure(points.margin)}" if points.margin else ""
        if _shared_by_the_best(forecast.net, side):
            each = points.value / pupils_of(forecast.net, side)
            yield row(speech.say("points of each, on average"), speech.figure(each))
            continue
        whose = side if speech.wording.english else speech.side(side)
        about = speech.say("points for {side}, on average", side=whose)
        yield row(about, f"{speech.figure(points.value)}{margin}")


def _shared_by_the_best(net: Net, side: str) -> bool:
    """Whether each of a side plays for themselves for the most points: one of them has won, or those who are level."""
    results = net.bell.results if net.bell is not None else ()
    return any(isinstance(each.told, Ended) and each.told.verdict == Best(SideId(side)) for each in results)


def results(forecast: Forecast) -> list[tuple[str, Figure]]:
    """All that a round can come to, which adds up to all rounds but those that never end."""
    odds = forecast.odds
    rest = (("a draw", odds.draw), ("nobody wins", odds.nobody), ("no result is said", odds.unsaid))
    return [*odds.wins, *rest]


def _ways(net: Net, ways: Sequence[Way], whole: int, speech: Speech) -> Iterator[str]:
    seen = [way for way in ways if way.chance.value > SELDOM]
    if len(seen) < 2:
        return
    shares = speech.parts([way.chance.value for way in seen], whole)
    for way, share in zip(seen, shares, strict=True):
        said = speech.way(net, way.end)
        words = speech.say("at the bell: {end}", end=said) if way.at_bell else said
        yield row(words if len(words) <= NAMES - 4 else f"{words[: NAMES - 7]}...", share, 4)


def _match(forecast: Forecast, speech: Speech) -> Iterator[str]:
    game, say = forecast.game, speech.say
    if game.match.one_round:
        return
    if game.match.halves:
        yield say("{match}; whoever begins as", match=speech.match(game.match))
    else:
        yield say("{match}:", match=speech.match(game.match))
    for side, chance in game.wins:
        yield row(speech.wins(side, forecast.net.solo), speech.share_with_margin(chance), 4)
    if game.drawn.value > SELDOM:
        yield row(say("nobody wins"), speech.share_with_margin(game.drawn), 4)
    if len({round(share, 3) for _, share in game.plays}) > 1:
        for side, share in game.plays:
            named = side if speech.wording.english else speech.side(side)
            yield row(say("{side} plays, of the rounds", side=named), speech.percent(share), 4)
    rounds = {"half": "halves", "innings": "innings", "round": "rounds"}[game.match.part]
    pattern = "{number}, {time} of play" if game.match.courts == 1 else "{number}, at least {time} of play"
    play = say(pattern, number=speech.figure(game.rounds), time=speech.minutes(game.minutes))
    yield row(say(f"{rounds} in all, on average"), play, 4)
    yield say("{part} by itself:", part=speech.part(game.match))
