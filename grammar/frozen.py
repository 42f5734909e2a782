"""The frozen classes that all our values are, and the few that change: attrs to whoever reads or checks them, declared
in a tenth of its time.

attrs writes and compiles how values of a class are made, compared and hashed as the class is declared; of the five
hundred and fifty classes that a command loads it makes values of a third, and the rest was a quarter of its start
(measured), and loading attrs a twentieth. Here each of these methods is written when it is first asked for. attrs' own
functions (`fields`, `asdict`) read these classes as theirs. What nobody here needs is left out: validators, converters,
`super()` in such a class.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from operator import attrgetter, ge, gt, le, lt
from typing import TYPE_CHECKING, Any, NoReturn

__all__ = ["define", "evolve", "field", "fields", "frozen", "has"]

_NOTHING: Any = object()  # stands for no default; None may be one
_HASH = "_kept_hash"


class Field:
    """One field of a class, with the names that attrs gives to what is known of it."""

    __slots__ = ("alias", "eq", "eq_key", "factory", "given", "init", "kw_only", "metadata", "name", "of_value", "repr")

    def __init__(
        self,
        *,
        default: Any = _NOTHING,
        factory: Callable[[], Any] | None = None,
        init: bool = True,
        eq: bool | Callable[[Any], Any] = True,
        repr: bool = True,
        kw_only: bool = False,
        metadata: Mapping[str, Any] = {},
    ) -> None:
        self.name = self.alias = ""  # its class tells it
        self.given, self.factory, self.init, self.kw_only, self.repr = default, factory, init, kw_only, repr
        self.eq, self.eq_key, self.metadata = bool(eq), eq if callable(eq) else None, metadata
        self.of_value: Callable[[Any], Any] | None = None

    def default(self, method: Callable[[Any], Any]) -> Callable[[Any], Any]:
        """Marks the method that gives the default, from a value whose earlier fields are there."""
        self.of_value = method
        return method


if TYPE_CHECKING:
    from attrs import define, evolve, field, fields, frozen, has
else:
    field, fields = Field, attrgetter("__attrs_attrs__")

    def evolve(value: Any, /, **changes: Any) -> Any:
        """The same value but for some fields."""
        for each in value.__attrs_attrs__:
            if each.init and each.alias not in changes:
                changes[each.alias] = getattr(value, each.name)
        return value.__class__(**changes)

    def has(kind: Any) -> bool:
        """Whether a class is one of ours."""
        return hasattr(kind, "__attrs_attrs__")

    def frozen(kind: type | None = None, *, eq: bool = True, order: bool = False, cache_hash: bool = False) -> Any:
        """A class with slots for what it annotates, whose values never change."""
        if kind is None:
            return partial(frozen, eq=eq, order=order, cache_hash=cache_hash)
        made = _declared(kind, {"__setattr__": _refuse, "__delattr__": _refuse}, (_HASH,) if cache_hash else ())
        if eq:
            _write_late(made, "__eq__", _comparing)
            _write_late(made, "__hash__", _hashing_once if cache_hash else _hashing)
        for compare in (lt, le, gt, ge) if order else ():
            setattr(made, f"__{compare.__name__}__", _ordering(compare))
        return made

    def define(kind: type | None = None, *, eq: bool = True) -> Any:
        """A class with slots for what it annotates, whose values may change."""
        if kind is None:
            return partial(define, eq=eq)
        made = _declared(kind, {"__hash__": None} if eq else {})
        if eq:
            _write_late(made, "__eq__", _comparing)
        return made


def _declared(kind: type, methods: Mapping[str, Any], more_slots: tuple[str, ...] = ()) -> Any:
    """The class with its fields in slots; how its values are made is written late."""
    own = {name: _named(name, vars(kind).get(name, _NOTHING)) for name in kind.__annotations__}
    bases = [each for base in kind.__bases__ for each in getattr(base, "__attrs_attrs__", ())]
    every = (*(each for each in bases if each.name not in own), *own.values())
    slots = [name for name in own if name not in {each.name for each in bases}]
    body = {name: value for name, value in vars(kind).items() if name not in (*own, "__dict__", "__weakref__")}
    body |= methods
    body |= {
        "__slots__": (*slots, *more_slots),
        "__attrs_attrs__": every,
        "__match_args__": tuple(each.alias for each in every if each.init and not each.kw_only),
        "__getstate__": _state,
        "__setstate__": _take_state,
    }
    made: Any = type(kind)(kind.__name__, kind.__bases__, body)
    _write_late(made, "__init__", _making)
    if made.__repr__ is object.__repr__:
        made.__repr__ = _shown
    return made


def _named(name: str, given: Any) -> Field:
    known = given if isinstance(given, Field) else Field(default=given)
    known.name, known.alias = name, name.lstrip("_")
    return known


def _write_late(kind: type, name: str, write: Callable[[Any], Callable[..., Any]]) -> None:
    """Give a class a method that is written when it is first asked for, and stands in this one's place from then on."""

    def asked(one: Any, /, *parts: Any, **named: Any) -> Any:
        method = write(kind)
        setattr(kind, name, method)
        return method(one, *parts, **named)

    asked.__name__ = name
    setattr(kind, name, asked)


