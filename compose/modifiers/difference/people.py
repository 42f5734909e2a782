"""How two games differ in who plays: sides, numbers, roles, the odd pupil, games side by side."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.game import Game, GameSide
from grammar.sentences.sides import OddPupil, Role, SideBySide
from grammar.words import count, listing


def people_differences(one: Game, other: Game) -> Iterator[str]:
    """One sentence for each thing that differs about the players."""
    yield from _sides(one, other)
    yield from _roles(one, other)
    yield from _said_once(one, other)


def _sides(one: Game, other: Game) -> Iterator[str]:
    if [side.name for side in one.sides] != [side.name for side in other.sides]:
        yield f"{_all(other)} in place of {_all(one)}"
        return
    for before, after in zip(one.sides, other.sides, strict=True):
        if (before.least, before.most) != (after.least, after.most):
            yield f"{after.name}: {_numbers(after)} in place of {_numbers(before)}"
    before_mirrored, mirrored = (any(side.mirrored for side in game.sides) for game in (one, other))
    if mirrored != before_mirrored:
        yield f"the sides are {'now' if mirrored else 'no longer'} mirrored"


def _all(game: Game) -> str:
    return listing(f"{side.name} ({_numbers(side)})" for side in game.sides)


def _numbers(side: GameSide) -> str:
    if side.least == side.most:
        return count(side.least, "player")
    return f"{side.least} to {side.most} players"


def _roles(one: Game, other: Game) -> Iterator[str]:
    said = [{role.name.text: role.words() for role in game.all_of("sides", Role)} for game in (one, other)]
    before, after = ({name: words.partition(": ")[2] for name, words in each.items()} for each in said)
    for name, words in after.items():
        if name not in before:
            yield f"a new role, {name}: {words}"
        elif before[name] != words:
            yield f"{name}: {words} in place of {before[name]}"
    for name in before:
        if name not in after:
            yield f"the role of {name} is gone"


def _said_once(one: Game, other: Game) -> Iterator[str]:
    for kind in (SideBySide, OddPupil):
        before, after = (next(game.all_of("sides", kind), None) for game in (one, other))
        if after and (not before or before.words() != after.words()):
            yield after.words() + (f" ({before.words()} before)" if before else "")
        elif before and not after:
            yield f"no longer: {before.words()}"
