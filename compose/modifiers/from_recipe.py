"""Recipe and base → remix, with its own name, the credits of all who had a part in it, and its licence."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

import attrs

from compose.modifiers.apply import remix
from compose.modifiers.clash import clashes
from compose.modifiers.content_hash import content_hash
from compose.modifiers.heads import licence_in, told_in
from compose.modifiers.modifier import Use
from compose.modifiers.recipe import Recipe
from compose.modifiers.remix import Remix
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.sentences.head import Licence, Told
from grammar.tree import GameSheet, Line
from grammar.words import capital
from library import KitItem


def made(recipe: Recipe, base: Game, kit: Mapping[str, KitItem], more: Iterable[Use] = ()) -> Outcome[Remix]:
    """The remix that a recipe makes of a base, and whatever is to be said of it.

    `more` are modifiers that come after those of the recipe.
    """
    uses = (*recipe.steps, *more)
    findings = [*base_findings(recipe, base), *licence_findings(recipe, base), *clashes(uses)]
    if any(finding.severity is Severity.ERROR for finding in findings):
        return Outcome(None, tuple(findings))
    outcome = remix(base, uses, kit)
    findings.extend(outcome.findings)
    if outcome.value is None:
        return Outcome(None, tuple(findings))
    named = attrs.evolve(outcome.value.game, sheet=_signed(outcome.value.game.sheet, recipe))
    return Outcome(attrs.evolve(outcome.value, game=named), tuple(findings))


def base_findings(recipe: Recipe, base: Game) -> Iterator[Finding]:
    """Whether the base is still the text that the remix was made from."""
    if recipe.base_content and recipe.base_content != content_hash(base.sheet):
        title = f"{base.title} has changed since `{recipe.title}` was made from it."
        hint = "Look at what the remix makes of it now; to keep that, carry the remix over."
        yield Finding("M-base-changed", Severity.WARNING, title, recipe.based_on.span, hint, (base.sheet.span,))


def licence_findings(recipe: Recipe, base: Game) -> Iterator[Finding]:
    """Whether the licences allow the remix to be passed on as it says.

    What the identifiers ask is in the licences' own deeds (Creative Commons, version 4.0, 2013; from memory).
    """
    parts = [(f"`{use.modifier.name}`", use.modifier.licence) for use in recipe.uses]
    licences = [("the base", licence_in(base.sheet.head)), *parts]
    for whose, licence in licences:
        if licence is None:
            continue
        if "-ND" in licence:
            title = f"{capital(whose)} is under {licence}: a remix of it may be played, not passed on."
            yield Finding("M-licence", Severity.WARNING, title, recipe.span, "Ask whoever made it.")
        elif "-SA" in licence and recipe.licence not in (None, licence):
            title = f"{capital(whose)} is under {licence}; a remix of it must be so, too."
            yield Finding("M-licence", Severity.WARNING, title, recipe.span, f"Give it the line: licence {licence}")


def _signed(sheet: GameSheet, recipe: Recipe) -> GameSheet:
    """The sheet under the remix's name: what it says of itself, the credits of all, its licence."""
    about = [Told("about", recipe.about)] if recipe.about else []
    credits = [
        *told_in(sheet.head, "credit"),
        *(text for use in recipe.uses for text in use.modifier.credit),
        *recipe.credit,
    ]
    licence = [Licence(recipe.licence)] if recipe.licence else []
    kept = [line for line in sheet.head if not _replaced(line, recipe)]
    new = [*about, *(Told("credit", text) for text in dict.fromkeys(credits)), *licence]
    return attrs.evolve(
        sheet, title=recipe.title, head=(*kept, *(Line(each) for each in new)), notes=recipe.sheet.notes
    )


def _replaced(line: Line, recipe: Recipe) -> bool:
    sentence = line.sentence
    if isinstance(sentence, Licence):
        return recipe.licence is not None
    return isinstance(sentence, Told) and (
        sentence.topic == "credit" or (sentence.topic == "about" and bool(recipe.about))
    )
