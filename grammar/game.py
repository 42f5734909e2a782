"""The game: a tree whose every name is resolved and whose counts are possible.

A Game still holds its sentences (the sheet), so it can be printed as text again; beside them it keeps
what the sentences declare, in canonical names and SI units. Two games are equal when their sheets say
the same; notes and places in the text do not count.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from grammar.frozen import field, frozen
from grammar.meanings import CategoryMeaning, KitMeaning, LoadMeaning, Meaning
from grammar.sentences.ball import BeginsWith
from grammar.sentences.base import Name, Node
from grammar.sentences.head import Switch, Switched, SwitchedOff, Told
from grammar.sentences.play import Take
from grammar.sentences.sides import Placing
from grammar.sentences.when import When
from grammar.span import Span
from grammar.tree import GameSheet, Sentence


@frozen
class GameArea:
    """A named area. `kind` is strip, zone, bench, queue, base, circle or mark; depth in metres or None.

    `preposition` and `spot` say where it lies ("before", "back line"); `each` is True where every side
    has one of its own.
    """

    name: str
    kind: str
    depth_m: float | None
    preposition: str
    spot: str
    each: bool
    forbidden: tuple[str, ...]
    span: Span = field(eq=False)


@frozen
class GameSide:
    """A side and how many players it may have."""

    name: str
    least: int
    most: int
    mirrored: bool
    span: Span = field(eq=False)


@frozen
class GameRole:
    """Some players of a side (or of every side) with a task or a distance of their own."""

    name: str
    least: int
    most: int
    side: str | None
    distance_m: float | None
    span: Span = field(eq=False)
    uses: str | None = None
    aimed_at: bool = True


@frozen
class GameTrack:
    """A track of steps between the homes of two sides: step 0 is the home of `start`, the last of `goal`."""

    name: str
    steps: int
    start: str
    goal: str
    span: Span = field(eq=False)


@frozen
class GameKit:
    """A line of the kit list. `owner` is "each" (every side has `count`), a side's name, or None (shared).

    `like` is its name in the library's kit; `scale` 1.5 means half as big again.
    A thing of several `parts` falls part by part. `per_player` means `count` for every player of the owner.
    """

    name: str
    plural: str
    category: str
    count: int
    owner: str | None
    like: str
    span: Span = field(eq=False)
    scale: float = 1.0
    parts: int = 1
    per_player: bool = False

    def total(self, players: Mapping[str, int], side: str | None = None) -> int:
        """How many there are for so many players of each side: in all, or of one side's own."""
        each = self.count * self.parts
        if self.owner is None:
            return each
        owners = [name for name in players if self.owner in ("each", name) and side in (None, name)]
        return sum(each * (players[name] if self.per_player else 1) for name in owners)

    def is_for_each_who(self, begins: BeginsWith) -> bool:
        """Whether a line by which each player begins with so many speaks of all there are: the kit has so many each."""
        return begins.for_each_player and self.per_player and begins.number == self.count


@frozen
class Game:
    """A game with every name resolved."""

    sheet: GameSheet
    ages_years: tuple[float, float] = field(eq=False)
    court_m: tuple[float, float] = field(eq=False)
    halved: bool = field(eq=False)
    sides: tuple[GameSide, ...] = field(eq=False)
    roles: tuple[GameRole, ...] = field(eq=False)
    areas: tuple[GameArea, ...] = field(eq=False)
    tracks: tuple[GameTrack, ...] = field(eq=False)
    kit: tuple[GameKit, ...] = field(eq=False)
    vocabulary: Mapping[str, Meaning] = field(eq=False, repr=False)

    @property
    def title(self) -> str:
        return self.sheet.title

    def meaning(self, name: Name) -> Meaning:
        """What a name of the sheet means; every name of a game means something."""
        return self.vocabulary[name.text]

    def sentences(self, section: str) -> tuple[Node, ...]:
        """The sentences of a section, in the order of the sheet."""
        return tuple(said for line in self.sheet.lines(section) if (said := self._held(line.sentence)))

    def _held(self, sentence: Node) -> Node | None:
        """The sentence itself, or None while the switch that it hangs on is off."""
        if not isinstance(sentence, Switched):
            return sentence
        on = bool(self.switches.get(sentence.name.text))
        return sentence.sentence if on != isinstance(sentence, SwitchedOff) else None

    @property
    def switches(self) -> dict[str, bool]:
        """The switches of the game, and whether each is on."""
        return {switch.name.text: switch.on for switch in self.sheet.all_of("head", Switch)}

    def all_of(self, section: str, kind: type[Sentence]) -> Iterator[Sentence]:
        """The sentences of one kind in a section."""
        return (sentence for sentence in self.sentences(section) if isinstance(sentence, kind))

    @property
    def placings(self) -> tuple[Placing, ...]:
        return tuple(self.all_of("set-up", Placing))

    @property
    def whens(self) -> tuple[When, ...]:
        return tuple(self.all_of("when", When))

    def kit_named(self, key: str) -> GameKit:
        """The kit line of that singular name; KeyError where there is none."""
        return next(line for line in self.kit if line.name == key)

    def kit_meant(self, name: Name) -> tuple[GameKit, ...]:
        """All kit lines that a word means: the one of that name, or those of its category."""
        return self.kit_of(self.vocabulary.get(name.text))

    def kit_of(self, meaning: Meaning | None) -> tuple[GameKit, ...]:
        """All kit lines of a meaning: the one that it names, those of the category that it is, or none."""
        if isinstance(meaning, KitMeaning):
            return (self.kit_named(meaning.key),)
        if isinstance(meaning, CategoryMeaning):
            return tuple(line for line in self.kit if line.category == meaning.category)
        return self._taken if isinstance(meaning, LoadMeaning) else ()

    @property
    def _taken(self) -> tuple[GameKit, ...]:
        """The kit lines of what players take from place to place."""
        said = (self.vocabulary.get(each.name.text) for take in self.all_of("play", Take) for each in take.phrases)
        taken = {line.name for each in said if not isinstance(each, LoadMeaning) for line in self.kit_of(each)}
        return tuple(line for line in self.kit if line.name in taken)

    def track_named(self, name: str) -> GameTrack | None:
        """The track of that name, or None."""
        return next((track for track in self.tracks if track.name == name), None)

    def told(self, topic: str) -> tuple[str, ...]:
        """The texts under a word of the head: credit, about, cue, outcomes or caution."""
        return tuple(line.text for line in self.all_of("head", Told) if line.topic == topic)
