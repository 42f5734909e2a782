"""What the check finds, in values. A sentence is a pattern and what stands in its fields; telling makes words of it."""

from __future__ import annotations

from typing import Union

from compose.net.match import Match
from compose.net.net import All, AnyOf, Comparison, End, Not, Place, Reaction, Rule, Transition
from grammar.finding import Basis, Severity
from grammar.frozen import field, frozen
from grammar.said import NOTHING, Capital, Chain, Listed, Said, Written
from grammar.span import Span


@frozen
class Sides:
    """A side, and others (after `of`) of which the same is true."""

    first: str
    likewise: tuple[str, ...] = ()


@frozen
class Likewise:
    """Others of which the same is true, be there any."""

    sides: tuple[str, ...]


@frozen
class Wins:
    """That a side wins."""

    side: str


@frozen
class Counted:
    """So many of what a place counts, without the number."""

    place: Place
    number: int


@frozen
class Share:
    """A part of all."""

    part: int
    whole: int


@frozen
class FetchedBy:
    """The line of a sheet by which the teacher fetches what lies in a place; or `players` from the court, so that it
    never comes there."""

    place: Place
    players: str | None = None


@frozen
class BackBy:
    """The line of a sheet by which a scored ball, or a missed one, goes back to the side of whoever sent it."""

    place: Place
    state: str


@frozen
class KeptBy:
    """The line of a sheet by which a scored ball, or a missed one, stays with whoever sent it."""

    place: Place
    state: str
    doer: str


@frozen
class StoodUpBy:
    """The line of a sheet by which the teacher stands up what is down in a place."""

    place: Place


@frozen
class BackAfter:
    """The line of a sheet by which whoever waits in a place comes back after a time."""

    place: Place


# A place stands for several of what it counts, a rule for its line of the sheet, in quotes, a match for one part of it.
Piece = Match | Place | Comparison | All | AnyOf | Not | End | Transition | Reaction | Rule
Text = Said | Listed | Chain | Capital | Written
Instead = BackAfter | BackBy | FetchedBy | KeptBy | StoodUpBy
Value = Union[Text, Sides, Likewise, Wins, Counted, Share, Instead, Piece, str, int, float]


@frozen
class Stepped:
    """A move of a line of play (-1: the set-up) with the counts before it and after; `only` those of some places, where
    given."""

    transition: int
    before: tuple[int, ...]
    marking: tuple[int, ...]
    only: frozenset[int] | None = None


@frozen
class Found:
    """One thing to say of a net, as `grammar.finding.Finding` says it in words.

    `witness` is the shortest line of play that leads there, `loop` the part of it that can repeat for ever, `about` the
    places by which other findings are known to come of the same cause (see `one_cause`), `frees` those out of which an
    idle line would bring whoever waits there; `when_alone` is True where it would be mended by an end for when one side
    is left alone. `sides` are those of which it says that they never win, `scores` those whose points never change, or
    whom an idle line would give some; `of_one_side` that a line never takes effect for one side;
    `astray`: players wait for good, or a line brings players back from where nobody ever is.
    """

    code: str
    severity: Severity
    title: Value
    place: Span
    hint: Value = NOTHING
    others: tuple[Span, ...] = ()
    basis: Basis = Basis.PROVED
    witness: tuple[Stepped, ...] = ()
    loop: tuple[Stepped, ...] = ()
    numbers: tuple[tuple[str, float], ...] = field(default=())
    about: frozenset[int] = frozenset()
    frees: frozenset[int] = frozenset()
    when_alone: bool = False
    sides: frozenset[str] = frozenset()
    scores: frozenset[str] = frozenset()
    of_one_side: bool = False
    astray: bool = False