def _making(kind: Any) -> Callable[..., None]:
    every: tuple[Field, ...] = kind.__attrs_attrs__
    known: dict[str, Any] = {"_NOTHING": _NOTHING}
    by_place, by_name, body = list[str](), list[str](), list[str]()
    for each in every:
        known[f"_set_{each.name}"] = getattr(kind, each.name).__set__
        known[f"_usual_{each.name}"] = each.of_value or each.factory or each.given
        usual, said = f"_usual_{each.name}", each.alias
        if each.of_value or each.factory:
            usual = f"{usual}(self)" if each.of_value else f"{usual}()"
            given, value = f"{said}=_NOTHING", f"{usual} if {said} is _NOTHING else {said}"
        else:
            given, value = said if each.given is _NOTHING else f"{said}={usual}", said
        if each.init:
            (by_name if each.kw_only else by_place).append(given)
        body.append(f" _set_{each.name}(self, {value if each.init else usual})")
    said = ", ".join(("self", *by_place, *(("*", *by_name) if by_name else ())))
    exec("\n".join((f"def __init__({said}):", *body, " return")), known)
    return known["__init__"]  # type: ignore[no-any-return]


def _parts(kind: Any, who: str, keys: dict[str, Any]) -> Iterator[str]:
    """What counts of each field in comparing, as an expression; `keys` takes up the functions that they call."""
    for each in kind.__attrs_attrs__:
        if each.eq_key:
            keys[f"key_{each.name}"] = each.eq_key
        if each.eq:
            yield f"key_{each.name}({who}.{each.name})" if each.eq_key else f"{who}.{each.name}"


def _comparing(kind: Any) -> Callable[..., Any]:
    """With its own class alone, field by field, as far as they count."""
    keys: dict[str, Any] = {}
    pairs = zip(_parts(kind, "one", keys), _parts(kind, "other", keys), strict=True)
    same = " and ".join(f"{one} == {other}" for one, other in pairs) or "True"
    compare: Callable[..., Any] = eval(
        f"lambda one, other: ({same}) if other.__class__ is one.__class__ else NotImplemented", keys
    )
    return compare


def _hashing(kind: Any) -> Callable[[Any], int]:
    keys: dict[str, Any] = {}
    parts = "".join(f"{each}, " for each in _parts(kind, "one", keys))
    count: Callable[[Any], int] = eval(f"lambda one: hash(({kind.__name__!r}, {parts}))", keys)
    return count


def _hashing_once(kind: Any) -> Callable[[Any], int]:
    """For keys of many look-ups: what was counted is kept in a slot of its own."""
    count = _hashing(kind)

    def kept(one: Any) -> int:
        try:
            return int(one._kept_hash)
        except AttributeError:
            object.__setattr__(one, _HASH, count(one))
            return kept(one)

    return kept


def _ordering(compare: Callable[[Any, Any], bool]) -> Callable[[Any, Any], Any]:
    def ordered(one: Any, other: Any) -> Any:
        if other.__class__ is not one.__class__:
            return NotImplemented
        return compare(_counting(one), _counting(other))

    return ordered


def _counting(value: Any) -> tuple[Any, ...]:
    own = ((each.eq_key, getattr(value, each.name)) for each in value.__attrs_attrs__ if each.eq)
    return tuple(key(part) if key else part for key, part in own)


def _state(value: Any) -> tuple[Any, ...]:
    return tuple(getattr(value, each.name) for each in value.__attrs_attrs__)


def _take_state(value: Any, state: tuple[Any, ...]) -> None:
    for each, part in zip(value.__attrs_attrs__, state, strict=True):
        object.__setattr__(value, each.name, part)


def _shown(value: Any) -> str:
    said = (f"{each.name}={getattr(value, each.name)!r}" for each in value.__attrs_attrs__ if each.repr)
    return f"{type(value).__name__}({', '.join(said)})"


def _refuse(value: Any, name: str, *given: Any) -> NoReturn:
    from attrs.exceptions import FrozenInstanceError

    raise FrozenInstanceError
