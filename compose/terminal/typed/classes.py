"""From what a teacher types to a class: a file or a class of the library by its name, or a number of pupils."""

from __future__ import annotations

import library
from compose.staging.school_class import SchoolClass, some_class
from compose.staging.staging import Staging, stage
from compose.staging.teams import Teams, usual_teams
from compose.terminal.answer import refuse, stop
from compose.terminal.typed.finding_games import categories, path_of, read
from grammar.frozen import evolve, frozen
from grammar.game import Game
from library import Hall


@frozen
class Who:
    """Who plays and where, as it was typed; None for what was not."""

    pupils: int | None = None
    class_name: str | None = None
    hall: str | None = None
    lesson_min: float | None = None


def staging_of(game: Game, who: Who, as_json: bool = False) -> Staging:
    """A game staged for whoever was named, whether they can play it or not."""
    group, teams = group_of(game, who, as_json)
    return stage(game, library.norms(), library.kit_names(), group, teams)


def group_of(game: Game, who: Who, as_json: bool = False) -> tuple[SchoolClass, Teams | None]:
    """The class named, with what was said beside it; else so many pupils of whom nothing else is known; where nobody
    says how many, as many as are usual for the game, in their usual teams."""
    teams = usual_teams(game) if who.class_name is None and who.pupils is None else None
    return named_group(who, as_json, teams), teams


def named_group(who: Who, as_json: bool, teams: Teams | None = None) -> SchoolClass:
    """The class named, or the pupils of the teams where nobody is; what was said beside it goes before its sheet."""
    if who.class_name is not None:
        group = school_class(who.class_name, as_json, who.hall)
    else:
        group = some_class(who.pupils or (teams.playing + teams.resting if teams is not None else 1))
    return evolve(
        group,
        pupils=who.pupils or group.pupils,
        hall=group.hall or _hall(who.hall, as_json),
        lesson_min=who.lesson_min or group.lesson_min,
    )


def school_class(name: str, as_json: bool = False, hall: str | None = None) -> SchoolClass:
    """A class, in another hall where one is named; ends the command where there is none, or where it has mistakes.

    A hall that its sheet names may lie beside that sheet.
    """
    from compose.staging.class_from_sheet import class_of
    from compose.terminal.typed.halls import halls_at_hand
    from grammar.class_told import class_told

    path = path_of(name, ("class",), "class", as_json)
    rules = read(path, as_json)
    if not rules.classes:
        refuse(f"`{path}` holds no class.", "A class begins with a line such as: class Beck Class", as_json)
    named = class_told(rules.classes[0]).hall
    halls = halls_at_hand(path.parent, named.text, as_json) if named else library.halls()
    outcome = class_of(rules.classes[0], halls, categories())
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return evolve(outcome.value, hall=_hall(hall, as_json)) if hall is not None else outcome.value


def _hall(name: str | None, as_json: bool) -> Hall | None:
    if name is None:
        return None
    from compose.terminal.typed.halls import hall_named

    return hall_named(name, as_json)
