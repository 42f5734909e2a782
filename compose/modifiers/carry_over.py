"""A remix carried over to a changed base: what still holds, and every conflict in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs

from compose.modifiers.apply import apply
from compose.modifiers.changes.changes import CHANGES
from compose.modifiers.content_hash import content_hash
from compose.modifiers.edit import Edit
from compose.modifiers.from_recipe import made
from compose.modifiers.modifier import Use, why_not
from compose.modifiers.recipe import Recipe
from compose.modifiers.remix import OWN_EDITS, Remix
from grammar.finding import Basis, Finding, Outcome, Severity, spoken
from grammar.frozen import frozen
from grammar.game import Game
from grammar.said import Named, Value, Written, quoting, said
from grammar.sentences import remix as lines_of
from grammar.topics import topic
from grammar.tree import Line, RemixSheet
from library import KitItem

Kit = Mapping[str, KitItem]


@frozen
class Carried:
    """The remix on its changed base: the file as it is to be now, what it makes, and the conflicts.

    Modifiers that do not fit any more are left out of the file; each is a conflict.
    """

    sheet: RemixSheet
    remix: Remix
    conflicts: tuple[Finding, ...]


def carried_over(recipe: Recipe, base: Game, kit: Kit, before: Game | None = None) -> Outcome[Carried]:
    """The recipe on a changed base. With the base as it was `before`, lines that both changed are found, too."""
    kept, conflicts = _fitting(recipe, base, kit)
    own = recipe.own if recipe.own in kept else None
    fitting = attrs.evolve(recipe, uses=tuple(use for use in kept if use is not recipe.own), own=own, base_content=None)
    outcome = made(fitting, base, kit)
    if outcome.value is None:
        return Outcome(None, (*conflicts, *outcome.findings))
    if before is not None:
        conflicts += tuple(_both_changed(recipe, made(recipe, before, kit).value, outcome.value))
    conflicts += tuple(finding for finding in outcome.findings if finding.code == "M-no-effect")
    return Outcome(Carried(_rewritten(recipe, base, kept), outcome.value, conflicts))


def _fitting(recipe: Recipe, base: Game, kit: Kit) -> tuple[tuple[Use, ...], tuple[Finding, ...]]:
    """The steps that still fit, one after the other, and a conflict for each of the others."""
    game, kept, conflicts = base, list[Use](), list[Finding]()
    for use in recipe.steps:
        outcome = apply(game, use, kit)
        if outcome.value is None:
            why = outcome.findings[0]
            title = quoting("`{name}` is left out: {why}", name=Named(use.modifier.name), why=why_not(why))
            hint = "Look whether the remix is still what you want without it."
            conflicts.append(_conflict("M-left-out", title, recipe, hint))
        else:
            game = outcome.value[0]
            kept.append(use)
    return tuple(kept), tuple(conflicts)


def _both_changed(recipe: Recipe, old: Remix | None, new: Remix) -> Iterator[Finding]:
    """Lines of the base that the remix changed and that the base has now changed itself."""
    if old is None:
        return
    standing = {(edit.section, edit.before) for edit in new.edits}
    for edit in old.edits:
        now = _now(edit, new.base)
        if not edit.before or (edit.section, edit.before) in standing or now == edit.before:
            continue
        by, after = Named(edit.by), _made_of(edit)
        told: dict[str, str | Value] = {"game": new.base.title, "before": edit.before, "by": by, "after": after}
        if now is None:
            title = quoting("{game} no longer says: {before}. `{by}` had made of it: {after}", **told)
        elif now == edit.after:
            title = quoting("{game} now says itself what `{by}` made of it: {now}", **told, now=now)
        else:
            pattern = "{game} now says: {now}. Before it said: {before}; `{by}` made of it: {after}"
            title = quoting(pattern, **told, now=now)
        yield _conflict("M-both-changed", title, recipe, _hint(edit, new))


def _now(edit: Edit, base: Game) -> str | None:
    """What the base says now about the same thing, or None where it says nothing of it."""
    sentences = base.sheet.lines(edit.section)
    if any(line.sentence.words() == edit.before for line in sentences):
        return edit.before
    return next((line.sentence.words() for line in sentences if topic(line.sentence) == edit.topic), None)


def _made_of(edit: Edit) -> Value:
    return Written(edit.after) if edit.after else said("nothing, it took it out")


def _hint(edit: Edit, new: Remix) -> Value:
    again = next((each for each in new.edits if each.topic == edit.topic and each.by == edit.by), None)
    if again is None:
        return "The remix leaves it as the base has it now; change it in the remix if that is not meant."
    return said("The remix now makes of it: {after}", after=Written(again.after) if again.after else "nothing")


def _conflict(code: str, title: Value, recipe: Recipe, hint: Value) -> Finding:
    return spoken(code, Severity.WARNING, title, recipe.based_on.span, hint, basis=Basis.COMPUTED)


def _rewritten(recipe: Recipe, base: Game, kept: tuple[Use, ...]) -> RemixSheet:
    """The file with the new content hash and without what does not fit."""
    names = [use.modifier.name for use in kept]
    lines: list[Line] = []
    for line in recipe.sheet.lines:
        sentence = line.sentence
        if isinstance(sentence, lines_of.BasedOn):
            content = content_hash(base.sheet)
            lines.append(attrs.evolve(line, sentence=attrs.evolve(sentence, base=base.title, content=content)))
        elif isinstance(sentence, lines_of.Use):
            if sentence.modifier.lower() in names:
                names.remove(sentence.modifier.lower())
                lines.append(line)
        elif OWN_EDITS in names or not _is_change(line):
            lines.append(line)
    return attrs.evolve(recipe.sheet, lines=tuple(lines))


def _is_change(line: Line) -> bool:
    return isinstance(line.sentence, CHANGES)
