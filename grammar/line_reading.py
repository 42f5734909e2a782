"""One line → its sentences: as it stands, with its names masked, or in the words of the language for what was said."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from functools import cache

import attrs
from lark import UnexpectedInput

from grammar.finding import Finding, mistake
from grammar.from_lark import Reader
from grammar.frozen import frozen
from grammar.heard.words import in_words_of_the_language
from grammar.language import parse_sentence
from grammar.layout import SECTIONS
from grammar.lines import TextLine
from grammar.meanings import AREA_KINDS, EVERYBODY, GRANTED_WORDS, built_in
from grammar.mistakes.near_names import near_names, turning_words
from grammar.own_names import NO_NAMES, NO_NAMES_OF_SIDES, DeclaredNames, Masked, holds, ways_to_mask
from grammar.parameters import Filled, filled_in
from grammar.said import listed, quoting
from grammar.sentences.base import FROZEN, Name, Node, OwnerName
from grammar.sentences.head import Switched
from grammar.sentences.lives import HasLives
from grammar.sentences.play import SaidRule
from grammar.sentences.sides import Kit, Role, Sides
from grammar.sentences.space import Area
from grammar.span import Span
from grammar.words import plural

_KNOWN, _NEAR, _SHORT = range(3)  # what is asked of names: to be known, to be near to one, or to be one of few words
_NAMES_ARE_KNOWN = ("space", "set-up", "play", "when", "finish")  # sections in which every name was declared before


_DECLARING = (Area, Kit, Role, Sides, SaidRule)
_IN_NO_NAME = frozenset(("per", "each", "every", "against", "versus", "vs"))
_NO_OWNERS = ("team", "child", "pupil", "kid")
_IN_NO_CUPBOARD = ("players", "children", "pupils", "kids", "students", "year-olds", "year olds", "years old",
                   "years", "minutes", "mins", "hour", "hours")  # fmt: skip


@cache
def _of_every_sheet() -> frozenset[str]:
    return frozenset((*built_in(), *AREA_KINDS, *map(plural, AREA_KINDS)))


def _names_in(node: Node) -> Iterator[str]:
    """Every name of a sentence but those of things that it says itself what they are, and of a switch."""
    if isinstance(node, Switched):
        node = node.sentence
    for field in attrs.fields(type(node)):
        value = getattr(node, field.name)
        for part in value if isinstance(value, tuple) else (value,):
            if isinstance(part, Name):
                yield part.text
            elif isinstance(part, Node):
                yield from _names_in(part)


class _WholeLine(Reader):
    """Reads a line that stands otherwise in the file: every piece has the place of the line."""

    def _stretch(self, start: int, end: int) -> Span:
        return self._line


@frozen
class LineReader:
    """Reads single lines of a sheet that declares these names; `in_a_game`: all that it speaks of it declares."""

    file: str
    names: DeclaredNames = NO_NAMES
    in_a_game: bool = False

    def sentences(self, section: str, line: TextLine, values: Mapping[str, str]) -> tuple[list[Node], Finding | None]:
        """What a line says: nothing where it is no sentence; with a mistake where it can be read in two ways."""
        for text in self._as_said(section, line.text):
            readings = self._readings(section, line, values, text)
            if readings and self.knows_all(section, readings[0]):
                return readings[:1], self._two_ways(readings, line)
        heard = self._heard(section, line, values)
        if heard:
            return heard, None
        readings = self._readings(section, line, values, line.text)
        if not readings:
            near = self._heard(section, line, values, _NEAR)
            return near or (self._heard(section, line, values, _SHORT) if section == "when" else []), None
        return readings[:1], self._two_ways(readings, line)

    def _as_said(self, section: str, text: str) -> Iterator[str]:
        """The line in the language's words, as it stands, and with names in full: only if the others are none."""
        if not self.in_a_game or section not in _NAMES_ARE_KNOWN:
            yield text
            return
        text = self._touched(section, text)
        plain = dict.fromkeys((in_words_of_the_language(section, text, self.names.every), text))
        yield from plain
        yield from (full for each in plain if (full := self.names.in_full(each)) not in plain)

    def _touched(self, section: str, text: str) -> str:
        """The text where who is caught and is no ball is touched."""
        if section != "when" or not self.in_a_game or "caught" not in text:
            return text
        people = "|".join(("player", *map(re.escape, self.names.people)))
        return re.sub(rf"\b(an?|the|any|each|every) ({people}) (is|gets) caught\b", r"\1 \2 \3 touched", text)

    def _heard(self, section: str, line: TextLine, values: Mapping[str, str], asked: int = _KNOWN) -> list[Node]:
        """What a line says in other words than those of the language; `asked` of its names as `knows_all` has it."""
        from grammar.heard.heard import (
            heard,  # turns of phrase are loaded only where a line is no sentence as it stands
        )

        def is_sentence(text: str) -> bool:
            readings = self._readings(section, line, values, text)
            return len(readings) == 1 and self.knows_all(section, readings[0], asked)

        said_so = self._touched(section, line.text)
        full = self.names.in_full(said_so) if self.in_a_game and section in _NAMES_ARE_KNOWN else said_so
        said = heard(section, said_so, self.names.every, is_sentence)
        said = said or (heard(section, full, self.names.every, is_sentence) if full != said_so else ())
        return [self._readings(section, line, values, text)[0] for text in said]

    def knows_all(self, section: str, sentence: Node, asked: int = _KNOWN) -> bool:
        """Whether all names of a sentence mean something, as far as that is known: "both halves" is no name.

        Asked to be `_NEAR`, a bench of which no line says where it is, or the like, does, and so does a slip of a name;
        asked to be `_SHORT`, so does any name of one word, which is told as unknown where the game is resolved.
        """
        if isinstance(sentence, Sides):
            said = [name.text for name in sentence.names]
            return not any(name.endswith(NO_NAMES_OF_SIDES) or _IN_NO_NAME & {*name.split()} for name in said)
        if isinstance(sentence, Kit) and _IN_NO_NAME & {*sentence.name.text.split()}:
            return False
        if section == "class" and isinstance(sentence, Kit):
            return not sentence.name.text.endswith(_IN_NO_CUPBOARD)
        if isinstance(sentence, Kit | Role) and isinstance(sentence.owner, OwnerName):
            return sentence.owner.name.text not in _NO_OWNERS
        if isinstance(sentence, HasLives) and sentence.who.name.text == "others":
            return False
        if not self.in_a_game or section not in _NAMES_ARE_KNOWN:
            return True
        names = (name.removeprefix(FROZEN) for name in _names_in(sentence))
        return all(
            name in _of_every_sheet()
            or name in GRANTED_WORDS
            or (name in EVERYBODY and re.search(rf"\b{name} (?:wins|loses)\b", sentence.words()))
            or self._declares(name)
            or (asked >= _NEAR and self._near(name))
            or (asked >= _SHORT and " " not in name)
            for name in names
        )

    def _near(self, name: str) -> bool:
        """Whether a name is of a sort of place, or a slip of one that is declared."""
        return name.rsplit(maxsplit=1)[-1] in AREA_KINDS or bool(near_names(name, self.names.every, 1))

    def unknown(self, section: str, sentence: Node) -> list[str]:
        """The names of a sentence that mean nothing, as far as that is known."""
        if not self.in_a_game or section not in _NAMES_ARE_KNOWN or self.knows_all(section, sentence):
            return []
        return [name for name in _names_in(sentence) if not self._declares(name)]

    def may_mean(self, name: str) -> bool:
        """Whether an unknown name is near to one that means something."""
        return bool(near_names(name, (*_of_every_sheet(), *self.names.every), 1)) and not turning_words(name)

    def _declares(self, name: str) -> bool:
        one = name.removesuffix("s")
        an_area = any(f"{one} {kind}" in self.names.every for kind in AREA_KINDS)
        return an_area or name in self.names.every or one.removesuffix(" player") in self.names.every

    def section_of(self, section: str, line: TextLine) -> str:
        """Of a line that is no sentence of its section: the one other section of a game of which it is; else its own.

        What is there, and who plays, is said where names are declared: nearly any few words could say it.
        """
        if not self.in_a_game or section not in SECTIONS:
            return section
        found = [other for other in SECTIONS if other not in (section, "care")
                 if (read := self.sentences(other, line, {})[0]) and len(read) == 1
                 if not isinstance(read[0], _DECLARING) and self.knows_all(other, read[0])]  # fmt: skip
        return found[0] if len(found) == 1 else section

    def meant(self, section: str, line: TextLine, filled: Filled, names: Sequence[str] = ()) -> Node:
        """A line as it was meant: its pieces have no places of their own."""
        span = line.span(self.file)
        tree = parse_sentence(section, filled.text)
        node: Node = _WholeLine(span, lambda column: column, filled.parameters, names).node(tree)
        return attrs.evolve(node, span=span)

    def _readings(self, section: str, line: TextLine, values: Mapping[str, str], text: str) -> list[Node]:
        """What a text says; more than one where a name of the sheet can be taken for words of the language."""
        filled = filled_in(text, values)
        otherwise = text != line.text
        found = list(self._read(section, line, filled, Masked(filled.text), (), otherwise))
        own = self.names.own if found else (*self.names.own, *self.names.begun)
        if not found or holds(filled.text, own):
            for masked, names in ways_to_mask(filled.text, own):
                more = self._read(section, line, filled, masked, names, otherwise)
                found += [each for each in more if each not in found]
        return found

    def _read(
        self, section: str, line: TextLine, filled: Filled, masked: Masked, names: tuple[str, ...], otherwise: bool
    ) -> Iterator[Node]:
        span = line.span(self.file)

        def column(number: int) -> int:
            return line.indent + filled.column(masked.column(number))

        kind = _WholeLine if otherwise else Reader
        parameters = {masked.shown(at): name for at, name in filled.parameters.items()}
        with suppress(UnexpectedInput):
            node: Node = kind(span, column, parameters, names).node(parse_sentence(section, masked.text))
            yield attrs.evolve(node, span=span)

    def _two_ways(self, readings: Sequence[Node], line: TextLine) -> Finding | None:
        if len(readings) < 2:
            return None
        title = "This line can be read in two ways: a name in it is a word of the language, too."
        said = listed((f"`{each.words()}`" for each in readings[:2]), "or")
        hint = quoting("Give it another name, or write {readings}.", readings=said)
        return mistake("L-two-ways", title, line.span(self.file), hint)
