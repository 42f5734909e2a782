"""A level score that the next target decides: whoever knocks one after the clock has won, and points count no more."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from attrs import evolve

from grammar.core.guards import Clock, Compare, Relation, every
from grammar.core.play import PointsCount
from grammar.core.reading.consequences.when_lines import rules_of_line
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import Rule
from grammar.core.values import KindId, Sort
from grammar.said import write
from grammar.sentences import events, finish, when
from grammar.sentences.base import Np, SideOf


def decided_by(reader: Reader, said: finish.NextKnockedWins) -> tuple[KindId, ...]:
    """The kinds of which the next one decides. Raises Senseless where nobody aims at any."""
    found = reader.kinds_meant(said.what, Sort.TARGET, Sort.BODY)
    if not found:
        title = "Nothing that can be knocked is called `{said}`."
        raise Senseless(said.what, title, "Name a target of the kit, or write: the next point wins")
    if reader.only_entered.issuperset(found):
        title = "Balls go into a `{name}`: nothing knocks it."
        raise Senseless(said, title, write("the next point wins"), name=said.what.text)
    return found


def decided(reader: Reader, said: finish.NextKnockedWins, bell_s: Fraction, line: int) -> Iterator[Rule | PointsCount]:
    """What holds once the clock is over: the side that knocks one wins, and no point counts."""
    over = Compare(Clock(bell_s), Relation.AT_LEAST, 1)
    what = Np("a", None, None, said.what, span=said.what.span)
    wins = finish.SideWins(SideOf("the", "thrower's", span=said.span), span=said.span)
    then_wins = when.When(events.Knocked(what, "is", span=said.span), None, (wins,), span=said.span)
    for rule in rules_of_line(reader, then_wins, line):
        yield evolve(rule, guard=every([over, rule.guard]))
    yield PointsCount(0, over, (line,))
