"""The door of this folder: a game sheet becomes a Game, or a list of mistakes."""

from __future__ import annotations

from collections.abc import Mapping

import attrs

from grammar.core.reading.from_game import core_of
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.meanings import built_in
from grammar.resolve.declare_kit import declare_kit
from grammar.resolve.declare_people import declare_sides
from grammar.resolve.declare_places import declare_areas, declare_tracks
from grammar.resolve.known import with_known_names
from grammar.resolve.possible import possible_findings
from grammar.resolve.vocabulary import Vocabulary
from grammar.sentences.base import Node
from grammar.sentences.head import Ages
from grammar.sentences.sides import Sides
from grammar.sentences.space import Court
from grammar.tree import GameSheet

_USUAL_AGES_YEARS = (8.0, 12.0)
_OF_ABSENCE = ("G-no-place", "G-no-points", "G-switch", "G-half")
_NEEDED: tuple[tuple[str, type[Node], str, str], ...] = (
    ("space", Node, "court", "court 18 m by 9 m, halved across"),
    ("sides", Sides, "side", "north and south, 6 to 14 players each, mirrored"),
    ("play", Node, "rule", "players roll a ball past the back line of the other side"),
    ("finish", Node, "end", "the first side to 10 points wins"),
)


def resolve(sheet: GameSheet, catalogue: Mapping[str, str], whole: bool = True) -> Outcome[Game]:
    """The game that a sheet means; `catalogue` maps each thing of the library's kit to its category.

    Without `whole` some lines of the sheet could not be read: nothing is said of what may stand in them.
    """
    words = Vocabulary(built_in())
    sides, roles = declare_sides(sheet, words)
    areas = declare_areas(sheet, words)
    tracks = declare_tracks(sheet, words)
    kit = declare_kit(sheet, words, catalogue)
    findings = [*words.findings, *_missing(sheet)]
    known, wrong_names = with_known_names(sheet, words.meanings)
    findings.extend(wrong_names)
    court = next((line.sentence for line in sheet.lines("space") if isinstance(line.sentence, Court)), None)
    ages = next((line.sentence for line in sheet.head if isinstance(line.sentence, Ages)), None)
    game = Game(
        sheet,
        (ages.least.value, ages.most.value) if ages else _USUAL_AGES_YEARS,
        (court.length.metres, court.width.metres) if court else (0.0, 0.0),
        court is not None and court.cut in ("halved across", "in equal parts"),
        sides,
        roles,
        areas,
        tracks,
        kit,
        words.meanings,
    )
    findings.extend(possible_findings(attrs.evolve(game, sheet=known)))
    if wrong_names or words.findings or not whole:
        findings = [finding for finding in findings if finding.code not in _OF_ABSENCE]
    if not whole:
        findings = [finding for finding in findings if finding.code not in ("G-unknown", "G-missing")]
    if whole and not any(finding.severity is Severity.ERROR for finding in findings):
        findings.extend(core_of(game).findings)
    findings.sort(key=lambda finding: (finding.place.line, finding.place.column))
    broken = any(finding.severity is Severity.ERROR for finding in findings)
    return Outcome(None if broken else game, tuple(findings))


def _missing(sheet: GameSheet) -> list[Finding]:
    return [
        Finding(
            "G-missing",
            Severity.ERROR,
            f"The game `{sheet.title}` has no {what} under `{section}`.",
            sheet.span,
            f'Add there a line such as "{example}".',
        )
        for section, kind, what, example in _NEEDED
        if not any(sheet.all_of(section, kind))
    ]
