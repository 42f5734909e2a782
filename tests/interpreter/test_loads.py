"""What pupils take from place to place, and who is touched with it: the second reader and the net agree."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in, net_in

PLAYERS = {"north": 2, "south": 2}
RAID = """
game Raid
space
  court 18 m by 9 m, {court}
  peat base: 2 m deep, before each back line
  bog queue: beside the {beside}
sides
  north and south, 2 to 14 players each, mirrored
  {role}
kit
  {kit}
set-up
  {set_up}
play
  players take a log from {start} to their peat base{how}
  {play}
  whoever waits in the bog queue comes back after 20 s
when
  {when}
finish
  {finish}
"""
USUAL = {
    "how": "",
    "court": "halved across",
    "beside": "court",
    "role": "role scout: 0 to 1 players of each side",
    "kit": "3 logs for each side, like a cone",
    "set_up": "logs in the peat base of their side",
    "start": "the peat base of the other side",
    "play": "players touch players of the other side who carry a log",
    "when": "a player who carries a log is touched: the log goes back and that player waits in the bog queue",
    "finish": "a side wins when it has 5 logs in its peat base",
}
TOUCHED = "a player who carries a log is touched: "
CASES = {
    "goes back": {},
    "falls": {"when": f"{TOUCHED}that player drops the log and that player waits in the bog queue"},
    "is laid where all come to it": {"when": f"{TOUCHED}the log goes to the middle"},
    "is handed over": {"when": f"{TOUCHED}the log goes to the tagger's peat base"},
    "goes back by itself": {"when": f"{TOUCHED}that player waits in the bog queue"},
    "a ball at who carries": {
        "kit": "2 logs for each side, like a cone\n  1 foam ball",
        "set_up": "logs in the peat base of their side\n  foam ball in the half of north",
        "play": "players roll a foam ball at the players of the other side who carry a log",
        "when": "a player who carries a log is hit: the log goes back",
        "finish": "a side wins when it has 3 logs in its peat base",
    },
    "who has empty hands": {
        "court": "in one piece",
        "play": "players touch players of the other side who carry nothing",
        "when": "a player who carries nothing is touched: that player waits in the bog queue",
    },
    "two lines": {"when": f"{TOUCHED}the log goes back\n  a player is touched: that player waits in the bog queue"},
    "anybody is touched": {
        "court": "in one piece",
        "play": "players touch players of the other side",
        "when": "a player is touched: that player waits in the bog queue\n"
        "  a player who carries a log is touched: play goes on",
    },
    "from the middle": {"kit": "5 logs, like a cone", "set_up": "logs in the middle", "start": "the middle"},
    "from two places": {
        "kit": "4 logs, like a cone",
        "set_up": "logs in the middle",
        "play": "players take a log from the middle to their peat base\n  " + USUAL["play"],
        "finish": "a side wins when it has 3 logs in its peat base",
    },
    "of two kinds": {
        "kit": "2 logs, like a cone\n  2 stones, like a box",
        "set_up": "logs in the middle\n  stones in the middle",
        "start": "the middle",
        "play": "players take a target from the middle to their peat base\n  players touch players of the other side",
        "court": "in one piece",
        "finish": "a side wins when it has 2 logs in its peat base and it has 1 stone in its peat base",
    },
    "from the others once the middle is empty": {
        "kit": "3 logs, like a cone",
        "set_up": "logs in the middle",
        "play": "players take a log from the middle to their peat base, "
        "only when there are at least 2 logs in the middle\n  players touch players of the other side who carry a log",
        "when": USUAL["when"]
        + "\n  there is a log in the peat base of south: all players of south wait in the bog queue",
        "finish": "the round ends when there are no logs in the middle "
        "and north has at least 2 logs in its peat base, nobody wins",
    },
    "from behind a line": {
        "set_up": "logs behind the back line of their side",
        "start": "behind the back line of the other side",
        "finish": "a side wins when the other side has at most 1 log behind its back line",
    },
    "in one's own half": {"play": "players touch players of the other side in their half"},
    "of the one who has such a place": {
        "kit": "3 logs, like a cone",
        "set_up": "logs in the middle",
        "start": "the middle",
        "court": "halved across\n  fold zone: 1 m deep, before the back line of north",
        "finish": "north wins when there is a log in the fold zone\n"
        "  south wins when there are 2 logs in the peat base of south",
        "play": "north players take a log from the peat base of the other side to the fold zone\n  "
        + "players touch players of the other side who carry a log",
    },
    "one after the other": {
        "kit": "4 logs, like a cone",
        "set_up": "logs in the middle",
        "start": "the middle",
        "how": ", only 1 player at a time",
        "role": "role scout: 1 player of each side",
        "play": "players take a log from the peat base of the other side to their peat base, only 1 player at a time"
        "\n  scouts touch players of the other side who carry a log",
        "finish": "a side wins when it has 3 logs in its peat base",
    },
    "two at a time": {
        "kit": "5 logs, like a cone",
        "set_up": "logs in the middle",
        "start": "the middle",
        "how": ", only 2 players at a time",
        "play": "players touch players of the other side who carry a log",
        "finish": "a side wins when it has 3 logs in its peat base",
    },
    "one after the other, in each line": {
        "how": ", only 1 player at a time",
        "play": "players take a stone from the peat base of the other side to their peat base, "
        "only after 1 min, only 1 player of each side at a time\n  " + USUAL["play"],
        "kit": "2 logs, like a cone\n  2 stones for each side, like a box",
        "set_up": "logs in the middle\n  stones in the peat base of their side",
        "start": "the middle",
        "finish": "after 4 min: nobody wins",
    },
    "somebody arrives": {
        "when": "a log arrives: the carrier's side scores 1 point\n"
        "  a carrier arrives: the carrier waits in the bog queue",
        "finish": "the first side to 3 points wins",
    },
    "a ball arrives that is carried along": {
        "kit": "3 logs for each side, like a cone\n  2 coins, like a beanbag",
        "set_up": "logs in the peat base of their side\n  coins in the middle",
        "play": "players carry a coin from the middle to their back line",
        "when": "a coin arrives: the carrier's side scores 1 point",
        "finish": "the first side to 2 points wins",
    },
    "a thing arrives that is towed along": {
        "kit": "3 logs for each side, like a cone\n  2 sledges for each side, like a box",
        "set_up": "logs in the peat base of their side\n  sledges on the back line of their side",
        "play": "players tow a sledge from their back line to the middle",
        "when": "a sledge arrives: the carrier's side scores 1 point",
        "finish": "the first side to 2 points wins",
    },
    "begins anew": {
        "when": USUAL["when"] + "\n  a side has 4 logs in its peat base: everything starts again",
        "finish": "a side wins when it has 6 logs in its peat base",
    },
    "all of a side go": {
        "when": "a side has 4 logs in its peat base: all players of the other side wait in the bog queue"
    },
    "joins the other side": {"when": f"{TOUCHED}that player joins the other side"},
    "hit by a ball": {
        "kit": "2 logs for each side, like a cone\n  2 foam balls",
        "set_up": "logs in the peat base of their side\n  1 foam ball in each half",
        "play": "players kick a foam ball at the players of the other side",
        "when": "a player who carries a log is hit: the log goes back and that player waits in the bog queue",
        "finish": "a side wins when it has 3 logs in its peat base",
    },
    "hit by a ball, and handed over": {
        "kit": "2 logs for each side, like a cone\n  1 foam ball",
        "set_up": "logs in the peat base of their side\n  foam balls in the middle",
        "play": "players kick a foam ball at the players of the other side",
        "when": "a player is hit: that player waits in the bog queue\n"
        "  a player who carries a log is hit: the log goes to the thrower's peat base",
        "finish": "a side wins when it has 3 logs in its peat base",
    },
    "a task": {
        "role": "role scout: 1 player of each side",
        "play": "scouts touch players of the other side who carry a log",
        "when": f"{TOUCHED}that player becomes a scout and the scout becomes a player and the scout scores 1 point",
        "finish": "the first side to 3 points wins\n  a side wins when it has 5 logs in its peat base",
    },
}


@pytest.mark.parametrize("name", CASES)
def test_both_readers_come_to_the_same(name: str) -> None:
    game = game_in(RAID.format(**USUAL | CASES[name]))
    mine, its = read_by_both(game, PLAYERS)
    assert not its.differs(mine)
    assert len(its.results) > 20


def test_a_thing_that_falls_where_nobody_takes_it_stays_there() -> None:
    game = game_in(RAID.format(**USUAL | CASES["falls"]))
    net = net_in(game, PLAYERS)
    lying = [number for number, place in enumerate(net.places) if place.name.startswith("load/log/half")]
    taken = {place for each in net.transitions for limit in each.rate.limits for place in limit}
    assert len(lying) == 2 and not taken & set(lying)
