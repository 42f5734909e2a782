"""A modifier as data: what it takes, what it needs, what it clashes with, what it changes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import attrs

from grammar.finding import Finding, mistake
from grammar.frozen import field, frozen
from grammar.said import Named, Said, listed, perhaps_meant, quoting
from grammar.said import Value as Words
from grammar.sentences import modifier as said
from grammar.sentences.base import Node, Quantity
from grammar.span import Span, nowhere
from grammar.tree import Line

NOT_FIT = "`{modifier}` does not fit: {why}"
Value = Quantity  # of a parameter: a number with its unit
Takes = said.Takes


@frozen
class Modifier:
    """A modifier with everything in its place. `changes` still hold parameters, not values."""

    name: str
    step: str
    about: str
    takes: tuple[said.Takes, ...]
    needs: tuple[Node, ...]
    clashes: tuple[str, ...]
    changes: tuple[Line, ...]
    cautions: tuple[str, ...]
    span: Span = field(eq=False)
    credit: tuple[str, ...] = ()
    licence: str | None = None

    def value(self, parameter: str, number: float, unit: str = "", place: Span | None = None) -> Value:
        """A value for a parameter; without a unit in the one that its usual value has."""
        usual = next((each.usually.unit for each in self.takes if each.parameter == parameter), "")
        return Quantity(number, unit or usual, span=place or nowhere())


@frozen
class Use:
    """A modifier with the values of its parameters; what is not given has its usual value.

    Its `label`, such as "add balls (n 2)", is its name with the values that were given.
    """

    modifier: Modifier
    values: Mapping[str, Quantity] = field(factory=dict)
    label: str = field(init=False, eq=False)

    @label.default
    def _label(self) -> str:
        given = ", ".join(self._given)
        return f"{self.modifier.name} ({given})" if given else self.modifier.name

    @property
    def in_full(self) -> str:
        """Such as "court of this size (length 14 m, width 7 m)": the name with all values, the usual ones, too."""
        usual = {each.parameter: each.usually for each in self.modifier.takes}
        given = ", ".join(f"{name} {value.words()}" for name, value in {**usual, **self.values}.items())
        return f"{self.modifier.name} ({given})" if given else self.modifier.name

    @property
    def asked(self) -> str:
        """Such as "add balls, n 2": as it is asked for."""
        return ", ".join((self.modifier.name, *self._given))

    @property
    def _given(self) -> tuple[str, ...]:
        return tuple(f"{name} {value.words()}" for name, value in self.values.items())


def does_not_fit(modifier: Modifier, why: Words) -> Said:
    """Why a modifier does not fit, as a sentence about it."""
    return Said(NOT_FIT, (("modifier", Named(modifier.name)), ("why", why)))


def why_not(finding: Finding) -> Words:
    """Why a modifier does not fit, without its name; of another finding its title."""
    title, _ = finding.said or (finding.title, finding.hint)
    why: Words = dict(title.fields)["why"] if isinstance(title, Said) and title.pattern == NOT_FIT else title
    return why


def value_findings(use: Use) -> Iterator[Finding]:
    """What is wrong with the values that were given."""
    takes = {each.parameter: each for each in use.modifier.takes}
    for name, value in use.values.items():
        known = takes.get(name)
        if known is None:
            hint = perhaps_meant(name, takes) or quoting(
                "It takes {names}.", names=listed(takes) if takes else quoting("nothing")
            )
            yield mistake(
                "M-value",
                quoting("`{modifier}` takes no `{name}`.", modifier=Named(use.modifier.name), name=name),
                use.modifier.span,
                hint,
            )
        elif not _can_be(value, known):
            give = "Give {least} to {most}." if known.usually.unit else "Give a whole number from {least} to {most}."
            yield mistake(
                "M-value",
                quoting("`{name}` cannot be {value}.", name=name, value=value.words()),
                known.span,
                quoting(give, least=known.least.words(), most=known.most.words()),
            )


def _can_be(value: Quantity, takes: said.Takes) -> bool:
    """A number without a unit counts things, unless the modifier itself speaks of parts of them."""
    limits = (takes.least.value, takes.usually.value, takes.most.value)
    parted = value.unit or value.value == int(value.value) or any(each != int(each) for each in limits)
    return value.unit == takes.usually.unit and bool(parted) and limits[0] <= value.value <= limits[-1]


def filled_in(use: Use) -> tuple[Line, ...]:
    """The changes of a modifier with values in the places of its parameters."""
    values = {each.parameter: use.values.get(each.parameter, each.usually) for each in use.modifier.takes}
    return tuple(_filled(line, values) for line in use.modifier.changes)


def _filled(line: Line, values: Mapping[str, Quantity]) -> Line:
    block = tuple(_filled(inner, values) for inner in line.block)
    return attrs.evolve(line, sentence=_node(line.sentence, values), block=block)


def _node(node: Node, values: Mapping[str, Quantity]) -> Node:
    if isinstance(node, Quantity):
        value = values.get(node.parameter) if node.parameter else None
        return attrs.evolve(value, parameter=None, span=node.span) if value else node
    changed: dict[str, Any] = {
        part.name: tuple(_part(each, values) for each in value) if isinstance(value, tuple) else _part(value, values)
        for part in attrs.fields(type(node))
        if part.name != "span" and isinstance(value := getattr(node, part.name), Node | tuple)
    }
    return attrs.evolve(node, **changed) if changed else node


def _part(value: Any, values: Mapping[str, Quantity]) -> Any:
    return _node(value, values) if isinstance(value, Node) else value
