"""Whose something is, as a phrase says it: first the form of the phrase alone, then the sides that it means."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum

from grammar.core.values import SideId
from grammar.frozen import evolve, field, frozen
from grammar.game import Game
from grammar.meanings import ACTORS, AgentMeaning, Meaning, PlayerMeaning, TeacherMeaning, side_named
from grammar.said import Value, english, listed, quoting, write
from grammar.sentences.base import AnySide, Node, Np, Owner, OwnerName, SideNamed, SideOf, SideRef, SideSame
from grammar.sentences.determiners import ALL, ONE
from grammar.words import article


class Senseless(Exception):  # noqa: N818 - it is no error of ours but of the sheet
    """A phrase that means nothing where it stands: what is wrong, with what stands in the `fields` and the phrase as it
    is `said`, and what to write instead."""

    def __init__(self, node: Node, title: Value, hint: Value, **fields: Value) -> None:
        if isinstance(title, str):
            title = quoting(title, **({"said": node.words()} | fields if "{said}" in title else fields))
        super().__init__(english(title))
        self.node, self.title, self.hint = node, title, hint


def none_of(node: Node, name: str, side: SideId, hint: Value) -> Senseless:
    """A side has nobody, or nothing, of that name."""
    return Senseless(node, "There are no {said} of {side}.", hint, said=name, side=side.key)


class Whose(Enum):
    """The forms in which a phrase says whose something is."""

    UNSAID = "unsaid"
    OWN = "their"
    THAT = "that side's"
    OTHER = "the other side's"
    ONE_EACH = "each side's"
    ANY = "a side's"
    NAMED = "named"
    ACTOR = "the thrower's"
    CATCHER = "the catcher's"
    KEEPER = "the keeper's"


@frozen
class Claimed:
    """The form of a phrase, the side where it names one, and the words of it that say so."""

    whose: Whose
    node: Node
    side: SideId | None = None


OWN_WORDS, THAT_WORDS = ("their", "its"), ("that",)
_PARTS = {"actor": Whose.ACTOR, "catcher": Whose.CATCHER, "owner": Whose.KEEPER}


def whose(game: Game, phrase: Np, place: bool = False) -> Claimed:
    """Whose the things, players or places of a phrase are. "each half" is one of each side, "each lantern" is not."""
    said = [*_possessive(game, phrase), *_owner(game, phrase)]
    if phrase.other:
        said.append(Claimed(Whose.OTHER, phrase))
    if phrase.determiner in OWN_WORDS:
        said.append(Claimed(Whose.OWN, phrase))
    if place and phrase.determiner in ALL and not said:
        said.append(Claimed(Whose.ONE_EACH, phrase))
    if place and phrase.determiner == "any" and not said:
        said.append(Claimed(Whose.ANY, phrase))
    if place and phrase.determiner in THAT_WORDS and not said:
        said.append(Claimed(Whose.THAT, phrase))
    if len(said) > 1:
        raise Senseless(phrase, "`{said}` says twice whose it is.", "Say it once.")
    return said[0] if said else Claimed(Whose.UNSAID, phrase)


def _possessive(game: Game, phrase: Np) -> list[Claimed]:
    if phrase.possessive is None:
        return []
    return [of_name(game, phrase, possessor(phrase.possessive), phrase.possessive)]


def possessor(possessive: str) -> str:
    """The name in "the thrower's"."""
    return possessive[:-2]


def _owner(game: Game, phrase: Np) -> list[Claimed]:
    owner = phrase.owner
    if isinstance(owner, Owner):
        return [Claimed(_of_determiner(owner.determiner, owner.other), owner)]
    if isinstance(owner, SideOf):
        return [of_name(game, owner, possessor(owner.possessive), owner.possessive)]
    if not isinstance(owner, OwnerName):
        return []
    found = of_name(game, owner, owner.name.text, owner.words())
    if owner.other and (found.whose is not Whose.NAMED or len(game.sides) > 1):
        raise Senseless(owner, "`{said}` is no side.", write("the other side"))
    if owner.other:
        return [Claimed(Whose.OTHER, owner)]
    return [found]


def _of_determiner(determiner: str, other: str | None) -> Whose:
    if other:
        return Whose.OTHER
    if determiner in OWN_WORDS:
        return Whose.OWN
    if determiner in ALL:
        return Whose.ONE_EACH
    return Whose.THAT if determiner in ("that", "the") else Whose.ANY


def is_keeper(meaning: Meaning | None) -> bool:
    """Whether a name is that of a role of keepers: in an event that is who guards the thing."""
    return isinstance(meaning, PlayerMeaning) and (meaning.role or "").endswith(("keeper", "keepers"))


def of_name(game: Game, node: Node, name: str, said: str | None = None) -> Claimed:
    """The side of a name: the side's own, or that of the thrower, the catcher, the keeper."""
    meaning: Meaning | None = game.vocabulary.get(name)
    said = said or name
    if isinstance(meaning, AgentMeaning):
        return Claimed(_PARTS[meaning.part], node)
    if is_keeper(meaning):
        return Claimed(Whose.KEEPER, node)
    if isinstance(meaning, PlayerMeaning) and meaning.role in ACTORS:
        return Claimed(Whose.ACTOR, node)
    side = meaning.side if isinstance(meaning, PlayerMeaning) else side_named(meaning)
    if side is not None:
        return Claimed(Whose.NAMED, node, SideId(side))
    sides = listed([each.name for each in game.sides], "or")
    if isinstance(meaning, PlayerMeaning) and meaning.role:
        title = (
            "`{said}`: every side has an {role}."
            if article(meaning.role).startswith("an ")
            else "`{said}`: every side has a {role}."
        )
        hint = quoting("Name a side ({sides}), or write the other side.", sides=sides)
        raise Senseless(node, quoting(title, said=said, role=meaning.role), hint)
    none = "The teacher owns nothing." if isinstance(meaning, TeacherMeaning) else "`{said}` is no side of this game."
    hint = quoting("Name a side ({sides}), or write the other side.", sides=sides)
    raise Senseless(node, quoting(none, said=said), hint)


