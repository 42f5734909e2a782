"""Who has something to do plays, even if they try nothing: they keep a thing, may catch, or are aimed at."""

from __future__ import annotations

import pytest

import library
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.forecast import forecast
from compose.forecast.rounds.simulate import Play, simulate
from compose.forecast.standings import BENCH, PLAYING, WAITING, standing_of, standings
from compose.forecast.telling.telling import told_first
from compose.net.net import Net
from tests.interpreter.sheets import game_in, library_game, net_in

SHEET = """
game Reed Bay
  ages 8 to 12
space
  court 18 m by 9 m, halved across
sides
  north and south, 6 to 10 players each, mirrored
  role keeper: 3 players of each side, nobody aims at them
kit
  4 foam balls
  3 reeds for each side, like a plastic pin
  2 bells for each side, like a cone
set-up
  2 foam balls in each half
  reeds on the back line of their side
  bells on the back line of their side
play
  players stay in their half
  players roll a foam ball at the reeds of the other side
  keepers do not act
{play}
finish
  a side wins when the other side has no reeds standing
"""
BUSY = (
    "  keepers block shots at the reeds of their side with the feet",
    "  a keeper stands before each reed with the hands",
    "  at most 1 keeper may guard each reed",
    "  players pass a foam ball to a team-mate, 1 in 8 are caught",
    "  players underarm throw a foam ball at the keepers of the other side",
)
IDLE = (
    "",
    "  keepers block shots at the bells of their side with the feet",  # at which nobody aims
    "  at most 1 keeper may guard each bell",
    "  players underarm throw a foam ball at the players of the other side",  # of whom keepers are spared
)


@pytest.mark.parametrize("play", [*BUSY, *IDLE])
def test_whoever_keeps_something_or_may_catch_takes_part(play: str) -> None:
    net = net_in(game_in(SHEET.format(play=play)))
    kinds = standing_of(net)
    keepers = {kinds[number] for number, place in enumerate(net.places) if "keeper" in place.name}
    others = {kinds[number] for number, place in enumerate(net.places) if "/-/" in place.name and number in kinds}
    assert (keepers, others) == ({PLAYING if play in BUSY else WAITING}, {PLAYING})


IN_TURN = """\
    game Peg Row
      ages 8 to 12
      skills roll
    space
      court 12 m by 8 m, halved across
    sides
      rooks and jays, 6 players each, mirrored
    kit
      4 soft volleyballs
      3 pegs for each side, like a plastic pin
    set-up
      pegs on the back line of their side
      2 soft volleyballs in each half
    play
      players stay in their half
      players roll a soft volleyball at the pegs of the other side{turn}
{more}
    when
      a peg is knocked: it stands up again and the roller's side scores 1 point
    finish
      after 5 min: more points wins, else a draw
    """
HIT = "      players roll a soft volleyball at players of the other side"


@pytest.mark.parametrize(
    ("turn", "more", "playing"),
    [
        ("", "", 1.0),
        (", only 1 player at a time", "", 1 / 6),
        (", only 2 players at a time", "", 2 / 6),
        (", only 1 player at a time", HIT, 1.0),  # whoever waits for that may roll at players
    ],
)
def test_who_goes_one_after_the_other_waits_the_rest_of_the_time(turn: str, more: str, playing: float) -> None:
    net = net_in(game_in(IN_TURN.format(turn=turn, more=more)), {"rooks": 6, "jays": 6})
    shares = shares_of(net, 1.0)
    assert shares[PLAYING] == pytest.approx(playing, abs=1e-6)
    assert shares.get(WAITING, 0.0) == pytest.approx(1 - playing, abs=1e-6)


ISLANDS = """\
    game Tide Flats
      ages 8 to 12
      skills overarm throw, catch
    space
      court 20 m by 12 m, halved across
      island {place}: {where}
    sides
      curlews and dunlins, 6 to 12 players each, mirrored
    kit
      8 foam balls
    set-up
      4 foam balls in each half{start}
    play
      players stay in their half
      players overarm throw a foam ball at the players of the other side
{play}
    when
      a player is hit: {hit}
{when}
    finish
      after 6 min: more players in wins, else a draw
    """
