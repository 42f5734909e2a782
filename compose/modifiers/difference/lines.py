"""How two games differ line by line: rules about the same thing are set against each other."""

from __future__ import annotations

from collections.abc import Iterator

from compose.modifiers.difference.lines_meant import lines_meant
from grammar.game import Game
from grammar.sentences.attempting import Aim, AimBetween, Attempt
from grammar.sentences.base import Node
from grammar.sentences.head import Caution
from grammar.sentences.play import SaidRule
from grammar.sentences.when import When
from grammar.topics import Topic, topic


def line_differences(one: Game, other: Game, section: str) -> Iterator[str]:
    """The lines of a section that came, went or changed what they say; for their order see `order`."""
    ours, theirs = lines_meant(one, section), lines_meant(other, section)
    gone = [each.sentence for each in ours if not any(each.same(line) for line in theirs)]
    come = [each.sentence for each in theirs if not any(each.same(line) for line in ours)]
    for new in come:
        old = next((each for each in gone if _about(each) == _about(new)), None)
        if old is not None:
            gone.remove(old)
            yield _changed(old, new)
        else:
            yield f"new: {_plain(new)}"
    for old in gone:
        yield f"gone: {_plain(old)}"


def _about(sentence: Node) -> Topic:
    """What a rule is about, a little more widely than two rules that cannot both stand: an attempt is about who
    aims at what, by whichever skill and from wherever."""
    if isinstance(sentence, Attempt):
        return ("attempt", sentence.who.words(), " or ".join(_aimed_at(aim) for aim in sentence.aims))
    if isinstance(sentence, SaidRule | Caution):
        return ("said", sentence.words())
    return topic(sentence)


def _aimed_at(aim: Aim) -> str:
    return aim.goal.words() if isinstance(aim, AimBetween) else aim.what.words()


def _changed(old: Node, new: Node) -> str:
    if isinstance(old, When) and isinstance(new, When):
        event = new.words().partition(":")[0]
        now, before = (each.words().partition(": ")[2] for each in (new, old))
        return f"when {event}: {now}, where before {before}"
    return f"now: {_plain(new)}; before: {_plain(old)}"


def _plain(sentence: Node) -> str:
    return sentence.words().strip('"')
