"""From the texts that a question gives to games and modifiers; each text is read once in a worker."""

from __future__ import annotations

import re
from functools import cache, lru_cache

import library
from compose.modifiers.apply import remix
from compose.modifiers.clash import clashes, order_matters, undone
from compose.modifiers.from_recipe import made
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.recipe import recipe_of
from compose.modifiers.remix import Remix
from compose.page.answers.group import FILE, refused
from grammar.finding import Outcome
from grammar.game import Game
from grammar.parse import parse_bytes
from grammar.resolve import resolve

MOST_GENERATIONS = 12


def warm() -> None:
    """Read what nearly every question needs."""
    library.norms()
    modifiers()


@cache
def modifiers() -> dict[str, Modifier]:
    """The modifiers of the library by their names."""
    found = {}
    for path in library.modifier_paths():
        rules = parse_bytes(path.read_bytes(), path.name).value
        for sheet in rules.modifiers if rules else ():
            one = modifier_of(sheet).value
            if one is not None:
                found[one.name] = one
    return found


@lru_cache(maxsize=64)
def game_of(texts: tuple[str, ...]) -> Outcome[Game]:
    """The game of the first text; the others are the games that it comes from, where it is a remix."""
    rules = parse_bytes(texts[0].encode(), FILE)
    if rules.value is None:
        return Outcome(None, rules.findings)
    if rules.value.games:
        return resolve(rules.value.games[0], library.kit_categories())
    if not rules.value.remixes or not 1 < len(texts) <= MOST_GENERATIONS:
        return Outcome(None, (refused("There is no game in it."),))
    recipe = recipe_of(rules.value.remixes[0], modifiers())
    base = game_of(texts[1:])
    if recipe.value is None or base.value is None:
        return Outcome(None, (*recipe.findings, *base.findings))
    outcome = made(recipe.value, base.value, library.kit_names())
    return Outcome(outcome.value.game if outcome.value else None, outcome.findings)


def remixed(texts: tuple[str, ...], uses: tuple[str, ...]) -> Outcome[Remix]:
    """The remix that modifiers make of a game, with what is to be said of their going together."""
    base = game_of(texts)
    if base.value is None:
        return Outcome(None, base.findings)
    found = [use_of(each) for each in uses]
    wrong = tuple(finding for each in found for finding in each.findings)
    chosen = [each.value for each in found if each.value is not None]
    wrong = (*wrong, *clashes(chosen))
    if wrong:
        return Outcome(None, wrong)
    kit = library.kit_names()
    outcome = remix(base.value, chosen, kit)
    if outcome.value is None:
        return outcome
    said = (*undone(outcome.value), *order_matters(base.value, chosen, kit)) if len(chosen) > 1 else ()
    return Outcome(outcome.value, (*outcome.findings, *said))


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
