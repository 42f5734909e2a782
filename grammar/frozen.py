"""The frozen attrs classes that all our values are, quick to declare.

attrs writes and compiles how two values of a class are compared, hashed and shown as the class is declared: of the
four hundred and fifty classes that a command loads it compares a third, and the rest was an eighth of its start
(measured). Here the first two are written when they are first asked for; showing is one function for all.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import attrs
from attrs import evolve, field

__all__ = ["evolve", "field", "frozen"]

if TYPE_CHECKING:
    from attrs import frozen
else:

    def frozen(kind: type | None = None, **options: Any) -> Any:
        """attrs.frozen, with its options; a class that has some gets the comparing of attrs at once."""
        if kind is None:
            return lambda later: frozen(later, **options)
        made = attrs.frozen(kind, repr=False, **(options or {"eq": False}))
        if not options:
            made.__eq__, made.__hash__ = _until_asked(made)
        if made.__repr__ is object.__repr__:
            made.__repr__ = _shown
        return made


def _until_asked(kind: Any) -> tuple[Callable[..., Any], Callable[..., int]]:
    """What stands for comparing and hashing until one of them is asked for, and is replaced by what is meant."""

    def compare(one: Any, other: Any) -> Any:
        _write_comparing(kind)
        return kind.__eq__(one, other)

    def count(one: Any) -> int:
        _write_comparing(kind)
        return int(kind.__hash__(one))

    return compare, count


def _write_comparing(kind: Any) -> None:
    """Give a class the comparing that attrs would: with its own class alone, field by field, as far as they count."""
    counting = [each for each in attrs.fields(kind) if each.eq]
    keys = {f"key_{each.name}": each.eq_key for each in counting if each.eq_key}

    def part(who: str, name: str) -> str:
        return f"key_{name}({who}.{name})" if f"key_{name}" in keys else f"{who}.{name}"

    same = " and ".join(f"{part('one', each.name)} == {part('other', each.name)}" for each in counting) or "True"
    parts = "".join(f"{part('one', each.name)}, " for each in counting)
    kind.__eq__ = eval(f"lambda one, other: ({same}) if other.__class__ is one.__class__ else NotImplemented", keys)
    kind.__hash__ = eval(f"lambda one: hash(({kind.__name__!r}, {parts}))", keys)


def _shown(value: Any) -> str:
    said = (f"{each.name}={getattr(value, each.name)!r}" for each in attrs.fields(type(value)) if each.repr)
    return f"{type(value).__name__}({', '.join(said)})"
