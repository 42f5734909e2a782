"""What the reminders look at: a game on its floor for pupils of these ages, and the walls around it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property

from attrs import define

from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.values import Floor
from compose.staging.norms import Ability, Ages, Reading
from grammar.core.game import Core
from grammar.core.play import Attempt, Lines
from grammar.core.values import KindId, Population
from grammar.finding import Basis, Finding, Severity, spoken
from grammar.said import Named, Value
from grammar.span import Span, nowhere
from library import KitItem, Norms

LAST_WORD = "A reminder: local rules and the teacher in charge decide."


@define(frozen=True, slots=False)
class Scene:
    """`beside_m` and `behind_m` are the clear strips to the walls along the court and behind its ends; None where
    nobody says which hall."""

    core: Core
    floor: Floor
    ages_years: Ages
    kit: Mapping[str, KitItem]
    norms: Norms
    beside_m: float | None = None
    behind_m: float | None = None

    @cached_property
    def ground(self) -> Ground:
        """The court with its areas."""
        return ground_of(self.core.play)

    def attempts(self) -> Iterator[tuple[Population, Attempt, Lines]]:
        """Everything that players may try, with the lines that say so."""
        return ((offer.by, attempt, offer.lines) for offer, attempt in self.core.play.tries)

    def read(self, table: str, name: str) -> Reading:
        """A norm for the pupils."""
        return Ability(self.norms).read(table, name, self.ages_years)

    def item(self, kind: KindId) -> KitItem | None:
        """What the kit knows of a kind."""
        return self.kit.get(self.core.play.kind(kind).like.key)

    def plural(self, kind: KindId) -> str:
        """What several of a kind are called."""
        return dict(self.core.plurals).get(kind, kind.key)

    def place(self, lines: Iterable[int]) -> Span:
        """The first of these lines that the sheet says itself, else where the sheet begins."""
        wanted = set(lines)
        own = (line.span for line in self.core.lines if line.number in wanted and not line.granted)
        return next(own, self.core.lines[0].span if self.core.lines else nowhere())

    def remind(self, code: str, title: Value, lines: Iterable[int], hint: str, **numbers: float) -> Finding:
        """A reminder: it asks for nothing, so it never changes an exit code. What to do about it names sources, which
        are English: others are told it by the code."""
        told = tuple((name, round(float(number), 3)) for name, number in numbers.items())
        text = Named(f"{hint} {LAST_WORD}")
        return spoken(code, Severity.NOTE, title, self.place(lines), text, basis=Basis.COMPUTED, numbers=told)


def said_by(reading: Reading) -> str:
    """Who says a figure: its source, or that it is an assumption and why."""
    every = dict.fromkeys("our assumption" if each.read == "assumption" else str(each) for each in reading.sources)
    told = "; ".join(every)
    return ": ".join(part for part in (told, "; ".join(reading.why)) if part)
