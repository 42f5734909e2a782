"""A game staged for a class: teams, courts, kit, places, cautions and minutes, worked out once.

Whatever speaks of a game for a class takes these numbers here; nothing else works them out.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from compose.staging.benches import benches_of
from compose.staging.cautions import Caution, cautions_of
from compose.staging.crowded_places import crowded_places
from compose.staging.cupboard import KitRow, kit_rows
from compose.staging.fixed_things import fixed_in, free_m2
from compose.staging.floor_to_use import FLOOR_TO_USE, floor_to_use_m2
from compose.staging.kit_findings import kit_findings
from compose.staging.laid_out import laid_out
from compose.staging.limit import Limit, limit
from compose.staging.minutes import Lesson, lesson_for
from compose.staging.open_floor import OPEN_FLOOR, open_floor_m2
from compose.staging.people_findings import people_findings
from compose.staging.places import Court, acting_on, boxes_of, space_m2
from compose.staging.resolved import resolved
from compose.staging.room import Room, most_courts, room_for
from compose.staging.room_findings import CLEAR_OF_FIXED, HALL_FLOOR, clear_of_fixed_m, limit_findings, room_findings
from compose.staging.school_class import SchoolClass, some_class
from compose.staging.teams import Teams, most_games, teams_of, usual_teams
from grammar.finding import Finding, Severity
from grammar.frozen import evolve, frozen
from grammar.game import Game
from library import Hall, KitItem, Norms

COURT_SPACE = "court floor for each player"


@frozen
class Staging:
    """A game for a class. No court where there are too few pupils for one; `room` is None without a hall.

    `kit` is that of all courts together, `benches` those that it needs besides. `limits` are the figures of the norms
    held against what there is.
    `findings` are of pupils, courts, hall and kit; a mistake among them means that this class cannot play it.
    """

    game: Game
    school_class: SchoolClass
    teams: Teams
    courts: tuple[Court, ...]
    room: Room | None
    kit: tuple[KitRow, ...]
    benches: KitRow | None
    limits: tuple[Limit, ...]
    cautions: tuple[Caution, ...]
    lesson: Lesson
    findings: tuple[Finding, ...]

    @property
    def pupils(self) -> int:
        """All who are there, the odd one among them."""
        return self.school_class.pupils

    @property
    def ages_years(self) -> tuple[float, float]:
        """The ages of the class, else those that the game is for."""
        return self.school_class.ages_years or self.game.ages_years

    @property
    def particular(self) -> bool:
        """Whether there is more to say of the class than how many players each side has."""
        known = self.school_class
        return bool(known.name or known.hall or known.cupboard or self.teams.over or len(self.courts) > 1)

    @property
    def refused(self) -> tuple[Finding, ...]:
        """Why this class cannot play it as it is: nothing else is shown of it then."""
        return tuple(each for each in self.findings if each.severity is Severity.ERROR)

    @property
    def kinds(self) -> tuple[tuple[Court, int], ...]:
        """One court for each number of players that there is, with how many are like it, the commonest first."""
        counts = Counter(tuple(court.players.items()) for court in self.courts)
        firsts = {key: next(each for each in self.courts if tuple(each.players.items()) == key) for key in counts}
        return tuple((firsts[key], number) for key, number in counts.most_common())

    @property
    def court(self) -> Court:
        """The court of the commonest kind; one of them speaks for all that are like it."""
        return self.kinds[0][0]


def stage(
    game: Game,
    norms: Norms,
    kit: Mapping[str, KitItem],
    school_class: SchoolClass | None = None,
    teams: Teams | None = None,
) -> Staging:
    """A game for a class; without one for the pupils of the teams given, or as many as are usual, in no hall, with
    all kit at hand. `teams` are those of the class where they are given, else as even as they can be."""
    if school_class is None:
        teams = teams or usual_teams(game)
        school_class = some_class(teams.playing + teams.resting)
    hall, fewest = school_class.hall, {side.name: side.least for side in game.sides}
    most = _most_courts(game, fewest, hall, norms) if hall else None
    teams = teams or teams_of(game, school_class.pupils, max(1, most) if most is not None else None)
    fullest = teams.games[0] if teams.games else fewest
    strip = _strip(norms, school_class.ages_years or game.ages_years)
    room = room_for(laid_out(game, fullest), hall, max(1, len(teams.games)), strip.least, strip.usual) if hall else None
    courts = _courts(game, teams, room)
    playing = teams.games or (fewest,)  # what those who could play it need
    rows = kit_rows(game, playing, school_class.cupboard if school_class.lists_kit else None, kit)
    ages = school_class.ages_years or game.ages_years
    limits = (*_limits(norms, room, courts, ages, max(1, school_class.pupils)), *_space(norms, game, courts, ages))
    findings = (
        *people_findings(game, school_class, teams, most_games(game), most),
        *room_findings(game, room, [court.box for court in courts]),
        *limit_findings(game, limits),
        *crowded_places(game),
        *dict.fromkeys(problem for court in courts for problem in court.floor.problems),
        *kit_findings(rows),
    )
    lesson = lesson_for(norms, school_class, game.ages_years)
    cautions = cautions_of(resolved(game), (each.like for row in rows for each in row.stand_ins), kit)
    benches = benches_of(game, len(courts), kit)
    return Staging(game, school_class, teams, courts, room, rows, benches, limits, cautions, lesson, findings)


def _most_courts(game: Game, players: Mapping[str, int], hall: Hall, norms: Norms) -> int:
    """How many courts lie in the hall with the least strip to its walls, of as many as the sheet allows."""
    allowed = most_games(game)
    if allowed == 1:
        return 1
    strip = _strip(norms, game.ages_years)
    return most_courts(laid_out(game, players), hall, strip.least, strip.usual, allowed)


def _strip(norms: Norms, ages: tuple[float, float]) -> Limit:
    """What has to be clear around a court."""
    return limit(norms, "space run-off", "default", "", 0.0, ages)


def _courts(game: Game, teams: Teams, room: Room | None) -> tuple[Court, ...]:
    """The courts in the order of the games; games of equally many players have one floor."""
    if not teams.games:
        return ()
    play, made = resolved(game).play, dict[tuple[tuple[str, int], ...], Court]()
    boxes, found = None, list[Court]()
    for players in teams.games:
        key = tuple(players.items())
        if key not in made:
            floor = laid_out(game, players)
            boxes = boxes or boxes_of(floor, len(teams.games), room)
            made[key] = Court(players, floor, acting_on(play, floor), boxes[0], room is not None and room.turned)
        assert boxes is not None
        court = evolve(made[key], box=boxes[len(found)])
        found.append(court if room is None else evolve(court, fixed=fixed_in(court, room.hall)))
    return tuple(found)


def _space(norms: Norms, game: Game, courts: tuple[Court, ...], ages: tuple[float, float]) -> Iterator[Limit]:
    """The floor that each player has on the fullest court, what is left of it to those who may not go everywhere, and
    in a chase what is left in the open."""
    play = resolved(game).play
    spaces = [space_m2(court) for court in courts]
    to_use = [left for court in courts if (left := floor_to_use_m2(play, court)) is not None and left < min(spaces)]
    opens = [left for court in courts if (left := open_floor_m2(play, court)) is not None]
    for what, found in ((COURT_SPACE, spaces), (FLOOR_TO_USE, to_use), (OPEN_FLOOR, opens)):
        if found:
            yield limit(norms, "space area", "court", what, min(found), ages)


def _limits(
    norms: Norms, room: Room | None, courts: Sequence[Court], ages: tuple[float, float], pupils: int
) -> tuple[Limit, ...]:
    if room is None or not room.fits:
        return ()
    clear = clear_of_fixed_m(room, [court.box for court in courts])
    return (
        limit(norms, "space area", "mixed games", HALL_FLOOR, free_m2(room.hall) / pupils, ages),
        limit(norms, "space run-off", "default", "clear strip beside the court", room.beside, ages),
        limit(norms, "space run-off", "default", "clear strip behind the court", room.behind, ages),
        *([] if clear is None else [limit(norms, "space run-off", "default", CLEAR_OF_FIXED, clear, ages)]),
    )
