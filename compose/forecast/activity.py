"""What pupils in play do with their time: their own turns, and what the turns of others ask of them.

A turn takes the seconds that the pace norms give it: to run for a ball and make the throw, or to run, carry, tow.
Between turns whoever plays follows the ball, makes room and gets ready for some seconds after each attempt of others;
attempts come at random, so those seconds overlap. In the rest of the time little is to be done. Where attempts take
longer than usual (walking, seated, the weaker hand) the same steps are spread over more time.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from compose.forecast.chances.chances import Explanation
from compose.forecast.course import Course
from compose.forecast.standings import NO_ACT
from compose.forecast.taking_part import taking_part
from compose.net.attempt import Attempt
from compose.net.net import Net
from grammar.frozen import frozen


@frozen
class Activity:
    """Shares of the time of a pupil in play: in turns of their own, and, of the time between, with an attempt of
    somebody to follow. `slower` is how many times as long as usual an attempt takes."""

    turns: float
    followed: float
    slower: float

    def active(self, in_turn: float, following: float, quiet: float) -> float:
        """The share of the time in play in which a pupil is active, from such shares of each part of it."""
        between = self.followed * following + (1 - self.followed) * quiet
        return (self.turns * in_turn + (1 - self.turns) * between) / max(1.0, self.slower)


def activity(net: Net, course: Course, known: Mapping[Attempt, Explanation], follow_s: float) -> Activity:
    """What pupils do in a round; an attempt is followed by all others for `follow_s` seconds."""
    minutes, playing = course.length.mean.value, sum(float(course.tokens[place]) for place in taking_part(net))
    made = [
        (float(often), known[move.attempt])
        for often, move in zip(course.firings, net.transitions, strict=True)
        if move.side is not None and move.attempt.skill not in NO_ACT
    ]
    attempts = sum(often for often, _ in made)
    if playing <= 0 or minutes <= 0 or not math.isfinite(minutes) or attempts <= 0:
        return Activity(0.0, 0.0, 1.0)
    slower = sum(often * each.attempt.pace_factor for often, each in made) / attempts
    spent = sum(often / each.per_minute for often, each in made if each.per_minute > 0)
    followed = 1 - math.exp(-attempts / minutes * follow_s / 60)
    return Activity(min(1.0, spent / playing), followed, slower)
