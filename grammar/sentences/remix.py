"""Sentences of a remix: what it is based on, and the modifiers it uses, in order.

Its own edits are sentences of a modifier, and are carried out after all modifiers.
"""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Quantity, detail, spoken


@frozen
class BasedOn(Node):
    """Such as "based on "Lantern Row", whose content is "5f0c..."": the content hash says which text was meant."""

    base: str
    content: str | None = None

    def words(self) -> str:
        content = f'whose content is "{self.content}"' if self.content else ""
        return f'based on "{self.base}"' + detail(content)


@frozen
class Setting(Node):
    """Such as "n 3": the value of a modifier's parameter."""

    parameter: str
    value: Quantity

    def words(self) -> str:
        return spoken(self.parameter, self.value)


@frozen
class Use(Node):
    """Such as "with "add balls", n 3"."""

    modifier: str
    settings: tuple[Setting, ...] = field(default=(), metadata={"rest": True})

    def words(self) -> str:
        return f'with "{self.modifier}"' + "".join(detail(setting) for setting in self.settings)
