"""Reads the lines of a file one by one: sentences as nodes, what is none as findings."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache, partial
from typing import TYPE_CHECKING

import attrs
from lark import UnexpectedInput

from grammar.belonging import MOST_KEPT, MOST_SHEET_LINES, Values, sentences_of, where_they_belong
from grammar.finding import Correction, Finding, mistake
from grammar.frozen import frozen
from grammar.heard.how_many_at_once import with_how_many_at_once
from grammar.heard.one_clock import with_one_clock
from grammar.heard.said_of_places import with_rules_at_places
from grammar.heard.sides_by_players import with_sides_by_players
from grammar.language import parse_sentence
from grammar.layout import SECTIONS, Part
from grammar.line_reading import LineReader
from grammar.lines import TextLine
from grammar.mistakes.lost import REST, LostLine
from grammar.own_names import NO_NAMES, DeclaredNames, declared_names
from grammar.parameters import Filled, filled_in
from grammar.said import Capital, quoting, write
from grammar.sentences.base import Node
from grammar.span import Span
from grammar.tree import GameSheet, Line, Section

if TYPE_CHECKING:
    from grammar.sentences.modifier import Block

MOST_MISTAKES = 100
MOST_SOUGHT = 20
_Headed = tuple[str, TextLine, tuple[TextLine, ...]]
_OF_OTHER_LINES = ("space", "sides", "kit", "set-up", "when", "finish")
_IN_QUOTES = re.compile(r'"[^"]+"[.;]?')
_LONG_NUMBER = re.compile(r"\d{10}|\d\.\d{7}")


class FileReader:
    """Reads the lines of one file and collects what is wrong with them."""

    def __init__(self, file: str, findings: Iterable[Finding], names: DeclaredNames = NO_NAMES) -> None:
        self._file = file
        self._line_reader = LineReader(file, names)
        self._slips = 0
        self._lines_read = 0
        self._sheet = Span(file, 0, 0, 0)
        self.findings = list(findings)
        self.unread: dict[Span, tuple[LostLine, ...]] = {}

    def _begin(self, part: Part) -> None:
        self._sheet = part.heading.span(self._file)
        self._lines_read = 0
        self._line_reader = LineReader(self._file, declared_names(part), part.kind == "game")

    def game(self, part: Part) -> GameSheet:
        self._begin(part)
        head = self._lines("head", part.head)
        by_name: dict[str, Section] = {}
        placed = with_rules_at_places(part.sections, self._line_reader.names.every, self._is_said)
        for name, heading, body in _quotes_under_play(where_they_belong(self._line_reader, placed)):
            if not name:
                self._lose(*(LostLine(frozenset(SECTIONS), line.text) for line in body))
                continue
            lines = self._lines(name, self._with_others(name, body))
            before = by_name.get(name)
            if before:
                by_name[name] = attrs.evolve(before, lines=before.lines + lines, notes=before.notes + heading.notes)
            else:
                by_name[name] = Section(name, lines, heading.notes)
        sections = tuple(by_name[name] for name in SECTIONS if name in by_name)
        sheet = GameSheet(part.title, head, sections, self._sheet, part.heading.notes, part.closing_notes)
        return with_sides_by_players(sheet, part)

    def plain(self, part: Part) -> tuple[str, tuple[Line, ...], Span, tuple[str, ...], tuple[str, ...]]:
        """The parts of a sheet without sections: title, lines, place, notes, closing notes."""
        from grammar.sentences.modifier import Block  # no game has blocks

        self._begin(part)
        values = self._usual_values(part.head)
        lines: list[Line] = []
        body = list(part.head)
        while body:
            heading = body.pop(0)
            for line in self.lines(part.kind, heading, values):
                opens = isinstance(line.sentence, Block)
                block = self._block(line.sentence, heading, body, values) if opens else ()  # type: ignore[arg-type]
                lines.append(attrs.evolve(line, block=block))
        return part.title, tuple(lines), self._sheet, part.heading.notes, part.closing_notes

    def _block(
        self, block: Block, heading: TextLine, body: list[TextLine], values: Mapping[str, str]
    ) -> tuple[Line, ...]:
        """The lines below a block's heading, taken from `body`: those that stand further in."""
        lines: list[Line] = []
        if body and body[0].indent <= heading.indent and self._belongs(block, body[0], values):
            title = quoting("This line belongs to `{block}` above it.", block=block.words())
            hint = "Write it further in."
            self.findings.append(mistake("L-block", title, body[0].span(self._file), hint))
            body[0] = attrs.evolve(body[0], indent=heading.indent + 1)
        while body and body[0].indent > heading.indent:
            lines += self.lines(block.section, body.pop(0), values)
        if not lines and self._sheet not in self.unread:
            title = quoting("`{block}` has no lines below it.", block=block.words())
            hint = "Write the lines that it means below it, further in."
            self.findings.append(mistake("L-block", title, heading.span(self._file), hint))
        return tuple(lines)

    def _belongs(self, block: Block, line: TextLine, values: Mapping[str, str]) -> bool:
        filled = filled_in(line.text, values).text
        return not _is_sentence("modifier", filled) and _is_sentence(block.section, filled)

    def _is_said(self, section: str, line: TextLine) -> bool:
        return bool(self._line_reader.sentences(section, line, {})[0])

    def _with_others(self, section: str, body: Sequence[TextLine]) -> Sequence[TextLine]:
        """The lines of a section; what one of them says of another stands with that."""
        names, is_sentence = self._line_reader.names.every, partial(self._is_said, section)
        if section == "play":
            return with_how_many_at_once(body, names, is_sentence)
        return with_one_clock(body, names, is_sentence, self._tell_last_word) if section == "finish" else body

    def _tell_last_word(self, line: TextLine, meant: str) -> None:
        """The slip of a line whose last word is another than was meant."""
        start, place = line.text.rfind(" ") + 1, line.span(self._file)
        column = place.column + start
        word = Span(self._file, place.line, column, place.end)
        slip = quoting("`{old}` is written `{new}`", old=line.text[start:], new=meant.rsplit(" ", 1)[1])
        title = quoting("{what}.", what=Capital(slip))
        better = Correction(place, meant, 0.1, "L-sentence", title, word)
        self._wrong(mistake("L-sentence", title, word, write(meant), corrections=(better,)))

    def _lines(self, section: str, body: Sequence[TextLine]) -> tuple[Line, ...]:
        return tuple(line for text_line in body for line in self.lines(section, text_line, {}))

    def _usual_values(self, body: Sequence[TextLine]) -> dict[str, str]:
        """The parameters that the modifier takes, each with a value to read its lines with."""
        from grammar.sentences.modifier import Takes

        found: dict[str, str] = {}
        for text_line in body:
            if not re.match(r"takes?\b", text_line.text, re.IGNORECASE):
                continue
            text = Filled(text_line.text, {})
            if not _is_sentence("modifier", text.text):
                from grammar.mistakes.mended import mended

                meant = mended("modifier", text_line.text, {})
                text = meant.filled if meant else text
            known = _is_sentence("modifier", text.text)
            takes = self._line_reader.meant("modifier", text_line, text) if known else None
            if isinstance(takes, Takes) and takes.parameter in found:
                title = quoting("`{parameter}` is taken twice.", parameter=takes.parameter)
                hint = "Give one of the two another name."
                self.findings.append(mistake("L-twice", title, text_line.span(self._file), hint))
            if isinstance(takes, Takes):
                found[takes.parameter] = takes.usually.words()
        return found

    def lines(self, section: str, text_line: TextLine, values: Mapping[str, str]) -> tuple[Line, ...]:
        """The sentences of a line; none, and a finding more, where they cannot even be guessed."""
        self._lines_read += 1
        place = text_line.span(self._file)
        if self._lines_read > MOST_SHEET_LINES or self._slips >= MOST_MISTAKES:
            if self._lines_read == MOST_SHEET_LINES + 1:
                self._wrong(_too_long(place), REST)
            return ()
        if _LONG_NUMBER.search(re.sub(r'"[^"]*"', "", filled_in(text_line.text, values).text)):
            self._wrong(_long_number(place), LostLine(frozenset((section,)), text_line.text))
            return ()
        said = line_said(self._line_reader, section, text_line, tuple(values.items()), self._slips < MOST_SOUGHT)
        for wrong, lost in said.mistakes:
            self._wrong(wrong, lost)
        return tuple(Line(each, text_line.notes if at == 0 else ()) for at, each in enumerate(said.sentences))

    def _wrong(self, finding: Finding, lost: LostLine | None = None) -> None:
        self._slips += 1
        self.findings.append(finding)
        if lost:
            self._lose(lost)
        if self._slips == MOST_MISTAKES:
            self._lose(REST)
            title = quoting(
                "This file has {most} mistakes and more; the rest of it is not read.",
                most=MOST_MISTAKES,
            )
            hint = "Mend these first, or take another file."
            self.findings.append(mistake("L-many", title, Span(self._file, 0, 0, 0), hint))

    def _lose(self, *lines: LostLine) -> None:
        self.unread[self._sheet] = (*self.unread.get(self._sheet, ()), *lines)


