"""The door of this folder: a game sheet becomes a Game, or a list of mistakes."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence, Set

import attrs

from grammar.core.reading.beside_mistakes import senseless_lines
from grammar.core.reading.from_game import core_of
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.meanings import built_in
from grammar.mistakes.lost import LostLine, may_declare, may_follow
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
from grammar.tree import GameSheet, Line

_USUAL_AGES_YEARS = (8.0, 12.0)
_NEEDED: tuple[tuple[str, type[Node], str, str], ...] = (
    ("space", Node, "court", "court 18 m by 9 m, halved across"),
    ("sides", Sides, "side", "north and south, 6 to 14 players each, mirrored"),
    ("play", Node, "rule", "players roll a ball past the back line of the other side"),
    ("finish", Node, "end", "the first side to 10 points wins"),
)


def resolve(sheet: GameSheet, catalogue: Mapping[str, str], lost: Sequence[LostLine] = ()) -> Outcome[Game]:
    """The game that a sheet means; `catalogue` maps each thing of the library's kit to its category.

    Of what a `lost` line may say nothing is told as missing: all other mistakes are.
    """
    words = Vocabulary(built_in())
    sides, roles = declare_sides(sheet, words)
    areas = declare_areas(sheet, words)
    tracks = declare_tracks(sheet, words)
    kit = declare_kit(sheet, words, catalogue)
    words.know_frozen_ones()
    findings = [*words.findings]
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
    gone = frozenset(section for line in lost for section in line.sections) | _shorter(known, sheet)
    findings = [finding for finding in findings if not _may_follow(finding, lost, gone, bool(words.findings))]
    findings.extend(_missing(sheet, lost))
    if not lost and not any(finding.severity is Severity.ERROR for finding in findings):
        findings.extend(core_of(game).findings)
    elif not words.findings:
        findings.extend(_senseless(attrs.evolve(game, sheet=known), findings, gone))
    findings.sort(key=lambda finding: (finding.place.line, finding.place.column))
    broken = bool(lost) or any(finding.severity is Severity.ERROR for finding in findings)
    return Outcome(None if broken else game, tuple(findings))


def _shorter(known: GameSheet, sheet: GameSheet) -> frozenset[str]:
    """The sections of which lines were left out, since a name in them means nothing."""
    names = ("head", *(section.name for section in sheet.sections))
    return frozenset(name for name in names if len(known.lines(name)) < len(sheet.lines(name)))


def _may_follow(finding: Finding, lost: Sequence[LostLine], gone: frozenset[str], misdeclared: bool) -> bool:
    """Whether a mistake may be none, were all lines there: it is not told till then."""
    if finding.code in ("G-unknown", "G-sort"):
        name = re.search(r"`(.+?)`", finding.title)
        return name is not None and may_declare(lost, name.group(1))
    if misdeclared and finding.code in ("G-no-place", "G-switch", "G-half"):
        return True
    return may_follow(finding.code, gone)


def _senseless(game: Game, findings: Sequence[Finding], gone: frozenset[str]) -> tuple[Finding, ...]:
    """What means nothing among the lines that are not wrong otherwise."""
    wrong = {finding.place.line for finding in findings}
    parts = (attrs.evolve(part, lines=_but(part.lines, wrong)) for part in game.sheet.sections)
    sheet = attrs.evolve(game.sheet, head=_but(game.sheet.head, wrong), sections=tuple(parts))
    gone |= _shorter(sheet, game.sheet)
    alone = bool(gone - {"when", "care"}) or any(finding.code == "G-missing" for finding in findings)
    return senseless_lines(attrs.evolve(game, sheet=sheet), alone)


def _but(lines: Sequence[Line], wrong: Set[int]) -> tuple[Line, ...]:
    return tuple(line for line in lines if line.span.line not in wrong)


def _missing(sheet: GameSheet, lost: Sequence[LostLine]) -> list[Finding]:
    return [
        Finding(
            "G-missing",
            Severity.ERROR,
            f"The game `{sheet.title}` has no {what} under `{section}`.",
            sheet.span,
            f'Add there a line such as "{example}".',
        )
        for section, kind, what, example in _NEEDED
        if not any(sheet.all_of(section, kind)) and not any(section in line.sections for line in lost)
    ]
