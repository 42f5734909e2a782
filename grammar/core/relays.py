"""Whether runs are counted."""

from __future__ import annotations

from grammar.core.game import Play
from grammar.core.guards import TimesRun, counts_in
from grammar.core.schedule import guards_of


def counts_runs(play: Play) -> bool:
    """Whether anything hangs on how often players of a side have run."""
    return any(isinstance(count, TimesRun) for guard, _ in guards_of(play) for count in counts_in(guard))
