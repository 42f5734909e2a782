"""The frozen attrs classes that all our values are, quick to declare.

attrs writes and compiles the methods of a class as it is declared, which takes a third of a millisecond and more: of
the four hundred and fifty classes that a command loads it needs half, and compares a tenth; the rest was a third of
its start (measured). Here attrs is asked when a class is first used, and how values are compared is written when two
first are. Such a class is no other than attrs would make.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property, partial
from typing import TYPE_CHECKING, Any

import attrs
from attrs import evolve, field

__all__ = ["evolve", "field", "frozen"]

_BY_ATTRS = ("__attrs_attrs__", "__init__", "__getstate__", "__setstate__", "__match_args__")
_COMPARING = ("__eq__", "__hash__")

if TYPE_CHECKING:
    from attrs import frozen
else:

    def frozen(kind: type | None = None, **options: Any) -> Any:
        """attrs.frozen, with its options; a class that has some is made by attrs at once."""
        if kind is None:
            return lambda later: frozen(later, **options)
        made = attrs.frozen(kind, repr=False, **options) if options or not _can_wait(kind) else _waiting(kind)
        if made.__repr__ is object.__repr__:
            made.__repr__ = _shown
        return made


class _Late:
    """Stands in a class for what is put there as soon as it is asked for."""

    def __init__(self, write: Callable[[Any], None]) -> None:
        self._write = write

    def __set_name__(self, owner: Any, name: str) -> None:
        self._owner, self._name = owner, name

    def __get__(self, instance: object, owner: Any) -> Any:
        self._write(self._owner)
        return getattr(owner if instance is None else instance, self._name)


def _can_wait(kind: type) -> bool:
    """Whether a class has nothing that attrs must see at once: ways to compare or slots of its own, properties that
    are kept, methods that speak of their class."""
    own = vars(kind)
    codes = [getattr(getattr(value, "fget", None) or value, "__code__", None) for value in own.values()]
    speaks_of_itself = any("__class__" in code.co_freevars for code in codes if code is not None)
    keeps = any(isinstance(value, cached_property) for value in own.values())
    return not (speaks_of_itself or keeps or issubclass(kind, BaseException) or {*_COMPARING, "__slots__"} & own.keys())


def _waiting(kind: type) -> Any:
    """The class with its slots, and all else that attrs gives it still to come."""
    names = [name for name, said in vars(kind).get("__annotations__", {}).items() if "ClassVar" not in str(said)]
    above = [vars(base) for base in kind.__mro__[1:-1]]
    slots = [name for name in names if not any(name in each.get("__slots__", ()) for each in above)]
    if not any("__weakref__" in each for each in above):
        slots.append("__weakref__")
    body = {name: value for name, value in vars(kind).items() if name not in (*names, "__dict__", "__weakref__")}
    body |= {"__slots__": tuple(slots), "__qualname__": kind.__qualname__, **_UNCHANGING}
    body |= {name: _Late(partial(_finish, kind)) for name in _BY_ATTRS}
    body |= {name: _Late(_write_comparing) for name in _COMPARING}
    return type(kind)(kind.__name__, kind.__bases__, body)


def _finish(kind: type, made: Any) -> None:
    """Give a class what attrs makes of it as it was declared."""
    whole = vars(attrs.frozen(kind, eq=False, repr=False))
    for name in _BY_ATTRS:
        setattr(made, name, whole[name])


def _write_comparing(made: Any) -> None:
    """Give a class the comparing that attrs would: with its own class alone, field by field, as far as they count."""
    counting = [each for each in attrs.fields(made) if each.eq]
    keys = {f"key_{each.name}": each.eq_key for each in counting if each.eq_key}

    def part(who: str, name: str) -> str:
        return f"key_{name}({who}.{name})" if f"key_{name}" in keys else f"{who}.{name}"

    same = " and ".join(f"{part('one', each.name)} == {part('other', each.name)}" for each in counting) or "True"
    parts = "".join(f"{part('one', each.name)}, " for each in counting)
    made.__eq__ = eval(f"lambda one, other: ({same}) if other.__class__ is one.__class__ else NotImplemented", keys)
    made.__hash__ = eval(f"lambda one: hash(({made.__name__!r}, {parts}))", keys)


def _shown(value: Any) -> str:
    said = (f"{each.name}={getattr(value, each.name)!r}" for each in attrs.fields(type(value)) if each.repr)
    return f"{type(value).__name__}({', '.join(said)})"


_FROZEN = vars(attrs.frozen(type("Frozen", (), {})))
_UNCHANGING = {name: _FROZEN[name] for name in ("__setattr__", "__delattr__")}
