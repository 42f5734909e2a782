"""A staging → the plan of its courts."""

from __future__ import annotations

from compose.draw.plan import described, plan_of, plan_on_card
from compose.draw.shapes import Drawing
from compose.draw.units import METRIC, Units
from compose.staging.staging import Staging
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game


def class_plan(game: Game, staging: Staging, units: Units = METRIC, wording: Wording = ENGLISH) -> Drawing:
    """The plan of a page of its own; `game` is the game under the title that is to stand there."""
    return plan_of(game, staging.court.floor, staging.school_class.hall, units=units, wording=wording)


def class_plan_on_card(
    game: Game, staging: Staging, units: Units = METRIC, wording: Wording = ENGLISH, large: bool = False
) -> Drawing:
    """The plan as it stands on a card."""
    hall = staging.school_class.hall
    return plan_on_card(game, staging.court.floor, hall, units=units, wording=wording, large=large)


def class_described(game: Game, staging: Staging, wording: Wording = ENGLISH) -> str:
    """The plan in words."""
    return described(game, staging.court.floor, staging.school_class.hall, wording)
