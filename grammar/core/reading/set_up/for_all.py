"""Which places lie in each corner or along each side line for all: those of which nothing hangs on whose they are."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.reading.sheet.articles import nodes
from grammar.core.reading.sheet.whose import OWN_WORDS, THAT_WORDS
from grammar.game import Game
from grammar.meanings import PlaceMeaning, PlayerMeaning, SideMeaning
from grammar.sentences import play, sides, space
from grammar.sentences.attempting import AimBetween, Attempt
from grammar.sentences.base import Name, Node, Np, OwnerName
from grammar.sentences.determiners import ALL, EACH

_OF_NO_SIDE = ("corner", "side line")  # ends and halves are as many as sides
_WAITED_IN = ("bench", "queue")


def is_for_all(game: Game, area: space.Area) -> bool:
    """Whether an area "in each corner" is one for all that lies in every corner: its line names no side, nobody waits
    there, and nothing else is said of it than who starts or stays there, what of no several sides lies there, that one
    side alone runs there, or that a ring of which this holds, too, lies around it. Else each side has its own."""
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
    phrases = list(_of_nobody(game, area, said))
    return not phrases or any(_says_whose(each) or each.determiner in (*OWN_WORDS, *THAT_WORDS) for each in phrases)


def _of_nobody(game: Game, area: space.Area, said: Node) -> Iterator[Np]:
    """The phrases of an area where it stands in a sentence that makes it nobody's: who stays or starts there, what of
    no several sides lies there, from where or to where the players of one side run."""
    if isinstance(said, play.Stay):
        yield said.where
    elif isinstance(said, sides.Placing) and isinstance(said.where, Np):
        kit = game.kit_meant(said.what.name)
        dealt = (said.count is not None and not kit) or (said.where.determiner in ALL and kit)
        if not dealt and all(line.owner != "each" for line in kit):
            yield said.where
    elif isinstance(said, Attempt) and _of_one_side(game, said.who):
        ways = [end for aim in said.aims if isinstance(aim, AimBetween) for end in (aim.start, aim.goal)]
        if all(isinstance(aim, AimBetween) for aim in said.aims):
            yield from (end for end in ways if game.vocabulary.get(end.name.text) == PlaceMeaning(area.name.text))


def _of_one_side(game: Game, who: Np) -> bool:
    """Whether a phrase of players means those of one side alone."""
    meant = game.vocabulary.get(who.name.text)
    named = isinstance(meant, PlayerMeaning | SideMeaning) and meant.side is not None
    return named or len(game.sides) == 1 or isinstance(who.owner, OwnerName)


def _says_whose(phrase: Np) -> bool:
    return phrase.owner is not None or phrase.possessive is not None or bool(phrase.other)
