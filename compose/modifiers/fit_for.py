"""Which balls of a game are asked for more than they are fit for: nobody kicks a cloth ball."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.modifiers.change_kit import all_meant
from grammar.game import Game
from grammar.sentences.play import Attempt
from library import KitItem
from library.records import BALL_SKILLS


def unfit(game: Game, kit: Mapping[str, KitItem]) -> Iterator[tuple[str, str]]:
    """Each ball of the game, as the kit knows it, with a skill that it is used for and not fit for."""
    for attempt in game.all_of("play", Attempt):
        for line in all_meant(game, attempt.ball.name) if attempt.ball else ():
            item = kit.get(line.like)
            for skill in attempt.skills:
                if item and item.category == "ball" and skill in BALL_SKILLS and skill not in item.may:
                    yield item.name, skill
