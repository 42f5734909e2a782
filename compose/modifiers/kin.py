"""What would fit where a modifier does not: one of the library's that is much the same, such as another time limit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from compose.modifiers.apply import remix
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.of_library import library_modifiers
from grammar.finding import Finding
from grammar.frozen import evolve
from grammar.game import Game
from grammar.said import Chain, Listed, Written, english, said
from library import KitItem

UNFIT = ("M-need", "M-fit")


def with_kin(
    findings: Sequence[Finding], game: Game, modifiers: Sequence[Modifier], kit: Mapping[str, KitItem]
) -> tuple[Finding, ...]:
    """The findings, and beside one that a modifier does not fit the names of what the game could have instead."""
    return tuple(_with(each, game, modifiers, kit) if each.code in UNFIT else each for each in findings)


def _with(finding: Finding, game: Game, modifiers: Sequence[Modifier], kit: Mapping[str, KitItem]) -> Finding:
    wanted = next((each for each in modifiers if finding.title.startswith(f"`{each.name}` ")), None)
    kin = list(_kin(wanted, game, kit)) if wanted is not None else []
    if not kin:
        return finding
    names = Listed(tuple(said("`{modifier}`", modifier=Written(each.name)) for each in kin), "or")
    instead = said("This game can have {modifiers}.", modifiers=names)
    both = (finding.said[0], Chain((finding.said[1], instead))) if finding.said is not None else None
    return evolve(finding, hint=f"{finding.hint} {english(instead)}", said=both)


def _kin(wanted: Modifier, game: Game, kit: Mapping[str, KitItem]) -> Iterator[Modifier]:
    """Those that begin with the same two words, or that clash with it and end with the same; as far as they fit."""
    for each in library_modifiers():
        one, other = wanted.name.split(), each.name.split()
        clash = each.name in wanted.clashes or wanted.name in each.clashes
        alike = one[:2] == other[:2] or (clash and one[-1] == other[-1])
        if each.name != wanted.name and alike and remix(game, (Use(each),), kit).value is not None:
            yield each
