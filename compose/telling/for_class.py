"""A game staged for a class, in words: teams, courts, kit in all, minutes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from compose.staging.cupboard import KitRow
from compose.staging.fixed_things import free_m2
from compose.staging.resolved import resolved
from compose.staging.room import Room
from compose.staging.staging import Staging
from compose.telling.french import side_name, side_players
from compose.telling.needed import also_line, what_is_there
from compose.telling.wording import ENGLISH, Wording
from grammar.core.declared import All, Odd
from grammar.core.values import Sort, Thing
from grammar.words import players_said, plural
from library.records import UNNAMED


def people(players: Mapping[str, int], wording: Wording) -> str:
    """ "11 herons and 11 pikes"."""
    if wording.english:
        return wording.listed(players_said(side, number) for side, number in players.items())
    return wording.listed(side_players(wording, side, number) for side, number in players.items())


def teams_said(staging: Staging, wording: Wording = ENGLISH) -> str:
    """ "14 north and 13 south", "13 games of 1 west and 1 east"."""
    if len(staging.courts) == 1:
        return people(staging.court.players, wording)
    games = (
        wording.say(
            "{games} of {people}",
            games=wording.counted(number, "game", "games"),
            people=people(court.players, wording),
        )
        for court, number in staging.kinds
    )
    return wording.listed(games)


def class_lines(staging: Staging, wording: Wording = ENGLISH) -> Iterator[str]:
    """What a teacher has to know of the class before the game: a sentence each."""
    yield from team_lines(staging, wording)
    if not staging.courts:
        return
    yield from (_kit(row, staging.school_class.lists_kit, wording) for row in staging.kit)
    yield also_line(staging, wording)
    yield time_line(staging, wording)


def time_line(staging: Staging, wording: Wording = ENGLISH) -> str:
    """The minutes of play, without and with a warm-up and a talk."""
    time = wording.figure(round(staging.lesson.play, 1))
    lesson = wording.figure(round(staging.lesson.minutes, 1))
    warm = wording.figure(round(staging.lesson.warm_play, 1))
    pattern = "Time: {time} min of play in a lesson of {lesson} min, {warm} with a warm-up and a talk."
    return wording.say(pattern, time=time, lesson=lesson, warm=warm)


def team_lines(staging: Staging, wording: Wording = ENGLISH) -> Iterator[str]:
    """Who plays against whom, who is over, on which courts."""
    say, over = wording.say, staging.teams.over
    if not staging.courts:
        yield say("Teams: none.")
        return
    teams = teams_said(staging, wording)
    if roles := tuple(_roles(staging, wording)):
        pattern = "{teams} (among them {roles})" if len(staging.courts) == 1 else "{teams} (on each court {roles})"
        teams = say(pattern, teams=teams, roles=wording.listed(roles))
    yield say("Teams: {teams}.", teams=teams)
    if staging.teams.resting:
        resting = wording.counted(staging.teams.resting, "pupil", "pupils")
        yield say("Resting: {pupils}, who come on in later rounds.", pupils=resting)
    if over:
        pupils, odd = wording.counted(over, "pupil", "pupils"), staging.teams.odd_pupil
        if odd is Odd.UNSAID:
            yield say("Left over, not playing: {pupils}.", pupils=pupils)
        else:
            yield say("Left over: {pupils}; {odd}.", pupils=pupils, odd=say(f"an odd pupil {odd.value}"))
    yield _courts(staging, wording)


def _roles(staging: Staging, wording: Wording) -> Iterator[str]:
    """Who has a task of their own at the start: "3 otters", "2 gatherers and 1 gatekeeper of each side"."""
    acting, sides = [each for each in staging.court.acting if each.role], staging.court.players
    alike, single = list[str](), list[str]()
    for role in dict.fromkeys(each.role for each in acting):
        there = {each.side: each.count for each in acting if each.role == role}
        said = {side: wording.counted(number, role, plural(role)) for side, number in there.items()}
        if len(there) == len(sides) and len(set(said.values())) == 1:
            alike.append(next(iter(said.values())))
        else:
            names = {side: side if wording.english else side_name(wording, side) for side in said}
            single += [wording.say("{things} of {side}", things=said[side], side=names[side]) for side in said]
    if alike:
        everyone = wording.listed(alike)
        yield everyone if len(sides) == 1 else wording.say("{players} of each side", players=everyone)
    yield from single


def _courts(staging: Staging, wording: Wording) -> str:
    courts = courts_said(staging, wording)
    if floor_size_m(staging) != tuple(round(each, 1) for each in staging.game.court_m):
        long, wide = (wording.figure(metres) for metres in floor_size_m(staging))
        courts = wording.say(
            "{courts} ({long} m by {wide} m with what lies beside it)", courts=courts, long=long, wide=wide
        )
    room: Room | None = staging.room
    if room is None:
        return wording.say("Floor: {courts}.", courts=courts)
    hall = wording.author(room.hall.name)
    if room.hall.name == UNNAMED:
        long, wide = (wording.figure(metres) for metres in (room.hall.length_m.usual, room.hall.width_m.usual))
        hall = wording.say("{long} m by {wide} m", long=long, wide=wide)
    area, free = (wording.figure(float(f"{m2:.4g}")) for m2 in (room.area_m2, free_m2(room.hall)))
    pattern = "Hall: {hall}, {area} m2; {courts} along it."
    if not room.fits:
        pattern = "Hall: {hall}, {area} m2; too small for {courts}."
    elif room.turned:
        pattern = "Hall: {hall}, {area} m2; {courts} across it."
    line = wording.say(pattern, hall=hall, area=area, courts=courts)
    return line if free == area else f"{line} {wording.say('{free} m2 of its floor is free.', free=free)}"


def courts_said(staging: Staging, wording: Wording = ENGLISH) -> str:
    """ "13 courts of 6 m by 2 m"."""
    long, wide = (wording.figure(metres) for metres in staging.game.court_m)
    courts = wording.counted(len(staging.courts), "court", "courts")
    return wording.say("{courts} of {long} m by {wide} m", courts=courts, long=long, wide=wide)


def floor_size_m(staging: Staging) -> tuple[float, float]:
    """Length and width of each court with all that lies beside it."""
    extent = staging.court.floor.extent
    return round(extent.length, 1), round(extent.width, 1)


def odd_ball_lines(staging: Staging, wording: Wording = ENGLISH) -> Iterator[str]:
    """Who gets the odd ball where the sheet shares them out and they do not go round."""
    play = resolved(staging.game).play
    dealt = {start.what.kind for start in play.starts if isinstance(start.what, Thing) and start.count is All.ALL}
    for kind in play.of_sort(Sort.BALL):
        near = Counter(item.near for item in staging.court.floor.items_of(kind.key) if item.near is not None)
        if kind in dealt and len(near) == len(play.sides) > 1 and len(set(near.values())) > 1:
            row = next(row for row in staging.kit if row.line.name == kind.key)
            balls = wording.counted(near.total(), row.line.name, row.line.plural)
            yield wording.say("{balls}: {shares}.", balls=balls, shares=_shares(near, wording))


def _shares(near: Mapping[str, int], wording: Wording) -> str:
    """ "3 for north and 2 for south"."""
    names = {side: side if wording.english else side_name(wording, side) for side in near}
    return wording.listed(wording.say("{number} for {side}", number=near[side], side=names[side]) for side in near)


def _kit(row: KitRow, listed: bool, wording: Wording) -> str:
    """What of one thing is needed on all courts, and where the class says what it has, what is there of it."""
    things = wording.counted(row.needed, row.line.name, row.line.plural)
    return wording.say("Kit: {things}.", things=f"{things}{what_is_there(row, listed, wording)}")
