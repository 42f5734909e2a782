"""Text → tree. Every mistake of a file is reported in one pass: each line is read for itself."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

import attrs
from lark import UnexpectedInput

from grammar.finding import Finding, Outcome, Severity
from grammar.from_lark import Reader
from grammar.language import parse_sentence
from grammar.layout import SECTIONS, Part, TextLine, decoded, parts
from grammar.mistakes import mistake
from grammar.sentences.base import Node
from grammar.sentences.modifier import Block, Takes
from grammar.span import Span
from grammar.tree import GameSheet, Line, ModifierSheet, RuleFile, Section


def parse_bytes(data: bytes, file: str) -> Outcome[RuleFile]:
    """The tree of a file's bytes, with all mistakes; no value where any of them is an error."""
    text, findings = decoded(data, file)
    return Outcome(None, findings) if findings else parse(text, file)


def parse(text: str, file: str = "(text)") -> Outcome[RuleFile]:
    """The tree of a text, with all mistakes; no value where any of them is an error."""
    found, layout_findings = parts(text, file)
    reading = _Reading(file, list(layout_findings))
    games = tuple(reading.game(part) for part in found if part.kind == "game")
    modifiers = tuple(reading.modifier(part) for part in found if part.kind == "modifier")
    findings = tuple(sorted(reading.findings, key=lambda finding: (finding.place.line, finding.place.column)))
    errors = any(finding.severity is Severity.ERROR for finding in findings)
    return Outcome(None if errors else RuleFile(file, games, modifiers), findings)


def parse_line(section: str, text: str, file: str = "(line)") -> Outcome[Node]:
    """One sentence of a section by itself."""
    reading = _Reading(file, [])
    line = reading.line(section, TextLine(1, 0, text), {})
    return Outcome(line.sentence if line else None, tuple(reading.findings))


class _Reading:
    """Reads the lines of one file and collects what is wrong with them."""

    def __init__(self, file: str, findings: list[Finding]) -> None:
        self._file = file
        self.findings = findings

    def game(self, part: Part) -> GameSheet:
        head = self._lines("head", part.head)
        by_name: dict[str, Section] = {}
        for name, heading, body in part.sections:
            lines = self._lines(name, body)
            before = by_name.get(name)
            if before:
                by_name[name] = attrs.evolve(before, lines=before.lines + lines, notes=before.notes + heading.notes)
            else:
                by_name[name] = Section(name, lines, heading.notes)
        sections = tuple(by_name[name] for name in SECTIONS if name in by_name)
        span = part.heading.span(self._file)
        return GameSheet(part.title, head, sections, span, part.heading.notes, part.closing_notes)

    def modifier(self, part: Part) -> ModifierSheet:
        parameters = self._parameters(part.head)
        lines: list[Line] = []
        block: list[Line] | None = None
        opened: Block | None = None
        opened_indent = 0
        for text_line in part.head:
            if opened is not None and block is not None and text_line.indent > opened_indent:
                inner = self.line(opened.section, text_line, parameters)
                block.extend([inner] if inner else [])
                continue
            self._close(lines, block)
            line = self.line("modifier", text_line, parameters)
            opened = line.sentence if line and isinstance(line.sentence, Block) else None
            block = [] if opened else None
            opened_indent = text_line.indent
            lines.extend([line] if line else [])
        self._close(lines, block)
        span = part.heading.span(self._file)
        return ModifierSheet(part.title, tuple(lines), span, part.heading.notes, part.closing_notes)

    def _close(self, lines: list[Line], block: list[Line] | None) -> None:
        if block is None:
            return
        lines[-1] = attrs.evolve(lines[-1], block=tuple(block))
        if not block:
            title = f"`{lines[-1].sentence.words()}` has no lines below it."
            hint = "Write the lines that it means below it, further in."
            self.findings.append(Finding("L-block", Severity.ERROR, title, lines[-1].span, hint))

    def _lines(self, section: str, body: Sequence[TextLine]) -> tuple[Line, ...]:
        read = (self.line(section, text_line, {}) for text_line in body)
        return tuple(line for line in read if line)

    def _parameters(self, body: Sequence[TextLine]) -> dict[str, str]:
        """The parameters that the modifier takes, each with a value to read its lines with."""
        found: dict[str, str] = {}
        for text_line in body:
            if re.match(r"takes\b", text_line.text, re.IGNORECASE):
                try:
                    tree = parse_sentence("modifier", text_line.text)
                except UnexpectedInput:
                    continue
                takes = Reader(text_line.span(self._file), lambda column: column, {}).node(tree)
                if isinstance(takes, Takes):
                    found[takes.parameter] = takes.usually.words()
        return found

    def line(self, section: str, text_line: TextLine, parameters: Mapping[str, str]) -> Line | None:
        """The line as a sentence of the section, or None and a finding more."""
        span = text_line.span(self._file)
        text, marks, column_of = _filled_in(text_line.text, parameters)
        try:
            tree = parse_sentence(section, text)
        except UnexpectedInput as error:
            self.findings.append(mistake(error, section, text, span, lambda c: text_line.indent + column_of(c)))
            return None
        reader = Reader(span, lambda column: text_line.indent + column_of(column), marks)
        node = attrs.evolve(reader.node(tree), span=span)
        return Line(node, text_line.notes)


def _filled_in(text: str, parameters: Mapping[str, str]) -> tuple[str, dict[int, str], Callable[[int], int]]:
    """The text with each parameter's value in its place, where they stand, and a column's old place."""
    if not parameters or re.match(r"takes\b", text, re.IGNORECASE):
        return text, {}, lambda column: column
    pieces: list[str] = []
    marks: dict[int, str] = {}
    shifts: list[tuple[int, int]] = []
    written = 0
    pattern = re.compile(r"(?<![\w\"'-])(" + "|".join(map(re.escape, parameters)) + r")(?![\w\"'-])")
    for match in pattern.finditer(text):
        pieces.append(text[written : match.start()])
        value = parameters[match.group()]
        column = sum(map(len, pieces)) + 1
        marks[column] = match.group()
        shifts.append((column + len(value), len(value) - len(match.group())))
        pieces.append(value)
        written = match.end()
    pieces.append(text[written:])
    return "".join(pieces), marks, lambda column: column - sum(by for after, by in shifts if column >= after)
