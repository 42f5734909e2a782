"""A sentence in values: its pattern in English, and by name what stands in it; of that any language is made.

A text by itself is of the program's own words, as a pattern without fields is; a name that an author gave is `Named`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, Literal, Union

from grammar.amounts import minutes, percent
from grammar.frozen import evolve, frozen
from grammar.words import called_by_players, capital, count, listing, nearest, players_said


@frozen
class Said:
    """A pattern and the values in its fields; those that the check finds stand in its net."""

    pattern: str
    fields: tuple[tuple[str, Any], ...] = ()


@frozen
class Many:
    """A number with its noun: "5 players"."""

    number: float
    one: str
    many: str


@frozen
class Figure:
    """A number as it is written: "2.5"; `form` as Python writes it."""

    value: float
    form: str = "g"


@frozen
class Percent:
    """A part of one: "45 %"."""

    of_one: float


@frozen
class Time:
    """How long: "4.5 min", "40 s"."""

    minutes: float


@frozen
class Named:
    """A name, or a text, of which the library may know the words in another language."""

    text: str


@frozen
class Written:
    """A text that is the same in every language: the title of a game, what is to be typed, a line of a sheet."""

    text: str


@frozen
class Side:
    """A side in a sentence: "north", "the herons"."""

    key: str


@frozen
class Players:
    """So many of a side: "14 north", "11 herons"."""

    number: int
    side: str


@frozen
class Listed:
    """One after another, the last behind "and" or "or"."""

    items: tuple[Any, ...]
    last: Literal["and", "or"] = "and"


@frozen
class Chain:
    """One after another, with the same between them all. With `most` only the first that differ, and how many more."""

    items: tuple[Any, ...]
    between: str = " "
    most: int | None = None


@frozen
class Capital:
    """With a capital letter."""

    what: Any


Value = Union[Said, Many, Figure, Percent, Time, Named, Written, Side, Players, Listed, Chain, Capital, str, int]
NOTHING = Said("")
MORE = " and {number} more"
WRITE, SAY = "Write: {line}", "Say: {line}"


def said(pattern: str, /, **fields: Any) -> Said:
    """The pattern with these values in it."""
    return Said(pattern, tuple(fields.items()))


def quoting(pattern: str, /, **fields: Value) -> Said:
    """The pattern with what a sheet says in it: texts, which are the same in every language, and values."""
    return Said(
        pattern, tuple((name, Written(each) if isinstance(each, str) else each) for name, each in fields.items())
    )


def write(*lines: str) -> Said:
    """The advice to write a line, or one of several."""
    return Said(WRITE, (("line", Chain(tuple(map(Written, lines)), ", or ")),))


def to_write(value: Value) -> Value | None:
    """The lines that an advice says to write; None where it says something else."""
    return value.fields[0][1] if isinstance(value, Said) and value.pattern == WRITE else None


def rewritten(value: Value, change: Callable[[str], str]) -> Value:
    """The value with every text of a sheet in it changed."""
    match value:
        case Said(pattern, fields):
            return Said(pattern, tuple((name, rewritten(each, change)) for name, each in fields))
        case Listed(items) | Chain(items):
            return evolve(value, items=tuple(rewritten(each, change) for each in items))
        case Capital(what):
            return Capital(rewritten(what, change))
        case Written(text):
            return Written(change(text))
    return value


def listed(texts: Iterable[Value], last: Literal["and", "or"] = "and") -> Listed:
    """What a sheet says one after another; texts are the same in every language."""
    return Listed(tuple(Written(each) if isinstance(each, str) else each for each in texts), last)


def perhaps_meant(word: str, known: Iterable[str]) -> Said | None:
    """Such as "Did you mean `lantern`?"; None where nothing is near."""
    near = nearest(word, known)
    return said("Did you mean {names}?", names=listed((f"`{each}`" for each in near), "or")) if near else None


def english(value: Value) -> str:
    """The value in words of English; a whole sentence begins with a capital letter where it is told."""
    match value:
        case Said(pattern, fields):
            return pattern.format(**{name: english(each) for name, each in fields})
        case Many(number, one, many):
            return count(number, one, many)
        case Figure(number, form):
            return format(number, form)
        case Percent(part):
            return percent(part)
        case Time(time):
            return minutes(time)
        case Named(text) | Written(text):
            return text
        case Side(key):
            return f"the {key}" if called_by_players(key) else key
        case Players(number, side):
            return players_said(side, number)
        case Listed(items, last):
            return listing([english(each) for each in items], last)
        case Chain(items, between, most):
            return chained([english(each) for each in items], between, most)
        case Capital(what):
            return capital(english(what))
    return str(value)


def chained(told: list[str], between: str, most: int | None, more: str = MORE) -> str:
    """What is told in a row, cut off behind the `most` that differ."""
    if most is None:
        return between.join(told)
    differing = list(dict.fromkeys(told))
    left = more.format(number=len(differing) - most) if len(differing) > most else ""
    return between.join(differing[:most]) + left
