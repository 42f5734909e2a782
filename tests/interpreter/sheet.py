"""A game as the second reader has it: the tree, who plays for which side, with what, on which floor."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import Any, cast

from attrs import frozen

import library
from grammar.sentences import base, play, sides, space, then, when
from grammar.sentences.base import Name, Node, Np
from grammar.sentences.head import Switch, Switched, SwitchedOff
from grammar.tree import GameSheet, Sentence
from tests.interpreter.asked import asked
from tests.interpreter.for_all import is_nobodys, sort_of_place
from tests.interpreter.having import gives
from tests.interpreter.names import (
    SHARED_PLACES,
    Folk,
    Meant,
    OneSide,
    Somewhere,
    Stuff,
    categories,
    kit_name,
    names_of,
    read_name,
)
from tests.interpreter.plainly import plainly

POINTS_USUALLY = 25
ROOMS = space.AtMostThere | space.NoneThere | space.OnlyThere
@frozen
class Role:
    """Some players of some sides: how many at the start and at most, their ball, and whether they are aimed at."""

    name: str
    sides: tuple[str, ...]
    least: int
    most: int
    uses: frozenset[str] | None
    aimed_at: bool
    aims_from: float | None = None


@frozen
class Supply:
    """So many things of a kind for an owner (None: for nobody); a thing of several parts falls part by part."""

    kind: str
    owner: str | None
    number: int
    parts: int
    of_each: bool


@frozen
class Place:
    """A named area: whose places it has (None: one that all share), where and how often, who may not come there."""

    name: str
    kind: str
    owners: tuple[str | None, ...]
    preposition: str
    by: str
    shut: bool
    rooms: tuple[space.AtMostThere | space.NoneThere | space.OnlyThere, ...]
    safe: tuple[str, ...] = ()
    times: int = 1


class Sheet:
    """One game for so many players of each side, with the sheet of what is taken for granted.

    Unless it is `orderly`, nobody knows who came first into a queue: anybody in it may be the first or the last.
    """

    def __init__(self, tree: GameSheet, granted: GameSheet, players: Mapping[str, int], orderly: bool = True) -> None:
        self.tree = tree
        self.granted = granted
        self.players = dict(players)
        self.orderly = orderly
        known = library.kit_categories()
        self.names = names_of(tree, known)
        self.categories = categories(tree, known)
        self.sides = tuple(name.text for line in tree.all_of("sides", sides.Sides) for name in line.names)
        self.solo = len(self.sides) == 1
        cut = next(tree.all_of("space", space.Court)).cut
        self.halved = cut in ("halved across", "in equal parts")
        self.known: dict[tuple[object, ...], Any] = {}  # what remembered.py and `said` keep

    def said(self, kind: type[Sentence], granted: bool = False) -> tuple[Sentence, ...]:
        """All sentences of a kind that hold: those of the sheet itself, or those taken for granted."""
        found = self.known.get((kind, granted))
        if found is None:
            tree = self.granted if granted else self.tree
            lines = (line.sentence for name in ("set-up", "play", "when", "finish") for line in tree.lines(name))
            held = (self._held(line) for line in lines)
            plain = (each for line in held if line is not None for each in plainly(line))
            found = self.known[kind, granted] = tuple(line for line in plain if isinstance(line, kind))
        return cast("tuple[Sentence, ...]", found)

    def _held(self, line: Node) -> Node | None:
        if not isinstance(line, Switched):
            return line
        on = {switch.name.text: switch.on for switch in self.tree.all_of("head", Switch)}
        return line.sentence if on[line.name.text] != isinstance(line, SwitchedOff) else None

    def meaning(self, name: Name) -> Meant:
        return read_name(self.names, name)

    def others(self, side: str | None) -> tuple[str, ...]:
        """Every other side; whoever plays for themselves plays against the same side."""
        return self.sides if self.solo else tuple(each for each in self.sides if each != side)

    def only_other(self, side: str) -> str | None:
        """The other side where there is just one."""
        found = self.others(side)
        return found[0] if len(found) == 1 else None

    @cached_property
    def held(self) -> bool:
        """Whether on a court in one piece the ball is somebody's: any line, held or not, gives it to a side."""
        lines = [line.sentence for name in ("set-up", "play", "when") for line in self.tree.lines(name)]
        said = (line.sentence if isinstance(line, Switched) else line for line in lines)
        return not self.halved and not self.solo and any(gives(self, line) for line in said)

    def is_taken(self, what: Np) -> bool:
        """Whether somebody takes it from place to place."""
        phrases = (phrase for line in self.said(play.Take) for phrase in line.phrases)
        return any(self.stuff(what).kinds & self.stuff(phrase).kinds for phrase in phrases)

    def side_meant(self, meant: Meant) -> str | None:
        """The side that a name stands for."""
        if isinstance(meant, OneSide):
            return meant.side
        return meant.side if isinstance(meant, Folk) and meant.role is None else None

    @cached_property
    def roles(self) -> dict[str, Role]:
        """The roles by name."""
        found: dict[str, Role] = {}
        for line in self.tree.all_of("sides", sides.Role):
            side = None if isinstance(line.owner, base.Owner) else self.side_meant(self.meaning(line.owner.name))
            uses = next((each.what for each in line.details if isinstance(each, sides.Uses)), None)
            found[line.name.text] = Role(
                line.name.text,
                (side,) if side else self.sides,
                line.headcount.least.whole,
                (line.headcount.most or line.headcount.least).whole,
                self.stuff(uses).kinds if uses else None,
                not any(isinstance(each, sides.NeverAimedAt) for each in line.details),
                next((one.distance.metres for one in line.details if isinstance(one, sides.AimsFrom)), None),
            )
        return found

    def stuff(self, phrase: Np | Name) -> Stuff:
        """The kit that a phrase means; no kit where it means something else."""
        meant = self.meaning(phrase.name if isinstance(phrase, Np) else phrase)
        return meant if isinstance(meant, Stuff) else Stuff("", frozenset())

    def folk(self, phrase: Np) -> Folk | None:
        """The players that a phrase means."""
        meant = self.meaning(phrase.name)
        if isinstance(meant, OneSide):
            return Folk(meant.side)
        return meant if isinstance(meant, Folk) else None

    @cached_property
    def supplies(self) -> tuple[Supply, ...]:
        """All that the kit lists, in its order, for each owner."""
        return tuple(each for line in self.tree.all_of("kit", sides.Kit) for each in self._supplied(line))

    def _supplied(self, line: sides.Kit) -> Iterator[Supply]:
        kind = kit_name(line, library.kit_categories())
        parts = line.parts.whole if line.parts else 1
        if line.owner is None:
            yield Supply(kind, None, line.count.whole, parts, False)
            return
        folk = None if isinstance(line.owner, base.Owner) else self.meaning(line.owner.name)
        side = self.side_meant(folk) if folk else None
        per_player = isinstance(folk, Folk) and getattr(line.owner, "determiner", None) in ("each", "every")
        for each in (side,) if side else self.sides:
            yield Supply(kind, each, line.count.whole * (self.players[each] if per_player else 1), parts, not side)

    def like(self, kind: str) -> str:
        """What a kind of kit is like, by a name of the library."""
        for line in self.tree.all_of("kit", sides.Kit):
            if kit_name(line, library.kit_categories()) == kind:
                return line.like.text if line.like else kind
        raise LookupError(kind)

    @cached_property
    def places(self) -> dict[str, Place]:
        """The named areas."""
        found: dict[str, Place] = {}
        for line in self.tree.all_of("space", space.Area):
            nobody = {each.verb for each in line.rules if isinstance(each, space.NobodyThere)}
            safe = tuple(word for word in ("touched", "hit") if f"is {word} there" in nobody)
            rooms = tuple(each for each in line.rules if isinstance(each, ROOMS))
            by, name, often = self.meaning(line.spot.name), line.name.text, line.places.whole if line.places else 1
            where = (self._owners(line), line.preposition, cast(Somewhere, by).place)
            found[name] = Place(name, sort_of_place(line), *where, "enters there" in nobody, rooms, safe, often)
        return found

    def _owners(self, line: space.Area) -> tuple[str | None, ...]:
        """An area lies once for each side, once for the one that is named, or once for all."""
        spot = line.spot
        if isinstance(spot.owner, base.OwnerName):
            return (self.side_meant(self.meaning(spot.owner.name)),)
        if spot.possessive:
            return (self.side_meant(self.names[spot.possessive[:-2]]),)
        each = spot.determiner in ("each", "every", "their") and not is_nobodys(self.tree, self.names, line)
        return tuple(self.sides) if each or isinstance(spot.owner, base.Owner) else (None,)

    def owners_of(self, place: str) -> tuple[str | None, ...]:
        """Whose there are of a place: one of every side, one that all share, or as its line says."""
        if place in self.places:
            return self.places[place].owners
        return (None,) if place in SHARED_PLACES else tuple(self.sides)

    @cached_property
    def tracks(self) -> dict[str, tuple[space.Track, int]]:
        """The track on which things of a kind stand, and the step they begin on."""
        lines = {line.name.text: line for line in self.tree.all_of("space", space.Track)}
        return {
            kind: (lines[placing.track.name.text], placing.step.whole)
            for placing in self.said(sides.PlacingOnStep)
            for kind in self.stuff(placing.what).kinds
        }

    def declared(self, kind: type[Sentence]) -> tuple[Sentence, ...]:
        """All sentences of a kind that stand under the sides or in the set-up."""
        return (*self.tree.all_of("sides", kind), *self.tree.all_of("set-up", kind))

    @cached_property
    def points_to(self) -> int:
        """Points are counted as far as any sentence asks for them."""
        ends = [*asked(self.said(Node), finished=True)]
        whole = [*ends, *asked(self.said(Node), finished=False)]
        return max(whole) if ends else max([POINTS_USUALLY, *whole])

    @cached_property
    def things_move(self) -> bool:
        """Whether things may come to belong to another side."""
        return any(isinstance(each, then.TakenOver) for rule in self.said(when.When) for each in rule.consequences)
