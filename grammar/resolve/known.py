"""The lines of a sheet whose names all mean something, and what is wrong with the others."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Set
from functools import lru_cache

import attrs

from grammar.finding import Correction, Finding
from grammar.layout import SECTIONS
from grammar.meanings import CategoryMeaning, KitMeaning, Meaning
from grammar.resolve.names import name_findings, names_of
from grammar.resolve.vocabulary import Vocabulary
from grammar.sentences.base import Node
from grammar.span import Row, Span
from grammar.tree import GameSheet, Line

_UNKNOWN = re.compile(r"Nothing here is called `(.+?)`")


_NO_KIND = "G-area-kind"
MOST_MEANT = 24  # wrong names of which it is sought what was meant: twice as many as are advised where there are more
_NOTHING_KNOWN = ("G-twice", "G-name", "G-unknown", "G-unknown-kit", _NO_KIND)  # of what a line declares
WithKnownNames = tuple[GameSheet, list[Finding]]
_Meanings = tuple[tuple[str, Meaning], ...]


def with_known_names(sheet: GameSheet, meanings: Mapping[str, Meaning]) -> WithKnownNames:
    """The sheet without the lines that hold unknown names, and one finding for each such name or line."""
    findings: dict[str, Finding] = {}
    fixed = tuple(meanings.items())

    def known(section: str, lines: tuple[Line, ...]) -> tuple[Line, ...]:
        kept = []
        for line in lines:
            sentence = line.sentence
            sought = len(findings) < MOST_MEANT
            wrong = [
                attrs.evolve(each, corrections=names_meant(section, sentence, sentence.span, each.place, fixed))
                if sought
                else each
                for each in name_findings(sentence, meanings)
            ]
            for finding in wrong:
                about = _about(finding) if sought else str(finding.place)
                before = findings.get(about)
                others = (*before.others, finding.place) if before else ()
                findings[about] = attrs.evolve(before or finding, others=others)
            kept += [] if wrong else [line]
        return tuple(kept)

    head = known("head", sheet.head)
    sections = tuple(attrs.evolve(part, lines=known(part.name, part.lines)) for part in sheet.sections)
    if not findings:
        return sheet, []
    return attrs.evolve(sheet, head=head, sections=sections), _with_declarations(findings.values(), sheet)


def without_unsure(
    known: GameSheet, sheet: GameSheet, words: Vocabulary, misread: Set[Row]
) -> tuple[GameSheet, frozenset[str]]:
    """The known lines without those that speak of what a wrong or misread line declares, and what these declare."""
    if known is sheet and not words.findings and not misread:
        return known, frozenset()
    lines = {line.span.row: line for part in _parts(sheet) for line in sheet.lines(part)}
    slips = [each for each in words.findings if each.corrections and each.code != _NO_KIND]
    unlike = [each for each in words.findings if each.code in _NOTHING_KNOWN and each not in slips]
    wrong = {place.row for each in unlike for place in (each.place, *each.others)} | misread
    wrong |= lines.keys() - {line.span.row for part in _parts(known) for line in known.lines(part)}
    unsure, more = frozenset[str](), wrong
    kit = {line.span.row for line in sheet.lines("kit")}
    while more:
        unsure |= {name for name, place in words.places.items() if place.row in more}
        if wrong & kit:
            unsure |= _of_no_sure_kit(words, wrong)
        more = {number for number, line in lines.items() if number not in wrong and _names(line.sentence) & unsure}
        wrong |= more
    return (without_lines(known, wrong) if wrong else known), unsure


def _of_no_sure_kit(words: Vocabulary, wrong: Set[Row]) -> frozenset[str]:
    """The words for all kit of a sort, such as "ball", of which there is none on lines that are not wrong."""
    named, kit = words.meanings.items(), [name for name, place in words.places.items() if place.row not in wrong]
    sure = {each.category for each in map(words.meanings.get, kit) if isinstance(each, KitMeaning)}
    return frozenset(name for name, each in named if isinstance(each, CategoryMeaning) and each.category not in sure)


def _parts(sheet: GameSheet) -> tuple[str, ...]:
    return ("head", *(section.name for section in sheet.sections))


def _names(sentence: Node) -> frozenset[str]:
    return frozenset(name.text for _, name in names_of(sentence))


def left_out_of(sheet: GameSheet, known: GameSheet) -> Iterator[tuple[str, Line]]:
    """The lines of a sheet that are not among those of which every name is known, with their sections."""
    for section in SECTIONS:
        kept = {line.span for line in known.lines(section)}
        yield from ((section, line) for line in sheet.lines(section) if line.span not in kept)


def without_lines(sheet: GameSheet, numbers: Set[Row]) -> GameSheet:
    """The sheet without the lines of these numbers."""

    def kept(lines: tuple[Line, ...]) -> tuple[Line, ...]:
        return tuple(line for line in lines if line.span.row not in numbers)

    sections = tuple(attrs.evolve(part, lines=kept(part.lines)) for part in sheet.sections)
    return attrs.evolve(sheet, head=kept(sheet.head), sections=sections)


@lru_cache(maxsize=2_000)
def names_meant(section: str, sentence: Node, line: Span, place: Span, fixed: _Meanings) -> tuple[Correction, ...]:
    """What a sentence may have been meant to be of which a name, at that place, means nothing.

    Kept, for a sheet is read again for every line that may mend it; sentences are the same whatever their line.
    """
    from grammar.resolve.reworded import renamed, reworded  # loaded only where a name means nothing

    meanings = dict(fixed)
    return (*reworded(section, sentence, meanings), *renamed(section, sentence, place, meanings))


def _with_declarations(findings: Collection[Finding], sheet: GameSheet) -> list[Finding]:
    """The findings, each with what may be wrong where its name is declared."""
    if not findings:
        return []
    from grammar.resolve.reworded import declarations, declared_otherwise

    declared = tuple(declarations(sheet))
    found = []
    for finding in findings:
        name = unknown_name(finding)
        more = declared_otherwise(declared, name) if name else ()
        found.append(attrs.evolve(finding, corrections=(*finding.corrections, *more)))
    return found


def unknown_name(finding: Finding) -> str:
    """The name of which a finding says that it means nothing, or ""."""
    unknown = _UNKNOWN.match(finding.title)
    return unknown.group(1) if unknown else ""


def name_in(finding: Finding) -> str:
    """The first name of which a finding speaks, or ""."""
    return name.group(1) if (name := re.search(r"`(.+?)`", finding.title)) else ""


def rows_by_name(findings: Collection[Finding]) -> Mapping[str, list[Row]]:
    """The lines of findings by the first name of which each speaks."""
    found: dict[str, list[Row]] = {}
    for each in findings:
        found.setdefault(name_in(each), []).append(each.place.row)
    return found


def _about(finding: Finding) -> str:
    """What a finding speaks of: a name unknown in ten lines, in singular or plural, is one mistake."""
    name = re.search(r"`(.+?)s?`", finding.title)
    if finding.code != "G-unknown" or finding.corrections or not name:
        return str(finding.place)
    return name.group(1)