def _quotes_under_play(sections: Iterable[_Headed]) -> Iterator[_Headed]:
    """The sections with their lines in quotes under play: wherever they stand, they are for people."""
    quotes: tuple[TextLine, ...] = ()
    for name, heading, body in sections:
        moved = tuple(line for line in body if name in _OF_OTHER_LINES and _IN_QUOTES.fullmatch(line.text))
        quotes += moved
        yield name, heading, tuple(line for line in body if line not in moved)
    if quotes:
        yield "play", TextLine(quotes[0].number, 0, "play"), quotes


@frozen
class _Said:
    """What one line says, and what is wrong with it, each with what is lost by it."""

    sentences: tuple[Node, ...]
    mistakes: tuple[tuple[Finding, LostLine | None], ...] = ()


@lru_cache(maxsize=MOST_KEPT)
def line_said(reader: LineReader, section: str, line: TextLine, values: Values, seek: bool) -> _Said:
    """The sentences of a line; none, and a mistake more, where they cannot even be guessed.

    Kept, for a sheet is read again for every line that may mend it, and by whoever writes for every letter typed.
    """
    sentences, mistake = sentences_of(reader, section, line, values)
    if sentences:
        return _Said(sentences, ((mistake, None),) if mistake else ())
    from grammar.mistakes.guessed import guessed  # what mends lines is loaded only where one is to be mended

    meant, (first, *later), lost = guessed(reader, section, line, values, seek)
    return _Said(meant, ((first, lost), *((each, None) for each in later)))


def _is_sentence(section: str, text: str) -> bool:
    try:
        parse_sentence(section, text)
    except UnexpectedInput:
        return False
    return True


def _too_long(place: Span) -> Finding:
    title = quoting(
        "A game or modifier has at most {most} lines; what follows is not read.",
        most=MOST_SHEET_LINES,
    )
    return mistake("L-long", title, place, "A rule sheet is a page or two: keep what players need.")


def _long_number(span: Span) -> Finding:
    title = "This line has a number longer than any game needs."
    return mistake("L-number", title, span, "Write at most 9 digits, and at most 6 behind the point.")
