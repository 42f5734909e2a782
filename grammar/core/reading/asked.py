"""What an event of another sheet would mean in a game: modifiers ask whether the game has a rule for it."""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from grammar.core.reading.events.events import moments
from grammar.core.reading.from_game import declared
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import Trigger
from grammar.game import Game
from grammar.sentences.base import Name, Node
from grammar.sentences.events import Event

_last: list[tuple[Game, Reader]] = []  # many modifiers ask one game, one after the other


def _reader(game: Game) -> Reader:
    for kept, reader in _last[:]:  # of a copy, for other threads may put another game there
        if kept is game:
            return reader
    reader = declared(game).reader
    _last[:] = [(game, reader)]
    return reader


def triggers_of(game: Game, *events: Event) -> tuple[tuple[Trigger, ...], ...]:
    """The triggers of each event in a game; none where the game has nothing of which it speaks."""
    reader = _reader(game)

    def meant(event: Event) -> tuple[Trigger, ...]:
        if any(name.text not in game.vocabulary for name in _names(event)):
            return ()
        try:
            return tuple(moment.trigger for moment in moments(reader, event))
        except Senseless:  # it is the other sheet's phrase, which here has nothing to mean
            return ()

    return tuple(meant(event) for event in events)


def _names(node: Node) -> Iterator[Name]:
    if isinstance(node, Name):
        yield node
    for part in attrs.fields(type(node)):
        value = getattr(node, part.name)
        for each in value if isinstance(value, tuple) else (value,):
            if isinstance(each, Node):
                yield from _names(each)
