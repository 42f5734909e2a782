"""Which sentence of the game a finding of the forecast points at."""

from __future__ import annotations

from compose.forecast.forecast import Forecast
from compose.net.net import Move, Rule
from grammar.span import Span, nowhere


def _rule(rules: tuple[Rule, ...]) -> Span:
    return rules[0].span if rules else nowhere()


def span_of_wins(told: Forecast, side: str) -> Span:
    """The finish by which a side wins most often."""
    net, course = told.net, told.course
    own = [(chance, end) for chance, end in zip(course.by_end, net.ends, strict=True) if end.winner == side]
    if net.bell is not None:
        own += [(c, end) for c, end in zip(course.by_result, net.bell.results, strict=True) if end.winner == side]
    return max(own, key=lambda pair: float(pair[0]))[1].rule.span if own else nowhere()


def span_of_stop(told: Forecast) -> Span:
    """The sentence that stops most rounds: the clock's, or that of the likeliest end."""
    net, course = told.net, told.course
    if net.bell is not None and (course.stopped > 0.5 or not net.ends):
        return net.bell.rule.span
    return net.ends[int(course.by_end.argmax())].rule.span if net.ends else _rule(net.rules)


def span_of_sending(told: Forecast, places: tuple[int, ...]) -> Span:
    """The sentence that sends most pupils to one of the places."""
    net, course = told.net, told.course
    sent = [
        (float(often), effect.rule)
        for often, move in zip(course.firings, net.transitions, strict=True)
        for effect in move.effects
        if isinstance(effect, Move) and effect.target in places and effect.source not in places
    ]
    return max(sent, key=lambda pair: pair[0])[1].span if sent else _rule(net.rules)


def span_of_tries(told: Forecast) -> Span:
    """The first sentence of somebody who tries something."""
    return next((_rule(move.rules) for move in told.net.transitions if move.side and move.rules), nowhere())


def span_of_turns(told: Forecast) -> Span:
    """The first sentence of what only so many of a side do at a time."""
    return next((_rule(move.rules) for move in told.net.transitions if move.rate.turns and move.rules), nowhere())