PASS = "      players pass a foam ball to a team-mate on the {there}"
FREED = "      a pass is caught on the {there}: the catcher returns"
FROM_THERE = "      players on the {there} underarm throw a foam ball at the players of the other side"
JOIN = "      a pass is caught on the {there}: the passer joins the {there}"
SENT = "that player waits on the {there}"


@pytest.mark.parametrize("place", ["base", "bench"])
@pytest.mark.parametrize(
    ("hit", "play", "when", "start", "waits"),
    [
        (SENT, (), (), False, True),
        (SENT, (PASS,), (FREED,), False, True),  # who catches is freed, and does nothing else there
        (SENT, (PASS,), ("      a pass is caught on the {there}: the passer's side scores 1 point",), False, True),
        (SENT, (PASS, FROM_THERE), (FREED,), False, False),
        (SENT, (FROM_THERE,), (), False, False),
        ("play goes on", (PASS,), ("      a pass is caught on the {there}: play goes on",), True, False),
        ("play goes on", (PASS,), (JOIN,), True, False),
    ],
)
def test_whoever_is_sent_where_they_only_catch_waits(
    place: str, hit: str, play: tuple[str, ...], when: tuple[str, ...], start: bool, waits: bool
) -> None:
    there = f"island {place}"
    sheet = ISLANDS.format(
        place=place,
        where="2 m deep, in 2 places in each half" if place == "base" else "behind each back line",
        start=f"\n      1 player of each side on the {there}" if start else "",
        play="\n".join(play).format(there=there),
        hit=hit.format(there=there),
        when="\n".join(when).format(there=there),
    )
    net = net_in(game_in(sheet))
    kinds = {kind for number, kind in standing_of(net).items() if net.places[number].name.endswith(there)}
    assert kinds == {(WAITING if place == "base" else BENCH) if waits else PLAYING}


def test_waiting_for_a_turn_is_mended_at_the_line_that_makes_them_wait() -> None:
    net = net_in(game_in(IN_TURN.format(turn=", only 1 player at a time", more="")), {"rooks": 6, "jays": 6})
    found = forecast(net, library.norms(), library.kit_names(), play=Play(rounds=50), compare=False)
    assert found is not None
    (idle,) = (each for each in forecast_findings(found, library.norms()) if each.code == "F-idle-pupils")
    assert "83 % of the round not playing" in idle.title and idle.hint.startswith("Let more go at a time")
    assert (
        "only 1 player at a time"
        in IN_TURN.format(turn=", only 1 player at a time", more="").splitlines()[idle.place.line - 1]
    )


def test_who_carries_is_no_waiter() -> None:
    """Of four moles one touches with a task of their own, two are on the way at most: one of four waits."""
    net = net_in(library_game("harvest-kettles"), {"moles": 4, "badgers": 4})
    assert shares_of(net, 10.0)[PLAYING] == pytest.approx(0.75, abs=0.02)


def shares_of(net: Net, a_minute: float) -> dict[str, float]:
    """The shares of a pupil's time where everything is tried so often a minute."""
    played = simulate(net, (a_minute,) * len(net.transitions), 30.0, Play(rounds=50))
    assert played is not None
    return {each.name: each.share.value for each in standings(net, played.course)}


def test_a_place_for_all_is_nobodys() -> None:
    told = {}
    for name, players in (("harvest-kettles", 4), ("heron-and-pike", 12)):
        sides = (side.name for side in library_game(name).sides)
        net = net_in(library_game(name), dict.fromkeys(sides, players))
        found = forecast(net, library.norms(), library.kit_names(), play=Play(rounds=100))
        assert found is not None
        told[name] = next(line for part in told_first(found) for line in part.lines if "longest waits" in line)
    assert told["harvest-kettles"] == "the longest waits are on the shed bench:"
    assert told["heron-and-pike"].startswith("the longest waits are in the heron queue of the ")
