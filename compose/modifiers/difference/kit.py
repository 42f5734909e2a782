"""How two games differ in their kit and where it lies at the start."""

from __future__ import annotations

from collections.abc import Iterator

from compose.modifiers.difference.lines import line_differences
from grammar.game import Game, GameKit
from grammar.words import article, count


def kit_differences(one: Game, other: Game) -> Iterator[str]:
    """One sentence for each kind of kit that differs, then the places of the set-up."""
    before, after = ({line.name: line for line in game.kit} for game in (one, other))
    for name, line in after.items():
        yield from _changed(before[name], line) if name in before else [f"besides, {_line(line)}"]
    for name, line in before.items():
        if name not in after:
            yield f"no {line.plural}"
    yield from line_differences(one, other, "set-up")


def _changed(before: GameKit, after: GameKit) -> Iterator[str]:
    if (before.count, before.owner) != (after.count, after.owner):
        yield f"{_line(after)} in place of {before.count}{_whose(before)}"
    if before.like != after.like:
        yield f"the {after.plural} are like {article(after.like)}, not like {article(before.like)}"
    if before.scale != after.scale:
        how = "larger" if after.scale > before.scale else "smaller"
        yield f"the {after.plural} are {how}: {after.scale / before.scale:.0%} of their size".replace("%", " %")
    if before.parts != after.parts:
        yield f"the {after.plural} are of {after.parts} parts, not {before.parts}"


def _line(line: GameKit) -> str:
    return count(line.count, line.name, line.plural) + _whose(line)


def _whose(line: GameKit) -> str:
    if line.per_player:
        return " for each player" if line.owner == "each" else f" for each of the {line.owner}"
    if line.owner is None:
        return ""
    return " for each side" if line.owner == "each" else f" for {line.owner}"
