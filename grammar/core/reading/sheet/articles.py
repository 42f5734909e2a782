"""Small words that mean nothing before a name: "their thrower's side", "all lanterns are knocked", "that ball"."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

import attrs

from grammar.core.reading.sheet.one_at_a_time import refuse_all_of_one, with_article
from grammar.core.reading.sheet.whose import OWN_WORDS, THAT_WORDS, Senseless
from grammar.game import Game
from grammar.meanings import (
    ACTORS,
    AgentMeaning,
    PlaceMeaning,
    TeacherMeaning,
)
from grammar.said import quoting, write
from grammar.sentences import attempting, events, sides, when
from grammar.sentences.base import Node, Np, Owner, OwnerName, SideNamed, SideOf, SideRef, spoken
from grammar.sentences.determiners import ALL, EACH

OF_ONE = (None, "a", "an", "the")
BEFORE_OTHER = (None, "the", "each", "every", "any")
_NOT_OF_EVENTS = ("all", *THAT_WORDS)
_SPEAKS_OF_BEFORE = ("when", "finish")  # where "that" can mean something that was spoken of


def refuse_senseless(game: Game, sentence: Node, section: str) -> None:
    """Raises Senseless for the first small word of a sentence that means nothing where it stands."""
    every = tuple(nodes(sentence))
    for node in every:
        _refuse(game, node, section)
        refuse_all_of_one(game, node)
    _refuse_of_none_spoken(game, every)
    if isinstance(sentence, when.When):
        for phrase in _subjects(sentence.event):
            _refuse_two_meant(phrase, sentence)
            if phrase.determiner in _NOT_OF_EVENTS:
                title = "`{said}`: that happens to one at a time; of all, say what a side has left."
                raise Senseless(phrase, title, write(with_article(game, phrase)))


def _refuse_of_none_spoken(game: Game, every: tuple[Node, ...]) -> None:
    """Raises Senseless for "that queue" and "that ball" where the sentence has not spoken of one before."""
    before: list[Np] = []
    for node in every:
        if isinstance(node, Np):
            meaning = game.vocabulary.get(node.name.text)
            that_place = node.determiner in THAT_WORDS and isinstance(meaning, PlaceMeaning)
            if that_place and not any(game.vocabulary.get(each.name.text) == meaning for each in before):
                raise Senseless(node, "`{said}`: of none has been spoken.", write(f"the {node.name.text}"))
            before.append(node)


def _refuse_two_meant(phrase: Np, sentence: when.When) -> None:
    """Raises Senseless where "the tagger's" could be of who acted or of the tagger to whom it happened."""
    if not isinstance(sentence.event, events.Hit | events.HitHigh | events.Touched):
        return
    for node in (each for said in sentence.consequences for each in nodes(said)):
        owner = getattr(node, "possessive", None)
        if owner is not None and owner[:-2] == phrase.name.text in ACTORS:
            title = quoting(
                "`{said}` could be of who acted, or of the {name} to whom it happened.",
                said=owner,
                name=phrase.name.text,
            )
            raise Senseless(node, title, write("that side", "the other side"))


def nodes(node: Node) -> Iterator[Node]:
    """A node and all that it holds."""
    kind: Any = type(node)
    yield node
    for name in _fields(kind):
        value = getattr(node, name)
        if isinstance(value, Node):
            yield from nodes(value)
        elif isinstance(value, tuple):
            for each in value:
                if isinstance(each, Node):
                    yield from nodes(each)


@cache
def _fields(kind: type[Any]) -> tuple[str, ...]:
    return tuple(part.name for part in attrs.fields(kind))


def _refuse(game: Game, node: Node, section: str) -> None:
    match node:
        case SideOf() if node.determiner != "the":
            raise Senseless(node, "`{said}` is no side.", write(f"the {node.possessive} side"))
        case SideRef() | Owner() if node.other and node.determiner not in BEFORE_OTHER:
            raise Senseless(node, "`{said}` is no side.", write("the other side"))
        case Np() if node.other and node.determiner not in BEFORE_OTHER:
            plain = spoken("the other", node.name)
            raise Senseless(node, "`{said}` does not say whose it is.", write(plain))
        case OwnerName() | SideNamed() if node.determiner in (*OWN_WORDS, *THAT_WORDS):
            raise Senseless(node, "`{said}` is no side.", write(node.name.words()))
        case Np() if node.determiner in THAT_WORDS and section not in _SPEAKS_OF_BEFORE:
            article = with_article(game, node)
            raise Senseless(node, "`{said}`: of none has been spoken.", write(article))
        case Np() if _one_person(game, node) and node.determiner not in (*OF_ONE, *THAT_WORDS, *OWN_WORDS):
            raise Senseless(node, "`{said}`: there is one {name}.", write(f"the {node.name.text}"), name=node.name.text)
        case Np() if _teacher(game, node) and node.determiner in (*OWN_WORDS, *THAT_WORDS):
            raise Senseless(node, "`{said}`: the teacher is of no side.", write("the teacher"))
        case sides.Kit():
            _refuse_kit(node)
        case sides.Role() if isinstance(node.owner, Owner) and node.owner.determiner not in ALL:
            raise Senseless(node.owner, "`{said}` could be any of them.", write("each side"))
        case sides.Headcount() if node.each not in (None, *EACH):
            raise Senseless(node, "`{said}`: of how many sides together?", "Say how many each.")
        case sides.Sides() if len(node.names) > 1 and node.headcount.each is None:
            said = node.headcount.words()
            raise Senseless(node.headcount, "`{said}`: each, or of all sides together?", write(f"{said} each"))
        case attempting.AimAt() | attempting.AimThrough() if _own_of_a_loner(game, node.what):
            title = "`{said}`: each plays for themselves, and nobody aims at their own."
            raise Senseless(node.what, title, write(attrs.evolve(node.what, determiner="the").words()))
        case attempting.Attempt() if node.who.determiner == "the" and node.who.name.text == "player":
            raise Senseless(node.who, "`{said}`: of no player has been spoken.", write("players"))
        case sides.Placing() if node.all_but and node.count is None:
            raise Senseless(node, "All but how many?", write("all but 10 players"))


def _refuse_kit(kit: sides.Kit) -> None:
    if isinstance(kit.owner, Owner) and kit.owner.determiner not in ALL:
        raise Senseless(kit.owner, "`{said}` could be any of them.", write("each side"))
    if kit.like is not None and kit.determiner not in OF_ONE:
        raise Senseless(
            kit.like,
            "`like {determiner} {like}` is no thing.",
            write("like a …"),
            determiner=kit.determiner,
            like=kit.like.text,
        )


def _subjects(event: events.Event) -> Iterator[Np]:
    """The phrases of an event that name one of many."""
    match event:
        case (
            events.Knocked()
            | events.Caught()
            | events.Missed()
            | events.Crosses()
            | events.Leaves()
            | events.HeldLong()
        ):
            yield event.what
        case events.GoesThrough():
            yield from (event.what, event.through)
        case events.Hit() | events.HitHigh() | events.Touched() | events.Arrives():
            yield event.who


def _one_person(game: Game, phrase: Np) -> bool:
    meaning = game.vocabulary.get(phrase.name.text)
    return isinstance(meaning, AgentMeaning | TeacherMeaning)


def _own_of_a_loner(game: Game, phrase: Np) -> bool:
    alone = any("each for themselves" in each.options for each in game.all_of("sides", sides.Sides))
    return alone and phrase.determiner in OWN_WORDS


def _teacher(game: Game, phrase: Np) -> bool:
    return isinstance(game.vocabulary.get(phrase.name.text), TeacherMeaning)
