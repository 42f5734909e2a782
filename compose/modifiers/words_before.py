"""What authors wrote of a game and a remix of it no longer does: words of before, for they are a person's own and
nothing rewrites them surely."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from compose.modifiers.remix import Remix
from compose.staging.resolved import resolved
from grammar.game import Game

ENDINGS = re.compile(r"(?:ing|ers?|ed|es|e|s)$")  # so that "rolls" and "rolled" are the word of "roll"


def words_before(made: Remix) -> frozenset[str]:
    """The texts (what the game is about, cues) of the old game that may no longer hold: all where players no longer
    do what they did, else those with a word that stood in its lines and now stands in none."""
    if not made.uses:
        return frozenset()
    told = resolved(made.base).told
    texts = (*told.about, *told.cues)
    if _skills(made.base) - _skills(made.game):
        return frozenset(texts)
    gone = set(_stems(_lines(made.base))) - set(_stems(_lines(made.game)))
    return frozenset(each for each in texts if gone & set(_stems([each])))


def _skills(game: Game) -> set[str]:
    return {each.skill.value for each in resolved(game).play.attempts}


def _lines(game: Game) -> Iterator[str]:
    for section in game.sheet.sections:
        yield from (line.sentence.words() for line in section.lines)


def _stems(lines: Iterable[str]) -> Iterator[str]:
    for line in lines:
        yield from (ENDINGS.sub("", word) for word in re.findall(r"[a-z]{3,}", line.lower()))
