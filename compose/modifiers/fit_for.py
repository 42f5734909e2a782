"""Which balls of a game are asked for more than they are fit for: nobody kicks a cloth ball, or throws a hard one
at people."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from attrs import frozen

from grammar.game import Game, GameKit
from grammar.meanings import PlayerMeaning, SideMeaning
from grammar.sentences.play import AimAt, Attempt
from grammar.words import article
from library import KitItem
from library.records import BALL_SKILLS

BEING = {
    "overarm throw": "thrown overarm",
    "underarm throw": "thrown underarm",
    "roll": "rolled",
    "kick": "kicked",
    "strike": "struck",
    "pass": "passed",
}


@frozen
class Unfit:
    """A ball, as the kit knows it, and what a sentence asks of it."""

    sentence: Attempt
    ball: str
    skill: str

    @property
    def words(self) -> str:
        """Such as "a cloth ball is not fit to be kicked"."""
        return f"{article(self.ball)} is not fit to be {BEING[self.skill]}"


def unfit(game: Game, kit: Mapping[str, KitItem]) -> Iterator[Unfit]:
    """Each ball of the game with a skill that it is used for and not fit for."""
    for attempt in game.all_of("play", Attempt):
        for line in game.kit_meant(attempt.ball.name) if attempt.ball else ():
            item = kit.get(line.like)
            for skill in attempt.skills:
                if item and item.category == "ball" and skill in BALL_SKILLS and skill not in item.may:
                    yield Unfit(attempt, item.name, skill)


def hard_at_people(game: Game, kit: Mapping[str, KitItem]) -> Iterator[tuple[Attempt, GameKit]]:
    """Each sentence by which players are aimed at with a ball that the kit does not call soft, with that ball."""
    for attempt in game.all_of("play", Attempt):
        at_people = any(isinstance(aim, AimAt) and _people(game, aim) for aim in attempt.aims)
        for line in game.kit_meant(attempt.ball.name) if attempt.ball and at_people else ():
            item = kit.get(line.like)
            if item and item.category == "ball" and not item.soft:
                yield attempt, line


def _people(game: Game, aim: AimAt) -> bool:
    return isinstance(game.meaning(aim.what.name), PlayerMeaning | SideMeaning)
