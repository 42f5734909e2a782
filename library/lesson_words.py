"""What a lesson says of the skills that its games practise: a door to `lessons/`, read once and kept."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from grammar.frozen import frozen
from library.load import folder
from library.reading import Entry


@frozen
class SkillWords:
    """How to warm up for a skill, and what to ask about it in the talk. In the warm-up so many `share_a_ball`; 0 where
    none is needed."""

    skill: str
    warm_up: str
    ask: str
    share_a_ball: int


@cache
def skill_words() -> Mapping[str, SkillWords]:
    """The words of each skill by its name; raises DataError on a malformed file."""
    return folder("lessons", _from)


def _from(skill: str, entry: Entry) -> SkillWords:
    entry.only("warm_up", "ask", "share_a_ball")
    return SkillWords(skill, entry.text("warm_up"), entry.text("ask"), int(entry.number("share_a_ball", 0)))
