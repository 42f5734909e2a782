"""A modifier's line with a value in the place of each parameter, so that it can be read as a sentence."""

from __future__ import annotations

import re
from collections.abc import Mapping

from grammar.frozen import frozen


@frozen
class Filled:
    """The line with values, the parameter that stands at each column of it (from 1), and, for columns
    that lie behind a value, by how much the line grew there."""

    text: str
    parameters: Mapping[int, str]
    growth: tuple[tuple[int, int], ...] = ()

    def column(self, column: int) -> int:
        """Where a column of the filled line stands in the line as written."""
        return column - sum(by for behind, by in self.growth if column >= behind)


def filled_in(line: str, values: Mapping[str, str]) -> Filled:
    """`values` has the words of a value for each parameter. A line that declares one stays as it is, and so
    do texts in quotes."""
    if not values or re.match(r"takes\b", line, re.IGNORECASE):
        return Filled(line, {})
    pattern = re.compile(r"(?<![\w\"'-])(" + "|".join(map(re.escape, values)) + r")(?![\w\"'-])")
    filled, places, growth, last = "", dict[int, str](), list[tuple[int, int]](), 0
    for match in pattern.finditer(line):
        if line.count('"', 0, match.start()) % 2:
            continue
        name = match.group()
        filled += line[last : match.start()]
        places[len(filled) + 1] = name
        filled += values[name]
        growth.append((len(filled) + 1, len(values[name]) - len(name)))
        last = match.end()
    return Filled(filled + line[last:], places, tuple(growth))
