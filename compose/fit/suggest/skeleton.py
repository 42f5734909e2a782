"""What of a game its net hangs on, without what only changes chances, times and distances.

Two games of one skeleton have nets of one shape, so every finding about one holds of the other: sizes,
distances, paces, factors, said rules and cautions change numbers, never what can happen, but where players have
no floor left or a thing is out of reach; that is told apart. Tested on every modifier of the library with every
game.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs

from compose.modifiers.canonical import canonical
from compose.net.lower.doubts import doubts
from compose.staging.floor.nowhere import nowhere_to_act
from compose.staging.resolved import resolved
from grammar.game import Game
from grammar.meanings import CategoryMeaning, KitMeaning
from grammar.sentences import finish, head, play, sides, space
from grammar.sentences.base import Name, Node, Quantity

_ONLY_SAID = (
    play.SaidRule,
    play.SucceedAsOften,
    play.TakeAsLong,
    play.Stay,
    play.GuardLimit,
    sides.SideBySide,
    sides.OddPupil,
    finish.BestOf,
    finish.ChangeEnds,
)
_SOME = Quantity(1.0, "m")
_SOME_TIME = Quantity(1.0, "s")


def skeleton(game: Game, players: Mapping[str, int]) -> str:
    """One text for all games whose nets have the same shape with these players."""
    sheet = canonical(game)
    lines = [f"{side} {number}" for side, number in players.items()]
    for section in sheet.sections:
        if section.name != "care":
            lines.append(section.name)
            lines += sorted(_said(game, (line.sentence for line in section.lines)))
    lines += [line.sentence.words() for line in sheet.head if isinstance(line.sentence, head.Switch)]
    lines += [f"{each.code} {each.title}" for each in (*nowhere_to_act(resolved(game)), *doubts(resolved(game)))]
    return "\n".join(lines)


def _said(game: Game, sentences: Iterator[Node]) -> Iterator[str]:
    for sentence in sentences:
        inner = sentence.sentence if isinstance(sentence, head.Switched) else sentence
        if not isinstance(inner, _ONLY_SAID):
            switch = f"with {sentence.name.text}, " if isinstance(sentence, head.Switched) else ""
            yield switch + _without_numbers(game, inner).words()


def _without_numbers(game: Game, sentence: Node) -> Node:
    match sentence:
        case space.Court():
            return attrs.evolve(sentence, length=_SOME, width=_SOME)
        case space.Area():
            return attrs.evolve(sentence, depth=None)
        case sides.Kit():
            return attrs.evolve(sentence, percent=None, like=_category(game, sentence), determiner="a")
        case sides.Placing():
            return _placing(game, sentence)
        case play.Attempt():
            kept = tuple(each for each in sentence.details if not isinstance(each, play.FromWhere | play.Pace))
            return attrs.evolve(sentence, details=kept)
        case play.Fetch() | play.Free() | play.StandUp():
            return attrs.evolve(sentence, pace=None)
        case play.ComesBack():
            return attrs.evolve(sentence, time=_SOME_TIME)
        case play.HoldLimit():
            return attrs.evolve(sentence, limit=_SOME_TIME)
        case finish.After():
            return attrs.evolve(sentence, time=_SOME_TIME)
    return sentence


def _category(game: Game, sentence: sides.Kit) -> Name:
    """What sort of thing it is, in the place of which thing of that sort."""
    meaning = game.meaning(sentence.name)
    return Name(meaning.category if isinstance(meaning, KitMeaning) else "thing")


def _placing(game: Game, sentence: sides.Placing) -> sides.Placing:
    """Where targets stand changes distances only; where balls and players are changes what can happen."""
    meaning = game.meaning(sentence.what.name)
    if isinstance(meaning, KitMeaning | CategoryMeaning) and meaning.category in ("target", "ring", "furniture"):
        where = attrs.evolve(sentence.where, name=Name("place"), owner=None)
        return attrs.evolve(sentence, preposition="at", where=where, spread=None)
    return attrs.evolve(sentence, spread=None)
