"""The table of games and modifiers: what fits, what does not, what makes something to mend."""

from __future__ import annotations

import sys
import textwrap
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import library
from compose.answer.answer import PROVED
from compose.fit.mixing import (
    CELL_STATES,
    FINDS,
    FITS,
    REFUSED,
    UNSURE,
    VERDICTS,
    Cell,
    fewest_players,
    mixing_table,
)
from compose.fit.suggest.look import Looker
from compose.staging.school_class import SchoolClass
from compose.telling.wording import Wording
from compose.terminal.answer import FINE, refuse, say, say_json
from compose.terminal.patience import Patience
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import school_class
from compose.terminal.typed.finding_games import game, granted, kit, modifiers_at_hand
from compose.terminal.writing import write
from grammar.words import did_you_mean, listing

WIDTH = 80  # of a terminal
MARKS = {FITS: "●", FINDS: "▲", REFUSED: "·", UNSURE: "○"}


def show_mixing(
    names: Sequence[str],
    only: Sequence[str],
    seconds: float | None,
    why: bool,
    class_name: str | None,
    out: Path | None,
    force: bool,
    language: str,
    as_json: bool,
) -> int:
    """Print or write the table for these games (all of the library where none is named); the exit code."""
    wording = wording_named(language, as_json)
    games = [game(name, as_json) for name in names] or [game(str(path)) for path in library.game_paths()]
    known = {each.name: each for each in modifiers_at_hand()}
    for name in only:
        if name.lower() not in known:
            hint = did_you_mean(name, known) or f"The library has {listing(known)}."
            refuse(f"There is no modifier called `{name}`.", hint, as_json)
    chosen = [known[name.lower()] for name in only] or list(known.values())
    group = school_class(class_name, as_json) if class_name is not None else None
    looker = Looker(granted(), kit(), library.norms(), fewest_players, CELL_STATES, group)
    patience = Patience(seconds, shown=False)
    with _bar(as_json) as progress, patience:
        cells = list(mixing_table(games, chosen, looker, patience.keep_going, progress))
    if as_json:
        players = f"those of {group.name}" if group is not None else "the least of each range"
        told = {"players": players, "shows": [PROVED], "cells": [_cell_json(each) for each in cells]}
        say_json(told | {"stopped": patience.broken_off})
        return FINE
    lines = [*_table(cells, [each.title for each in games], why, group, wording), *filter(None, [patience.broken_off])]
    if out is None:
        say("\n".join(lines))
    else:
        write(out, ("\n".join(lines) + "\n").encode(), force, as_json)
        say(wording.say("The table is in {file}.", file=out))
    return FINE


@contextmanager
def _bar(as_json: bool) -> Iterator[Callable[[int, int], None]]:
    """A bar where somebody watches; it goes when the table is made."""
    if as_json or not sys.stderr.isatty():
        yield lambda done, of: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    columns = (TextColumn("mixing"), BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as shown:
        task = shown.add_task("mixing", total=None)
        yield lambda done, of: shown.update(task, completed=done, total=of)


def _table(
    cells: Sequence[Cell], titles: Sequence[str], why: bool, group: SchoolClass | None, wording: Wording
) -> Iterator[str]:
    """A row for each modifier, a column for each game; the games are numbered above."""
    told, names = wording.say, {each.modifier: wording.author(each.modifier) for each in cells}
    for number, title in enumerate(titles, start=1):
        yield f"{number:>3}  {title}"
    yield ""
    by_place = {(each.modifier, each.game): each for each in cells}
    wide = max(map(len, names.values()), default=0)
    beside = max(1, (WIDTH - wide) // 3)
    for first in range(0, len(titles), beside):
        some = titles[first : first + beside]
        yield " " * wide + "".join(f"{number:>3}" for number in range(first + 1, first + len(some) + 1))
        for name, shown in names.items():
            row = (by_place.get((name, title)) for title in some)
            yield shown.ljust(wide) + "".join(f"  {MARKS[each.verdict]}" if each else "   " for each in row)
        yield ""
    for verdict in VERDICTS:
        pairs = wording.counted(sum(each.verdict == verdict for each in cells), "pair", "pairs")
        yield f"{MARKS[verdict]} {told(verdict)}{told(':')} {pairs}"
    whose = told("Each was checked with the least players of the game's range.")
    if group is not None:
        pattern = "Each was checked as {name} would play it; it fits where the class has nothing to mend."
        whose = told(pattern, name=group.name)
    yield from textwrap.wrap(whose, WIDTH - 2)
    yield told("The forecast may find more.")
    for each in cells if why else ():
        if reason := each.why_in(wording):
            said = told("{name}: {rule}", name=f"{each.game}, {names[each.modifier]}", rule=reason)
            yield from textwrap.wrap(said, WIDTH - 2, subsequent_indent="  ")


def _cell_json(each: Cell) -> dict[str, Any]:
    return {
        "game": each.game,
        "modifier": each.modifier,
        "heading": each.step,
        "verdict": each.verdict,
        "why": each.why,
        "codes": list(each.codes),
        "lines_changed": each.lines,
    }
