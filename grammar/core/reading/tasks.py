"""Who takes another task, or becomes a player of another side."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.reading.events import Moment
from grammar.core.reading.movers import Mover, movers
from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Senseless, Whose
from grammar.core.rules import Becoming, Go
from grammar.core.values import PLAIN, Plain, Presence, RoleId, SideId
from grammar.meanings import PlayerMeaning
from grammar.sentences import when
from grammar.sentences.base import Np


def with_a_task(reader: Reader, consequence: when.TurnsInto, moment: Moment) -> Iterator[Go]:
    """Everybody of whom a line says what they become. Raises Senseless."""
    for mover in movers(reader, consequence.who, moment):
        side = _another_side(reader, consequence.role, mover)
        task = Becoming(side=side) if side else Becoming(role=_role(reader, consequence.role, mover))
        yield Go(mover.who, Presence.PLAYING, task)


def _another_side(reader: Reader, phrase: Np, mover: Mover) -> SideId | None:
    """The side that somebody joins who becomes one of its players: "that player becomes a pirate"."""
    meaning = reader.game.meaning(phrase.name)
    named = isinstance(meaning, PlayerMeaning) and meaning.role is None and phrase.determiner in ("a", "an")
    said = reader.player_phrase(phrase)[0] if named else None
    return said.side if said is not None and said.side != mover.side else None


def _role(reader: Reader, phrase: Np, mover: Mover) -> RoleId | Plain:
    """The role of a phrase; "a player" is one without a role."""
    said, role = reader.player_phrase(phrase)
    if role is None and said.whose is Whose.UNSAID and phrase.determiner in ("a", "an", None):
        return PLAIN
    if role is None or mover.side is None:
        hint = "Name a role that `sides` declares."
        if role is None and said.side is not None:
            hint = f"Who changes sides joins them, such as: that player joins {said.side.key}"
        raise Senseless(phrase, f"`{phrase.words()}` is no role.", hint)
    if said.side not in (None, mover.side) or not reader.of_role([mover.side], role):
        raise Senseless(phrase, f"There are no {phrase.name.text} of {mover.side.key}.", "Name a role of that side.")
    return role
