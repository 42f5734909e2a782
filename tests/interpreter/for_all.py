"""The second reader's own word on which areas in each corner or by each side line are nobody's."""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from grammar.sentences import base, play, sides, space
from grammar.sentences.attempting import Attempt
from grammar.tree import GameSheet
from tests.interpreter.names import Folk, Meant, Stuff

NESTS = ("nest", "den", "island", "mat", "home", "camp", "castle", "house", "hoop", "bank")
SORTS = ("strip", "zone", "bench", "queue", "base", "circle", "mark")


def sort_of_place(line: space.Area) -> str:
    """The last word of its name; else a base in a corner, in several places or called a nest, and a zone where deep."""
    last = line.name.text.split()[-1]
    small = line.places or line.spot.name.text == "corner" or not line.depth or last in NESTS
    return last if last in SORTS else "base" if small else "zone"


def is_nobodys(tree: GameSheet, names: dict[str, Meant], area: space.Area) -> bool:
    """No word says whose it is, nobody waits there, and who acts there is of one side, or stays or starts there."""
    word, spot = area.name.text, area.spot
    if spot.name.text not in ("corner", "side line") or word.endswith(("bench", "queue")) or _claimed(spot):
        return False
    if spot.determiner not in ("each", "every"):
        return False
    said = [line.sentence for part in tree.sections for line in part.lines if line.sentence is not area]
    spoken = [(one, phrase) for one in said for phrase in _phrases(one) if _means(names, phrase, word)]
    return all(_leaves_it(tree, names, one, phrase) for one, phrase in spoken)


def _leaves_it(tree: GameSheet, names: dict[str, Meant], said: base.Node, phrase: base.Np) -> bool:
    if isinstance(said, space.Area):
        return said.preposition == "around" and not _claimed(said.spot) and is_nobodys(tree, names, said)
    if _claimed(phrase) or phrase.determiner in ("their", "its", "that"):
        return False
    if isinstance(said, play.Stay):
        return True
    if isinstance(said, sides.Placing):
        what = names[said.what.name.text]
        if not isinstance(what, Stuff):
            return said.count is None
        owners = [line.owner for line in tree.all_of("kit", sides.Kit) if names[line.name.text] == what]
        return phrase.determiner not in ("each", "every", "all") and not any(isinstance(o, base.Owner) for o in owners)
    if not isinstance(said, Attempt):
        return False
    who = names[said.who.name.text]
    return isinstance(who, Folk) and who.side is not None and said.skills == ("run",)


def _means(names: dict[str, Meant], phrase: base.Np, word: str) -> bool:
    return getattr(names.get(phrase.name.text), "place", None) == word


def _claimed(phrase: base.Np) -> bool:
    return phrase.owner is not None or phrase.possessive is not None or bool(phrase.other)


def _phrases(node: base.Node) -> Iterator[base.Np]:
    """Every phrase in a sentence."""
    if isinstance(node, base.Np):
        yield node
    for each in attrs.fields(type(node)):
        value = getattr(node, each.name)
        for part in value if isinstance(value, tuple) else (value,):
            if isinstance(part, base.Node):
                yield from _phrases(part)
