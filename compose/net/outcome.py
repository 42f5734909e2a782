"""One outcome of one attempt, with everybody and everything that it concerns."""

from __future__ import annotations

from fractions import Fraction

from grammar.core.fouls import Fouled
from grammar.core.play import Aim, AtPlayers, Past
from grammar.core.rules import ON_A_PLAYER, Happening, KeptFor, Result, Trigger
from grammar.core.values import At, KindId, Owner, Population, Presence, SideId, Skill, Spot, Thing
from grammar.frozen import frozen


@frozen
class Moment:
    """Who acts, how, with which ball (taken from `ball_at`) or load, at what; and what comes of it.

    `against` owns what is aimed at, `concerned` is the side that this happens to. `person` is who is hit, `mate_at`
    where the team-mate `person` has the pass, `by_at` where who acts is; `step` where on its track the thing stands;
    `bounced`: the ball has touched the floor before; `from_m`: the line or the role says from how far; `held`: the ball
    that `person` has, and where it is.
    """

    by: Population
    concerned: SideId | None
    against: Owner
    skill: Skill | None = None
    ball: KindId | None = None
    ball_at: Spot | None = None
    load: frozenset[KindId] = frozenset()
    aim: Aim | None = None
    result: Result | None = None
    thing: Thing | None = None
    person: Population | None = None
    mate_at: Presence | At | None = None
    step: int | None = None
    by_at: Presence | At = Presence.PLAYING
    bounced: bool = False
    from_m: Fraction | None = None
    held: tuple[KindId, Spot] | None = None

    @property
    def catcher(self) -> Population | None:
        """Of which players of its side whoever catches it is, where a line tells them apart."""
        aimed_at = isinstance(self.aim, AtPlayers)  # then `person` says at whom, and any of the side may catch it
        return self.person if self.result is Result.CAUGHT and not aimed_at else None


def fires(trigger: Trigger, moment: Moment) -> bool:
    """Whether what happened is what a rule waits for."""
    if isinstance(trigger, KeptFor):
        return moment.result is None and moment.by in trigger.who and moment.ball in trigger.balls
    if isinstance(trigger, Fouled):
        against = not trigger.against or moment.against in trigger.against
        return moment.result is None and moment.ball is None and moment.by in trigger.who and against
    if not isinstance(trigger, Happening) or trigger.result is not moment.result:
        return False
    return (
        moment.by in trigger.by
        and moment.skill in trigger.skills
        and moment.ball in trigger.balls
        and (not trigger.against or moment.against in trigger.against)
        and (moment.bounced or not trigger.bounced)
        and (trigger.from_m is None or (moment.from_m is not None and moment.from_m >= trigger.from_m))
        and (not trigger.whence or moment.by_at in trigger.whence)
        and (not trigger.holding or (moment.held is not None and moment.held[0] in trigger.holding))
        and _object(moment, trigger)
    )


def _object(moment: Moment, trigger: Happening) -> bool:
    if trigger.at and moment.mate_at not in trigger.at:
        return False
    if trigger.reaching and getattr(moment.aim, "goal", None) not in trigger.reaching:
        return False
    if not trigger.to:
        return True
    if moment.result is Result.CROSSED:
        return isinstance(moment.aim, Past) and moment.aim.line in trigger.to
    of_whom = moment.result in ON_A_PLAYER or moment.result is Result.CAUGHT
    return (moment.person if of_whom else moment.thing) in trigger.to
