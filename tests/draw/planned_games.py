"""Games of a lesson, each with as many players as it may have."""

from __future__ import annotations

from attrs import evolve
from drawn_games import library_game

import library
from compose.draw.lesson.timetable import Planned
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.staging.teams import Teams
from grammar.core.declared import Odd

TWO = ("lantern-row", "heron-and-pike")


def planned(name, round_min=4.0, minutes=None):
    return planned_game(library_game(name), round_min, minutes)


def planned_game(game, round_min=4.0, minutes=None, active=None):
    """The game with as many players as it may have, in a lesson of so many minutes."""
    teams = Teams(({side.name: side.most for side in game.sides},), 0, Odd.UNSAID)
    group = evolve(some_class(teams.playing), lesson_min=minutes)
    staging = stage(game, library.norms(), library.kit_names(), group, teams)
    return Planned(game, staging, round_min, active)
