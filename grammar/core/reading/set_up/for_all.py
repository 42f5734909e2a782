"""Which places lie in each corner or along each side line for all: those of which nothing hangs on whose they are."""

from __future__ import annotations

from grammar.core.reading.sheet.articles import nodes
from grammar.game import Game
from grammar.meanings import PlaceMeaning
from grammar.sentences import play, sides, space
from grammar.sentences.base import Name, Node, Np
from grammar.sentences.determiners import EACH

_OF_NO_SIDE = ("corner", "side line")  # ends and halves are as many as sides
_WAITED_IN = ("bench", "queue")


def is_for_all(game: Game, area: space.Area) -> bool:
    """Whether an area "in each corner" is one for all that lies in every corner: its line names no side, nobody waits
    there, and nothing else is said of it than who starts or stays there, or that a ring of which this holds, too, lies
    around it. Else each side has its own."""
    spot = area.spot
    meant = game.vocabulary.get(spot.name.text)
    if not isinstance(meant, PlaceMeaning) or meant.place not in _OF_NO_SIDE or area.name.text.endswith(_WAITED_IN):
        return False
    if spot.determiner not in EACH or _says_whose(spot):
        return False
    return _is_nobodys(game, area)


def _is_nobodys(game: Game, area: space.Area) -> bool:
    return not any(_hangs_on_whose(game, area, said) for said in _others(game, area))


def _others(game: Game, area: space.Area) -> list[Node]:
    sections = ("space", "set-up", "play", "when", "finish")
    return [line.sentence for each in sections for line in game.sheet.lines(each) if line.sentence is not area]


def _hangs_on_whose(game: Game, area: space.Area, said: Node) -> bool:
    """Whether a sentence speaks of an area as of a side's own, or does something there."""
    names = (each for each in nodes(said) if isinstance(each, Name))
    if PlaceMeaning(area.name.text) not in map(game.vocabulary.get, (each.text for each in names)):
        return False
    if isinstance(said, space.Area) and said.preposition == "around" and not _says_whose(said.spot):
        return not _is_nobodys(game, said)
    phrase = said.where if isinstance(said, play.Stay | sides.Placing) else None
    of_players = isinstance(said, play.Stay) or (isinstance(said, sides.Placing) and said.count is None
                                                 and not game.kit_meant(said.what.name))  # fmt: skip
    if not of_players or not isinstance(phrase, Np):
        return True
    return _says_whose(phrase) or phrase.determiner in ("their", "its", "that")


def _says_whose(phrase: Np) -> bool:
    return phrase.owner is not None or phrase.possessive is not None or bool(phrase.other)
