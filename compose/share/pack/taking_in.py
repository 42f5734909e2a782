"""A pack onto the shelf: what is new, the same, changed or clashing; nothing renamed or replaced unasked."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from enum import Enum

import attrs

from compose.share.bounds import read_rules
from compose.share.naming import free_name
from compose.share.pack.item import Item, item_of
from compose.share.pack.pack import Pack
from compose.share.refusal import RefusedError
from compose.share.shelf import journal
from compose.share.shelf.files import Origin, Stored, files_of, known_path, read_stored
from compose.share.shelf.shelf import Shelf
from compose.share.told import outcome_of
from grammar.finding import Outcome
from grammar.frozen import frozen
from grammar.words import listing


class State(Enum):
    """How a thing of a pack stands to what is on the shelf."""

    NEW = "new"
    SAME = "the same"
    NEWER = "changed"
    OLDER = "older than yours"
    CLASHING = "clashing"


class Choice(Enum):
    """What to do with a thing that the shelf has otherwise."""

    OURS = "ours"
    THEIRS = "theirs"
    BOTH = "both"


@frozen
class Arrival:
    """A thing of a pack, how it stands to the shelf, and the file of the one there, if there is one."""

    item: Item
    state: State
    path: str = ""

    @property
    def needs_choice(self) -> bool:
        return self.state in (State.NEWER, State.CLASHING)

    def words(self) -> str:
        """One sentence about it."""
        said = {
            State.NEW: "is new.",
            State.SAME: "is on your shelf already, the same.",
            State.NEWER: "has changed since you had it; yours has not.",
            State.OLDER: "is older than yours; yours stays.",
            State.CLASHING: "and yours of that name are not the same.",
        }
        return f"{self.item.name} {said[self.state]}"


@frozen
class Taken:
    """What a pack brought: each arrival, under which name it was kept ("" for not at all), and the change."""

    kept: tuple[tuple[Arrival, str], ...]
    change: journal.Change | None


def arrivals(shelf: Shelf, items: Sequence[Item]) -> Outcome[tuple[Arrival, ...]]:
    """How each thing stands to the shelf; nothing is changed."""

    def compared() -> tuple[Arrival, ...]:
        shelf.catch_up()
        return tuple(_arrival(shelf, item) for item in items)

    return outcome_of(shelf.folder, compared)


def _arrival(shelf: Shelf, item: Item) -> Arrival:
    there = shelf.of_key(item)
    if there is None:
        return Arrival(item, State.NEW)
    path, content, history = there
    return Arrival(item, state_of(item, content, history), path)


def state_of(item: Item, content: str, history: Collection[str]) -> State:
    """How a thing stands to what goes by its name elsewhere; where each was the other once, neither is the newer."""
    if content == item.content:
        return State.SAME
    was_that, that_was_it = content in item.history, item.content in history
    if was_that == that_was_it:
        return State.CLASHING
    return State.NEWER if was_that else State.OLDER


def take_in(
    shelf: Shelf, pack: Pack, choices: Mapping[tuple[bool, str], Choice], otherwise: Choice | None, day: str
) -> Outcome[Taken]:
    """Put what a pack brings on the shelf, all of it or nothing.

    `choices` says, by the key of a thing, what to do where the shelf has it otherwise; `otherwise` is for
    those that it leaves out. Without a choice for each of these nothing is taken in.
    """
    return outcome_of(shelf.folder, lambda: _take_in(shelf, pack, choices, otherwise, day))


def _take_in(
    shelf: Shelf, pack: Pack, choices: Mapping[tuple[bool, str], Choice], otherwise: Choice | None, day: str
) -> Taken:
    with shelf.writing():
        found = [_arrival(shelf, item) for item in pack.items]
        open_ones = [each for each in found if each.needs_choice and not choices.get(each.item.key, otherwise)]
        if open_ones:
            names = listing(each.item.name for each in open_ones)
            title = f"You have to choose what becomes of {names}; nothing was taken in."
            raise RefusedError("S-choose", title, "Say which to keep: ours, theirs or both.")
        origin = Origin(pack.origin, pack.title, pack.sha256, day)
        files: dict[str, bytes | None] = {}
        taken = set(shelf.slugs())
        kept = []
        for arrival in found:
            choice = choices.get(arrival.item.key, otherwise) if arrival.needs_choice else None
            name = _keep(shelf, arrival, choice, origin, files, taken)
            kept.append((arrival, name))
        if not files:
            return Taken(tuple(kept), None)
        change = journal.carry_out(shelf.folder, files, f"taking in {pack.title or 'a pack'}")
        return Taken(tuple(kept), change)


def _keep(
    shelf: Shelf,
    arrival: Arrival,
    choice: Choice | None,
    origin: Origin,
    files: dict[str, bytes | None],
    taken: set[str],
) -> str:
    """Add the files that keep an arrival; the name under which it is kept, or "" where it is not."""
    item = arrival.item
    if arrival.state is State.NEW:
        stored = Stored(item, shelf.free_path(item), origin)
    elif choice is Choice.THEIRS:
        stored = _in_place_of(shelf, arrival, origin, files)
    elif choice is Choice.BOTH:
        item = renamed(item, free_name(item.name, frozenset(taken)))
        taken.add(item.slug)
        stored = Stored(item, shelf.free_path(item), origin)
    else:
        return ""
    files.update(files_of(stored))
    return item.name


def _in_place_of(shelf: Shelf, arrival: Arrival, origin: Origin, files: dict[str, bytes | None]) -> Stored:
    """Theirs with our notes; ours stays in the past, from where it can be merged."""
    ours, _ = read_stored(shelf.folder, arrival.path)
    item = arrival.item
    files.update(files_of(ours))
    before = (*ours.item.history, ours.item.content, *item.history)
    history = tuple(dict.fromkeys(each for each in before if each != item.content))
    path = arrival.path if ours.item.kind == item.kind else shelf.free_path(item)
    if path != arrival.path:
        files.update({arrival.path: None, known_path(arrival.path): None})
    return Stored(attrs.evolve(item, history=history), path, origin, ours.notes)


def renamed(item: Item, name: str) -> Item:
    """The same thing under another name; what it was called and said before is in its history."""
    sheet = attrs.evolve(read_rules(item.text.encode(), item.path), title=name)
    return item_of(sheet, (*item.history, item.content))
