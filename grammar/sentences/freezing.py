"""Players who freeze where they are."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Quantity, spoken
from grammar.sentences.then import Who, agree


@frozen
class Freezes(Node):
    """Such as "that player freezes": where they are, till somebody frees them."""

    who: Who
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, agree(self.who, "freezes", "freeze"))


@frozen
class FrozenBack(Node):
    """Such as "whoever is frozen is free after 30 s": each by themselves."""

    time: Quantity | str

    def words(self) -> str:
        return spoken("whoever is frozen is free after", self.time)
