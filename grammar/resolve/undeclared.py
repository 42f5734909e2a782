"""What to do about a name that means nothing: how a sheet declares such a thing."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.meanings import AREA_KINDS, KitMeaning, Meaning, PlaceMeaning, side_named
from grammar.said import Value, listed, quoting
from grammar.words import plural

_ANYTHING = frozenset(("thing", "object", "item", "one", "other"))
_MOST_NAMED = 4
_NOT_OF_PLACES = frozenset(("around", "round", "fourth", "third", "second", "two", "2", "one", "other", "end", "ends"))
_BUT = frozenset(("except", "excluding", "besides", "without", "bar", "but"))
_WHERE = {
    **dict.fromkeys(("zone", "strip", "base", "mark"), "2 m deep, before each back line"),
    "circle": "2 m deep, in the middle",
}  # else beside each half
_DOINGS = frozenset((  # what nobody lays ready
    "catch", "catches", "throws", "hits", "passes", "points", "lives", "life", "body", "bodies", "frozen", "free",
    "freezes", "half", "halves", "minutes", "rounds", "players", "player", "again", "sets", "turns", "winner",
    "once", "twice", "already", "yet", "try", "tries", "attempts", "goals", "steps",
))  # fmt: skip


def _declare_area(text: str, kind: str, meanings: Mapping[str, Meaning]) -> Value:
    areas, line = _areas(kind, meanings), f"{text}: {_WHERE.get(kind, 'beside each half')}"
    if not areas:
        return quoting('Say in space where it is, such as "{line}".', line=line)
    hint = 'The sheet has {names}. Say in space where this one is, such as "{line}".'
    return quoting(hint, names=listed(areas), line=line)


def _areas(kind: str, meanings: Mapping[str, Meaning]) -> list[str]:
    places = [word for word, meaning in meanings.items() if isinstance(meaning, PlaceMeaning)]
    return [f"`{word}`" for word in places if kind in AREA_KINDS and word.endswith(f" {kind}")]


def _name_a_side(text: str, or_place: bool, meanings: Mapping[str, Meaning]) -> Value:
    sides = [word for word, meaning in meanings.items() if side_named(meaning) == word]
    if not sides:
        return "Name the sides under `sides`."
    if not or_place or not _NOT_OF_PLACES.isdisjoint(text.split()[:1]):
        return quoting("The sides are {sides}.", sides=listed(sides))
    hint = 'If it is a place, say in space where it is, such as "{line}". The sides are {sides}.'
    return quoting(hint, line=f"{text} bench: beside each half", sides=listed(sides))


def declare_hint(text: str, expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> Value:
    """What to write so that a name means something of these sorts."""
    first, last = text.split()[0], text.rsplit(maxsplit=1)[-1]
    if first in _BUT:
        hint = 'Nobody is left out of a count by `{word}`: allow so many, such as "a side has at most 2 players in".'
        return quoting(hint, word=first)
    if "place" in expected and last in AREA_KINDS:
        return _declare_area(text, last, meanings)
    if "side" in expected:
        return _name_a_side(text, "place" in expected, meanings)
    if "ball" in expected and last in ("ball", "balls"):
        return quoting('Add it to the kit, such as "{number} {name}".', number=1 if last == "ball" else 4, name=text)
    kit = [f"`{word}`" for word, meaning in meanings.items() if isinstance(meaning, KitMeaning) and meaning.key == word]
    if text.removesuffix("s") in _ANYTHING and kit:
        return quoting("Name what is meant: {names}.", names=listed(kit[:_MOST_NAMED], "or"))
    kind = last.removesuffix("s")
    areas = _areas(kind, meanings)
    if areas and "place" not in expected:
        return quoting("It is a place: {names}. Say who or what is there.", names=listed(areas, "or"))
    if ("ball" in expected or "target" in expected) and not {"misses", "miss"}.isdisjoint(text.split()):
        return "Misses are counted as lives: each player has 3 lives, and: a ball is missed: the thrower loses a life"
    if ("ball" in expected or "target" in expected) and not _DOINGS.isdisjoint(text.split()):
        return "If it is a thing, declare it under kit; if not, the language says it in another way."
    if "ball" in expected or "target" in expected:
        many = text if text.endswith("s") else plural(text)
        return quoting('Add it to the kit, such as "4 {name}, like a cone".', name=many)
    if "place" in expected and text.split()[0] not in _NOT_OF_PLACES:
        return quoting('Say in space where it is, such as "{name} zone: 2 m deep, before each back line".', name=text)
    if "place" in expected:
        return "Name a place of the court (half, back line, side line, middle, corner, wall), or an area of the sheet."
    if "player" in expected:
        return "Players are called players, or by the name of their side or role."
    return "Use a name that the sheet declares."
