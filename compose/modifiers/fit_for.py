"""Which balls of a game are asked for more than they are fit for: nobody kicks a cloth ball."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.staging.resolved import resolved
from grammar.core.skills import SKILL_WORDS
from grammar.frozen import frozen
from grammar.game import Game
from grammar.said import Named, Said, said
from grammar.words import article
from library import KitItem
from library.records import BALL_SKILLS

BEING = {skill.value: f"{words.done}{words.way}" for skill, words in SKILL_WORDS.items()}


@frozen
class Unfit:
    """A ball, as the kit knows it, and a skill for which it is used."""

    ball: str
    skill: str

    @property
    def told(self) -> Said:
        """Such as "a cloth ball is not fit to be kicked."."""
        an = article(self.ball).startswith("an ")
        pattern = "an {ball} is not fit to be {done}." if an else "a {ball} is not fit to be {done}."
        return said(pattern, ball=Named(self.ball), done=BEING[self.skill])


def unfit(game: Game, kit: Mapping[str, KitItem]) -> Iterator[Unfit]:
    """Each ball of the game with a skill that it is used for and not fit for."""
    play = resolved(game).play
    used = dict.fromkeys((each.ball, each.skill) for each in play.attempts)
    for ball, skill in used:
        item = kit.get(play.kind(ball).like.key) if ball is not None else None
        if item and item.category == "ball" and skill.value in BALL_SKILLS and skill.value not in item.may:
            yield Unfit(item.name, skill.value)
