"""What a sheet calls a game, in rounds: one of them, best of several, two halves."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.core.ends import Meeting, Seats
from grammar.core.game import Core
from grammar.frozen import field, frozen
from grammar.span import Span, nowhere


@frozen
class Match:
    """Who has won most of `best_of` rounds has won; with `halves` each of them is played twice, or in so many `parts`,
    which are called halves, innings (`of_innings`) or rounds (`of_rounds`).

    Groups go by the side that they begin as: with `tasks_change` each plays the second half as the other side.
    Where more `groups` are `meeting`, two of them play on each of so many `courts` at a time, for so many `rounds`.
    Over both halves the sum of the points decides; where there are none, who has won more of them. Where a round gives
    points by `places`, those are added.
    `lines` are the words of the sentences that say so, `place` is that of the first.
    """

    best_of: int = 1
    halves: bool = False
    parts: int = 2
    of_innings: bool = False
    of_rounds: bool = False
    places: tuple[int, ...] = ()
    tasks_change: bool = False
    groups: int = 2
    courts: int = 1
    meeting: Meeting | None = None
    rounds: int = 1
    lines: tuple[str, ...] = ()
    place: Span = field(factory=nowhere)

    @property
    def one_round(self) -> bool:
        """Whether a round is all there is."""
        return self.best_of == 1 and not self.halves and self.meeting is None

    @property
    def part(self) -> str:
        """What one part of the game is called: "half", "innings", "round"."""
        if not self.halves or self.of_rounds:
            return "round"
        return "innings" if self.of_innings else "half"

    @property
    def on_share(self) -> float:
        """The share of the groups that play at a time."""
        return 2 * self.courts / self.groups if self.meeting is not None else 1.0

    @property
    def most_rounds(self) -> int:
        """How many times a round is played where nothing is decided before."""
        return self.rounds if self.meeting is not None else self.best_of * (self.parts if self.halves else 1)


ONE_ROUND = Match()


def match_of(core: Core) -> Match:
    """The match that the finish asks for. Halves are those of two sides: of more nobody says who changes with whom."""
    said, sides = core.play.match, len(core.play.sides)
    halves = said.halves and (sides == 2 or (said.of_rounds and sides > 2))
    if said.rounds == 1 and not halves and said.meeting is None:
        return ONE_ROUND
    lines = [core.lines[number] for number in said.lines]
    return Match(
        best_of=1 if said.meeting is not None else said.rounds,
        groups=said.groups,
        courts=said.courts,
        meeting=said.meeting,
        rounds=said.rounds,
        halves=halves,
        parts=said.parts,
        of_innings=halves and said.of_innings,
        of_rounds=halves and said.of_rounds,
        places=said.places if halves else (),
        tasks_change=halves and said.change is Seats.TASKS,
        lines=tuple(line.words for line in lines),
        place=lines[0].span,
    )


def changed_over(match: Match, players: Mapping[str, int]) -> dict[str, int] | None:
    """The players of each side in the second half, None where it is as the first."""
    sizes = tuple(players.values())
    if not match.tasks_change or len(set(sizes)) < 2:
        return None
    return dict(zip(players, reversed(sizes), strict=True))
