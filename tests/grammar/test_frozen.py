"""Our frozen values are those of attrs, though some of it is written late."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from itertools import product
from threading import Barrier
from typing import Any

import attrs
import pytest

from grammar.frozen import field, frozen


def declared(maker: Any, base: type = object, **options: Any) -> Any:
    """A class with fields that count in different ways, made by ours or by attrs."""

    class Thing(base):
        name: str
        kinds: tuple[int, ...] = field(eq=frozenset, default=())
        place: int = field(eq=False, default=0)
        secret: str = field(repr=False, default="")

    return maker(Thing, **options)


VALUES = tuple(product(("a", "b"), ((), (1, 2), (2, 1)), (0, 1), ("", "x")))


@pytest.mark.parametrize("options", [{}, {"order": True}, {"eq": False}], ids=str)
def test_values_compare_as_those_of_attrs_do(options: dict[str, bool]) -> None:
    ours, theirs = declared(frozen, **options), declared(attrs.frozen, **options)
    for one, other in product(VALUES, VALUES):
        assert (ours(*one) == ours(*other)) == (theirs(*one) == theirs(*other))
        assert (ours(*one) != ours(*other)) == (theirs(*one) != theirs(*other))
        if ours(*one) == ours(*other):
            assert hash(ours(*one)) == hash(ours(*other))


def test_hashing_may_be_asked_first() -> None:
    ours, theirs = declared(frozen), declared(attrs.frozen)
    assert len({ours(*value) for value in VALUES}) == len({theirs(*value) for value in VALUES}) == 8


def test_values_of_two_classes_are_never_equal() -> None:
    one = declared(frozen)
    two, below = declared(frozen), declared(frozen, base=one)
    assert one("a") != two("a")
    assert one("a") != below("a") and below("a") != one("a") and below("a") == below("a")
    assert len({one("a"), two("a"), below("a")}) == 3


def test_values_are_shown_as_attrs_shows_them() -> None:
    for value in VALUES:
        assert repr(declared(frozen)(*value)) == repr(declared(attrs.frozen)(*value))


def test_values_cannot_be_changed() -> None:
    value = declared(frozen)("a")
    with pytest.raises(attrs.exceptions.FrozenInstanceError):
        value.name = "b"
    assert attrs.evolve(value, name="b").name == "b"


def test_values_are_compared_by_many_threads_at_once() -> None:
    """How to compare is written late, by whichever thread asks first; more than one may."""
    for _ in range(50):
        ours = declared(frozen)
        begin = Barrier(8)

        def together(kind: Any = ours, begin: Barrier = begin) -> bool:
            begin.wait()
            return kind("a") == kind("a", place=1) and hash(kind("a")) == hash(kind("a"))

        with ThreadPoolExecutor(8) as threads:
            assert all(each.result() for each in [threads.submit(together) for _ in range(8)])
