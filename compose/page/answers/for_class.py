"""A game for a class as the page speaks of it: teams, hall, kit and lesson in a few lines, and the plan."""

from __future__ import annotations

from collections.abc import Mapping

import library
from compose.care.of_staging import care_of
from compose.draw.plan.of_class import class_plan
from compose.draw.signs.to_svg import svg_of
from compose.fit.fit import Fit, fit, fit_of
from compose.page.answers.values import ForClass
from compose.staging.school_class import SchoolClass
from compose.staging.staging import Staging, stage
from compose.staging.teams import usual_players
from compose.telling.care import with_cautions
from compose.telling.cautions import cautions_told
from compose.telling.for_class import class_lines
from compose.telling.wording import Wording
from grammar.game import Game

LARGER = 1.9  # our choice: words that can be read where the plan is as wide as a phone


def fitted(game: Game, group: SchoolClass, round_min: float | None = None) -> Fit:
    """How the game and the class go together."""
    return fit(game, group, library.norms(), library.kit_names(), round_min)


def fit_by_forecast(found: Fit, round_min: float | None) -> Fit:
    """The same with rounds as long as they are forecast, in min; None leaves them as long as the game's clock."""
    return fit_of(found.staging, library.norms(), round_min)


def shown(found: Fit) -> Staging:
    """The game as it is drawn: for the class, or for the usual pupils where not one game can be made up of it."""
    staging = found.staging
    return staging if staging.courts else stage(staging.game, library.norms(), library.kit_names())


def players_of(found: Fit) -> Mapping[str, int]:
    """The players of each side on a court of the commonest kind; the usual ones where the class cannot play."""
    staging = found.staging
    return staging.court.players if staging.courts else usual_players(staging.game)


def for_class(found: Fit, wording: Wording, key: str) -> ForClass:
    """The lines and the plan; `key` keeps the ids of several plans on one page apart."""
    staging = found.staging

    def plan(letters: float) -> str:
        drawing = class_plan(staging.game, shown(found), wording=wording, letters=letters)
        return svg_of(drawing, key=f"{key}{letters:g}-".replace(".", "-"))

    return ForClass(tuple(class_lines(staging, wording)), cared_for(staging, wording), plan(1.0), plan(LARGER))


def cared_for(staging: Staging, wording: Wording) -> tuple[str, ...]:
    """What to take care of, the gravest first."""
    return with_cautions(care_of(staging), cautions_told(staging.cautions, wording), wording)
