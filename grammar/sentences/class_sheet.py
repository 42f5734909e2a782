"""Sentences of a class: how many pupils, in which hall, for how long, with what in the cupboard."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.sentences.base import Node, Quantity, spoken


@frozen
class ClassSize(Node):
    """Such as "class of 27"."""

    pupils: Quantity

    def words(self) -> str:
        return spoken("class of", self.pupils)


@frozen
class InHall(Node):
    """Such as "in the hall "Fellgate school sports hall"": a hall of the library."""

    hall: str

    def words(self) -> str:
        return f'in the hall "{self.hall}"'


@frozen
class Lesson(Node):
    """Such as "lesson of 45 min"."""

    time: Quantity

    def words(self) -> str:
        return spoken("lesson of", self.time)


@frozen
class GettingReady(Node):
    """Such as "setting up takes 4 min": what the class's teacher measured instead of the norm."""

    what: str
    time: Quantity

    def words(self) -> str:
        return spoken(self.what, self.time)
