"""One pass over a sheet: its lines by number, the values found in them, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable
from fractions import Fraction
from typing import Any, TypeVar

from attrs import define, evolve, field

from grammar.core.declared import Court, Cut
from grammar.core.game import Line
from grammar.core.reading.sheet.articles import nodes, refuse_senseless
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.told import holds_anyway
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import SwitchId
from grammar.finding import Correction, Finding, mistake
from grammar.game import Game
from grammar.meanings import GRANTED_WORDS, Meaning
from grammar.said import SAY, english, quoting, to_write
from grammar.sentences import head, play, sides, space
from grammar.sentences.base import Name, Node
from grammar.tree import GameSheet

SECTIONS = ("head", "space", "sides", "kit", "set-up", "play", "when", "finish", "care")
Value = TypeVar("Value")
Said = TypeVar("Said", bound=Node)


@define
class Reading:
    """What has been read so far. `hanging` is what hangs on a switch, whether it is on or not; `refused` is what is
    declared by a line that means nothing: of what speaks of it no more is said."""

    reader: Reader
    lines: list[Line] = field(factory=list)
    sentences: list[tuple[Node, int]] = field(factory=list)
    found: dict[type[Any], list[Any]] = field(factory=dict)
    hanging: dict[tuple[SwitchId, bool], list[Any]] = field(factory=dict)  # by whether it holds with the switch
    findings: list[Finding] = field(factory=list)
    refused: list[Meaning] = field(factory=list)

    def number(self, sheet: GameSheet) -> None:
        """Give every line of a sheet its number."""
        self.sentences.clear()
        for section in SECTIONS:
            for line in sheet.lines(section):
                sentence, switch, without = line.sentence, None, isinstance(line.sentence, head.SwitchedOff)
                if isinstance(sentence, head.Switched):
                    switch, sentence = SwitchId(sentence.name.text), sentence.sentence
                read = not isinstance(sentence, play.SaidRule) or holds_anyway(sentence)
                granted, words = self.reader.granted, line.sentence.words()
                self.sentences.append((sentence, len(self.lines)))
                self.lines.append(Line(len(self.lines), section, words, line.span, granted, switch, read, without))

    def number_granted(self, sheet: GameSheet, fixed: Container[str]) -> None:
        """The same of the sheet that holds where the game says nothing else; `fixed` is what of the kit never falls."""
        reader = self.reader
        reader.granted = True
        reader.kinds = [evolve(kind, fixed=kind.like.key in fixed) for kind in reader.kinds]
        reader.game = evolve(reader.game, vocabulary={**reader.game.vocabulary, **GRANTED_WORDS})
        self.number(sheet)

    def holds(self, line: int) -> bool:
        """Whether a line holds: it hangs on no switch, or on one that is on, or off where it holds without it."""
        said = self.lines[line]
        return said.switch is None or bool(self.reader.game.switches.get(said.switch.key)) != said.without

    def all_of(self, kind: type[Said]) -> list[tuple[Said, int]]:
        """The sentences of a kind with their lines, those that hang on a switch, too."""
        return [(sentence, line) for sentence, line in self.sentences if isinstance(sentence, kind)]

    def add(self, sentence: Said, line: int, read: Callable[[Reader, Said, int], Iterable[Value]]) -> tuple[Value, ...]:
        """What a sentence says; where it means nothing, one more mistake (of the sheet's own lines).

        The values of a line that hangs on a switch which is off are kept beside the others and not given back.
        """
        try:
            if not self.reader.granted:
                refuse_senseless(self.reader.game, sentence, self.lines[line].section)
            values = tuple(read(self.reader, sentence, line))
        except Senseless as wrong:
            if not self.reader.granted and not self._speaks_of_refused(sentence):
                self.findings.append(_mistake(wrong, self.lines[line]))
            if isinstance(sentence, sides.Role | sides.Kit | space.Area | space.Track):
                self.refused.append(self.reader.game.meaning(sentence.name))
            return ()
        switch = self.lines[line].switch
        if switch is not None:
            self.hanging.setdefault((switch, not self.lines[line].without), []).extend(values)
        if not self.holds(line):
            return ()
        for value in values:
            self.found.setdefault(type(value), []).append(value)
        return values

    def _speaks_of_refused(self, sentence: Node) -> bool:
        names = (each for each in nodes(sentence) if isinstance(each, Name))
        return any(self.reader.game.vocabulary.get(each.text) in self.refused for each in names)

    def of(self, kind: type[Value]) -> tuple[Value, ...]:
        """All values of a kind, each once, with all lines that say so."""
        merged: dict[Value, Value] = {}
        for value in self.found.get(kind, ()):
            before = merged.get(value)
            merged[value] = value if before is None else _with_lines(before, value)
        return tuple(merged.values())


def numbered(game: Game) -> Reading:
    """The sheet's own lines, of which none is read yet."""
    reading = Reading(Reader(game, Court(Fraction(0), Fraction(0), Cut.WHOLE)))
    reading.number(game.sheet)
    return reading


def _mistake(wrong: Senseless, line: Line) -> Finding:
    """A phrase that means nothing, with the line in which the other phrase stands instead of it."""
    place = wrong.node.span if wrong.node.span.line else line.span
    better = to_write(wrong.hint)
    if better is None:
        return mistake("G-sense", wrong.title, place, wrong.hint)
    phrase, instead = wrong.node.words(), english(better).split(", or ")[0].removesuffix(".")
    meant = (Correction(line.span, line.words.replace(phrase, instead, 1)),) if phrase in line.words else ()
    return mistake("G-sense", wrong.title, place, quoting(SAY, line=better), corrections=meant)


def _with_lines(one: Any, other: Any) -> Any:
    return evolve(one, lines=tuple(dict.fromkeys((*one.lines, *other.lines))))
