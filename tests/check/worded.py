"""Nets written by hand bring their own words: nobody has a core to tell them from."""

from __future__ import annotations

from typing import Any

from attrs import frozen

from compose.net.net import Net, Place
from compose.telling.english.ends import ended
from compose.telling.english.moves import clauses
from compose.telling.english.nouns import pieces


@frozen
class Named(Place):
    """A place with its own words for one and for several."""

    one: str = ""
    many: str = ""


@frozen
class Words:
    """What a move, a reaction or an end is called; `way` is that of an end."""

    words: str
    way: str = ""


def worded(words: str, way: str = "") -> Any:
    """Such words where a net has values of the core."""
    return Words(words, way or words)


@pieces.register
def _(place: Named, net: Net, named: bool = True) -> tuple[str, str, str]:
    return place.one, place.many, ""


@clauses.register
def _(told: Words, net: Net, tight: object = None) -> tuple[str, ...]:
    return (told.words,)


@ended.register
def _(told: Words, net: Net) -> tuple[str, str]:
    return told.words, told.way
