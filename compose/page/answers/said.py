"""A finding as the page shows it: plain words, what would mend it, and whether there is a line of play to look at."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from compose.page.answers.values import Said
from compose.telling.findings import finding_said
from compose.telling.sentences import sentence
from compose.telling.wording import Wording
from grammar.finding import Basis, Finding, Severity
from grammar.game import Game
from grammar.span import Span

ORDER = (Severity.ERROR, Severity.WARNING, Severity.NOTE)
GRAVITY = {Severity.ERROR: "mistake", Severity.WARNING: "mend", Severity.NOTE: "know"}


def said(finding: Finding, wording: Wording, lines: Mapping[Span, str] = MappingProxyType({})) -> Said:
    """The finding in the language; `lines` are those of the sheet that it speaks of."""
    told = finding_said(finding, wording)
    return Said(
        finding.code,
        GRAVITY[finding.severity],
        sentence(told.title),
        told.hint,
        _known_by(finding.basis, wording),
        lines.get(_whole(finding.place), ""),
        sum(step.transition >= 0 for step in (*finding.witness, *finding.loop)),  # a line of play begins with none
    )


def _known_by(basis: Basis, wording: Wording) -> str:
    return {
        Basis.READ: "",
        Basis.PROVED: wording.say("This is proved."),
        Basis.COMPUTED: wording.say("This is computed from the chances of the forecast."),
        Basis.SIMULATED: wording.say("This comes from rounds played at random."),
    }[basis]


def in_order(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings, those to mend first."""
    return tuple(sorted(findings, key=lambda each: ORDER.index(each.severity)))


def lines_of(game: Game) -> dict[Span, str]:
    """The lines of a game as they are now, by where each stands or stood."""
    sheet = game.sheet
    lines = (*sheet.head, *(line for part in sheet.sections for line in part.lines))
    return {_whole(line.span): line.sentence.words() for line in lines}


def _whole(place: Span) -> Span:
    """The line of a place."""
    return Span(place.file, place.line, 0, 0)


def in_words(finding: Finding, wording: Wording) -> str:
    """What stands in the way, and what to do, as one text."""
    told = said(finding, wording)
    return f"{told.title} {told.hint}".strip()
