"""A game for a class as the page speaks of it: teams, hall, kit and lesson in a few lines, and the plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import library
from compose.draw.plan import plan_of
from compose.draw.proof import people
from compose.draw.to_svg import svg_of
from compose.fit.fit import Fit, fit
from compose.page.answers.values import ForClass
from compose.staging.laid_out import laid_out
from compose.staging.school_class import SchoolClass
from compose.staging.teams import usual_players
from compose.telling.wording import Wording
from grammar.game import Game


def fitted(game: Game, group: SchoolClass, round_min: float | None = None) -> Fit:
    """How the game and the class go together."""
    return fit(game, group, library.norms(), library.kit_names(), round_min)


def players_of(game: Game, found: Fit) -> Mapping[str, int]:
    """The players of each side in the first of the games side by side; the usual ones where the class cannot play."""
    return found.teams.games[0] if found.teams.games else usual_players(game)


def for_class(game: Game, found: Fit, wording: Wording, key: str) -> ForClass:
    """The lines and the plan; `key` keeps the ids of several plans on one page apart."""
    floor = laid_out(game, players_of(game, found))
    drawing = plan_of(game, floor, found.school_class.hall, wording=wording)
    lines = (*_teams(found, wording), *_hall(found, wording), *_kit(found, wording))
    cautions = tuple(wording.author(each) for each in found.cautions)
    return ForClass(lines, cautions, svg_of(drawing, key=key), drawing.description)


def _teams(found: Fit, wording: Wording) -> Iterator[str]:
    games = found.teams.games
    if not games:
        pupils = wording.counted(found.school_class.pupils, "pupil", "pupils")
        yield wording.say("It cannot be played with {pupils}.", pupils=pupils)
        return
    kinds = list(dict.fromkeys(people(each, wording) for each in games))
    side_by_side = wording.counted(len(games), "game side by side", "games side by side")
    told = wording.listed(kinds)
    yield told + "." if len(games) == 1 else wording.say("{games}: {teams}.", games=side_by_side, teams=told)
    if found.teams.over:
        yield wording.say("{pupils} left over.", pupils=wording.counted(found.teams.over, "pupil", "pupils"))


def _hall(found: Fit, wording: Wording) -> Iterator[str]:
    long, wide = (wording.figure(round(each, 1)) for each in found.game.court_m)
    if found.room is None or found.room.courts <= 1:
        yield wording.say("A court of {long} m by {wide} m.", long=long, wide=wide)
    else:
        number = wording.figure(found.room.courts)
        yield wording.say("{number} courts of {long} m by {wide} m.", number=number, long=long, wide=wide)


def _kit(found: Fit, wording: Wording) -> Iterator[str]:
    if not found.kit:
        need = [
            wording.counted(line.total(players_of(found.game, found)), line.name, line.plural)
            for line in found.game.kit
        ]
        if need:
            yield wording.say("You need {kit}.", kit=wording.listed(need))
        return
    for row in found.kit:
        needed = wording.counted(row.needed, row.line.name, row.line.plural)
        if row.short > 0:
            yield wording.say("{needed}: {number} short.", needed=needed, number=wording.figure(row.short))
        elif row.stand_ins:
            others = wording.listed(wording.counted(each.count, each.name, each.name) for each in row.stand_ins)
            yield wording.say("{needed}: {others} can stand in.", needed=needed, others=others)
        else:
            yield wording.say("{needed}: there.", needed=needed)
