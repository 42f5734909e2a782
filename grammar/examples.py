"""One example of each kind of sentence, by section: what to say to somebody whose line is none."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import SequenceMatcher

from grammar.automaton import pieces

EXAMPLES: Mapping[str, tuple[str, ...]] = {
    "head": (
        "ages 8 to 12",
        "skills overarm throw, catch",
        "licence CC-BY-4.0",
        'about "Two sides clear each other\'s row of lanterns."',
        'credit "Tarn Valley schools (invented)"',
    ),
    "space": (
        "court 18 m by 9 m, halved across",
        "dim strip: 2 m deep, before each back line, nobody guards there",
        "heron queue: beside each half",
    ),
    "sides": (
        "north and south, 6 to 14 players each, mirrored",
        "role keeper: 1 to 2 players of each side",
    ),
    "kit": (
        "8 foam balls",
        "5 lanterns for each side, like a plastic pin",
    ),
    "set-up": (
        "4 foam balls in each half",
        "lanterns on the back line of their side, evenly spaced",
        "1 player of each side on the far bench",
    ),
    "play": (
        "players stay in their half",
        "players roll a foam ball at the cones of the other side",
        "players overarm throw a foam ball at the lanterns or the players of the other side",
        "players roll a ball past the back line of the other side, 1 in 4 of the attempts",
        "a ball is held at most 10 s",
        "a missed ball rests in the half it was sent to",
        "players fetch balls from behind their back line",
    ),
    "when": (
        "a lantern is knocked: it stays down",
        "a player is hit: that player waits in the queue",
        "a ball is caught: the first in the catcher's queue returns",
        "a ball goes through the ring: all in the thrower's queue return",
        "a ball crosses the back line: the thrower's side scores 1 point",
        "a ball leaves the court: the ball goes to the half it left",
    ),
    "finish": (
        "a side wins when the other side has no cones standing",
        "a side loses when it has no players in",
        "the first side to 10 points wins",
        "after 6 min: more cones standing wins, else a draw",
    ),
    "care": ('"Aim below the shoulder."',),
    "modifier": (
        "heading task",
        'about "More balls, so that more play at once."',
        "takes n: 1 to 12, usually 2",
        "needs a rule for when a player is hit",
        "needs a ball fit for kick",
        'clashes with "roll instead"',
        "change overarm throw, underarm throw to kick",
        "add 2 balls",
        "make every target 150 % as big",
        "make the court 75 % as long",
        "replace in when",
    ),
}


def nearest_example(section: str, line: str) -> str:
    """The example of a section whose words are most like those of a line."""
    words = [piece.text.lower() for piece in pieces(line[:160])]

    def likeness(example: str) -> float:
        others = [piece.text.lower() for piece in pieces(example)]
        return SequenceMatcher(None, words, others).ratio()

    return max(EXAMPLES[section], key=likeness)
