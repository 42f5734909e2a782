"""From attempts to numbers: how often each transition of a net happens, and why so often.

One attempt is fetched, aimed and made in so many seconds, and ends in one outcome. Of all attempts

    caught   = share caught before anything else (only where the rules do something with a catch)
    success  = aim reached and not caught
    left     = the norm's share of the rest, where the rules speak of a ball that leaves the court
    high     = for every hit the norm's share above the shoulder, where a rule speaks of that
    blocked  = the share of what would reach its aim that somebody before it stops
    ... after a bounce = the share of success, and of what is caught, that has touched the floor before
    missed   = what remains

A throw at a player reaches the body or not; of those that reach it some are caught, of the others some
are dodged, what is left hits. A ball sent at a thing, through a ring, over a line or to a mate may pass
within reach of somebody who catches it first. What the text says itself wins: "2 in 5 succeed" and
"1 in 5 are caught" are shares of all attempts; where only the first is said, the norm's share of the
others is caught; where only the second is said, the aiming model answers for the others.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from compose.forecast.chances.aim import catches_outcome
from compose.forecast.chances.attempt import EVERY_SKILL, Aimed, Case, look
from compose.forecast.chances.limits import (
    aiming_seconds,
    bounced_share,
    longer_limit,
    straight,
    unblocked,
    unguarded,
    valid,
)
from compose.net.attempt import Attempt
from compose.net.net import Net
from compose.staging.norms import Ability, Level, Reading
from grammar.finding import Finding, Severity
from grammar.frozen import frozen
from library import KitItem, Norms

OTHERWISE = "anything else"
SMALL_BALL_M, MIDDLE_BALL_M = 0.12, 0.19  # the size classes of the catching norms, as norms/catch.toml says


@frozen
class Explanation:
    """One attempt with its numbers: what was aimed at, chances, attempts a minute, the norms behind them.

    `success`, `caught`, `blocked`, `high`, `left` and `missed` sum to 1; of the first two so much comes after a bounce,
    where a rule asks for it (`bounced`, `caught_bounced`). `said` names what the text itself gives.
    """

    attempt: Attempt
    aimed: Aimed
    success: float
    caught: float
    left: float
    per_minute: float
    said: tuple[str, ...]
    readings: tuple[Reading, ...]
    blocked: float = 0.0
    bounced: float = 0.0
    caught_bounced: float = 0.0
    high: float = 0.0

    @property
    def missed(self) -> float:
        """Chance that the ball neither reaches its aim, nor is blocked or caught, nor leaves the court."""
        return max(0.0, 1 - self.success - self.caught - self.blocked - self.left - self.high)

    def chance(self, outcome: str) -> float:
        """The chance of an outcome by its name in the net; raises KeyError for any other name."""
        known = {"left": self.left, "missed": self.missed, "blocked": self.blocked, "high": self.high}
        known |= {"success": self.success - self.bounced, "success-bounced": self.bounced}
        known |= {"caught": self.caught - self.caught_bounced, "caught-bounced": self.caught_bounced}
        return 1.0 if outcome == "always" else known[outcome]

    def rate(self, outcome: str) -> float:
        """Events a minute of that outcome for one who can act: pace times share times chance."""
        return self.per_minute * self.attempt.share * self.chance(outcome)


def chances(
    net: Net,
    norms: Norms,
    kit: Mapping[str, KitItem],
    level: Level = "usual",
    instead: Mapping[str, Level] | None = None,
) -> NDArray[np.float64]:
    """Events a minute for each transition of the net while its rate factor is 1: shape (transitions,).

    `kit` knows balls and targets by the names the net uses. `instead` moves single norms to an end of
    their band. Raises ValueError where the text's own shares exceed 1 (`said_too_much` finds these).
    """
    told = explain_chances(net, norms, kit, level, instead)
    rates = [0.0 if move.ticks else told[move.attempt].rate(move.outcome) * move.part for move in net.transitions]
    return np.array(rates, dtype=np.float64)


def explain_chances(
    net: Net,
    norms: Norms,
    kit: Mapping[str, KitItem],
    level: Level = "usual",
    instead: Mapping[str, Level] | None = None,
) -> dict[Attempt, Explanation]:
    """Each attempt of the net, in the net's order, with its numbers and all that stands behind them."""
    outcomes: dict[Attempt, set[str]] = {}
    for move in net.transitions:
        if move.ticks:  # it comes at a moment of the clock, at no rate
            continue
        outcomes.setdefault(move.attempt, set()).add(move.outcome)
    ability = Ability(norms, level, instead or {})
    return {attempt: explain(Case(attempt, ability, kit), names) for attempt, names in outcomes.items()}


def said_too_much(net: Net) -> tuple[Finding, ...]:
    """A finding for each attempt whose text says that more succeed and are caught than are made."""
    findings: dict[Attempt, Finding] = {}
    for move in net.transitions:
        success, caught = move.attempt.said_chance or 0.0, move.attempt.said_catch or 0.0
        if success + caught > 1 and move.rules:
            title = f"`{move.attempt.name}`: more succeed and are caught than are tried."
            hint = f"{success:g} of the attempts succeed and {caught:g} are caught; together at most 1."
            finding = Finding("chances-over-one", Severity.ERROR, title, move.rules[0].span, hint)
            findings.setdefault(move.attempt, finding)
    return tuple(findings.values())


