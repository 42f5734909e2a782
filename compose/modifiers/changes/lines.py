"""Whole lines put in, put in the place of others about the same thing, or taken out."""

from __future__ import annotations

import attrs

from compose.modifiers.changes.events import covers_rule
from compose.modifiers.changes.sheets import Draft, Problem
from grammar.game import Game
from grammar.sentences import modifier as said
from grammar.sentences.base import Node
from grammar.sentences.play import SucceedAsOften, TakeAsLong
from grammar.topics import topic
from grammar.tree import Line


def block(draft: Draft, game: Game, line: Line) -> Problem | None:
    """The lines of one block, one after the other."""
    sentence = line.sentence
    assert isinstance(sentence, said.Block)
    for inner in line.block:
        new = inner.sentence

        def same(old: Node, new: Node = new) -> bool:
            return topic(old) == topic(new) or covers_rule(game, new, old)

        if sentence.verb == "replace in":
            draft.replace(sentence.section, same, inner, sentence.span)
        elif sentence.verb == "take from":
            draft.take(sentence.section, same, sentence.span)
        elif isinstance(new, SucceedAsOften | TakeAsLong):
            _times(draft, sentence.section, inner, sentence)
        else:
            draft.put(sentence.section, inner, sentence.span)
    return None


def _times(draft: Draft, section: str, line: Line, why: Node) -> None:
    """Two factors are one: 70 % as often and then 50 % as often is 35 % as often."""
    new = line.sentence
    assert isinstance(new, SucceedAsOften | TakeAsLong)

    def multiplied(old: Node) -> Node:
        if type(old) is not type(new) or not isinstance(old, SucceedAsOften | TakeAsLong):
            return old
        percent = round(old.percent.value * new.percent.value / 100, 4)
        return attrs.evolve(old, percent=attrs.evolve(old.percent, value=percent))

    if not any(type(each.sentence) is type(new) for each in draft.lines(section)):
        draft.put(section, line, why.span)
    else:
        draft.change(section, multiplied, why.span)


def take_all(draft: Draft, game: Game, sentence: said.TakeAll) -> Problem | None:
    """A section is emptied."""
    draft.take(sentence.section, lambda node: True, sentence.span)
    return None
