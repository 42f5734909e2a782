"""The plain aiming model: an angle of error, a distance, a target, a chance.

A pupil aims at the middle of the target. The ball leaves at an angle of error, sideways and up and down,
each normal with its own spread and independent of the other; at distance d a small angle s (radians)
spreads the ball over d*s metres (the tangent is taken as the angle: under 1 % off below 10 degrees). The
ball flies straight: its fall is taken to be in the aim. The target stands upright and faces the thrower.
A ball of radius r meets a target as soon as its edge does, so the target is r larger all round; a ring
must be passed clean, so it is r smaller. A floor that leads a low ball on into the target is left out,
so low targets are hit a little oftener in truth.
"""

from __future__ import annotations

from math import cos, erf, exp, pi, radians, sin, sqrt

RING_STEPS = 64  # points of the midpoint rule over a quarter circle: exact to 1e-12 for spreads up to 1 : 5


def spread_m(error_deg: float, distance_m: float, nearest_m: float) -> float:
    """Standard deviation in m at the target of an error in degrees; no distance is less than `nearest_m`."""
    return radians(error_deg) * max(distance_m, nearest_m)


def within(half_m: float, spread: float) -> float:
    """Chance that a normal error with this spread (m) stays within half_m on either side."""
    if half_m <= 0:
        return 0.0
    return erf(half_m / (spread * sqrt(2))) if spread > 0 else 1.0


def hits_rectangle(width_m: float, height_m: float, ball_radius_m: float, across_m: float, up_m: float) -> float:
    """Chance to meet an upright rectangle; `across_m`, `up_m` are the spreads at the target.

    A target without width or height cannot be met.
    """
    if width_m <= 0 or height_m <= 0:
        return 0.0
    return within(width_m / 2 + ball_radius_m, across_m) * within(height_m / 2 + ball_radius_m, up_m)


def hits_rolling(width_m: float, ball_radius_m: float, foot_m: float, across_m: float) -> float:
    """Chance that a rolled ball meets a target whose lower edge is `foot_m` above the floor.

    The floor holds the ball, so only the sideways error counts; a target that hangs above the ball is missed.
    """
    if width_m <= 0 or foot_m > 2 * ball_radius_m:
        return 0.0
    return within(width_m / 2 + ball_radius_m, across_m)


def hits_disc(diameter_m: float, ball_radius_m: float, across_m: float, up_m: float) -> float:
    """Chance to meet an upright disc with any part of the ball."""
    return in_circle(diameter_m / 2 + ball_radius_m, across_m, up_m) if diameter_m > 0 else 0.0


def goes_through_ring(diameter_m: float, ball_radius_m: float, across_m: float, up_m: float) -> float:
    """Chance that the whole ball passes through a ring of that clear width without touching it."""
    return in_circle(diameter_m / 2 - ball_radius_m, across_m, up_m)


def in_circle(radius_m: float, across_m: float, up_m: float) -> float:
    """Chance that the middle of the ball passes within `radius_m` of the middle of the aim.

    With equal spreads s it is 1 - exp(-r^2 / 2 s^2) (the Rayleigh law). In general, scaling both axes to
    spread 1 turns the circle into an ellipse; in polar form the chance is
    1 - mean over the angle w of exp(-r^2 / 2 (a^2 cos^2 w + b^2 sin^2 w)), a smooth periodic mean that the
    midpoint rule takes to full precision.
    """
    if radius_m <= 0:
        return 0.0
    if across_m <= 0 or up_m <= 0:
        return within(radius_m, max(across_m, up_m))
    if across_m == up_m:
        return 1 - exp(-(radius_m**2) / (2 * across_m**2))
    angles = ((step + 0.5) * pi / (2 * RING_STEPS) for step in range(RING_STEPS))
    missed = (exp(-(radius_m**2) / (2 * ((across_m * cos(w)) ** 2 + (up_m * sin(w)) ** 2))) for w in angles)
    return 1 - sum(missed) / RING_STEPS


def catches_outcome(reached: float, caught: float, dodged: float) -> tuple[float, float]:
    """A ball sent at a player: the chances (hit, caught).

    Of the balls that would meet the player (`reached`), the share `caught` is caught; of the others the
    share `dodged` is dodged, and what is left hits.
    """
    return reached * (1 - caught) * (1 - dodged), reached * caught
