"""Who acts is called after the skill: with another skill the thrower becomes the kicker."""

from __future__ import annotations

from typing import Any, TypeVar

import attrs

from grammar.core.skills import SKILL_WORDS
from grammar.sentences.base import Name, Node

AGENTS = {skill.value: words.doer for skill, words in SKILL_WORDS.items()}
Sentence = TypeVar("Sentence", bound=Node)


def with_agents(node: Sentence, skills: tuple[str, ...], to: str) -> Sentence:
    """The sentence with every agent of the old skills called after the new one."""
    old = {AGENTS[skill] for skill in skills}
    changed: dict[str, Any] = {}
    for part in attrs.fields(type(node)):
        if part.name == "span":
            continue
        value = getattr(node, part.name)
        if isinstance(value, Node):
            changed[part.name] = with_agents(value, skills, to)
        elif isinstance(value, tuple):
            changed[part.name] = tuple(with_agents(v, skills, to) if isinstance(v, Node) else v for v in value)
        elif isinstance(value, str):
            changed[part.name] = _renamed(node, part.name, value, old, AGENTS[to])
    return attrs.evolve(node, **changed)


def _renamed(node: Node, part: str, value: str, old: set[str], new: str) -> str:
    if part == "possessive" and value.removesuffix("'s") in old:
        return f"{new}'s"
    if isinstance(node, Name) and value in old:
        return new
    return value
