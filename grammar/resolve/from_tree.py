"""The door of this folder: a game sheet becomes a Game, or a list of mistakes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set

import attrs

from grammar.core.reading.beside_mistakes import senseless_lines
from grammar.core.reading.from_game import core_of
from grammar.core.reading.sheet.sheet_pass import SECTIONS
from grammar.finding import Finding, Outcome, Severity, mistake
from grammar.frozen import frozen
from grammar.game import Game
from grammar.meanings import built_in
from grammar.mistakes.lost import DECLARING, ONLY_SEEMING, LostLine, may_declare, may_follow
from grammar.resolve.declare_kit import declare_kit
from grammar.resolve.declare_people import declare_sides
from grammar.resolve.declare_places import declare_areas, declare_tracks, know_without_their_kind
from grammar.resolve.known import (
    WithKnownNames,
    left_out_of,
    name_in,
    rows_by_name,
    unknown_name,
    with_known_names,
    without_lines,
    without_unsure,
)
from grammar.resolve.possible import possible_findings
from grammar.resolve.vocabulary import Vocabulary
from grammar.said import quoting, said
from grammar.sentences.base import Node
from grammar.sentences.head import Ages
from grammar.sentences.sides import Sides
from grammar.sentences.space import Court
from grammar.span import Row, Span
from grammar.tree import GameSheet, Line

_OF_DECLARED = ("G-sense", "G-contradiction", "G-unknown", "G-sort", "G-circle")  # after which nothing is sure
_SAYING = tuple(section for section in SECTIONS if section not in DECLARING)
_OF_THINGS = frozenset(("space", "kit"))
_USUAL_AGES_YEARS = (8.0, 12.0)


@frozen
class _Needed:
    """A kind of sentence that every game has, under which heading and what it is called, with one of them."""

    section: str
    kind: type[Node]
    what: str
    example: str


_NEEDED = (
    _Needed("space", Node, "court", "court 18 m by 9 m, halved across"),
    _Needed("sides", Sides, "side", "north and south, 6 to 14 players each, mirrored"),
    _Needed("play", Node, "rule", "players roll a ball past the back line of the other side"),
    _Needed("finish", Node, "end", "the first side to 10 points wins"),
)


def resolve(
    sheet: GameSheet, catalogue: Mapping[str, str], lost: Sequence[LostLine] = (), weighed: bool = True
) -> Outcome[Game]:
    """The game that a sheet means; `catalogue` maps each thing of the library's kit to its category.

    Of what a `lost` line may say nothing is told as missing: all other mistakes are. What may only seem to be one is
    left out where it is `weighed`, which takes its time.
    """
    found = _resolved(sheet, catalogue, lost)
    if not found.findings:
        return Outcome(None if lost else found.game)
    stay = _standing(found, catalogue, lost) if weighed else found.findings
    findings = sorted(stay, key=lambda finding: (finding.place.line, finding.place.column))
    broken = bool(lost) or any(finding.severity is Severity.ERROR for finding in findings)
    return Outcome(None if broken else found.game, tuple(findings))


def game_of_what_stands(sheet: GameSheet, catalogue: Mapping[str, str]) -> Game:
    """The game of a sheet that has no mistake but that something is missing."""
    return _resolved(sheet, catalogue, ()).game


@frozen
class _Resolved:
    """A game, what of it can be read, its mistakes, and its lines that cannot be for what a name or number says."""

    game: Game
    readable: Game
    findings: tuple[Finding, ...]
    left_out: tuple[tuple[str, Line], ...]


def _resolved(sheet: GameSheet, catalogue: Mapping[str, str], lost: Sequence[LostLine]) -> _Resolved:
    words = Vocabulary(built_in())
    sides, roles = declare_sides(sheet, words)
    areas = declare_areas(sheet, words)
    tracks = declare_tracks(sheet, words)
    kit = declare_kit(sheet, words, catalogue)
    words.know_frozen_ones()
    know_without_their_kind(areas, words)
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
    names = with_known_names(sheet, words.meanings)
    found = _found(game, words, names, lost)
    misread = {place.row for each in found.findings for place in _doubted(each)} & _declaring(names[0])
    if misread:  # what such a line declares is not known: neither is what others say of it
        again = _found(game, words, names, lost, misread)
        told = {(finding.code, finding.place) for finding in again.findings}
        kept = [each for each in found.findings if each.place.row in misread and (each.code, each.place) not in told]
        return attrs.evolve(again, findings=(*kept, *again.findings))
    return found


def _declaring(sheet: GameSheet) -> frozenset[Row]:
    return frozenset(line.span.row for section in DECLARING for line in sheet.lines(section))


def _found(
    game: Game, words: Vocabulary, names: WithKnownNames, lost: Sequence[LostLine], misread: Set[Row] = frozenset()
) -> _Resolved:
    """What is wrong with a game, of which the misread lines are left out and those of which a name means nothing."""
    sheet, (known, wrong_names) = game.sheet, names
    known, unsure = without_unsure(known, sheet, words, misread)
    left_out = tuple(left_out_of(sheet, known)) if known is not sheet else ()
    declaring = [(line.span.row, _as_lost(section, line)) for section, line in left_out if section in DECLARING]
    rest = _without(game, known, {line.span.row for _, line in left_out}) if left_out else game
    findings = [*words.findings, *(finding for finding in wrong_names if name_in(finding) not in unsure)]
    findings.extend(possible_findings(rest))
    missing = [*lost, *(_as_lost(section, line) for section, line in left_out)]

    named = rows_by_name(wrong_names)

    def may_follow_from_others(each: Finding) -> bool:
        own = {each.place.row, *named.get(name_in(each), ())}  # these declare no such name
        others = [*lost, *(line for number, line in declaring if number not in own)]
        return _may_follow(each, others, missing, {wrong.place.row for wrong in words.findings})

    of_all, findings = findings, [each for each in findings if not may_follow_from_others(each)]
    findings.extend(_missing(sheet, lost))
    told = {finding.place.row for finding in findings if finding.place.line > 0}
    of_declared = _declaring(known) if findings or of_all else frozenset()
    saying = ((section, line) for section in _SAYING for line in known.lines(section))
    impossible = tuple(each for each in saying if each[1].span.row in told)
    if impossible:
        rest = attrs.evolve(rest, sheet=without_lines(known, told - of_declared))
    if any(each.code in _OF_DECLARED for each in (*of_all, *findings) if each.place.row in of_declared):
        return _Resolved(game, rest, tuple(findings), left_out)
    senseless = core_of(rest).findings if rest.sides and game.court_m[0] else senseless_lines(rest)
    findings.extend(finding for finding in senseless if finding.place.row not in told)
    return _Resolved(game, rest, tuple(findings), (*left_out, *impossible))


def _without(game: Game, known: GameSheet, left_out: Set[Row]) -> Game:
    """The game of the lines that are known, without what the others declare."""
    return attrs.evolve(
        game,
        sheet=known,
        sides=tuple(each for each in game.sides if each.span.row not in left_out),
        roles=tuple(each for each in game.roles if each.span.row not in left_out),
        areas=tuple(each for each in game.areas if each.span.row not in left_out),
        tracks=tuple(each for each in game.tracks if each.span.row not in left_out),
        kit=tuple(each for each in game.kit if each.span.row not in left_out),
    )


def _doubted(finding: Finding) -> tuple[Span, ...]:
    """The lines that a mistake leaves in doubt: all of a circle, but not what another line contradicts."""
    if finding.code not in _OF_DECLARED:
        return ()
    return (finding.place, *(finding.others if finding.code == "G-circle" else ()))


def _standing(found: _Resolved, catalogue: Mapping[str, str], lost: Sequence[LostLine]) -> Iterator[Finding]:
    """The mistakes that stay whatever the lines say that are wrong, each but for the line of which it speaks."""
    doubtful = [finding for finding in found.findings if finding.code in ONLY_SEEMING]
    yield from (finding for finding in found.findings if finding not in doubtful)
    without_court = bool(lost) and bool(found.readable.sides) and not found.game.court_m[0]
    if not doubtful and not without_court:
        return
    from grammar.mistakes.might_say import Completed  # loaded only where a mistake is in doubt

    completed = Completed(found.game.sheet, found.readable, lambda more: _resolved(more, catalogue, lost).findings)
    wrong = {line.span.row: _as_lost(section, line) for section, line in found.left_out}
    of_doubt = {finding.place.row for finding in doubtful}
    for section in SECTIONS:
        lines = found.game.sheet.lines(section)
        wrong |= {line.span.row: _as_lost(section, line) for line in lines if line.span.row in of_doubt}
    missing = [LostLine(frozenset((each.section,)), "") for each in _missing_sections(found.game.sheet)]
    missing += [LostLine(_OF_THINGS, name) for name in map(unknown_name, found.findings) if name]
    if without_court:
        more = completed.with_a_court(lost)
        doubtful += [each for each in more if each.code in ONLY_SEEMING and each not in doubtful]
    every = [*lost, *missing, *wrong.values()]
    for finding in doubtful:
        others = [*lost, *missing, *(line for number, line in wrong.items() if number != finding.place.row)]
        if not others or any(completed.still_has(finding, lines) for lines in (every, others)):
            yield finding


def _as_lost(section: str, line: Line) -> LostLine:
    return LostLine(frozenset((section,)), line.sentence.words())


def _may_follow(finding: Finding, lost: Sequence[LostLine], missing: Sequence[LostLine], misdeclared: Set[Row]) -> bool:
    """Whether a mistake may be none, were all lines there, or those that declare wrongly right: it waits till then."""
    if finding.code in ("G-unknown", "G-sort"):
        return bool(name_in(finding)) and may_declare(lost, name_in(finding))
    if finding.code == "G-no-place" and not misdeclared.isdisjoint(at.row for at in (finding.place, *finding.others)):
        return True
    if misdeclared and finding.code in ("G-switch", "G-half"):
        return True
    return may_follow(finding.code, missing)


def _missing(sheet: GameSheet, lost: Sequence[LostLine]) -> list[Finding]:
    pattern = "The game has no {what} under `{section}`."
    if sheet.title:
        pattern = "The game `{title}` has no {what} under `{section}`."
    return [
        mistake(
            "G-missing",
            quoting(pattern, title=sheet.title, what=said(each.what), section=each.section),
            sheet.span,
            quoting('Add there a line such as "{example}".', example=each.example),
        )
        for each in _missing_sections(sheet)
        if not any(each.section in line.sections for line in lost)
    ]


def _missing_sections(sheet: GameSheet) -> list[_Needed]:
    return [each for each in _NEEDED if not any(sheet.all_of(each.section, each.kind))]
