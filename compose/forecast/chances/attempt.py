"""One attempt as the aiming model sees it: which ball, which target, what spread, what chance to reach it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from compose.forecast.chances.aim import (
    goes_through_ring,
    hits_disc,
    hits_rectangle,
    hits_rolling,
    spread_m,
    within,
)
from compose.net.attempt import Attempt
from compose.staging.norms import Ability, Reading
from grammar.frozen import evolve, field, frozen
from library import KitItem

EVERY_SKILL = "any skill"


@frozen
class Aimed:
    """The target, the ball and the spreads at the target (all in m), and the chance to reach it.

    `foot_m` is the target's lower edge above the floor; `round` is True for a target known by its
    diameter alone; `rolled` is True where the floor holds the ball. Sizes are 0 where nothing is aimed at.
    """

    width_m: float = 0.0
    height_m: float = 0.0
    foot_m: float = 0.0
    round: bool = False
    ball_m: float = 0.0
    across_m: float = 0.0
    up_m: float = 0.0
    rolled: bool = False
    reached: float = 1.0


@frozen
class Case:
    """One attempt on the way to its numbers; `taken` collects the norms as they are read."""

    attempt: Attempt
    ability: Ability
    kit: Mapping[str, KitItem]
    taken: list[Reading] = field(factory=list)

    def take(self, table: str, name: str) -> float:
        """A norm's value for the pupils of this attempt, noted."""
        reading = self.ability.read(table, name, self.attempt.age_years)
        if reading not in self.taken:
            self.taken.append(reading)
        return reading.value

    @property
    def aims(self) -> bool:
        """True where the skill is one that sends a ball, with an error of aim of its own."""
        return self.ability.knows("aim across", self.attempt.skill)

    @property
    def target(self) -> KitItem | None:
        """The target as the kit knows it, None where it does not."""
        return self.kit.get(self.attempt.target) if self.attempt.target else None

    def ball_m(self) -> float:
        """Diameter of the ball in m, from the kit, or the norm for an unknown ball."""
        item = self.kit.get(self.attempt.ball) if self.attempt.ball else None
        if item and item.diameter_cm:
            return item.diameter_cm.usual / 100
        return self.take("space unknown", "ball diameter")


def look(case: Case) -> Aimed:
    """The aiming model for one attempt; an aim at nothing is always reached."""
    attempt = case.attempt
    reach = REACH.get(attempt.aim)
    if reach is None:
        return Aimed()
    error = case.take("aim across", attempt.skill) * case.take("aim hurry", EVERY_SKILL)
    across = spread_m(error, attempt.distance_m, case.take("aim nearest", EVERY_SKILL))
    rolled = not case.ability.knows("aim up", attempt.skill)
    up = 0.0 if rolled else across * case.take("aim up", attempt.skill)
    aimed = evolve(SIZE[attempt.aim](case), ball_m=case.ball_m(), across_m=across, up_m=up, rolled=rolled)
    return evolve(aimed, reached=reach(aimed))


def size_of_thing(case: Case) -> Aimed:
    """A thing's size: the net's own, else the kit's, else the norm for an unknown target."""
    item, attempt = case.target, case.attempt
    wide, high = item.size_m if item else (0.0, 0.0)
    width = attempt.width_m or wide or case.take("space unknown", "target width")
    height = attempt.height_m or high or case.take("space unknown", "target height")
    foot = item.stands_above_floor_cm.usual / 100 if item and item.stands_above_floor_cm else 0.0
    known_by_diameter = item is not None and item.diameter_cm is not None and item.height_cm is None
    return Aimed(width, height, foot, known_by_diameter and width == height)


def size_of_ring(case: Case) -> Aimed:
    """A ring's clear width, and how high it hangs; what is open in front is as high as wide only where it is a ring.

    The mouth of what opens up is taken for a ring of its width: too far and too near are as likely as too high.
    """
    item = case.target
    if item and item.opens == "to the front":
        return size_of_thing(case)
    wide = item.size_m[0] if item else 0.0
    width = case.attempt.width_m or wide or case.take("space unknown", "ring diameter")
    foot = item.stands_above_floor_cm.usual / 100 if item and item.stands_above_floor_cm else 0.0
    return Aimed(width, width, foot, round=True)


def size_of_body(case: Case) -> Aimed:
    """A player from the floor to the shoulder, or as low as a hit counts."""
    width = case.attempt.width_m or case.take("players width", "body")
    height = case.attempt.height_m or case.take("players height", "body")
    below = case.attempt.below
    return Aimed(width, height * case.take("players below", below) if below else height)


def size_of_receiver(case: Case) -> Aimed:
    """What a team-mate can reach with a step."""
    width = case.attempt.width_m or case.take("players width", "receiver")
    return Aimed(width, case.attempt.height_m or case.take("players height", "receiver"))


def size_of_line(case: Case) -> Aimed:
    """A line or gap, as wide as the net says."""
    return Aimed(case.attempt.width_m)


def reach_upright(aimed: Aimed) -> float:
    """A thing or a person: a disc or a rectangle, or only its width where the ball rolls."""
    radius = aimed.ball_m / 2
    if aimed.rolled:
        return hits_rolling(aimed.width_m, radius, aimed.foot_m, aimed.across_m)
    if aimed.round:
        return hits_disc(aimed.width_m, radius, aimed.across_m, aimed.up_m)
    return hits_rectangle(aimed.width_m, aimed.height_m, radius, aimed.across_m, aimed.up_m)


def reach_ring(aimed: Aimed) -> float:
    """A ring; for a rolled ball a gate of that width, if it stands on the floor."""
    radius = aimed.ball_m / 2
    if aimed.rolled:
        return within(aimed.width_m / 2 - radius, aimed.across_m) if aimed.foot_m <= 0 else 0.0
    if not aimed.round:
        return within(aimed.width_m / 2 - radius, aimed.across_m) * within(aimed.height_m / 2 - radius, aimed.up_m)
    return goes_through_ring(aimed.width_m, radius, aimed.across_m, aimed.up_m)


def reach_line(aimed: Aimed) -> float:
    """A line, crossed by the middle of the ball; one without width runs from wall to wall."""
    return within(aimed.width_m / 2, aimed.across_m) if aimed.width_m > 0 else 1.0


SIZE: Mapping[str, Callable[[Case], Aimed]] = {
    "target": size_of_thing,
    "player": size_of_body,
    "mate": size_of_receiver,
    "ring": size_of_ring,
    "line": size_of_line,
}
REACH: Mapping[str, Callable[[Aimed], float]] = {
    "target": reach_upright,
    "player": reach_upright,
    "mate": reach_upright,
    "ring": reach_ring,
    "line": reach_line,
}