def explain(case: Case, outcomes: set[str]) -> Explanation:
    """The numbers of one attempt whose net has these outcomes; raises ValueError where they cannot be."""
    attempt = case.attempt
    if "always" in outcomes and len(outcomes) > 1:
        raise ValueError(f"attempt {attempt.name!r} has the outcome always beside others")
    aimed = look(case) if case.aims and attempt.said_chance is None else Aimed()
    success, caught = settle(case, aimed, attempt.catchable and "caught" in outcomes)
    caught *= straight(case, attempt.catches_ruled_out, attempt.said_catch)
    success *= attempt.chance_factor * unguarded(case) * valid(case)
    if success + caught > 1 + 1e-12:
        raise ValueError(f"attempt {attempt.name!r}: success {success} and caught {caught} exceed 1")
    success, blocked = unblocked(case, success, 1 - caught) if "blocked" in outcomes else (success, 0.0)
    high = min(1 - success - caught, success * case.take("players high", EVERY_SKILL)) if "high" in outcomes else 0.0
    leaving = case.take("aim leaves", EVERY_SKILL) if "left" in outcomes else 0.0
    left = max(0.0, 1 - success - caught - blocked - high) * leaving
    per_minute = attempt.said_per_minute
    if per_minute is None:
        per_minute = 60 / (ball_seconds(case, success) if case.aims else moving_seconds(case))
    per_minute /= attempt.pace_factor
    figures = {
        "chance to succeed": attempt.said_chance,
        "chance to be caught": attempt.said_catch,
        "attempts a minute": attempt.said_per_minute,
        "chance to bounce first": attempt.said_bounced,
    }
    said = tuple(name for name, figure in figures.items() if figure is not None)
    first, then = (
        part * bounced_share(case) if f"{name}-bounced" in outcomes else 0.0
        for name, part in (("success", success), ("caught", caught))
    )
    taken = tuple(case.taken)
    return Explanation(attempt, aimed, success, caught, left, per_minute, said, taken, blocked, first, then, high)


def settle(case: Case, aimed: Aimed, catching: bool) -> tuple[float, float]:
    """The chances (success, caught) of one attempt, what the text says winning over the norms."""
    said, said_catch = case.attempt.said_chance, case.attempt.said_catch
    if said is not None and said_catch is not None:
        return said, said_catch
    if said is not None:
        return said, (1 - said) * catch_share(case) if catching else 0.0
    if said_catch is not None:
        return (1 - said_catch) * uncaught(case, aimed), said_catch
    share = catch_share(case) if catching else 0.0
    if case.aims and case.attempt.aim == "player":
        return catches_outcome(aimed.reached, share, case.take("players dodge", "player"))
    return (1 - share) * uncaught(case, aimed), share


def uncaught(case: Case, aimed: Aimed) -> float:
    """Chance to succeed where nobody catches."""
    attempt = case.attempt
    if not case.aims or attempt.aim == "none":
        known = case.ability.knows("pace success", attempt.skill)
        return case.take("pace success", attempt.skill if known else OTHERWISE)
    if attempt.aim == "player":
        return aimed.reached * (1 - case.take("players dodge", "player"))
    if attempt.aim == "mate":
        return aimed.reached * case.take("catch pass", size_class(aimed.ball_m))
    if attempt.aim == "line":
        return aimed.reached * case.take("pace line", "past")
    return aimed.reached


def catch_share(case: Case) -> float:
    """Chance that a ball is caught by the other side: by the player it meets, or by one it passes."""
    caught = case.take("catch throw", size_class(case.ball_m()))
    return caught if case.attempt.aim == "player" else caught * case.take("catch reach", EVERY_SKILL)


def size_class(ball_m: float) -> str:
    """The size class of the catching norms for a ball of that diameter."""
    return "small" if ball_m < SMALL_BALL_M else "middle" if ball_m < MIDDLE_BALL_M else "large"


def ball_seconds(case: Case, success: float) -> float:
    """Seconds for one attempt with a ball: fetch, aim, act; a pass that arrives needs no fetching."""
    skill = case.attempt.skill
    fetch = case.take("pace fetch", EVERY_SKILL) * (1 - success if skill == "pass" else 1.0)
    return fetch + aiming_seconds(case) + case.take("pace act", skill)


def moving_seconds(case: Case) -> float:
    """Seconds for one go without a throw: the go itself, and the way at running speed, slower with a load."""
    attempt = case.attempt
    what = f"{attempt.skill} in turn" if attempt.in_turn else attempt.skill
    known = case.ability.knows("pace turn", what)
    seconds = case.take("pace turn", what if known else OTHERWISE) * longer_limit(case)
    if attempt.distance_m <= 0:
        return seconds
    speed = case.take("running speed", "with turns")
    if case.ability.knows("running load", attempt.skill):
        speed *= case.take("running load", attempt.skill)
    return seconds + attempt.distance_m / speed
