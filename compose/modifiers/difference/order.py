"""How two games differ in the order of their lines, where the first that holds decides."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.resolved import resolved
from grammar.core.game import Core
from grammar.core.guards import ALWAYS
from grammar.core.play import Lines
from grammar.core.precedence import overlap, written
from grammar.game import Game


def rule_order_differences(one: Game, other: Game) -> Iterator[str]:
    """Rules that write the same, of which the other game asks first what the one asks second."""
    before, core = resolved(one).play.before, resolved(other)
    exchanged = [(first, second) for first, second in core.play.before if (second, first) in before]
    pairs = sorted((first.lines, second.lines) for first, second in exchanged)
    told = (f"asked first: {_words(core, first)}; only then: {_words(core, second)}" for first, second in pairs)
    yield from dict.fromkeys(told)


def idle_order_differences(one: Game, other: Game) -> Iterator[str]:
    """Guarded rules about one happening that stand the other way round and write different things: a reader who
    expects that the first of them decides is told that both hold."""
    before, core = [rule for rule in resolved(one).play.rules if not rule.granted], resolved(other)
    guarded = [rule for rule in core.play.rules if rule.guard != ALWAYS and rule in before]
    told = (
        f"in another order, which changes nothing, since both hold: {_words(core, first.lines)}; "
        f"{_words(core, second.lines)}"
        for number, first in enumerate(guarded)
        for second in guarded[number + 1 :]
        if before.index(first) > before.index(second)
        and overlap(first.trigger, second.trigger)
        and not written(first) & written(second)
    )
    yield from dict.fromkeys(told)


def end_order_differences(one: Game, other: Game) -> Iterator[str]:
    """Ends of both games, of which the other looks first at what the one looks at later."""
    before, core = resolved(one).play.ends, resolved(other)
    both = [end for end in core.play.ends if end in before]
    told = (
        f"looked at first: {_words(core, first.lines)}; only then: {_words(core, second.lines)}"
        for number, first in enumerate(both)
        for second in both[number + 1 :]
        if before.index(first) > before.index(second) and first.lines != second.lines
    )
    yield from dict.fromkeys(told)


def _words(core: Core, lines: Lines) -> str:
    return core.lines[lines[0]].words
