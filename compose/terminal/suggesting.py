"""Which modifiers mend a game or meet wishes, in words and as JSON."""

from __future__ import annotations

import sys
import textwrap
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any

from attrs import evolve

import library
from compose.fit.suggest.look import Looker
from compose.fit.suggest.moves import moves
from compose.fit.suggest.played_wishes import mends, no_worse
from compose.fit.suggest.search import Found, Reach, search
from compose.fit.suggest.suggestion import Suggestion, suggestions, unmet
from compose.fit.suggest.wish import Wish
from compose.modifiers.remix_sheet import remix_title
from compose.staging.teams import Teams, teams_of, usual_teams
from compose.terminal.answer import FINE, TO_MEND, say, say_json
from compose.terminal.answering import answer_json, verdict
from compose.terminal.finding_games import granted, kit, library_modifiers
from compose.terminal.patience import Patience
from compose.terminal.stages import remixed
from compose.terminal.wishing import Asked, wishes_of
from grammar.game import Game
from grammar.words import count, listing

FURTHER = 4  # times as far is what the answer offers


def show_suggestions(
    name: str,
    modifiers: Sequence[str],
    asked: Asked,
    mend: bool,
    reach: Reach,
    seconds: float | None,
    most: int,
    as_json: bool,
) -> int:
    """Print the smallest sets of modifiers that do what is asked; the exit code. 1 where none was found."""
    made, _ = remixed(name, modifiers, as_json)
    game = made.game
    looker = Looker(granted(), kit(), library.norms(), _teams(asked.pupils))
    wanted = wishes_of(asked, game, as_json)
    to_mend = mend or not wanted
    wishes = (*wanted, *(mends if to_mend else no_worse)(game, looker))
    tried = moves(library_modifiers(), game, wanted)
    patience = Patience(seconds, shown=False)
    with watched(as_json) as progress, patience:
        reach = evolve(reach, keep_going=patience.keep_going)
        found = search(game, wishes, tried, looker, reach, most, progress)
    ranked = suggestions(found, wishes, looker, most)
    answer = looker.answer(game)
    if as_json:
        known = answer_json(answer) if answer is not None else {}
        say_json(_json(remix_title(made), wishes, found, ranked) | known | {"stopped": patience.broken_off})
    else:
        for line in _lines(remix_title(made), wishes, found, ranked, reach):
            say(line)
        if answer is not None:
            say(f"{remix_title(made)} as it is: {verdict(answer)}")
        if patience.broken_off:
            say(patience.broken_off)
    return FINE if ranked else TO_MEND


def _teams(pupils: int | None) -> Callable[[Game], Teams]:
    """The teams of so many pupils, or of the middle number where nobody says how many, or they are too few."""

    def teams(game: Game) -> Teams:
        found = teams_of(game, pupils) if pupils else None
        return found if found is not None and found.games else usual_teams(game)

    return teams


@contextmanager
def watched(as_json: bool) -> Iterator[Callable[[int, int], None]]:
    """A line that tells how far the search is, where somebody watches; it goes when the search is over."""
    if as_json or not sys.stderr.isatty():
        yield lambda tried, found: None
        return
    from rich.console import Console
    from rich.progress import Progress, SpinnerColumn, TextColumn, TimeElapsedColumn

    columns = (SpinnerColumn(), TextColumn("{task.description}"), TimeElapsedColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as shown:
        task = shown.add_task("looking", total=None)

        def tell(tried: int, found: int) -> None:
            shown.update(task, description=f"{count(tried, 'game')} tried, {count(found, 'set')} found")

        yield tell


def _lines(
    title: str, wishes: Sequence[Wish], found: Found, ranked: Sequence[Suggestion], reach: Reach
) -> Iterator[str]:
    missing = unmet(found.base, wishes)
    if found.base.met:
        yield from textwrap.wrap(f"{title} needs no modifier: {listing(wish.words() for wish in wishes)}.", 78)
        return
    yield from textwrap.wrap(f"{title} misses: {'; '.join(missing)}.", 78)
    yield ""
    for number, each in enumerate(ranked, start=1):
        uses = listing(bought.use.label for bought in each.bought)
        yield f"{number}. {uses}  ({count(each.edits, 'line')} changed)"
        for bought in each.bought:
            yield from textwrap.wrap(_bought(bought.use.label, bought.wishes, bought.needed_by), 76, **_INDENT)
    if not ranked:
        near = listing(use.label for use in found.nearest.uses) or "the game as it is"
        left = "; ".join(unmet(found.nearest, wishes))
        yield from textwrap.wrap(f"Nothing found. Nearest: {near}; it misses {left}.", 78)
    yield ""
    yield from textwrap.wrap(_how_sure(found, bool(ranked), reach), 78)


_INDENT: Any = {"initial_indent": "   - ", "subsequent_indent": "     "}


def _bought(label: str, wishes: Sequence[str], needed_by: Sequence[str]) -> str:
    if needed_by:
        return f"{label}: without it, {listing(needed_by)} would not fit"
    return f"{label}: {'; '.join(wishes)}"


def _how_sure(found: Found, any_found: bool, reach: Reach) -> str:
    looked = f"{count(found.tried, 'remix', 'remixes')} and {found.situations:,} situations looked at"
    if found.whole and not any_found:
        none = "No set of at most three modifiers of the library does it"
        return f"{none}, each tried with its least, its usual and its most: {looked}."
    if found.whole:
        return f"There are no other sets of at most three: {looked}."
    further = f" Look further with --tries {FURTHER * reach.tries} --states {FURTHER * reach.situations}."
    return f"There may be other sets: {looked}.{'' if any_found else further}"


def _json(title: str, wishes: Sequence[Wish], found: Found, ranked: Sequence[Suggestion]) -> dict[str, Any]:
    return {
        "game": title,
        "wishes": [wish.words() for wish in wishes],
        "missed": list(unmet(found.base, wishes)),
        "suggestions": [
            {
                "modifiers": [
                    {
                        "name": bought.use.modifier.name,
                        "values": {name: value.words() for name, value in bought.use.values.items()},
                        "bought": list(bought.wishes),
                        "needed_by": list(bought.needed_by),
                    }
                    for bought in each.bought
                ],
                "lines_changed": each.edits,
            }
            for each in ranked
        ],
        "nearest": {
            "modifiers": [use.label for use in found.nearest.uses],
            "missed": list(unmet(found.nearest, wishes)),
        },
        "tried": found.tried,
        "all_tried": found.whole,
        "situations": found.situations,
    }
