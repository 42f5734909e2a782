"""The few numbers in which a forecast is compared with another one of the same game."""

from __future__ import annotations

from compose.forecast.course import Course, Figure
from compose.forecast.matches import game_odds
from compose.forecast.odds import odds
from compose.forecast.standings import PLAYING, standings
from compose.forecast.turns import turns
from compose.net.net import Net
from grammar.frozen import frozen


@frozen
class Answers:
    """Mean length of a round in minutes, each side's odds of the game, the chance that the clock stops play, turns a
    minute for each pupil, the share of a pupil's time not spent playing."""

    minutes: Figure
    wins: tuple[tuple[str, Figure], ...]
    stopped: Figure
    turns: Figure
    idle: Figure

    def named(self) -> dict[str, tuple[Figure, bool]]:
        """Each number by its name in words, and whether it is a share (else it is compared as a ratio)."""
        told = {"mean length": (self.minutes, False), "turns a minute": (self.turns, False)}
        told |= {f"win odds of {side}": (chance, True) for side, chance in self.wins}
        return told | {"rounds that the clock stops": (self.stopped, True), "time not playing": (self.idle, True)}


def answers(net: Net, course: Course, second: Course | None = None) -> Answers:
    """The numbers of one course; `second` is that of the other half, where it differs."""
    shares = standings(net, course)
    playing = next((each.share for each in shares if each.name == PLAYING), None)
    wins, stopped = game_odds(net, course, second).wins, odds(net, course).running
    idle = Figure(max(0.0, 1 - playing.value), playing.margin) if playing is not None else Figure(0.0)
    return Answers(course.length.mean, wins, stopped, turns(net, course).each, idle)
