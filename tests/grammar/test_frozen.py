"""Our frozen values are those of attrs, though some of it is written late."""

from __future__ import annotations

import operator
import pickle
from concurrent.futures import ThreadPoolExecutor
from copy import copy, deepcopy
from itertools import product
from threading import Barrier
from typing import Any

import attrs
import pytest

from grammar.frozen import define, evolve, field, frozen, has

OURS, THEIRS = (frozen, field), (attrs.frozen, attrs.field)


def declared(made_by: tuple[Any, Any] = OURS, base: type = object, **options: Any) -> Any:
    """A class with fields that count in different ways, made by ours or by attrs."""
    maker, field = made_by

    class Thing(base):
        name: str
        kinds: tuple[int, ...] = field(eq=frozenset, default=())
        place: int = field(eq=False, default=0)
        secret: str = field(repr=False, default="")

    return maker(Thing, **options)


VALUES = tuple(product(("a", "b"), ((), (1, 2), (2, 1)), (0, 1), ("", "x")))


@pytest.mark.parametrize("options", [{}, {"order": True}, {"eq": False}, {"cache_hash": True}], ids=str)
def test_values_compare_as_those_of_attrs_do(options: dict[str, bool]) -> None:
    ours, theirs = declared(**options), declared(THEIRS, **options)
    for one, other in product(VALUES, VALUES):
        assert (ours(*one) == ours(*other)) == (theirs(*one) == theirs(*other))
        assert (ours(*one) != ours(*other)) == (theirs(*one) != theirs(*other))
        if ours(*one) == ours(*other):
            assert hash(ours(*one)) == hash(ours(*other))


def test_hashing_may_be_asked_first() -> None:
    ours, theirs = declared(), declared(THEIRS)
    assert len({ours(*value) for value in VALUES}) == len({theirs(*value) for value in VALUES}) == 8


def test_values_of_two_classes_are_never_equal() -> None:
    one = declared()
    two, below = declared(), declared(base=one)
    assert one("a") != two("a")
    assert one("a") != below("a") and below("a") != one("a") and below("a") == below("a")
    assert len({one("a"), two("a"), below("a")}) == 3


def test_values_are_shown_as_attrs_shows_them() -> None:
    for value in VALUES:
        assert repr(declared()(*value)) == repr(declared(THEIRS)(*value))


def test_values_cannot_be_changed() -> None:
    value = declared()("a")
    with pytest.raises(attrs.exceptions.FrozenInstanceError):
        value.name = "b"
    with pytest.raises(attrs.exceptions.FrozenInstanceError):
        del value.name
    assert attrs.evolve(value, name="b").name == evolve(value, name="b").name == "b" and value.name == "a"


def test_values_are_compared_by_many_threads_at_once() -> None:
    """How to compare is written late, by whichever thread asks first; more than one may."""
    for _ in range(50):
        ours = declared()
        begin = Barrier(8)

        def together(kind: Any = ours, begin: Barrier = begin) -> bool:
            begin.wait()
            return kind("a") == kind("a", place=1) and hash(kind("a")) == hash(kind("a"))

        with ThreadPoolExecutor(8) as threads:
            assert all(each.result() for each in [threads.submit(together) for _ in range(8)])


def taken(made_by: tuple[Any, Any]) -> Any:
    """A class that takes its fields in every way, above one that gives it two of them."""
    maker, field = made_by

    class Above:
        name: str = "nobody"
        place: int = field(default=0, kw_only=True)

    class Below(maker(Above)):  # type: ignore[misc]
        many: list[int] = field(factory=list)
        few: int = 1
        name: str = "somebody"
        _twice: int = field(init=False, eq=False)
        _open: bool = field(init=False, default=True)
        also: int = field(default=5, kw_only=True)

        @_twice.default
        def _double(self) -> int:
            return 2 * self.few

    return maker(Below)


CALLS: tuple[tuple[tuple[Any, ...], dict[str, Any]], ...] = (
    ((), {}), (([1],), {}), (([1], 2, "a"), {}), (([1],), {"name": "a", "place": 3}), ((), {"also": 1, "few": 0}),
    (([1], 2, "a", 4), {}), ((), {"other": 1}), ((), {"twice": 1}), (([1],), {"many": [2]}),
)  # fmt: skip


@pytest.mark.parametrize(("parts", "named"), CALLS, ids=str)
def test_values_are_made_as_those_of_attrs_are(parts: tuple[Any, ...], named: dict[str, Any]) -> None:
    seen = []
    for made_by in (OURS, THEIRS):
        kind = taken(made_by)
        try:
            seen.append({each.name: getattr(kind(*parts, **named), each.name) for each in attrs.fields(kind)})
        except TypeError:
            seen.append({})
    assert seen[0] == seen[1]
    assert list(seen[0]) == list(seen[1])


def test_values_are_taken_apart_as_those_of_attrs_are() -> None:
    ours, theirs = taken(OURS), taken(THEIRS)
    assert ours.__match_args__ == theirs.__match_args__
    assert ours().many is not ours().many
    assert attrs.asdict(ours([1], 2)) == attrs.asdict(theirs([1], 2))
    assert attrs.has(ours) and has(ours) and not has(int) and not hasattr(ours(), "__dict__")
    for made in (copy(ours([1], 2)), deepcopy(ours([1], 2)), evolve(ours([1]), few=2)):
        assert made == ours([1], 2) and made._twice == 4


def test_values_stand_in_order_as_those_of_attrs_do() -> None:
    ours, theirs = declared(order=True), declared(THEIRS, order=True)
    values = [value for value in VALUES if len(value[1]) < 2]
    for one, other in product(values, values):
        for compare in (operator.lt, operator.le, operator.gt, operator.ge):
            assert compare(ours(*one), ours(*other)) == compare(theirs(*one), theirs(*other))


@frozen(cache_hash=True)
class Carried:
    """A value that goes from one process to another."""

    what: str


def test_values_go_through_a_pickle() -> None:
    value = Carried("a")
    again = pickle.loads(pickle.dumps(value))
    assert again == value and hash(again) == hash(value) == hash(value)


def test_values_that_may_change_are_those_of_attrs() -> None:
    ours, theirs = declared((define, field)), declared((attrs.define, attrs.field))
    for kind in (ours, theirs):
        value = kind("a")
        value.name = "b"
        assert value == kind("b", place=1) != kind("a")
        with pytest.raises(TypeError):
            hash(value)
        with pytest.raises(AttributeError):
            value.other = 1
