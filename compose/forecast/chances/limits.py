"""What a sheet's own limits do to an attempt: no longer in the hand, so many guards, one after the other."""

from __future__ import annotations

from math import exp

from compose.forecast.chances.attempt import EVERY_SKILL, Case, look

USUAL_STEPS = 5  # assumption: so many steps are taken with a ball where nothing is said of them


def unguarded(case: Case) -> float:
    """The share of what would succeed that no guard stops; the text's own chance has the guards in it already."""
    attempt = case.attempt
    if attempt.guards_most is None or attempt.said_chance is not None:
        return 1.0
    stopped = case.take("players guard", EVERY_SKILL)
    return float((1 - stopped) ** attempt.guards_most)


def unblocked(case: Case, success: float, most: float) -> tuple[float, float]:
    """The chances to succeed and to be blocked: of the balls that come where they can reach they stop a share.

    What the text says succeeds has got past them; then as many more are blocked.
    """
    attempt = case.attempt
    width_m = look(case).width_m if case.aims else 0.0
    reach_m = attempt.blockers * case.take("players block", attempt.block_with or EVERY_SKILL)
    covered = 1.0 if width_m <= 0 else min(1.0, reach_m / width_m)
    share = covered * case.take("players stop", EVERY_SKILL)
    if attempt.said_chance is not None:
        return success, min(most - success, success * share / (1 - share))
    return success * (1 - share), success * share


def valid(case: Case) -> float:
    """The share of what would succeed that does so after a bounce, or without, where only that counts; the text's own
    chance has it in it already. Where the text says how many bounce first, the others are sent as ever, for nothing."""
    if not case.attempt.after_bounce or case.attempt.said_chance is not None:
        return straight(case, case.attempt.ruled_out, case.attempt.said_chance)
    said = case.attempt.said_bounced
    return case.take("aim bounce", EVERY_SKILL) if said is None else said


def straight(case: Case, ruled_out: tuple[str, ...], said: float | None) -> float:
    """The share that comes neither by the floor nor by a wall where that is ruled out, and no figure of the text has it
    in it already. The two are taken as independent (assumption)."""
    if said is not None:
        return 1.0
    by_floor = bounced_share(case) if "floor" in ruled_out else 0.0
    by_wall = case.take("aim walled", EVERY_SKILL) if "wall" in ruled_out else 0.0
    return (1.0 - by_floor) * (1.0 - by_wall)


def bounced_share(case: Case) -> float:
    """The share of the balls that come to where they are sent, or are caught, that have touched the floor before."""
    said = case.attempt.said_bounced
    return case.take("aim bounced", EVERY_SKILL) if said is None else said


def aiming_seconds(case: Case) -> float:
    """Seconds with the ball in the hand: about their mean as waits are (exponentially), but for what the limit cuts
    off; in order it takes longer to find the one whose turn it is."""
    attempt = case.attempt
    seconds = case.take("pace aim", attempt.skill)
    if attempt.in_order:
        seconds += case.take("pace order", EVERY_SKILL)
    if attempt.steps_most is not None:
        seconds -= min(seconds, case.take("pace steps", EVERY_SKILL)) * max(0.0, 1 - attempt.steps_most / USUAL_STEPS)
    if attempt.hold_limit_s is None or not seconds:  # at the end of a norm nothing may be left of it
        return seconds
    return seconds * (1 - exp(-attempt.hold_limit_s / seconds))


def longer_limit(case: Case) -> float:
    """How many times rarer a ball is held too long than by the limit that the norm is for: twice the limit, half as
    often."""
    attempt = case.attempt
    if case.aims or attempt.hold_limit_s is None:
        return 1.0
    return attempt.hold_limit_s / case.take("pace limit", "usual")
