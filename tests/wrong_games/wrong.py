"""The games made wrong on purpose: each lies beside its sound version, from which it differs by one line."""

from __future__ import annotations

from pathlib import Path

from attrs import frozen

from grammar.game import Game
from tests.interpreter.sheets import game_at

FOLDER = Path(__file__).with_name("games")
PLAYERS = 3


@frozen
class Pair:
    """A wrong game: the finding it must have, the sentence that it must point at, and whether a play shows it."""

    stem: str
    code: str
    at: str
    shown: bool = True

    def path(self, which: str) -> Path:
        """The file of the "wrong" or the "sound" version."""
        return FOLDER / f"{self.stem}.{which}.rules"

    def game(self, which: str) -> Game:
        """The game in that file."""
        return game_at(self.path(which))


def players(game: Game) -> dict[str, int]:
    """A few players a side: enough for every finding."""
    return {side.name: max(PLAYERS, side.least) for side in game.sides}


PAIRS = (
    Pair("started-over", "C-started-over", "a side wins when the other side has no players in the rest queue"),
    Pair("two-winners", "C-two-winners", "a side wins when the other side has no cones standing"),
    Pair("chase", "C-chase", "a side has no soft balls in its half: all soft balls go to its half"),
    Pair("no-end", "C-no-end", "a side wins when it has 7 players on the far bench"),
    Pair("no-end-stands-again", "C-no-end", "a side wins when the other side has no lamps standing", shown=False),
    Pair("no-end-spared", "C-no-end", "a side wins when the other side has no players in"),
    Pair("dead-end", "C-dead-end", "players roll a soft ball past the back line of the other side"),
    Pair("endless", "C-endless", "players underarm throw a red ball through the ring of the other side"),
    Pair("unwinnable", "C-unwinnable", "a side wins when the other side has no cones standing", shown=False),
    Pair("bench-too-small", "C-unwinnable", "north wins when it has 3 players on the far bench", shown=False),
    Pair("all-wait", "C-stall", "players roll a soft ball past the back line of the other side"),
    Pair("stranded", "C-stranded", "a player is hit: that player waits in the rest queue"),
    Pair("freed-only-once", "C-stranded", "a player is hit: that player waits in the rest queue"),
    Pair(
        "counts-where-nothing-lies",
        "C-idle",
        "players of north take a nut from the drop circle to their store base",
        shown=False,
    ),
    Pair(
        "row-never-full",
        "C-idle",
        "players underarm throw a red ball through the ring of the other side, only after 2 passes in a row",
        shown=False,
    ),
    Pair("nobody-scores", "C-stranded", "a player is hit: that player waits in the rest queue until the next point"),
    Pair("frozen-for-good", "C-stranded", "a player is hit: that player freezes"),
    Pair(
        "idle-part",
        "C-idle",
        "a pin is knocked while it has at least 2 pins standing: "
        "it stands up again and the roller's side scores 1 point",
        shown=False,
    ),
    Pair("idle-frozen", "C-idle", "a ball is caught: a frozen player of the catcher's side is free", shown=False),
    Pair("stranded-balls", "C-stranded", "nobody fetches soft balls from behind the back line"),
    Pair("stays-in-the-pail", "C-dead-end", "players underarm throw a yarn ball into the pails of the other side"),
    Pair("closed-strip", "C-dead-end", "players roll a soft ball at the cones of the other side"),
    Pair("stall", "C-stall", "players roll a soft ball at the cones of the other side"),
    Pair("stall-by-passing", "C-stall", "players pass a soft ball to a team-mate"),
    Pair("stall-by-not-fetching", "C-stall", "players fetch soft balls from behind their back line"),
    Pair("keeper-not-there", "C-idle", "keepers block shots at the gates of their side with the feet", shown=False),
    Pair("keeps-the-ball", "C-stall", "players pass a soft ball to a team-mate"),
    Pair("idle", "C-idle", "a ball is caught: the first in the catcher's rest queue returns", shown=False),
    Pair(
        "idle-nobody-aims",
        "C-idle",
        "a cone is knocked: the roller's side scores 1 point and it stands up again",
        False,
    ),
    Pair(
        "no-ball-for-one",
        "C-idle",
        "players underarm throw a soft ball at the pails of the other side, from 4 m away",
        shown=False,
    ),
    Pair("idle-kit", "C-idle", "players kick a red ball at the cones of the other side", shown=False),
    Pair("dropped", "C-dead-end", "players touch players of the other side who carry a log"),
    Pair("safe-everywhere", "C-idle", "a runner is touched: the tagger's side scores 1 point", shown=False),
    Pair(
        "dead-end-at-a-level-score",
        "C-dead-end",
        "after 5 min: more points wins, else the next point wins",
    ),
    Pair("idle-in-a-row", "C-idle", "2 throws in a row: that side scores 1 point", shown=False),
    Pair("no-end-first-time", "C-no-end", "the first side to 2 points wins", shown=False),
    Pair("idle-lives", "C-idle", "a ball is caught: the catcher gets a life back", shown=False),
    Pair("idle-too-late", "C-idle", "after 3 min, a cone is knocked: the roller's side scores 1 point", shown=False),
    Pair(
        "dead-end-by-the-clock",
        "C-dead-end",
        "players roll a soft ball at the cones of the other side, only in the first 2 min",
    ),
    Pair(
        "swap-with-nobody",
        "C-idle",
        "a player is hit: that player changes places with the first in the pebble queue",
        shown=False,
    ),
    Pair("one-corner-shut", "C-dead-end", "nobody fetches balls from the corner of larks"),
    Pair("no-end-before-the-bell", "C-no-end", "a warden is hit: the thrower's side wins", shown=False),
    Pair("coins-run-out", "C-dead-end", "players carry a coin from the middle to their back line"),
    Pair("back-by-no-pin", "C-stranded", "a player is hit: that player waits in the sit queue"),
    Pair("locked-for-good", "C-no-end", "a side wins when the other side has no pins standing", shown=False),
    Pair("fetched-from-elsewhere", "C-dead-end", "nobody fetches balls from behind the back line"),
    Pair("no-return", "C-no-return", "players underarm throw a soft ball at the captain of the other side"),
    Pair("lost-with-the-balls", "C-stranded", "players underarm throw a soft ball at the players of the other side"),
    Pair("waits-where-it-begins", "C-dead-end", "all hares in the start strip"),
    Pair("down-to-nothing", "C-unwinnable", "a side wins when the other side has 0 points", shown=False),
    Pair(
        "planks-stand-again",
        "C-no-end",
        "the round ends when there are no planks standing, more points wins",
        shown=False,
    ),
    Pair("returns-from-elsewhere", "C-stranded", "a player is hit: that player waits in the rest queue"),
    Pair(
        "waits-where-sent",
        "C-dead-end",
        "a hare is hit: that player goes to the start strip and the roller's side scores 1 point",
    ),
)
