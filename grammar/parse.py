"""Text → tree. Every mistake of a file is reported in one pass: each line is read for itself."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.edition import too_new
from grammar.finding import Finding, Outcome, Severity
from grammar.frozen import field, frozen
from grammar.layout import parts
from grammar.lines import TextLine, decoded
from grammar.mistakes.lost import LostLine
from grammar.own_names import NO_NAMES, DeclaredNames
from grammar.reading import FileReader
from grammar.sentences.base import Node
from grammar.span import Span
from grammar.tree import ClassSheet, HallSheet, ModifierSheet, RemixSheet, RuleFile


@frozen
class Reading:
    """All that could be read of a file, mended lines as they were probably meant.

    `unread` has the sheets of which lines could not be read or guessed, with those lines.
    """

    rules: RuleFile
    findings: tuple[Finding, ...]
    unread: Mapping[Span, tuple[LostLine, ...]] = field(factory=dict)


def parse_bytes(data: bytes, file: str) -> Outcome[RuleFile]:
    """The tree of a file's bytes, with all mistakes; no value where any of them is an error."""
    text, findings = decoded(data, file)
    return Outcome(None, findings) if findings else parse(text, file)


def parse(text: str, file: str = "(text)") -> Outcome[RuleFile]:
    """The tree of a text, with all mistakes; no value where any of them is an error."""
    reading = read(text, file)
    errors = any(finding.severity is Severity.ERROR for finding in reading.findings)
    return Outcome(None if errors else reading.rules, reading.findings)


def read(text: str, file: str = "(text)") -> Reading:
    """What a text says, with every mistake; nothing but that it is too new where it is."""
    newer = too_new(text, file)
    if newer:
        return Reading(RuleFile(file, (), ()), (newer,))
    found, layout_findings = parts(text, file)
    reader = FileReader(file, layout_findings)
    games = tuple(reader.game(part) for part in found if part.kind == "game")
    modifiers = tuple(ModifierSheet(*reader.plain(part)) for part in found if part.kind == "modifier")
    remixes = tuple(RemixSheet(*reader.plain(part)) for part in found if part.kind == "remix")
    classes = tuple(ClassSheet(*reader.plain(part)) for part in found if part.kind == "class")
    halls = tuple(HallSheet(*reader.plain(part)) for part in found if part.kind == "hall")
    findings = sorted(reader.findings, key=lambda finding: (finding.place.line, finding.place.column))
    return Reading(RuleFile(file, games, modifiers, remixes, classes, halls), tuple(findings), reader.unread)


def parse_line(section: str, text: str, file: str = "(line)", names: DeclaredNames = NO_NAMES) -> Outcome[Node]:
    """One sentence of a section by itself; `names` are those that its sheet declares."""
    reader = FileReader(file, (), names)
    lines = reader.lines(section, TextLine(1, 0, text), {})
    return Outcome(lines[0].sentence if lines and not reader.findings else None, tuple(reader.findings))
