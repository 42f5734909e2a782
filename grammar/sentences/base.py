"""Pieces that sentences of every section share. A node is named after its rule in rules.lark.

Nodes compare by meaning: their place in the text (`span`) is left out of equality.
Every node can say itself in the canonical wording with `words()`.
"""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.own_names import is_plain
from grammar.sentences.determiners import EACH, ONE
from grammar.span import Span, nowhere


@frozen
class Node:
    """Anything read from a sentence."""

    span: Span = field(factory=nowhere, eq=False, repr=False, kw_only=True)

    def words(self) -> str:
        """The canonical wording."""
        raise NotImplementedError(type(self).__name__)

    def __repr__(self) -> str:
        return f"{type(self).__name__}({self.words()!r})"


def spoken(*parts: object) -> str:
    """Join what is there with single spaces; None and empty parts are left out."""
    said = (part.words() if isinstance(part, Node) else str(part) for part in parts if part is not None)
    return " ".join(text for text in said if text)


def listed(parts: tuple[Node | str, ...], last: str = "and") -> str:
    """Such as "a, b and c"."""
    said = [part.words() if isinstance(part, Node) else part for part in parts]
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} {last} {said[-1]}"


def detail(*parts: object) -> str:
    """The same as `spoken`, as an afterthought: ", ..." or nothing."""
    said = spoken(*parts)
    return f", {said}" if said else ""


FROZEN = "frozen "  # before what players are called: those who froze where they were
METRES = {"m": 1.0, "cm": 0.01}
SECONDS = {"s": 1.0, "min": 60.0}


@frozen
class Quantity(Node):
    """A number with its unit as written: "", "m", "cm", "s", "min" or "%".

    `parameter` names the parameter of a modifier that stands here until a value is given.
    """

    value: float
    unit: str = ""
    parameter: str | None = field(default=None, kw_only=True)

    def words(self) -> str:
        if self.parameter:
            return self.parameter
        number = f"{self.value:.6f}".rstrip("0").rstrip(".")
        return f"{number} {self.unit}".rstrip()

    @property
    def whole(self) -> int:
        """The value as a count; meaning checks have refused fractions."""
        return int(self.value)

    @property
    def metres(self) -> float:
        return self.value * METRES[self.unit]

    @property
    def seconds(self) -> float:
        return self.value * SECONDS[self.unit]


@frozen
class Name(Node):
    """What something is called. In a tree: the words as written, in lower case. In a game: canonical.

    `of_an_attempt`: the name of a skill, such as the roll that is caught.
    """

    text: str
    of_an_attempt: bool = field(default=False, eq=False, kw_only=True)

    def words(self) -> str:
        return self.text if self.of_an_attempt or is_plain(self.text) else f'"{self.text}"'


@frozen
class Owner(Node):
    """Such as "each side", "the other side"."""

    determiner: str
    other: str | None = None

    def words(self) -> str:
        return spoken(self.determiner, self.other, "side")


@frozen
class OwnerName(Node):
    """Such as "north", "the teacher", "each player"."""

    determiner: str | None
    other: str | None
    name: Name

    def words(self) -> str:
        return spoken(self.determiner, self.other, self.name)


@frozen
class SideOf(Node):
    """Such as "the thrower's side"."""

    determiner: str
    possessive: str

    def words(self) -> str:
        return spoken(self.determiner, self.possessive, "side")


@frozen
class Np(Node):
    """A phrase that names something: "the lanterns of the other side", "the catcher's queue"."""

    determiner: str | None
    possessive: str | None
    other: str | None
    name: Name
    owner: Owner | OwnerName | SideOf | None = None

    def words(self) -> str:
        of = spoken("of", self.owner) if self.owner else ""
        return spoken(self.determiner, self.possessive, self.other, self.name, of)


@frozen
class SideRef(Node):
    """Such as "a side", "the other side"."""

    determiner: str
    other: str | None = None

    def words(self) -> str:
        return spoken(self.determiner, self.other, "side")


@frozen
class SideSame(Node):
    """Such as "it": the side spoken of before."""

    def words(self) -> str:
        return "it"


@frozen
class SideNamed(Node):
    """Such as "north", "the carriers"."""

    determiner: str | None
    name: Name

    def words(self) -> str:
        return spoken(self.determiner, self.name)


AnySide = SideRef | SideOf | SideSame | SideNamed


STOOD_ON = ("bench", "base", "mark")  # one is on these, and in all other places


def place_word(place: Np) -> str:
    """The word before a place where somebody is: the last word of its name says what it is."""
    return "on" if place.name.text.split()[-1] in STOOD_ON else "in"


def one_of(phrase: Np) -> bool:
    """Whether a phrase speaks of one of them, such as "a tagger"."""
    return phrase.determiner in (*ONE, *EACH)
