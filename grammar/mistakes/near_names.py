"""The names that somebody may have meant who wrote another: near in spelling, or with a word more."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from grammar.words import LIKE_ENOUGH, NUMBERS, can_be_alike, likeness, plural, singulars

LEAST_LIKE = 0.6
MOST_NEAR = 4
_WORD_MISSING = 0.4
_OTHER_LENGTH = 0.15  # our choice: "reedz" is rather "reeds", with one letter exchanged, than "reed"

_IN_NO_NAME = frozenset((  # what a word says that no thing, player or place is called by
    "not", "never", "none", "nothing", "nobody", "somebody", "both", "either", "neither",
    "do", "does", "did", "lose", "loses", "win", "wins", "once", "twice", "always", "often", "rarely", "seldom",
    "sometimes", "usually", "need", "must", "may", "can", "should", "tallest", "smallest", "nearest", "farthest",
    "last", "first", "best", "youngest", "oldest",
))  # fmt: skip


def near_names(written: str, known: Iterable[str], most: int = MOST_NEAR) -> list[tuple[str, float]]:
    """Up to `most` known names, each with how far it is from what was written, the nearest first."""
    return list(_near(written, tuple(known))[:most])


@lru_cache(maxsize=5_000)
def _near(written: str, known: tuple[str, ...]) -> tuple[tuple[str, float], ...]:
    near = [(name, cost) for name in known if (cost := _distance(written, name)) is not None]
    return tuple(sorted(near, key=lambda each: (round(each[1], 3), each[0])))


def _distance(written: str, name: str) -> float | None:
    said, words = written.split(), name.split()
    if list(dict.fromkeys(said)) == words:
        return 0.1
    if set(said) < set(words):
        return _WORD_MISSING + 0.1 * (len(words) - len(said))
    if _stems(words) < _stems(said):
        return None  # a "foam ball" is no slip of a "ball"
    if 2 * min(len(written), len(name)) < LEAST_LIKE * (len(written) + len(name)):
        return None  # too long or too short to be like it, so that a word of a megabyte is not compared
    same_end = len(said) == len(words) == 2 and not {said[1], plural(said[1])}.isdisjoint({words[1], plural(words[1])})
    if same_end and likeness(said[0], words[0]) < LIKE_ENOUGH:
        return None  # nor an "exercise ball" of a "tennis ball": that both are balls makes them no more alike
    if not can_be_alike(written, name, LEAST_LIKE):
        return None
    like = likeness(written, name)
    other_end = 0.0 if written[-1:] == name[-1:] else 0.1
    other_length = 0.0 if len(written) == len(name) else _OTHER_LENGTH
    return 1 - like + other_end + other_length if written != name and like >= LEAST_LIKE else None


def _stems(words: list[str]) -> set[str]:
    return {next(iter(singulars(word)), word) for word in words}


def turning_words(name: str) -> list[str]:
    """The words in what was taken for a name that say something: without them the line would say something else."""
    return [word for word in name.split() if word in _IN_NO_NAME or word in NUMBERS]
