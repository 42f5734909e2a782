"""Game and modifiers → remixed game: pure, in the order given, with every edit kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from compose.modifiers.changes.changes import carry_out
from compose.modifiers.changes.sheets import Draft
from compose.modifiers.difference.same_game import led_alike
from compose.modifiers.edit import Edit
from compose.modifiers.fit_for import unfit
from compose.modifiers.modifier import Use, does_not_fit, filled_in, value_findings, why_not
from compose.modifiers.needs import unmet_needs
from compose.modifiers.remix import Remix
from grammar.finding import Finding, Outcome, Severity, mistake, retold, spoken
from grammar.game import Game
from grammar.resolve import resolve
from grammar.said import Named, quoting
from grammar.sentences.head import Caution
from grammar.tree import Line
from library import KitItem, kit_categories

OF_BALLS = ("head", "kit", "play")  # the sections that say which balls there are and what is done with them


def apply(game: Game, use: Use, kit: Mapping[str, KitItem]) -> Outcome[tuple[Game, tuple[Edit, ...]]]:
    """The game that one modifier makes of a game; no value where it does not fit, with the reason."""
    findings = [*value_findings(use), *unmet_needs(use.modifier, game, kit)]
    if findings:
        return Outcome(None, tuple(findings))
    draft = Draft(game.sheet, use.label)
    for line in filled_in(use):
        problem = carry_out(draft, game, line)
        if problem:
            title = does_not_fit(use.modifier, quoting("{problem}.", problem=problem))
            return Outcome(None, (mistake("M-fit", title, line.span, "Leave it out."),))
    changed = bool(draft.edits)
    for caution in use.modifier.cautions if changed else ():
        draft.put("care", Line(Caution(caution)), use.modifier.span)
    resolved = resolve(draft.sheet, kit_categories())
    if resolved.value is None:
        reasons = tuple(_explained(finding, use) for finding in resolved.findings)
        return Outcome(None, reasons)
    if any(edit.section in OF_BALLS for edit in draft.edits):
        before = {(each.ball, each.skill) for each in unfit(game, kit)}
        for spoilt in unfit(resolved.value, kit):
            if (spoilt.ball, spoilt.skill) not in before:
                title = does_not_fit(use.modifier, spoilt.told)
                return Outcome(None, (mistake("M-fit", title, use.modifier.span, "Leave it out."),))
    said_to_people = any(edit.section in ("head", "care") for edit in draft.edits)
    idle = not said_to_people and led_alike(game, resolved.value)
    notes = (_no_effect(use, game),) if idle else ()
    return Outcome((resolved.value, tuple(draft.edits)), notes)


def _explained(finding: Finding, use: Use) -> Finding:
    return retold(finding, does_not_fit(use.modifier, why_not(finding)), code="M-fit")


def _no_effect(use: Use, game: Game) -> Finding:
    title = quoting("`{modifier}` changes nothing in {game}.", modifier=Named(use.modifier.name), game=game.title)
    return spoken("M-no-effect", Severity.WARNING, title, use.modifier.span, "Leave it out.")


def remix(base: Game, uses: Sequence[Use], kit: Mapping[str, KitItem]) -> Outcome[Remix]:
    """The game that modifiers make of a base game, one after the other."""
    made = Outcome(Remix(base, base))
    for use in uses:
        made = further(made, use, kit)
    return made


def further(made: Outcome[Remix], use: Use, kit: Mapping[str, KitItem]) -> Outcome[Remix]:
    """A remix with one modifier more; what was found before is kept, and one that is none stays none."""
    before = made.value
    if before is None:
        return made
    outcome = apply(before.game, use, kit)
    findings = (*made.findings, *outcome.findings)
    if outcome.value is None:
        return Outcome(None, findings)
    game, edits = outcome.value
    return Outcome(Remix(before.base, game, (*before.uses, use), (*before.edits, *edits)), findings)
