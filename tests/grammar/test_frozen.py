"""Our frozen values are those of attrs, though some of it is written late."""

from __future__ import annotations

import copy
import os
import pickle
import subprocess
import sys
import weakref
from functools import cached_property, partial
from itertools import product
from pathlib import Path
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


@frozen
class Above:
    """A class that others stand on."""

    name: str
    among: tuple[str, ...] = field(factory=tuple, kw_only=True)

    def said(self) -> str:
        """Its name, in whatever stands on it."""
        return self.name


@frozen
class Below(Above):
    """A class that stands on another, which nobody has used before."""

    number: int = 0
    half: float = field(init=False)

    @half.default
    def _half(self) -> float:
        return self.number / 2


def test_a_class_knows_its_fields_before_it_is_used() -> None:
    assert attrs.has(Below)
    assert [each.name for each in attrs.fields(Below)] == ["name", "among", "number", "half"]
    assert Below.__match_args__ == ("name", "number")


def test_values_have_slots_and_can_be_sent() -> None:
    value = Below("a", 3, among=("b",))
    assert (value.said(), value.half, value.among) == ("a", 1.5, ("b",))
    assert not hasattr(value, "__dict__") and weakref.ref(value)() is value
    assert pickle.loads(pickle.dumps(value)) == copy.copy(value) == value


def test_a_value_may_be_received_before_its_class_was_used() -> None:
    sent = "import pickle, sys; from test_frozen import Below; sys.stdout.buffer.write(pickle.dumps(Below('a', 3)))"
    took = "import pickle, sys; print(pickle.load(sys.stdin.buffer).half)"
    paths = os.pathsep.join((str(Path(__file__).parent), str(Path(__file__).parents[2])))
    run = partial(subprocess.run, capture_output=True, check=True, env={**os.environ, "PYTHONPATH": paths})
    assert run([sys.executable, "-c", took], input=run([sys.executable, "-c", sent]).stdout).stdout.strip() == b"1.5"


def test_a_class_may_speak_of_itself_and_keep_what_it_worked_out() -> None:
    @frozen
    class Louder(Above):
        worked_out: list[int] = field(factory=list)

        def said(self) -> str:
            return super().said().upper()

        @cached_property
        def length(self) -> int:
            self.worked_out.append(1)
            return len(self.name)

    value = Louder("ab")
    assert (value.said(), value.length, value.length, value.worked_out) == ("AB", 2, 2, [1])
