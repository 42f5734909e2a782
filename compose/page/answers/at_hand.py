"""From the texts that a question gives to games and modifiers; each text is read once in a worker."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from importlib import import_module

import library
from compose.modifiers.apply import further
from compose.modifiers.clash import clashes, orders_told, undone
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.of_library import library_modifiers, modifiers_in
from compose.modifiers.remix import Remix
from compose.page.answers.group import FILE, refused
from compose.share.making import LibraryAtHand, Sheets, played
from compose.share.pack.item import sheets_in
from grammar.finding import Finding, Outcome
from grammar.game import Game
from grammar.parse import parse_bytes
from grammar.tree import ModifierSheet

# What the first forecast would load, slow to load as it is.
LOADED_LATE = ("compose.answer.whole_class", "scipy.sparse.csgraph", "scipy.sparse.linalg")
KEPT = 160  # our choice: remixes that are kept; all modifiers of the library on one game, and the last few


def warming() -> Iterator[None]:
    """Read what nearly every question needs, piece by piece, for somebody may ask meanwhile."""
    library.norms()
    yield
    for path in library.modifier_paths():
        modifiers_in(path)
        yield
    modifiers()
    yield
    for path in library.game_paths():
        game_of((path.read_text(encoding="utf-8"),))
        yield
    for module in LOADED_LATE:
        import_module(module)
        yield


@cache
def modifiers() -> dict[str, Modifier]:
    """The modifiers of the library by their names."""
    return {each.name: each for each in library_modifiers()}


@lru_cache(maxsize=64)
def game_of(texts: tuple[str, ...]) -> Outcome[Game]:
    """The game of the first text; the others are the games that it comes from, where it is a remix."""
    read = [parse_bytes(text.encode(), FILE) for text in texts]
    sheets = [sheet for each in read if each.value is not None for sheet in sheets_in(each.value)]
    wrong = next((each.findings for each in read if each.value is None), ())
    if wrong or not sheets or isinstance(sheets[0], ModifierSheet):
        return Outcome(None, wrong or (refused("There is no game in it."),))
    return played(sheets[0], Sheets(tuple(sheets[1:]), LibraryAtHand()))


@lru_cache(maxsize=16)
def remixed(texts: tuple[str, ...], uses: tuple[str, ...]) -> Outcome[Remix]:
    """The remix that modifiers make of a game, with what is to be said of their going together, but their order."""
    found = [use_of(each) for each in uses]
    wrong = tuple(finding for each in found for finding in each.findings)
    wrong = (*wrong, *clashes([each.value for each in found if each.value is not None]))
    outcome = Outcome[Remix](None, wrong) if wrong else made(texts, uses)
    if outcome.value is None:
        return outcome
    return Outcome(outcome.value, (*outcome.findings, *undone(outcome.value)))


@lru_cache(maxsize=16)
def orders(texts: tuple[str, ...], uses: tuple[str, ...]) -> tuple[Finding, ...]:
    """Which modifiers of a remix that can be made go together otherwise in another order.

    Apart, for it takes every pair made both ways round, as long as the remix itself: nobody waits for it to see
    whether the remix is sound.
    """
    remix = made(texts, uses).value
    if remix is None:
        return ()
    return tuple(orders_told(remix.uses, lambda one, other: made(texts, (uses[one], uses[other]))))


@lru_cache(maxsize=KEPT)
def made(texts: tuple[str, ...], uses: tuple[str, ...]) -> Outcome[Remix]:
    """The remix alone, made of the one with a modifier less: a list of what fits tries what is tapped afterwards."""
    if not uses:
        base = game_of(texts)
        return Outcome(Remix(base.value, base.value) if base.value is not None else None, base.findings)
    last = use_of(uses[-1])
    if last.value is None:
        return Outcome(None, last.findings)
    return further(made(texts, uses[:-1]), last.value, library.kit_names())


def use_of(written: str) -> Outcome[Use]:
    """A modifier as it stands in an address: "add balls", "add balls,n 3"."""
    name, *values = (part.strip() for part in written.split(","))
    modifier = modifiers().get(name.lower())
    if modifier is None:
        return Outcome(None, (refused(f"There is no modifier called `{name}`."),))
    found = {}
    for value in values:
        match = re.fullmatch(r"(\w+) (\d{1,4}(?:\.\d{1,3})?)", value)
        if match is None:
            return Outcome(None, (refused(f"`{value}` is not a value for {name}."),))
        found[match.group(1)] = modifier.value(match.group(1), float(match.group(2)))
    return Outcome(Use(modifier, found))
