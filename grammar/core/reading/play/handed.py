"""A ball that goes to those of a side who have a task: the goalkeeper, not anybody of the side."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Claimed, Senseless, Whose, is_keeper, whose
from grammar.core.values import KindId, Population, RoleId, SideId, Spot
from grammar.frozen import evolve
from grammar.game import Game
from grammar.meanings import ACTORS, PlayerMeaning
from grammar.said import quoting, write
from grammar.sentences.base import Node, Np


def task_named(game: Game, node: Node) -> RoleId | None:
    """The task of those to whom a phrase gives a ball: a role that is not that of whoever acted."""
    meaning = game.meaning(node.name) if isinstance(node, Np) else None
    if isinstance(meaning, PlayerMeaning) and meaning.role is not None and meaning.role not in ACTORS:
        return RoleId(meaning.role)
    return None


def side_with_a_task(game: Game, phrase: Np) -> Claimed:
    """Whose they are: as the phrase says, else of keepers the side of what is kept."""
    said = whose(game, phrase)
    if said.whose is Whose.UNSAID and is_keeper(game.meaning(phrase.name)):
        return Claimed(Whose.KEEPER, phrase)
    return evolve(said, node=phrase)


def the_only_side(reader: Reader, said: Claimed, role: RoleId, parts: frozenset[Whose]) -> Claimed:
    """The claim, or that of the one side that has such players where nothing else says whose. Raises Senseless."""
    if said.whose is not Whose.UNSAID and (said.whose is not Whose.KEEPER or Whose.KEEPER in parts):
        return said
    sides = [each.side for each in reader.roles if each.id == role]
    if len(sides) == 1:
        return Claimed(Whose.NAMED, said.node, sides[0])
    title = "`{said}`: each side has one, and it is not said whose is meant."
    raise Senseless(said.node, title, write(f"the {role.key} of the other side"))


def in_their_hands(reader: Reader, said: Claimed, role: RoleId, spot: Spot, balls: frozenset[KindId]) -> Spot:
    """Where those with the task have it. Raises Senseless where they can do nothing with such a ball."""
    assert isinstance(spot.owner, SideId)
    who = Population(spot.owner, role)
    if not {(who, ball) for ball in balls} <= reader.senders:
        title = "`{said}`: they do nothing with a ball, so it would stay there."
        raise Senseless(
            said.node,
            title,
            quoting("Say in play what they do, or name the side: the side of the {role}", role=role.key),
        )
    return evolve(spot, role=role)
