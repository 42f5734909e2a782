"""What a forecast rests on: every norm it read, with its band and its source."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from compose.forecast.chances.chances import Explanation, explain_chances
from compose.net.attempt import Attempt
from compose.net.net import Net
from compose.staging.norms import Ability, Ages, Reading
from grammar.frozen import frozen
from library import KitItem, Norms, Source


@frozen
class Assumption:
    """One norm as read for these pupils: its band, its unit, where it comes from.

    `table` is the norm's table and `name` its row ("aim across", "overarm throw"); `about` says in words
    what the table holds. `assumed` is True where any part of it is our own assumption.
    """

    table: str
    name: str
    about: str
    unit: str
    low: float
    usual: float
    high: float
    sources: tuple[Source, ...]
    assumed: bool


def ages_of(net: Net) -> Ages:
    """The ages of the pupils, as the attempts have them."""
    return net.transitions[0].attempt.age_years if net.transitions else Attempt("", "", None, "none").age_years


def assumptions(net: Net, norms: Norms, kit: Mapping[str, KitItem]) -> tuple[Assumption, ...]:
    """All norms behind the chances and paces of a net, each once, in the order of the attempts."""
    told = explain_chances(net, norms, kit)
    read = {(reading.table, reading.name): each for each, reading in _readings(told.values())}
    return tuple(_assumption(norms, table, name, read[table, name].attempt.age_years) for table, name in read)


def _readings(told: Iterable[Explanation]) -> Iterable[tuple[Explanation, Reading]]:
    for each in told:
        for reading in each.readings:
            yield each, reading


def _assumption(norms: Norms, table: str, name: str, ages: Ages) -> Assumption:
    low = Ability(norms, instead={table: "low"}).read(table, name, ages)
    usual = Ability(norms).read(table, name, ages)
    high = Ability(norms, instead={table: "high"}).read(table, name, ages)
    about = norms.tables[table].about
    return Assumption(table, name, about, usual.unit, low.value, usual.value, high.value, usual.sources, usual.assumed)
