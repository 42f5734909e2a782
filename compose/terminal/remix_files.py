"""From a remix file to its recipe and its base: beside it, or in the library."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from compose.modifiers.from_recipe import made
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.parents import used_in
from compose.modifiers.recipe import Recipe, recipe_of
from compose.modifiers.remix import Remix
from compose.terminal.answer import refuse, stop
from compose.terminal.typed.at_hand import GAMES, at_hand
from compose.terminal.typed.finding_games import ENDING, categories, kit, modifiers_at_hand, read, slug
from grammar.finding import Outcome
from grammar.game import Game
from grammar.resolve import resolve
from grammar.tree import RemixSheet, RuleFile
from grammar.words import did_you_mean, listing

MOST_GENERATIONS = 12


def recipe_in(rules: RuleFile, as_json: bool = False) -> Recipe:
    """The recipe of a file that holds a remix; ends the command where it cannot be followed."""
    sheet = rules.remixes[0]
    outcome = recipe_of(sheet, _modifiers(sheet, rules, as_json))
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return outcome.value


def _modifiers(sheet: RemixSheet, rules: RuleFile, as_json: bool) -> dict[str, Modifier]:
    """The modifiers that a remix may name: those of its file, those that lie beside it, those of the library."""
    found = {each.name: each for each in modifiers_at_hand()}
    beside = [_beside(rules.file, used.name) for used in used_in(sheet)]
    for each in (*(read(path, as_json) for path in beside if path.is_file()), rules):
        for modifier_sheet in each.modifiers:
            outcome = modifier_of(modifier_sheet)
            if outcome.value is None:
                stop(outcome.findings, as_json)
            found[outcome.value.name] = outcome.value
    return found


def _beside(file: str, name: str) -> Path:
    return Path(file).parent / f"{slug(name)}{ENDING}"


def base_of(recipe: Recipe, as_json: bool = False, generation: int = 0) -> Game:
    """The game that a remix is based on: a remix itself, it may be, made first."""
    rules = read(base_path(recipe, as_json), as_json)
    if rules.games:
        outcome = resolve(rules.games[0], categories())
        if outcome.value is None:
            stop(outcome.findings, as_json)
        return outcome.value
    if not rules.remixes:
        refuse(f"`{rules.file}` holds no game.", f"`{recipe.title}` is based on it.", as_json)
    return made_game(rules, as_json, generation + 1)


def base_path(recipe: Recipe, as_json: bool = False) -> Path:
    """The file of a base: the one that lies beside the remix, or else the library's."""
    base, place = recipe.base, recipe.based_on.span
    beside = _beside(recipe.span.file, base)
    if beside.is_file() and beside.resolve() != Path(recipe.span.file).resolve():
        return beside
    here = Path(recipe.span.file)
    known = {each.slug: each.path for each in at_hand(GAMES) if each.path.resolve() != here.resolve()}
    if slug(base) in known:
        return known[slug(base)]
    titles = [stem.replace("-", " ") for stem in known]
    hint = did_you_mean(base, titles) or f"Lay its file beside the remix; there are {listing(sorted(titles))}."
    refuse(f"There is no game called `{base}` (line {place.line} of {place.file}).", hint, as_json)


def remix_of_file(rules: RuleFile, more: Sequence[Use], as_json: bool = False) -> Outcome[Remix]:
    """The remix that a file makes, with more modifiers after its own."""
    recipe = recipe_in(rules, as_json)
    return made(recipe, base_of(recipe, as_json), kit(), more)


def made_game(rules: RuleFile, as_json: bool = False, generation: int = 0) -> Game:
    """The game that a file with a remix makes, its bases made before it."""
    recipe = recipe_in(rules, as_json)
    if generation > MOST_GENERATIONS:
        title = f"`{recipe.title}` comes from itself, or from more than {MOST_GENERATIONS} remixes before it."
        refuse(title, "Base it on a game.", as_json)
    outcome = made(recipe, base_of(recipe, as_json, generation), kit())
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return outcome.value.game
