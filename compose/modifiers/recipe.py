"""A remix as a recipe: which base, which modifiers in which order with which values, and which edits of its own."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs

from compose.modifiers.changes.changes import CHANGES
from compose.modifiers.heads import licence_in, told_in
from compose.modifiers.modifier import Modifier, Use, value_findings
from compose.modifiers.remix import OWN_EDITS
from grammar.finding import Finding, Outcome, mistake
from grammar.frozen import field, frozen
from grammar.said import perhaps_meant, quoting
from grammar.sentences import remix as said
from grammar.sentences.base import Quantity
from grammar.span import Span
from grammar.tree import Line, RemixSheet


@frozen
class Recipe:
    """A remix file with its modifiers found. `base_content` is the content hash of the base that was meant,
    or None where the file does not say; `own` are its own edits, the last of all."""

    title: str
    base: str
    base_content: str | None
    uses: tuple[Use, ...]
    own: Use | None
    about: str
    credit: tuple[str, ...]
    licence: str | None
    sheet: RemixSheet
    based_on: said.BasedOn

    @property
    def span(self) -> Span:
        return self.sheet.span

    @property
    def steps(self) -> tuple[Use, ...]:
        """All that is done to the base, in order."""
        return (*self.uses, self.own) if self.own else self.uses


@frozen
class _Named:
    use: Use | None
    findings: tuple[Finding, ...] = field(default=())


def recipe_of(sheet: RemixSheet, modifiers: Mapping[str, Modifier]) -> Outcome[Recipe]:
    """The recipe that a remix file is; `modifiers` has all that can be named, by name in small letters."""
    sentences = [line.sentence for line in sheet.lines]
    bases = [each for each in sentences if isinstance(each, said.BasedOn)]
    named = [_use(each, modifiers) for each in sentences if isinstance(each, said.Use)]
    findings = [*_base_findings(sheet, bases), *(finding for each in named for finding in each.findings)]
    if findings:
        return Outcome(None, tuple(findings))
    told = {topic: told_in(sheet.lines, topic) for topic in ("about", "credit", "caution")}
    return Outcome(
        Recipe(
            sheet.title,
            bases[0].base,
            bases[0].content,
            tuple(each.use for each in named if each.use),
            _own_edits(sheet, told["caution"]),
            " ".join(told["about"]),
            told["credit"],
            licence_in(sheet.lines),
            sheet,
            bases[0],
        )
    )


def _base_findings(sheet: RemixSheet, bases: list[said.BasedOn]) -> Iterator[Finding]:
    if not bases:
        named, nameless = (
            "The remix `{title}` does not say what it is based on.",
            "The remix does not say what it is based on.",
        )
        title = quoting(named if sheet.title else nameless, title=sheet.title)
        yield mistake("M-base", title, sheet.span, 'Add a line such as: based on "Lantern Row"')
    for extra in bases[1:]:
        second = "The remix `{title}` has a second base." if sheet.title else "The remix has a second base."
        title = quoting(second, title=sheet.title)
        hint = "Keep one; a remix of a remix is based on that remix."
        yield mistake("M-base", title, extra.span, hint, bases[0].span)


def _use(sentence: said.Use, modifiers: Mapping[str, Modifier]) -> _Named:
    modifier = modifiers.get(sentence.modifier.lower())
    if modifier is None:
        title = quoting("There is no modifier called `{modifier}`.", modifier=sentence.modifier)
        other = quoting("Name one that the library or this folder has.")
        hint = perhaps_meant(sentence.modifier, modifiers) or other
        return _Named(None, (mistake("M-unknown", title, sentence.span, hint),))
    values: dict[str, Quantity] = {each.parameter: each.value for each in sentence.settings}
    use = Use(modifier, values)
    wrong = tuple(attrs.evolve(each, place=sentence.span, others=(each.place,)) for each in value_findings(use))
    return _Named(use, wrong)


def _own_edits(sheet: RemixSheet, cautions: tuple[str, ...]) -> Use | None:
    """The changes that the file makes itself, as a modifier without a name of its own."""
    changes: tuple[Line, ...] = tuple(line for line in sheet.lines if isinstance(line.sentence, CHANGES))
    if not changes and not cautions:
        return None
    return Use(Modifier(OWN_EDITS, "task", "", (), (), (), changes, cautions, sheet.span))
