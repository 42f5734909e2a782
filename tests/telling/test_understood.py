"""What is understood of a sheet is said as a teacher would check it: whose each word is, what follows, what is left."""

from __future__ import annotations

import pytest
from told_games import ALONE, COINS, FOUR, GREEN, PASSES, SLEDGES, TRACK
from told_sheets import row, told, understood

from compose.telling.read_back import Topic

THROW = "overarm throw a foam ball at the beacons of the other side"
# For each sheet: what must be said of it, and what must not. Written before anything was told.
SAID = {
    "both sides are said once": (
        row(),
        [
            "The players of each side may throw a foam ball overarm at the beacons of the other side.",
            "When a player of a side knocks a beacon of the other side, the beacon stays down.",
            "A side wins when the other side has no beacons standing.",
            "After 6 minutes, the side with more beacons standing wins; if that is level, it is a draw.",
            "A foam ball is held for at most 10 seconds.",
        ],
        ["rowans may", "willows may"],
    ),
    "who throws": (
        row({"play": (f"players {THROW}", "players of rowans overarm throw a foam ball at the beacons of willows")}),
        [
            "The rowans may throw a foam ball overarm at the beacons of the willows.",
            "The willows try nothing.",
        ],
        ["willows may", "players of each side may", "beacons of the other side."],
    ),
    "who is hit": (
        row(
            {"play": (THROW, "overarm throw a foam ball at the players of the other side")},
            when="a player of rowans is hit: that player is out",
        ),
        [
            "When a willow hits a rowan, the player hit is out for the rest of the round.",
            "When a rowan hits a willow, the player hit plays on.",
            "Nobody aims at the beacons of either side.",
        ],
        ["When a rowan hits a willow, the player hit is out"],
    ),
    "throw or pass": (
        row(play="players pass a foam ball to a team-mate"),
        ["The players of each side may pass a foam ball to a team-mate in play."],
        [],
    ),
    "nobody else is left": (
        ALONE,
        [
            "The badgers may throw a foam ball underarm at other badgers.",
            "When a badger hits another badger, the player hit is out for the rest of the round.",
            "The round ends when the badgers have no players in play: nobody wins.",
        ],
        [],
    ),
    "a caught ball": (
        row(
            {"play": (THROW, f"{THROW}, 1 in 8 are caught")},
            play="a caught ball rests behind the back line of the other side",
        ),
        [
            "1 in 8 are caught",
            "A caught foam ball comes to lie behind the back line of the other side.",
            "Nobody fetches a foam ball from behind the back line of either side.",
        ],
        ["A caught foam ball comes to lie somewhere"],
    ),
    "the corner": (
        row(play="a missed ball rests in the corner\nthe teacher fetches balls from the corner, 2 times a minute"),
        [
            "A missed foam ball comes to lie in the corner of the other side.",
            "The teacher fetches foam balls from the corner of either side twice a minute.",
        ],
        ["Nobody fetches"],
    ),
    "the middle line": (
        row(
            space="sky zone: 6 m deep, across the middle, nobody enters there",
            play="a missed ball rests on the middle line",
        ),
        [
            "Sky zone: 6 m deep, across the middle; nobody enters there.",
            "A missed foam ball comes to lie in the middle.",
        ],
        [],
    ),
    "whose bench": (
        PASSES,
        [
            "1 player of each side starts on the ferry bench of the other side.",
            "The players of each side may pass a soft ball to a team-mate on the ferry bench of the other side.",
            "When a pass by a player of a side reaches a team-mate on the ferry bench of either side, "
            "whoever passed goes to their ferry bench.",
            "A side wins when it has at least 5 players on the ferry bench of either side.",
        ],
        [],
    ),
    "two halves": (
        SLEDGES,
        [
            "The carriers may tow their sledges",
            "Two halves are played and their points added: the sides change tasks at half-time; more points in all "
            "wins, level points are a draw.",
            "When a thrower knocks a sledge of the carriers, the sledge stays down and a carrier becomes a guard.",
            "When a carrier arrives, the carriers score 1 point.",
        ],
        [],
    ),
    "nobody aims at them": (
        row(kit="3 cones", set_up="cones in the middle", when="a cone is knocked: the thrower's side scores 1 point"),
        ["Nobody aims at the cones.", "When a player of a side knocks a cone, their side scores 1 point"],
        ["Nobody aims at the beacons"],
    ),
    "who frees": (
        row(
            {"play": (THROW, "overarm throw a foam ball at the players of the other side")},
            space="ward queue: beside each half",
            sides="role doctor: 1 player of each side",
            play="the doctor frees the first in the ward queue",
            when="a player is hit: that player waits in the ward queue",
        ),
        [
            "The doctors of each side free the first in their ward queue.",
            "the player hit waits in their ward queue",
        ],
        ["Nobody comes back"],
    ),
    "nobody comes back": (
        row(
            {"play": (THROW, "overarm throw a foam ball at the players of the other side")},
            space="ward queue: beside each half",
            when="a player is hit: that player waits in the ward queue",
        ),
        ["Nobody comes back from the ward queue of either side."],
        [],
    ),
    "steps": (
        TRACK,
        [
            "Whale track: 7 steps from the home of north to the home of south.",
            "Put the whales on step 4 of the whale track, 4 steps from the home of north and 3 from the home of south.",
            "When a player of a side knocks a whale, the whale moves 1 step towards the home of the other side.",
            "As soon as south has at least 1 whale at home, and again with each more, north scores 1 point",
        ],
        ["towards the home of north, "],
    ),
    "brought once": (
        COINS,
        ["The players of each side may carry a coin from the middle to their back line, each once."],
        ["again and again"],
    ),
    "all join": (
        row(when="a side has at most 1 beacon standing: all players join the other side"),
        [
            "As soon as a side has at most 1 beacon standing, "
            "all players of that side who are in play join the other side."
        ],
        [],
    ),
    "one side starts elsewhere": (
        GREEN,
        [
            "2 players of green start in the waiting queue of green.",
            "The players of each side may throw a soft ball overarm at the players of every other side.",
        ],
        ["players of each side start", "players of red start"],
    ),
    "nobody may aim at them": (
        row(
            {"play": (THROW, "overarm throw a foam ball at the players of the other side")},
            sides="role rover: 1 to 2 players of each side, aims from 5 m, nobody aims at them",
        ),
        [
            "Rover: 1 to 2 players of each side; aims from 5 m; nobody aims at them.",
            "at the players without a role of the other side",
        ],
        [],
    ),
    "numbers of their own": (
        row({"kit": ("5 beacons for each side", "6 beacons for rowans, like a plastic pin\n3 beacons for willows")}),
        ["6 beacons (for the rowans,", "3 beacons (for the willows,"],
        ["beacons for each side"],
    ),
    "who has won": (
        row(
            {
                "finish": (
                    "a side wins when the other side has no beacons standing",
                    "the other side wins when a side has no beacons standing",
                )
            }
        ),
        ["A side wins when the other side has no beacons standing."],
        [],
    ),
    "whose strip": (
        row(space="dim strip: 2 m deep, before the back line of willows, nobody enters there"),
        ["Dim strip of the willows: 2 m deep, before the back line of the willows; nobody enters there."],
        ["of the rowans: 2 m", "of each side: 2 m"],
    ),
    "which is asked first": (
        row(
            when="a side has at most 4 beacons standing: everything starts again",
            finish="a side loses when it has at most 2 players in",
        ),
        [
            "As soon as a side has at most 4 beacons standing, everything starts again.",
            "A side wins when the other side has at most 2 players in play.",
        ],
        [],
    ),
    "four sides": (
        FOUR,
        [
            "The players of each side may throw a foam ball underarm at the pails of every other side, from 6 m away.",
            "A side wins when every other side has no pails standing.",
        ],
        ["ash may"],
    ),
    "not read": (
        row(play='"Whoever throws calls a colour."'),
        ['"Whoever throws calls a colour."'],
        [],
    ),
}


@pytest.mark.parametrize("name", SAID)
def test_it_says_what_was_written_down_beforehand(name: str) -> None:
    text, must, must_not = SAID[name]
    said = told(text)
    assert [each for each in must if each not in said] == [], said
    assert [each for each in must_not if each in said] == [], said


def test_what_is_taken_for_granted_is_marked() -> None:
    every = [said for section in understood(row()).sections for said in section.said]
    granted = {said.text for said in every if said.granted}
    assert "A missed foam ball comes to lie somewhere in the half of the other side." in granted
    assert not any("may throw" in text for text in granted)


def test_what_is_not_read_stands_apart() -> None:
    back = understood(row(play='"Whoever throws calls a colour."'))
    unread = next(section for section in back.sections if section.topic is Topic.UNREAD)
    assert [said.text for said in unread.said] == ['"Whoever throws calls a colour."']
