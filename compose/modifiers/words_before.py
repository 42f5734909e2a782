"""What authors wrote of a game and a remix of it no longer does: words of before, for they are a person's own and
nothing rewrites them surely."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from compose.modifiers.remix import Remix
from compose.staging.resolved import resolved
from grammar.core.persons import LifeOf
from grammar.game import Game
from grammar.words import NUMBERS

UNITS = ("m", "min", "s", "cm", "minutes", "seconds", "metres")
COUNT = re.compile(r"\b(\d+|[a-z]+) (?=([a-z]+))")
ENDINGS = re.compile(r"(?:ing|ers?|ed|es|e|s)$")  # so that "rolls" and "rolled" are the word of "roll"


def words_before(made: Remix) -> frozenset[str]:
    """The texts (what the game is about, cues) of the old game that may no longer hold: all where players no longer
    do what they did, else those with a word or a number that stood in its lines and now stands in none, and those of
    lives that nobody loses any more."""
    if not made.uses:
        return frozenset()
    told = resolved(made.base).told
    texts = (*told.about, *told.cues)
    if _skills(made.base) - _skills(made.game):
        return frozenset(texts)
    before, now = list(_lines(made.base)), list(_lines(made.game))
    gone = set(_stems(before)) - set(_stems(now))
    lives = _lives_lost(made.base) - _lives_lost(made.game)
    return frozenset(
        each
        for each in texts
        if gone & set(_stems([each])) or _counts_other(each, before, now) or (lives and _of_lives(each, lives))
    )


def _counts_other(text: str, before: Sequence[str], now: Sequence[str]) -> bool:
    """Whether a number of a text stood in the lines and no longer does: of the same thing where they said so, else as
    often as it did."""
    was, is_now = list(_counts(before)), list(_counts(now))
    for number, what in _counts([text]):
        if (number, what) in was:
            if (number, what) not in is_now:
                return True
        elif sum(each == number for each, _ in is_now) < sum(each == number for each, _ in was):
            return True
    return False


def _counts(lines: Iterable[str]) -> Iterator[tuple[int, str]]:
    """Every number of things or people with the stem of what is counted; metres and minutes are not told in texts."""
    for line in lines:
        for written, what in COUNT.findall(line.lower()):
            number = int(written) if written.isdigit() else NUMBERS.get(written)
            if number is not None and what not in UNITS:
                yield number, ENDINGS.sub("", what)


def _lives_lost(game: Game) -> set[int]:
    """How many lives players have, where they lose some."""
    play = resolved(game).play
    lost = any(isinstance(each, LifeOf) and each.by < 0 for rule in play.rules for each in rule.effects)
    return {each.number for each in play.lives} if lost else set()


def _of_lives(text: str, lives: set[int]) -> bool:
    """Whether a text speaks of lives, under whatever name: it says their number, or that they are lost."""
    told = {number for number, _ in _counts([text])}
    return bool(told & lives) or re.search(r"\b(?:life|lives|los(?:e|es|ing))\b", text, re.I) is not None


def _skills(game: Game) -> set[str]:
    return {each.skill.value for each in resolved(game).play.attempts}


def _lines(game: Game) -> Iterator[str]:
    for section in game.sheet.sections:
        yield from (line.sentence.words() for line in section.lines)


def _stems(lines: Iterable[str]) -> Iterator[str]:
    for line in lines:
        yield from (ENDINGS.sub("", word) for word in re.findall(r"[a-z]{3,}", line.lower()))
