"""Sentences of the head: for whom, what it practises, whose it is."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Name, Node, Quantity, spoken


@frozen
class Ages(Node):
    """Such as "ages 8 to 12", in years."""

    least: Quantity
    most: Quantity

    def words(self) -> str:
        return spoken("ages", self.least, "to", self.most)


@frozen
class Practice(Node):
    """One thing that the game practises, in the author's words."""

    text: str

    def words(self) -> str:
        return self.text


@frozen
class Skills(Node):
    """Such as "skills overarm throw, catch"."""

    practised: tuple[Practice, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        return "skills " + ", ".join(practice.words() for practice in self.practised)


@frozen
class Licence(Node):
    """Such as "licence CC-BY-4.0": an identifier of the SPDX licence list."""

    identifier: str

    def words(self) -> str:
        return spoken("licence", self.identifier)


@frozen
class NeedsLanguage(Node):
    """Such as "needs language 2": a program that knows only earlier ones does not read the sheet (edition.py)."""

    number: Quantity

    def words(self) -> str:
        return spoken("needs language", self.number)


@frozen
class Switch(Node):
    """Such as "switch hits count, usually off": a choice that the game leaves to the class."""

    name: Name
    usually: str

    def words(self) -> str:
        return spoken("switch", self.name) + f", {self.usually}"

    @property
    def on(self) -> bool:
        return self.usually == "usually on"


@frozen
class Switched(Node):
    """Such as "with hits count, ...": a sentence that holds while a switch is on."""

    name: Name
    sentence: Node

    def words(self) -> str:
        return f"with {self.name.words()}, {self.sentence.words()}"


@frozen
class SwitchedOff(Switched):
    """Such as "not with hits count, ...": a sentence that holds while a switch is off."""

    def words(self) -> str:
        return f"not with {self.name.words()}, {self.sentence.words()}"


@frozen
class Told(Node):
    """Free text under one of the words credit, about, cue, outcomes, caution."""

    topic: str
    text: str

    def words(self) -> str:
        return f'{self.topic} "{self.text}"'


@frozen
class Caution(Node):
    """A line of the section care: what to mind so that nobody is hurt."""

    text: str

    def words(self) -> str:
        return f'"{self.text}"'
