"""The net: bounded places, guarded transitions, ends. The only thing the check and the forecast read.

A marking is a tuple of counts, a place each, in the order of `Net.places`; effects are carried out as written.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Union

from compose.net.attempt import Attempt
from compose.net.barren import Barren
from compose.net.conditions import All as All
from compose.net.conditions import AnyOf as AnyOf
from compose.net.conditions import Comparison as Comparison
from compose.net.conditions import Condition as Condition
from compose.net.conditions import Not as Not
from compose.net.conditions import Terms as Terms
from compose.net.duties import Duty
from compose.net.match import ONE_ROUND, Match
from compose.net.schedule import Schedule
from compose.net.told import Effects, Ended, Followed, Happened
from grammar.core.area_kind import AreaKind
from grammar.core.rules import Result
from grammar.core.values import At, KindId, Laden, OnStep, Posture, Presence, Skill
from grammar.frozen import field, frozen
from grammar.span import Span

RESULT = "result"  # the token of the place in which a rule notes at once who has won


@frozen
class Place:
    """A count with a bound: 0 <= count <= capacity, `start` at the set-up.

    `token` says what is counted ("player", "ball", "target", "step", "points", "result"); places whose tokens move
    among them keep their total. `name` is theirs alone: exports and JSON show it. `final` is True where tokens may
    rest for good by the rules (a target that stays down, a player out for the round); elsewhere tokens that can never
    leave again are stranded. `standing` is how they are there, in the core's terms; `area` what the area is in which
    players are, `lives` how many each of them has left, `load` what each carries. `in_parts`: parts are counted, of
    things that have several; `skills`: of what successes are counted that come in a row.
    """

    name: str
    token: str
    capacity: int
    start: int
    side: str | None = None
    kind: str | None = None
    final: bool = False
    standing: Presence | Posture | At | OnStep | None = None
    area: AreaKind | None = None
    lives: int | None = None
    load: Laden | None = None
    in_parts: bool = False
    skills: frozenset[Skill] = frozenset()


@frozen
class Rule:
    """A sentence of the game: its words and where it stands; `stands_by`: no harm where it never takes effect."""

    text: str
    span: Span
    stands_by: bool = False


@frozen
class Room:
    """Some places together have room for `most` tokens."""

    places: tuple[int, ...]
    most: int


@frozen
class Move:
    """Take min(amount, count[source], what finds room in `rooms`) tokens to the target; amount None means all.

    From a queue the first goes, or the `last`.
    """

    source: int
    target: int
    amount: int | None
    rule: Rule
    rooms: tuple[Room, ...] = ()
    last: bool = False


@frozen
class Shift:
    """Add `by` (may be negative) to a counter (points, a step on a track), kept within 0..capacity."""

    place: int
    by: int
    rule: Rule


@frozen
class Assign:
    """Set a place to a value. Starting again is one Assign for every place that starts again."""

    place: int
    value: int
    rule: Rule


Effect = Union[Move, Shift, Assign]


@frozen
class Ratio:
    """sum(numerator places) / denominator; the denominator is a sum of places or a fixed number."""

    numerator: tuple[int, ...]
    denominator: tuple[int, ...] | int


@frozen
class Rate:
    """How many act at once: min over `limits` of the sum of their places, times every ratio.

    No limits means 1. `turns`: at most so many, less those in these places, who are busy already. A ratio whose
    denominator is 0 makes the whole 0. A transition with factor 0 is not enabled. Times attempts a minute and chance
    (both of the forecast) it is the rate a minute.
    """

    limits: tuple[tuple[int, ...], ...] = ()
    ratios: tuple[Ratio, ...] = ()
    turns: tuple[int, tuple[int, ...]] | None = None


@frozen
class Transition:
    """One attempt with one outcome.

    `told` is what happens, in the core's values, for whoever tells of it. `side` may decline it unless `forced`; side
    None is nobody's choice (the clock, the teacher). `rules` are all sentences that had a part in it; each effect
    names its own rule besides. One that `ticks` happens at a moment of the `Schedule` and at no rate: of all of these
    that may happen in a marking one does, with a chance of its factor times its part; these sum to 1. `outcome` is
    one of "success", "caught" (either of them also "-bounced"), "missed", "left" (the court), or "always" where
    there is only one; `part` is the share of that outcome which is this transition's. By the rules of `keeping` a ball
    is after it where it was before.
    """

    told: Happened
    side: str | None
    forced: bool
    attempt: Attempt
    outcome: str
    rate: Rate
    guard: Condition
    effects: tuple[Effect, ...]
    rules: tuple[Rule, ...]
    part: float = 1.0
    ticks: bool = False
    keeping: tuple[Rule, ...] = ()


@frozen
class Reaction:
    """What follows at once when a condition becomes true (false before the move, true after it) and `only` holds."""

    told: Followed
    guard: Condition
    effects: tuple[Effect, ...]
    rules: tuple[Rule, ...]
    only: Condition = All()


@frozen
class End:
    """A way for the round to end. `winner` is a side, or None for a draw or a plain end.

    `told` says by what; those of one winner and one `told.way` are one way. Without a winner: a draw, or `nobody` wins.
    """

    told: Ended
    winner: str | None
    guard: Condition
    rule: Rule
    nobody: bool = False


@frozen
class Bell:
    """The clock: at `after_s` the first entry whose guard holds says the result (None where no clock)."""

    after_s: float
    results: tuple[End, ...]
    rule: Rule


@frozen
class AtTheEnd:
    """What a side has when the round is over counts as points, by a line: the sum over the terms."""

    side: str
    terms: Terms
    rule: Rule


@frozen
class Net:
    """The whole game as places and transitions.

    The first of `ends` that holds is the result; where those of different winners hold together, that is "two
    winners". `open_ended`: play goes on until the clock; `mirrored` sides are called so; in `solo` ones each plays for
    themselves, and those who are left win (True) or somebody of them; what counts `at_the_end` besides points; places
    of players at whom nobody may aim are `spared`, of balls that are left `unfetched`, of players who are there
    at the set-up `placed`, each with the line; lines of fetching that are `reckoned` with anyway, `barren` ones; of
    players who guard, or stop balls, `keeping`; `unaimed` are lines about what nobody tries to do to players. What
    lines say of what follows from an attempt is `following`, in the core's values.
    """

    title: str
    sides: tuple[str, ...]
    places: tuple[Place, ...]
    transitions: tuple[Transition, ...]
    reactions: tuple[Reaction, ...]
    ends: tuple[End, ...]
    bell: Bell | None
    rules: tuple[Rule, ...]
    open_ended: bool = False
    mirrored: tuple[str, ...] = ()
    match: Match = ONE_ROUND
    at_the_end: tuple[AtTheEnd, ...] = ()
    duties: tuple[Duty, ...] = ()
    spared: tuple[tuple[int, Span], ...] = ()
    unfetched: tuple[tuple[int, Rule], ...] = ()
    keeping: tuple[int, ...] = ()
    unaimed: tuple[tuple[Rule, Result], ...] = ()
    schedule: Schedule | None = None
    placed: tuple[tuple[int, Rule], ...] = field(eq=False, default=())
    reckoned: tuple[Rule, ...] = field(eq=False, default=())
    following: tuple[tuple[Rule, Effects], ...] = field(eq=False, default=())
    barren: tuple[Barren, ...] = field(eq=False, default=())
    plurals: tuple[tuple[KindId, str], ...] = field(eq=False, default=())
    solo: Mapping[str, bool] = field(eq=False, factory=dict)

    @property
    def effects(self) -> tuple[Effect, ...]:
        """All that can follow, of moves and of what follows from them."""
        acts: tuple[Transition | Reaction, ...] = (*self.transitions, *self.reactions)
        return tuple(effect for act in acts for effect in act.effects)

    def start(self) -> tuple[int, ...]:
        """The marking at the set-up."""
        return tuple(place.start for place in self.places)
