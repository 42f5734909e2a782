"""What a sheet calls a game, in rounds: one of them, best of several, two halves."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import field, frozen

from grammar.game import Game
from grammar.sentences import finish
from grammar.span import Span, nowhere

CHANGE_TASKS = "the sides change tasks"


@frozen
class Match:
    """Who has won most of `best_of` rounds has won; with `halves` each of them is played twice.

    Groups go by the side that they begin as: with `tasks_change` each plays the second half as the other side.
    Over both halves the sum of the points decides; where there are none, who has won more halves.
    `words` and `place` are those of the sentence that says so.
    """

    best_of: int = 1
    halves: bool = False
    tasks_change: bool = False
    words: str = ""
    place: Span = field(factory=nowhere)

    @property
    def one_round(self) -> bool:
        """Whether a round is all there is."""
        return self.best_of == 1 and not self.halves

    @property
    def part(self) -> str:
        """What is won where it is not all: "a half", "a round"."""
        return "a half" if self.halves else "a round"

    @property
    def most_rounds(self) -> int:
        """How many times a round is played where nothing is decided before."""
        return self.best_of * (2 if self.halves else 1)


ONE_ROUND = Match()


def match_of(game: Game) -> Match:
    """The match that the finish asks for. Halves are those of two sides: of more nobody says who changes with whom."""
    best = next(game.all_of("finish", finish.BestOf), None)
    halves = next(game.all_of("finish", finish.Halves), None) if len(game.sides) == 2 else None
    said = [each for each in (halves, best) if each is not None]
    if not said:
        return ONE_ROUND
    return Match(
        best_of=best.rounds.whole if best else 1,
        halves=halves is not None,
        tasks_change=halves is not None and halves.change == CHANGE_TASKS,
        words="; ".join(each.words() for each in said),
        place=said[0].span,
    )


def changed_over(match: Match, players: Mapping[str, int]) -> dict[str, int] | None:
    """The players of each side in the second half, None where it is as the first."""
    sizes = tuple(players.values())
    if not match.tasks_change or len(set(sizes)) < 2:
        return None
    return dict(zip(players, reversed(sizes), strict=True))
