"""How teachers say what their class is, otherwise than a sheet does; "pupils" is "players" by then (heard_words.py)."""

from __future__ import annotations

import re
from collections.abc import Iterator

from grammar.heard.saying import Saying, saying
from grammar.words import NUMBERS

_SPLIT = re.compile(r"\s*,\s*(?:and )?|\s+and\s+")
_MANY = r"(?:players|students|boys and girls|girls and boys)"
_AGE = r"(?:(?P<least>\d+) to )?(?P<most>\d+)(?: years?)?(?: old| of age)?"
_YEARS = rf"(?:(?P<least>\d+) to )?(?P<most>\d+|{'|'.join(NUMBERS)})"
_METRES = r"(\d+(?:\.\d+)?)(?: ?m)?"
_HALL = r"(?:the |our |my )?(?:hall|gym|gymnasium|sports hall)"
_LESSON = r"(?:the |a |our )?lesson"


def _ages(match: re.Match[str]) -> str:
    said = match["most"].lower()
    most = NUMBERS.get(said, said)
    return f"ages {match['least'] or most} to {most}"


def _pupils_and_ages(match: re.Match[str]) -> str:
    return f"class of {match['pupils']}, {_ages(match)}"


CLASS_TURNS: tuple[Saying, ...] = (
    # how many, how old
    saying(rf"^(?:we (?:are|have) )?(?:a )?(?:class of )?(?P<pupils>\d+) (?:{_MANY} of )?{_YEARS}[- ]years?[- ]olds?$",
           _pupils_and_ages, "class"),
    saying(rf"^(?P<pupils>\d+) {_MANY},? (?:aged?|ages|of|of ages?|who are) {_AGE}$", _pupils_and_ages, "class"),
    saying(rf"^(?:we (?:are|have) |there are )?(?:a )?(?:class of )?(\d+) {_MANY}$", r"class of \1", "class"),
    saying(r"^(?:(?:the )?class(?: is| has| size)?|(?:number of )?players|we are)(?::? of|:)? (\d+)$", r"class of \1",
           "class"),
    saying(rf"^(?:aged?|ages|they are|(?:the )?players are)(?: from)?:? {_AGE}$", _ages, "class"),
    saying(r"^(?:(?P<least>\d+) to )?(?P<most>\d+)[- ]years?(?:[- ]olds?| of age)?$", _ages, "class"),
    # where
    saying(rf"^{_HALL}(?: is| of| measures)?:? {_METRES}(?: long)? (?:by|and) {_METRES}(?: wide)?$",
           r"the hall is \1 m by \2 m", "class", "hall"),
    saying(rf"^{_HALL}(?: is)?:? {_METRES} wide and {_METRES} long$", r"the hall is \2 m by \1 m", "class", "hall"),
    saying(rf"^(?:in )?(?:an? )?{_METRES} by {_METRES} (?:hall|gym|gymnasium)$", r"the hall is \1 m by \2 m", "class",
           "hall"),
    saying(r"^(?:in the hall|hall:) ([^\d\":].*)$", r'in the hall "\1"', "class"),
    # how long
    saying(rf"^(?:{_LESSON}(?: is| lasts| takes)?:? |we have |for |a )?(\d+ min)(?: long| lesson)?$", r"lesson of \1",
           "class"),
    saying(rf"^(?:{_LESSON}(?: is| lasts| takes| of)?:? |we have |for )?(?:an|1) hour(?: lesson)?$", "lesson of 60 min",
           "class"),
    # with what
    saying(r"^(?:(?:the |our )?(?:kit|cupboard|equipment)(?: has)?:?|we have) (?=\d)", "", "class"),
    saying(r"^([a-z][a-z -]*): (\d+)$", r"\2 \1", "class"),
)  # fmt: skip


def lines_of_a_class(text: str) -> Iterator[tuple[str, ...]]:
    """ "27 pupils, ages 8 to 9, 5 foam balls and 6 cones": each part as a sheet says it."""
    parts = _SPLIT.split(text)
    for turn in CLASS_TURNS:
        parts = [turn.applied("class", part) for part in parts]
    yield tuple(parts)
