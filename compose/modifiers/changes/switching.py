"""A choice that the class makes for once, as a modifier behind which no sheet stands."""

from __future__ import annotations

from compose.modifiers.modifier import Modifier, Use
from grammar.sentences.modifier import TurnSwitch
from grammar.span import Span
from grammar.tree import Line


def switching(on: bool, name: str, place: Span) -> Use:
    """The modifier that turns a switch of the game on or off; every game with that switch takes it."""
    turn, stands = ("turn on", "on") if on else ("turn off", "off")
    about = f"The choice of the class: {name.lower()} is {stands}."
    changes = (Line(TurnSwitch(turn, name, span=place)),)
    return Use(Modifier(f"{turn} {name.lower()}", "task", about, (), (), (), changes, (), place))
