"""One limit held against what is there: what is asked for, what there is, and who says so."""

from __future__ import annotations

from compose.staging.norms import Ability, Ages
from grammar.frozen import frozen
from library import Norms, Source


@frozen
class Limit:
    """Such as: run-off at the ends, 2 m asked for (1 m at the least), 3.5 m there."""

    what: str
    unit: str
    there: float
    least: float
    usual: float
    sources: tuple[Source, ...]
    why: tuple[str, ...] = ()

    @property
    def kept(self) -> bool:
        """Whether there is as much as is usual."""
        return self.there >= self.usual - 1e-9

    @property
    def broken(self) -> bool:
        """Whether there is less than the least."""
        return self.there < self.least - 1e-9

    def said_by(self) -> str:
        """Who says so: the sources, or that it is our assumption."""
        told = "; ".join(dict.fromkeys(str(source) for source in self.sources))
        return ": ".join(part for part in (told, "; ".join(self.why)) if part)


def limit(norms: Norms, table: str, name: str, what: str, there: float, ages: Ages) -> Limit:
    """A limit of the norms: its low end is the least, its usual figure what is asked for."""
    low = Ability(norms, instead={table: "low"}).read(table, name, ages)
    usual = Ability(norms, instead={table: "usual"}).read(table, name, ages)
    return Limit(what, usual.unit, there, low.value, usual.value, usual.sources, usual.why)
