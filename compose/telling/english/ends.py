"""How a round ends: "north wins: south has no lanterns standing"."""

from __future__ import annotations

from functools import singledispatch

from compose.net.net import End, Net
from compose.net.told import Because, Cause, Ended, TimeUp
from compose.telling.english.counts import count_words, guard_words, time_words
from compose.telling.sides import does, subject, wins
from grammar.core.ends import Best, Left, Lost, Most, NoWinner
from grammar.core.values import SideId

_CAUSES = {Cause.BOTH_AT_ONCE: "both at once", Cause.OVER_OR_NEXT: "when the time is over, or next"}


def end_words(net: Net, end: End) -> str:
    """The result and what brings it about."""
    return ended(end.told, net)[0]


def way_words(net: Net, end: End) -> str:
    """The way of winning, without who wins."""
    return ended(end.told, net)[1]


@singledispatch
def ended(told: object, net: Net) -> tuple[str, str]:
    """An end in words, and the way of winning that it is."""
    raise TypeError(type(told).__name__)


@ended.register
def _(told: Ended, net: Net) -> tuple[str, str]:
    if isinstance(told.verdict, NoWinner):
        result = {NoWinner.DRAW: "a draw", NoWinner.NOBODY: "nobody wins"}[told.verdict]
        return f"{result}: {_because(net, told.because)}", result
    if isinstance(told.verdict, Lost):
        result = does(told.verdict.side.key, "loses", "lose")
        return f"{result}: {_because(net, told.because)}", result
    assert told.winner is not None
    winning = wins(told.winner.key, net.solo)
    if told.because is Cause.RULE:
        return f"{winning} by a rule of the game", "a rule ends the round"
    because = f"{winning}: {_because(net, told.because)}"
    if isinstance(told.verdict, Best):
        return f"{because}, the most points", "the most points wins"
    if isinstance(told.verdict, Left):
        left = f"those left of {subject(told.winner.key)} win"
        return f"{left}: {_because(net, told.because)}", "those who are left win"
    if isinstance(told.verdict, Most):
        more = _more(net, told.verdict)
        return f"{because}, {more}", f"{more} wins"
    return because, _because(net, told.because, told.winner)


def _because(net: Net, because: Because, speaking: SideId | None = None) -> str:
    match because:
        case Cause():
            return _CAUSES[because]
        case TimeUp():
            return f"after {time_words(because.after_s)}"
    return guard_words(net, because, speaking)


def _more(net: Net, verdict: Most) -> str:
    """What is compared, without whose it is."""
    side, count = sorted(verdict.counts, key=repr)[0]
    return f"{'more' if verdict.more else 'fewer'} {count_words(net, count, side)}"
