"""Does a game fit a class? Pupils, ages, hall, kit and time, each held against the sheet or against a norm."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import frozen

from compose.fit.kit_findings import kit_findings
from compose.fit.lesson_plan import LessonPlan, lesson_plan
from compose.fit.time_findings import time_findings
from compose.staging.cupboard import KitRow, kit_rows
from compose.staging.floor.values import Floor
from compose.staging.laid_out import laid_out
from compose.staging.limit import Limit, limit
from compose.staging.people_findings import people_findings
from compose.staging.resolved import resolved
from compose.staging.room import Room, most_courts, room_for
from compose.staging.room_findings import room_findings
from compose.staging.school_class import SchoolClass
from compose.staging.teams import Teams, most_games, teams_of
from grammar.finding import Finding
from grammar.game import Game
from library import KitItem, Norms


@frozen
class Fit:
    """How a game and a class go together. `room` is None without a hall, `kit` empty where the class does not say
    what it has. `limits` are the figures of the norms held against what is there."""

    game: Game
    school_class: SchoolClass
    teams: Teams
    room: Room | None
    kit: tuple[KitRow, ...]
    lesson: LessonPlan
    limits: tuple[Limit, ...]
    cautions: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def fits(self) -> bool:
        """Whether nothing has to be mended before the lesson."""
        return not any(finding.severity.value != "note" for finding in self.findings)


def fit(
    game: Game,
    school_class: SchoolClass,
    norms: Norms,
    kit: Mapping[str, KitItem],
    round_min: float | None = None,
) -> Fit:
    """A game for a class. `round_min` is the mean length of a round in minutes as forecast; without it the game's
    own clock is taken, which no round outlasts."""
    floor = _floor(game)
    courts = _courts(game, school_class, norms, floor)
    teams = teams_for(game, school_class, norms)
    room = room_for(floor, school_class.hall, max(1, len(teams.games))) if school_class.hall else None
    limits = _limits(game, school_class, norms, room, teams)
    rows = kit_rows(game, teams.games, school_class.cupboard, kit) if school_class.lists_kit else ()
    lesson = lesson_plan(game, school_class, norms, round_min)
    findings = (
        *people_findings(game, school_class, teams, most_games(game), courts),
        *room_findings(game, room, limits),
        *kit_findings(game, rows, kit),
        *time_findings(game, lesson),
    )
    return Fit(game, school_class, teams, room, rows, lesson, limits, _cautions(game, rows, kit), findings)


def teams_for(game: Game, school_class: SchoolClass, norms: Norms) -> Teams:
    """The games and sides of a class, on as many courts as its hall has room for."""
    return teams_of(game, school_class.pupils, _courts(game, school_class, norms, _floor(game)))


def _floor(game: Game) -> Floor:
    """The court with the fewest players: its extent does not hang on how many they are."""
    return laid_out(game, {side.name: side.least for side in game.sides})


def _courts(game: Game, school_class: SchoolClass, norms: Norms, floor: Floor) -> int | None:
    """How many games the hall has room for with the least strip to the walls; None without a hall."""
    if school_class.hall is None:
        return None
    least = limit(norms, "space run-off", "default", "", 0.0, game.ages_years).least
    return max(1, most_courts(floor, school_class.hall, least, most_games(game)))


def _limits(game: Game, school_class: SchoolClass, norms: Norms, room: Room | None, teams: Teams) -> tuple[Limit, ...]:
    if room is None:
        return ()
    ages = school_class.ages_years or game.ages_years
    pupils = max(1, school_class.pupils)
    return (
        limit(norms, "space area", "mixed games", "hall floor for each pupil", room.area_m2 / pupils, ages),
        limit(norms, "space run-off", "default", "clear strip beside the court", room.beside, ages),
        limit(norms, "space run-off", "default", "clear strip behind the court", room.behind, ages),
    )


def _cautions(game: Game, rows: tuple[KitRow, ...], kit: Mapping[str, KitItem]) -> tuple[str, ...]:
    """What to mind: of the game's own, then of the things that it is played with or that stand in."""
    told = resolved(game).told
    own = [*told.care, *told.cautions]
    things = [line.like for line in game.kit]
    things += [each.name for row in rows for each in row.stand_ins]
    return tuple(dict.fromkeys([*own, *(kit[name].caution for name in things if name in kit and kit[name].caution)]))
