"""Small phrases of a card in plain English: amounts, things in the right number, conditions."""

from __future__ import annotations

import re

from compose.net.side_words import is_plural, singular_side
from grammar.game import Game
from grammar.meanings import CATEGORY_WORDS, CategoryMeaning, KitMeaning, PlayerMeaning
from grammar.sentences.base import AnySide, Name, Quantity, SideSame
from grammar.sentences.finish import (
    AllOf,
    AnyWay,
    AtLeast,
    AtMost,
    Claim,
    Counted,
    CountedPoints,
    Exactly,
    Inside,
    NoneOf,
)
from grammar.words import count, listing, plural

SPACES = re.compile(r"[ \t\r\n]+")  # not those that no line may end with
UNITS = {"s": "second", "min": "minute"}


def amount(quantity: Quantity) -> str:
    """ "10 seconds", "1 minute", "2 m"."""
    if quantity.unit in UNITS and not quantity.parameter:
        return count(quantity.value, UNITS[quantity.unit])
    return quantity.words()


def sentence(text: str) -> str:
    """A capital at the beginning, a full stop at the end, single spaces between."""
    tidy = SPACES.sub(" ", text).strip()
    if not tidy:
        return ""
    ended = tidy if tidy[-1] in ".!?" else f"{tidy}."
    return ended[0].upper() + ended[1:]


def one_of(game: Game, name: Name) -> str:
    """The singular of a name, where the game knows it."""
    meaning = game.vocabulary.get(name.text)
    if isinstance(meaning, KitMeaning):
        return meaning.key
    if isinstance(meaning, CategoryMeaning):
        return next((word for word in CATEGORY_WORDS if plural(word) == name.text), name.text)
    if isinstance(meaning, PlayerMeaning):
        return meaning.role or (singular_side(name.text) if is_plural(name.text) else name.text)
    return name.text


def many_of(game: Game, name: Name) -> str:
    """The plural of a name."""
    meaning = game.vocabulary.get(name.text)
    if isinstance(meaning, KitMeaning):
        return game.plural_of(meaning.key)
    one = one_of(game, name)
    return plural(one) if one == name.text else name.text


def thing(game: Game, name: Name, number: float) -> str:
    """The name in the number that goes with a figure."""
    return one_of(game, name) if number == 1 else many_of(game, name)


def side_words(side: AnySide, it: str = "it") -> str:
    """ "the other side"; `it` is what the side spoken of before is called."""
    return it if isinstance(side, SideSame) else side.words()


def counted_words(game: Game, counted: Counted | CountedPoints, number: float) -> str:
    """ "lanterns standing", "player in play", "points"."""
    if isinstance(counted, CountedPoints):
        return "point" if number == 1 else "points"
    state = "" if counted.state is None else counted.state.words()
    if isinstance(counted.state, Inside):
        state = "in play"
    return f"{thing(game, counted.what, number)} {state}".rstrip()


def claim_words(game: Game, claim: Claim, it: str = "it") -> str:
    """ "the other side has no lanterns standing"."""
    said, quantity = f"{side_words(claim.side, it)} {claim.verb}", claim.quantity
    match quantity:
        case NoneOf():
            return f"{said} no {counted_words(game, claim.counted, 0)}".replace(" in play", " left in play")
        case Exactly() | AtLeast() | AtMost():
            lead = {AtLeast: "at least ", AtMost: "at most "}.get(type(quantity), "")
            number = quantity.count
            return f"{said} {lead}{number.words()} {counted_words(game, claim.counted, number.value)}"
        case AllOf():
            single = quantity.determiner in ("a", "an", "the", "one", "every", "each", "any", "that")
            own = "all its" if quantity.determiner == "all" else quantity.determiner
            written = getattr(claim.counted, "what", None)
            if isinstance(written, Name) and written.text == many_of(game, written):
                single = False
            return f"{said} {own} {counted_words(game, claim.counted, 1 if single else 2)}"


def condition_words(game: Game, condition: AnyWay, it: str = "it") -> str:
    """Claims joined by and, ways joined by or."""
    ways = [listing(claim_words(game, claim, it) for claim in way.claims) for way in condition.ways]
    return " or ".join(ways)
