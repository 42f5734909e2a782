"""What follows from what: happenings and counts that trigger rules, and the effects of these."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from grammar.core.clock import AtTime, ComeIn, TakeAway, TakeEffect
from grammar.core.fouls import Fouled
from grammar.core.guards import Guard
from grammar.core.lives import LastLife
from grammar.core.loads import SetDown
from grammar.core.persons import AllPlaying as AllPlaying
from grammar.core.persons import LifeOf as LifeOf
from grammar.core.persons import Nothing as Nothing
from grammar.core.persons import Person as Person
from grammar.core.persons import PlayOn as PlayOn
from grammar.core.play import Lines, Waiting
from grammar.core.runs import InARow
from grammar.core.sets import StandAgain as StandAgain
from grammar.core.values import (
    SAME,
    At,
    KindId,
    OnStep,
    Owner,
    Plain,
    Population,
    Posture,
    Presence,
    RoleId,
    Same,
    SideId,
    Skill,
    Spot,
    Thing,
)
from grammar.frozen import field, frozen


class Result(Enum):
    """What comes of an attempt."""

    KNOCKED = "knocked"
    HIT = "hit"
    TOUCHED = "touched"
    THROUGH = "through"
    CROSSED = "crossed"
    PASSED = "passed"
    ARRIVED = "arrived"
    TAKEN = "taken"
    CAUGHT = "caught"
    MISSED = "missed"
    LEFT = "left"
    BLOCKED = "blocked"
    HIGH = "hit above the shoulder"


ON_A_PLAYER = (Result.HIT, Result.TOUCHED, Result.HIGH)


@frozen
class Happening:
    """A result, narrowed to who did it, how, with which balls, to what, at whom, and where a mate has it.

    `balls` holds None where attempts without a ball count, too. `against` are the owners concerned; `whence` is where
    those wait who act; `bounced`: of a ball that touched the floor; `from_m`: from so far or farther; `holding`: of
    who has such a ball; `reaching`: only there. An empty set stands for anything. `named`: how many of these it names.
    """

    result: Result
    by: frozenset[Population]
    skills: frozenset[Skill]
    balls: frozenset[KindId | None]
    against: frozenset[Owner]
    to: frozenset[Thing | Population | Spot] = frozenset()
    at: frozenset[Presence | At] = frozenset()
    named: int = field(default=0, eq=False)
    whence: frozenset[At] = frozenset()
    bounced: bool = False
    from_m: Fraction | None = None
    holding: frozenset[KindId] = frozenset()
    reaching: frozenset[Spot] = frozenset()


@frozen
class Becomes:
    """A count becomes true; `each`: of a guard that asks for one, again with each more that there is."""

    guard: Guard
    each: bool = False


@frozen
class KeptFor:
    """A player of these holds a ball of these kinds longer than so many seconds."""

    who: frozenset[Population]
    balls: frozenset[KindId]
    limit_s: Fraction


@frozen
class AllHold:
    """Every player in play holds a ball for so many seconds."""

    who: frozenset[Population]
    time_s: Fraction


Trigger = Happening | Becomes | KeptFor | AllHold | AtTime | LastLife | InARow | Fouled


Subject = Person | Waiting | AllPlaying


@frozen
class Becoming:
    """What a player turns into: another side, another role, or neither."""

    side: SideId | Same = SAME
    role: RoleId | Plain | Same = SAME


@frozen
class Go:
    """Somebody comes to be in play, out, or at a place; perhaps as somebody else."""

    who: Subject
    to: Presence | At
    becomes: Becoming = Becoming()


@frozen
class Swap:
    """Two change places, one of whom may wait; of two who play each takes the side and the task of the other. `number`:
    so many of all who play, who go behind those who wait, and so many come in."""

    who: Person | AllPlaying
    other: Waiting | Person
    number: int | None = None


@frozen
class Put:
    """The thing of the event comes to stand so, or has stood so all the time, `untouched`."""

    posture: Posture
    untouched: bool = field(default=False, eq=False)


@frozen
class Own:
    """The thing of the event joins a side, and stands."""

    side: SideId


@frozen
class Shift:
    """The thing of the event moves along its track: positive steps lead away from the home of its first side."""

    steps: int


@frozen
class PutOnStep:
    """One of these things is put on a step: that of the event, or one that stands on step `source`."""

    thing: Thing
    to: OnStep
    source: OnStep | None


@frozen
class SendBall:
    """The ball of the event comes to lie somewhere."""

    to: Spot


@frozen
class SendBalls:
    """Balls of these kinds come to lie somewhere, wherever they are: one of them, or all; or one that a side has."""

    balls: frozenset[KindId]
    to: Spot
    all: bool
    of: SideId | None = None


@frozen
class Add:
    """A side's points change; `more`: besides what another line says of the same event; `owner`: where each plays for
    themselves, those of whoever has the thing of the event."""

    side: SideId
    points: int
    more: bool = False
    owner: bool = False


class StartAgain(Enum):
    """Players, balls and things go back to the set-up; points stay."""

    EVERYTHING = "everything"


@frozen
class Finish:
    """A side has won."""

    winner: SideId


OfThing = Put | Own | Shift | PutOnStep | StandAgain
OfBalls = SendBall | SendBalls | ComeIn | TakeAway
Effect = Go | LifeOf | Swap | OfThing | OfBalls | Add | TakeEffect | StartAgain | PlayOn | Nothing | Finish | SetDown


@frozen
class Rule:
    """From a trigger, while a guard holds, effects in their order."""

    trigger: Trigger
    guard: Guard
    effects: tuple[Effect, ...]
    lines: Lines = field(eq=False)
    granted: bool = field(default=False, eq=False)


@frozen
class Rest:
    """Where the balls of some attempts come to lie.

    `to` is one place for each pair of who acts and who is concerned. What `spreads` may stop in what is shut, too.
    Of two lines as particular as each other that about a `loose` ball waits: it is of those that no other sends off.
    """

    results: frozenset[Result]
    by: SideId
    against: frozenset[Owner]
    balls: frozenset[KindId]
    to: Spot
    spreads: bool
    lines: Lines = field(eq=False)
    granted: bool = field(default=False, eq=False)
    skills: frozenset[Skill] = frozenset(Skill)
    loose: bool = field(default=False, eq=False)
