"""Each kind of change that a modifier can make to a sheet: which function carries out which sentence."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from compose.modifiers.changes.kit import add_kit, add_later, deal_out, make_like, scale_kit, stand_targets, take_kit
from compose.modifiers.changes.lines import block, take_all
from compose.modifiers.changes.play import aim_from, aim_in_order, change_skill, turn_switch
from compose.modifiers.changes.sheets import Draft, Problem
from compose.modifiers.changes.space import make_court, scale_area, scale_court, uneven_sides
from grammar.game import Game
from grammar.sentences import modifier as said
from grammar.sentences.base import Node
from grammar.tree import Line

_OF_SENTENCES: Mapping[type[Node], Callable[[Draft, Game, Any], Problem | None]] = {
    said.ChangeSkill: change_skill,
    said.AddKit: add_kit,
    said.AddLater: add_later,
    said.TakeKit: take_kit,
    said.DealOut: deal_out,
    said.MakeLike: make_like,
    said.ScaleKit: scale_kit,
    said.MakeCourt: make_court,
    said.ScaleCourt: scale_court,
    said.ScaleArea: scale_area,
    said.StandTargets: stand_targets,
    said.AimFrom: aim_from,
    said.AimInOrder: aim_in_order,
    said.UnevenSides: uneven_sides,
    said.TakeAll: take_all,
    said.TurnSwitch: turn_switch,
}
CHANGES = (*_OF_SENTENCES, said.Block)


def carry_out(draft: Draft, game: Game, line: Line) -> Problem | None:
    """One line of a modifier done to the draft of a game's sheet; why it cannot be done, or None."""
    if isinstance(line.sentence, said.Block):
        return block(draft, game, line)
    return _OF_SENTENCES[type(line.sentence)](draft, game, line.sentence)
