"""The sheet of a modifier → the modifier, or what is missing from it."""

from __future__ import annotations

from collections.abc import Iterator

from compose.modifiers.changes.changes import CHANGES
from compose.modifiers.heads import licence_in, told_in
from compose.modifiers.modifier import Modifier
from grammar.finding import Finding, Outcome, mistake
from grammar.said import quoting
from grammar.sentences import modifier as said
from grammar.sentences import needs
from grammar.tree import Line, ModifierSheet

NEEDS = (
    needs.NeedsEvent,
    needs.NeedsBall,
    needs.NeedsThing,
    needs.NeedsSkill,
    needs.NeedsPoints,
    needs.NeedsTwoSides,
    needs.NeedsClock,
)


def modifier_of(sheet: ModifierSheet) -> Outcome[Modifier]:
    """The modifier that a sheet means, or what is missing from it."""
    sentences = [line.sentence for line in sheet.lines]
    heading = next((each for each in sentences if isinstance(each, said.Heading)), None)
    about = " ".join(told_in(sheet.lines, "about"))
    changes = tuple(line for line in sheet.lines if isinstance(line.sentence, CHANGES))
    findings = list(_missing(sheet, heading, about, changes))
    takes = tuple(each for each in sentences if isinstance(each, said.Takes))
    findings.extend(finding for each in takes for finding in _range(each))
    if findings or heading is None:
        return Outcome(None, tuple(findings))
    return Outcome(
        Modifier(
            sheet.title.lower(),
            heading.step,
            about,
            takes,
            tuple(each for each in sentences if isinstance(each, NEEDS)),
            tuple(each.modifier.lower() for each in sentences if isinstance(each, needs.Clashes)),
            changes,
            told_in(sheet.lines, "caution"),
            sheet.span,
            told_in(sheet.lines, "credit"),
            licence_in(sheet.lines),
        )
    )


def _missing(
    sheet: ModifierSheet, heading: said.Heading | None, about: str, changes: tuple[Line, ...]
) -> Iterator[Finding]:
    def missing(what: str, nameless: str, example: str) -> Finding:
        hint = quoting("Add a line such as: {example}", example=example)
        title = quoting(what, modifier=sheet.title) if sheet.title else quoting(nameless)
        return mistake("M-missing", title, sheet.span, hint)

    if heading is None:
        yield missing("The modifier `{modifier}` has no heading.", "The modifier has no heading.", "heading task")
    if not about:
        example = 'about "Adds balls, so that more play at once."'
        named = "The modifier `{modifier}` does not say what it does."
        yield missing(named, "The modifier does not say what it does.", example)
    if not changes:
        yield missing("The modifier `{modifier}` changes nothing.", "The modifier changes nothing.", "add 2 balls")


def _range(takes: said.Takes) -> Iterator[Finding]:
    if len({takes.least.unit, takes.most.unit, takes.usually.unit}) > 1:
        yield mistake(
            "M-range",
            quoting("`{parameter}` mixes units.", parameter=takes.parameter),
            takes.span,
            "Write all three amounts in one unit.",
        )
    elif not takes.least.value <= takes.usually.value <= takes.most.value:
        yield mistake(
            "M-range",
            quoting("The usual `{parameter}` lies outside its range.", parameter=takes.parameter),
            takes.span,
            "Write the smallest, the largest, and one between them.",
        )
