"""The lines of a sheet whose names all mean something, and what is wrong with the others."""

from __future__ import annotations

import re
from collections.abc import Mapping

import attrs

from grammar.finding import Finding
from grammar.meanings import Meaning
from grammar.resolve.names import name_findings
from grammar.sentences.base import Node
from grammar.tree import GameSheet, Line

_UNKNOWN = re.compile(r"Nothing here is called `(.+?)`")


def with_known_names(sheet: GameSheet, meanings: Mapping[str, Meaning]) -> tuple[GameSheet, list[Finding]]:
    """The sheet without the lines that hold unknown names, and one finding for each such name or line."""
    findings: dict[str, Finding] = {}

    def known(section: str, lines: tuple[Line, ...]) -> tuple[Line, ...]:
        kept = []
        for line in lines:
            wrong = _wrong(section, line.sentence, meanings)
            for finding in wrong:
                before = findings.get(_about(finding))
                others = (*before.others, finding.place) if before else ()
                findings[_about(finding)] = attrs.evolve(before or finding, others=others)
            kept += [] if wrong else [line]
        return tuple(kept)

    head = known("head", sheet.head)
    sections = tuple(attrs.evolve(part, lines=known(part.name, part.lines)) for part in sheet.sections)
    found = [_with_declarations(finding, sheet) for finding in findings.values()]
    return attrs.evolve(sheet, head=head, sections=sections), found


def _wrong(section: str, sentence: Node, meanings: Mapping[str, Meaning]) -> list[Finding]:
    """What is wrong with the names of a sentence, with what each may have been meant to be."""
    wrong = list(name_findings(sentence, meanings))
    if not wrong:
        return []
    from grammar.resolve.reworded import renamed, reworded  # loaded only where a name means nothing

    better = reworded(section, sentence, meanings)
    return [attrs.evolve(each, corrections=(*better, *renamed(sentence, each.place, meanings))) for each in wrong]


def _with_declarations(finding: Finding, sheet: GameSheet) -> Finding:
    """The finding with what may be wrong where the name is declared."""
    from grammar.resolve.reworded import declared_otherwise

    name = unknown_name(finding)
    more = declared_otherwise(sheet, name) if name else ()
    return attrs.evolve(finding, corrections=(*finding.corrections, *more))


def unknown_name(finding: Finding) -> str:
    """The name of which a finding says that it means nothing, or ""."""
    unknown = _UNKNOWN.match(finding.title)
    return unknown.group(1) if unknown else ""


def _about(finding: Finding) -> str:
    """What a finding speaks of: a name unknown in ten lines, in singular or plural, is one mistake."""
    name = re.search(r"`(.+?)s?`", finding.title)
    if finding.code != "G-unknown" or finding.corrections or not name:
        return str(finding.place)
    return name.group(1)
