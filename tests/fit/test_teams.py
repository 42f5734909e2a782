"""Pupils into games and sides: even, within the ranges, and nobody forgotten."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playing_games import game_in, library_games

import library
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.staging.teams import least_pupils, most_pupils, teams_of
from compose.telling.for_class import people, team_lines
from compose.telling.wording import ENGLISH
from grammar.game import Game

PAIRS = """
    game Pairs
    space
      court 6 m by 2 m, halved across
    sides
      west and east, {players}, mirrored
      {more}
    kit
      2 soft tennis balls
      1 stone for each side, like a bucket
    set-up
      stones on the back line of their side
      1 soft tennis ball in each half
    play
      players roll a soft tennis ball at the stones of the other side
    finish
      a side wins when the other side has no stones standing
    """


def pairs(players: str, more: str = "") -> Game:
    return game_in(PAIRS.format(players=players, more=more))


@pytest.mark.parametrize(
    ("players", "more", "pupils", "games", "over"),
    [
        ("6 to 14 players each", "", 27, ["14 west and 13 east"], 0),
        ("6 to 14 players each", "the odd pupil keeps the score", 27, ["13 west and 13 east"], 1),
        ("6 to 14 players each", "the odd pupil joins the first side", 27, ["14 west and 13 east"], 0),
        ("6 to 14 players each", "the odd pupil keeps the score", 28, ["14 west and 14 east"], 0),
        ("6 to 10 players each", "", 27, ["10 west and 10 east"], 7),
        ("6 to 10 players each", "up to 2 games side by side", 27, ["2 games"], 0),
        ("1 player each", "up to 14 duels side by side", 27, ["13 games"], 1),
        ("1 player each", "up to 5 duels side by side", 27, ["5 games"], 17),
        ("6 to 14 players each", "", 11, [], 11),
    ],
)
def test_teams_of_a_class(players: str, more: str, pupils: int, games: list[str], over: int) -> None:
    teams = teams_of(pairs(players, more), pupils)
    assert teams.over == over
    if games and games[0].endswith("games"):
        assert len(teams.games) == int(games[0].split()[0])
    elif games:
        assert teams.words() == games[0]
    else:
        assert not teams.games


def test_hall_has_room_for_fewer_games_than_the_sheet_allows() -> None:
    teams = teams_of(pairs("1 player each", "up to 14 duels side by side"), 27, room_for=4)
    assert len(teams.games) == 4 and teams.over == 19


@given(st.sampled_from(sorted(library_games())), st.integers(1, 120))
def test_everybody_is_counted_and_every_side_is_in_its_range(stem: str, pupils: int) -> None:
    game = library_games()[stem]
    teams = teams_of(game, pupils)
    assert teams.playing + teams.resting + teams.over == pupils and teams.over >= 0
    for sides in teams.games:
        assert all(side.least <= sides[side.name] <= side.most for side in game.sides)


@given(st.integers(2, 60), st.sampled_from(("", "the odd pupil keeps the score")))
def test_mirrored_sides_differ_by_one_at_most(pupils: int, more: str) -> None:
    for sides in teams_of(pairs("1 to 30 players each", more), pupils).games:
        numbers = sorted(sides.values())
        assert numbers[-1] - numbers[0] <= (0 if more else 1)


def test_who_rests_is_told_and_counted_among_those_needed() -> None:
    kiln_row = library_games()["kiln-row"]
    enough, few = (stage(kiln_row, library.norms(), library.kit_names(), some_class(pupils)) for pupils in (17, 11))
    assert "Resting: 5 pupils, who come on in later rounds." in team_lines(enough)
    assert [each.title for each in few.refused] == [
        "Kiln Row needs at least 12 pupils, of whom 4 rest; the class has 11."
    ]
    assert (least_pupils(kiln_row), most_pupils(kiln_row)) == (12, 30)


@pytest.mark.parametrize(
    ("stem", "said"),
    [
        ("otter-reeds", "Teams: 19 minnows (among them 3 otters)."),
        ("lambing-row", "Teams: 8 north and 8 south (among them 2 gatherers and 1 gatekeeper of each side)."),
        ("lantern-row", "Teams: 10 north and 10 south."),
    ],
)
def test_who_has_a_task_of_their_own_is_told_beside_the_teams(stem: str, said: str) -> None:
    staging = stage(library_games()[stem], library.norms(), library.kit_names())
    assert next(team_lines(staging)) == said


def test_one_of_a_side_is_called_one() -> None:
    """ "13 games of 1 roller and 1 gatherer": a side that is called by its players has one of them."""
    game = library_games()["pebble-pairs"]
    assert teams_of(game, 27).words() == "13 games of 1 roller and 1 gatherer"
    assert people({"herons": 11, "pike": 1, "north": 1, "foxes": 1}, ENGLISH) == "11 herons, 1 pike, 1 north and 1 fox"
