"""How a round ends, and what is played in all."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from grammar.core.guards import Count, Guard
from grammar.core.play import Lines
from grammar.core.values import KindId, SideId
from grammar.frozen import field, frozen


@frozen
class Won:
    """A side has won."""

    side: SideId


class NoWinner(Enum):
    """An end without a winner."""

    DRAW = "a draw"
    NOBODY = "nobody wins"


@frozen
class Lost:
    """The only side there is has lost, so that nobody has won."""

    side: SideId


@frozen
class Most:
    """Whoever has more of it (or fewer) has won."""

    counts: frozenset[tuple[SideId, Count]]
    more: bool


@frozen
class Best:
    """Of a side whose players play each for themselves those with the most points have won."""

    side: SideId


@frozen
class Left:
    """Of a side whose players play each for themselves those who are in play then have won."""

    side: SideId


class Deciding(Enum):
    """Play goes on from a level score until somebody leads."""

    NEXT_POINT = "the next point wins"


@frozen
class NextKnocked:
    """Play goes on from a level score until somebody knocks such a thing; points count no more."""

    kinds: frozenset[KindId]


@frozen
class EndPoints:
    """What a side has of it when the round is over counts so many points each, besides those it has scored."""

    side: SideId
    count: Count
    each: int
    lines: Lines = field(eq=False)


Verdict = Won | NoWinner | Lost | Most | Best | Left | Deciding | NextKnocked


@frozen
class End:
    """The round ends when a guard holds; of several verdicts the first that decides, decides."""

    guard: Guard
    verdicts: tuple[Verdict, ...]
    lines: Lines = field(eq=False)


@frozen
class Bell:
    """The clock ends the round."""

    after_s: Fraction
    verdicts: tuple[Verdict, ...]
    lines: Lines = field(eq=False)

    @property
    def goes_on(self) -> bool:
        """Whether play goes on from a level score."""
        return isinstance(self.verdicts[-1], Deciding | NextKnocked)


def left_win(side: SideId, ends: tuple[End, ...], bell: Bell | None) -> bool:
    """Whether those of a side win who are left: several of them, or who is left alone."""
    verdicts = [verdict for end in (*ends, *((bell,) if bell is not None else ())) for verdict in end.verdicts]
    return Left(side) in verdicts


@frozen
class Tie:
    """What counts where two sides win with one move."""

    verdict: Verdict
    lines: Lines = field(eq=False)


class Seats(Enum):
    """What the sides exchange between rounds or halves."""

    NOTHING = "nothing"
    TASKS = "tasks"
    ENDS = "ends"


class Meeting(Enum):
    """Who of more than two groups plays whom."""

    WINNER_STAYS = "the winner stays on"
    ALL_MEET_ALL = "all meet all"
    WINNERS_MEET = "winners meet winners"


@frozen
class Match:
    """What is played: one round, the best of several, or two halves (or so many `parts`, called innings or rounds:
    `of_innings`, `of_rounds`) whose points are added, or of which most are won where there are none (`by_points`
    says which), or of which each place scores as many points as `places` say; where more `groups` than two are
    `meeting`, two on each of so many `courts` at a time, so many rounds.

    `lines` say what is played, `ends_lines` when the sides change ends, `places_lines` what the places are worth.
    """

    rounds: int = 1
    halves: bool = False
    parts: int = 2
    of_innings: bool = False
    of_rounds: bool = False
    by_points: bool | None = None
    places: tuple[int, ...] = ()
    groups: int = 2
    courts: int = 1
    meeting: Meeting | None = None
    change: Seats = Seats.NOTHING
    ends_after_each_round: bool = False
    ends_at_half_time: bool = False
    lines: Lines = field(eq=False, default=())
    ends_lines: Lines = field(eq=False, default=())
    places_lines: Lines = field(eq=False, default=())

    @property
    def resting(self) -> int:
        """How many groups rest at a time."""
        return self.groups - 2 * self.courts if self.meeting is not None else 0

    @property
    def till_all_met(self) -> int:
        """In how many rounds each group meets every other once."""
        return self.groups * (self.groups - 1) // 2 // self.courts
