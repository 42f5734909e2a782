"""Whether a modifier's rule speaks of the same event as a game's: "a target is knocked" is "a lantern is knocked"."""

from __future__ import annotations

import attrs

from grammar.game import Game
from grammar.meanings import CategoryMeaning, KitMeaning, PlayerMeaning
from grammar.sentences.base import Node, Np
from grammar.sentences.finish import Counted, CountedPoints
from grammar.sentences.when import Becomes, Event, When
from grammar.topics import event_topic


def covers_rule(game: Game, general: Node, particular: Node) -> bool:
    """Whether a rule takes the place of another: its event covers the other's, and both ask for the same besides."""
    if not (isinstance(general, When) and isinstance(particular, When)):
        return False
    return general.condition == particular.condition and covers(game, general.event, particular.event)


def covers(game: Game, general: Event, particular: Event) -> bool:
    """Whether one event is the other, or the same happening to any of its kind."""
    if event_topic(general) == event_topic(particular):
        return True
    if type(general) is not type(particular):
        return False
    if isinstance(general, Becomes) and isinstance(particular, Becomes) and not _same_claim(general, particular):
        return False
    wide, narrow = (_what_it_happens_to(game, event) for event in (general, particular))
    if isinstance(wide, CategoryMeaning) and isinstance(narrow, KitMeaning):
        return wide.category == narrow.category
    return wide == PlayerMeaning() and isinstance(narrow, PlayerMeaning)


def _same_claim(one: Becomes, other: Becomes) -> bool:
    """Whether two counts are the same but for what is counted."""
    counted = [each.claim.counted for each in (one, other)]
    states = [each.state for each in counted if isinstance(each, Counted)]
    bare = [attrs.evolve(each.claim, counted=CountedPoints()) for each in (one, other)]
    return bare[0] == bare[1] and len(states) == 2 and states[0] == states[1]


def _what_it_happens_to(game: Game, event: Event) -> object:
    if isinstance(event, Becomes):
        counted = event.claim.counted
        return game.vocabulary.get(counted.what.text) if isinstance(counted, Counted) else None
    phrase = getattr(event, "what", None) or getattr(event, "who", None)
    return game.vocabulary.get(phrase.name.text) if isinstance(phrase, Np) else None