def whose_side(game: Game, phrase: AnySide) -> Claimed:
    """The form of "a side", "the other side", "it", "north", "the thrower's side"."""
    match phrase:
        case SideSame():
            return Claimed(Whose.THAT, phrase)
        case SideNamed():
            return of_name(game, phrase, phrase.name.text, phrase.words())
        case SideOf():
            return of_name(game, phrase, possessor(phrase.possessive), phrase.words())
        case SideRef():
            form = _of_determiner(phrase.determiner, phrase.other)
            return Claimed(Whose.THAT if form is Whose.OWN else form, phrase)


@frozen
class Spoken:
    """Who has been spoken of where a phrase stands: the sides that its words can mean there.

    A form that is in none of these has no meaning there. `own` are the sides of "their" and "its", `that` of "it" and
    "that side", `other` of "the other side"; `parts` those of the thrower, the catcher and the keeper.
    """

    sides: tuple[SideId, ...]
    own: frozenset[SideId] | None = None
    that: frozenset[SideId] | None = None
    other: frozenset[SideId] | None = None
    parts: Mapping[Whose, frozenset[SideId]] = field(factory=dict)

    def of_that_side(self) -> Spoken:
        """The same where "its" is of that side, if it is of nobody else."""
        return evolve(self, own=self.own or self.that)

    def meant(self, said: Claimed, unsaid: frozenset[SideId]) -> frozenset[SideId]:
        """The sides of a phrase; `unsaid` are those meant where it says nothing. Raises Senseless."""
        match said.whose:
            case Whose.UNSAID:
                return unsaid
            case Whose.NAMED:
                assert said.side is not None
                return frozenset({said.side})
            case Whose.ONE_EACH | Whose.ANY:
                return frozenset(self.sides)
            case Whose.OWN:
                found = self.own
            case Whose.THAT:
                found = self.that
            case Whose.OTHER:
                found = self.other
                self._as_many_as_said(said.node)
            case _:
                found = self.parts.get(said.whose)
        if found is None:
            raise Senseless(said.node, *self._nobody(said))
        return found

    def _as_many_as_said(self, node: Node) -> None:
        """ "Each other side" are all that are left, "any other side" is one of them. Raises Senseless where the one is
        said and the other is meant here."""
        if self.other is None or len(self.sides) < 3 or not isinstance(node, SideRef | Owner):
            return
        sides = listed([side.key for side in self.sides], "or")
        if node.determiner in ALL and len(self.other) == 1:
            title = "`{said}`: all but the side that did it, or all but the one to which it was done?"
            raise Senseless(node, title, quoting("Write a line for each side by its name: {sides}.", sides=sides))
        if node.determiner in ONE and len(self.other) > 1 and isinstance(node, SideRef):
            hint = quoting("Write: each other side. Or name one: {sides}.", sides=sides)
            raise Senseless(node, "`{said}`: that could be one of them, or each.", hint)

    def _nobody(self, said: Claimed) -> tuple[Value, Value]:
        sides = listed([side.key for side in self.sides], "or")
        text = said.node.words()
        if said.whose is Whose.OTHER and len(self.sides) > 2:
            title = quoting("`{said}`: with {number} sides it is not clear which.", said=text, number=len(self.sides))
            return title, quoting("Name the side: {sides}.", sides=sides)
        if said.whose is Whose.OTHER and len(self.sides) < 2:
            return quoting("`{said}`: there is only one side.", said=text), "Name what is meant without it."
        title = quoting("`{said}`: of nobody who could be meant has been spoken here.", said=text)
        return title, quoting("Name the side: {sides}.", sides=sides)


def the_one(said: Claimed, sides: frozenset[SideId]) -> SideId:
    """The single side that is meant. Raises Senseless where it could be several."""
    if len(sides) != 1:
        raise Senseless(said.node, "`{said}` could be several sides.", "Say of which side it is.")
    return next(iter(sides))
