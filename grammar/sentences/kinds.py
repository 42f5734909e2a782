"""Which class stands for which rule of rules.lark: the class name in small letters and underscores."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from grammar.sentences import (
    ball,
    base,
    blocking,
    class_sheet,
    finish,
    hall_sheet,
    head,
    limits,
    lives,
    modifier,
    play,
    points,
    remix,
    runs,
    sides,
    space,
    time,
    when,
)
from grammar.sentences.base import Node

_MODULES = (
    *(base, ball, blocking, limits, head, space, sides, time, lives, runs, play, points, when, finish),
    *(modifier, remix, class_sheet, hall_sheet),
)


def rule_name(kind: type[Node]) -> str:
    """Such as "SideRef" gives "side_ref"."""
    return re.sub(r"(?<!^)(?=[A-Z])", "_", kind.__name__).lower()


def _kinds() -> Iterator[type[Node]]:
    for module in _MODULES:
        for value in vars(module).values():
            if isinstance(value, type) and issubclass(value, Node) and value.__module__ == module.__name__:
                yield value


BY_RULE: Mapping[str, type[Node]] = {rule_name(kind): kind for kind in _kinds()}
