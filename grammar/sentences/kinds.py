"""Which class stands for which rule of rules.lark: the class name in small letters and underscores.

What only sheets of other kinds than games say is loaded where such a sentence is first met.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from importlib import import_module
from types import ModuleType

from grammar.sentences import (
    attempting,
    ball,
    base,
    blocking,
    claims,
    events,
    finish,
    fouls,
    freezing,
    head,
    limits,
    lives,
    play,
    points,
    queues,
    relays,
    resting,
    runs,
    sets,
    sides,
    space,
    then,
    time,
    when,
)
from grammar.sentences.base import Node

_OF_GAMES = (
    base,
    ball,
    blocking,
    limits,
    head,
    space,
    sides,
    time,
    lives,
    runs,
    relays,
    sets,
    fouls,
    attempting,
    resting,
    queues,
    play,
    points,
    events,
    then,
    freezing,
    when,
    claims,
    finish,
)
_OF_OTHER_SHEETS = ("needs", "modifier", "remix", "class_sheet", "hall_sheet")


def kind_of(rule: str) -> type[Node]:
    """The class of a rule; KeyError where there is none."""
    return _of_games().get(rule) or _of_other_sheets()[rule]


@cache  # whole or not there: the page reads in several threads
def _of_games() -> dict[str, type[Node]]:
    return _by_rule(_OF_GAMES)


@cache
def _of_other_sheets() -> dict[str, type[Node]]:
    return _by_rule([import_module(f"grammar.sentences.{name}") for name in _OF_OTHER_SHEETS])


def rule_name(kind: type[Node]) -> str:
    """Such as "SideRef" gives "side_ref"."""
    return re.sub(r"(?<!^)(?=[A-Z])", "_", kind.__name__).lower()


def _by_rule(modules: Iterable[ModuleType]) -> dict[str, type[Node]]:
    return {
        rule_name(value): value
        for module in modules
        for value in vars(module).values()
        if isinstance(value, type) and issubclass(value, Node) and value.__module__ == module.__name__
    }
