"""Whether a modifier's rule speaks of the same event as a game's: "a target is knocked" is "a lantern is knocked"."""

from __future__ import annotations

from grammar.core.guards import Compare, ThingsAt
from grammar.core.precedence import narrower, overlap
from grammar.core.reading.asked import triggers_of
from grammar.core.rules import Becomes, Trigger
from grammar.game import Game
from grammar.sentences.base import Node
from grammar.sentences.events import Event
from grammar.sentences.when import When
from grammar.topics import event_topic


def covers_rule(game: Game, general: Node, particular: Node) -> bool:
    """Whether a rule takes the place of another: its event covers the other's, and both ask for the same besides."""
    if not (isinstance(general, When) and isinstance(particular, When)) or general.condition != particular.condition:
        return False
    if event_topic(general.event) == event_topic(particular.event):
        return True
    if type(general.event) is not type(particular.event):
        return False
    wide, narrow = triggers_of(game, general.event, particular.event)
    return bool(narrow) and all(any(_within(each, any_of) for any_of in wide) for each in narrow)


def _within(inner: Trigger, outer: Trigger) -> bool:
    if isinstance(inner, Becomes) and isinstance(outer, Becomes):
        return inner == outer or _counts_within(inner, outer)
    return overlap(inner, outer) and (inner == outer or narrower(inner, outer))


def _counts_within(inner: Becomes, outer: Becomes) -> bool:
    """Whether two counts are the same but for what is counted, and the second counts all that the first does."""
    one, other = inner.guard, outer.guard
    if not (isinstance(one, Compare) and isinstance(other, Compare)):
        return False
    if not (isinstance(one.count, ThingsAt) and isinstance(other.count, ThingsAt)):
        return False
    alike = (one.relation, one.bound, one.count.at) == (other.relation, other.bound, other.count.at)
    return alike and one.count.of <= other.count.of


def has_rule_for(game: Game, event: Event, rules: frozenset[Trigger]) -> bool:
    """Whether one of these triggers of a game is fired by an event."""
    [asked] = triggers_of(game, event)
    return any(overlap(each, rule) or _within(rule, each) for each in asked for rule in rules)
