"""What a modifier needs of a game, and whether the game has it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.modifiers.events import covers
from compose.modifiers.modifier import Modifier
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.meanings import AREA_KINDS, BUILT_IN_PLACES, CATEGORY_WORDS, MateMeaning
from grammar.sentences import modifier as said
from grammar.sentences.base import Np
from grammar.sentences.play import Attempt
from grammar.sentences.when import Scores
from grammar.words import listing
from library import KitItem


def unmet_needs(modifier: Modifier, game: Game, kit: Mapping[str, KitItem]) -> Iterator[Finding]:
    """One finding for each need that the game does not meet."""
    for need in modifier.needs:
        wrong = ""
        match need:
            case said.NeedsEvent():
                if not any(covers(game, need.event, rule.event) for rule in game.whens):
                    wrong = f"has no rule for when {need.event.words()}"
            case said.NeedsBall():
                wrong = _ball(game, need.skill, kit)
            case said.NeedsThing():
                wrong = "" if _has(game, need.thing) else f"has no {need.thing.name.text}"
            case said.NeedsSkill():
                if need.skill not in {skill for attempt in game.all_of("play", Attempt) for skill in attempt.skills}:
                    wrong = f"has nobody {need.skill}"
            case said.NeedsPoints():
                wrong = "" if _scores(game) else "has no points"
            case said.NeedsTwoSides():
                wrong = "" if len(game.sides) > 1 else "has only one side"
        if wrong:
            title = f"`{modifier.name}` does not fit: {game.title} {wrong}."
            yield Finding("M-need", Severity.ERROR, title, need.span, "Leave it out, or choose another game.")


def _scores(game: Game) -> bool:
    return any(isinstance(each, Scores) for rule in game.whens for each in rule.consequences)


def _ball(game: Game, skill: str, kit: Mapping[str, KitItem]) -> str:
    balls = [line for line in game.kit if line.category == "ball"]
    if not balls:
        return "has no ball"
    if any(line.like in kit and skill in kit[line.like].may for line in balls):
        return ""
    return f"has no ball fit for {skill}, only {listing(line.plural for line in balls)}"


def _has(game: Game, phrase: Np) -> bool:
    word = phrase.name.text
    if isinstance(game.vocabulary.get(word), MateMeaning):
        return any(side.least > 1 for side in game.sides)
    if word in CATEGORY_WORDS:
        return any(line.category == CATEGORY_WORDS[word] for line in game.kit)
    if word in AREA_KINDS:
        return any(area.kind == word for area in game.areas)
    if word == "half":
        return game.halved
    return word in game.vocabulary and word not in BUILT_IN_PLACES
