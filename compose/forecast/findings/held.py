"""A forecast with the norms that it is held against, and how a finding is made of it."""

from __future__ import annotations

from compose.forecast.assumptions import ages_of
from compose.forecast.forecast import Forecast
from compose.staging.norms import bands_used
from grammar.finding import Basis, Finding, Severity, spoken
from grammar.frozen import frozen
from grammar.said import Value
from grammar.span import Span
from library import Figure as Margin
from library import Norms


@frozen(eq=False)
class Held:
    """A forecast with the norms that it is held against."""

    told: Forecast
    norms: Norms

    def margin(self, table: str, name: str) -> Margin:
        """The band of a norm for these pupils."""
        return bands_used(self.norms.tables[table].rows[name], ages_of(self.told.net))[0].figure

    def found(
        self,
        code: str,
        severity: Severity,
        title: Value,
        hint: Value,
        place: Span,
        numbers: dict[str, float],
        played: bool | None = None,
    ) -> list[Finding]:
        """One finding; `played` says whether its numbers were simulated, usually as the forecast was."""
        basis = Basis.SIMULATED if (self.told.simulated if played is None else played) else Basis.COMPUTED
        return [spoken(code, severity, title, place, hint, basis=basis, numbers=tuple(numbers.items()))]
