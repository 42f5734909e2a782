"""Which modifiers mend a game or meet wishes, in words and as JSON."""

from __future__ import annotations

import shlex
import sys
import textwrap
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any

from attrs import evolve

import library
from compose.answer.answer import Answer
from compose.fit.suggest.amounts import at_the_ends
from compose.fit.suggest.look import ROUNDS, Looker
from compose.fit.suggest.played_wishes import mends, no_worse
from compose.fit.suggest.score import Scored, Scorer
from compose.fit.suggest.search import Found, in_the_way, search
from compose.fit.suggest.side_by_side import on_cores
from compose.fit.suggest.suggestion import Suggestion, suggestions, unmet
from compose.fit.suggest.to_json import to_json
from compose.fit.suggest.trying import Progress, Reach, silent
from compose.fit.suggest.wish import Wish
from compose.modifiers.remix_sheet import remix_title
from compose.staging.teams import Teams, teams_of, usual_teams
from compose.terminal.answer import FINE, TO_MEND, say, say_json
from compose.terminal.answering import answer_json, verdict
from compose.terminal.patience import Patience
from compose.terminal.stages import remixed
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.classes import school_class
from compose.terminal.typed.finding_games import granted, kit, modifiers_at_hand
from compose.terminal.typed.wishing import Asked, wishes_of
from grammar.game import Game
from grammar.words import capital, count, listing

FURTHER = 4  # times as far is what the answer offers
SHORT = 60  # letters of what is shown while it looks


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
    group = school_class(asked.class_name, as_json) if asked.class_name is not None and asked.pupils is None else None
    looker = Looker(granted(), kit(), library.norms(), teams_for_pupils(asked.pupils), group=group)
    wanted = wishes_of(asked, game, as_json)
    to_mend = mend or all(wish.miss(game, looker).met for wish in wanted)
    scorer = Scorer(game, (*wanted, *(mends if to_mend else no_worse)(game, looker)), looker)
    patience = Patience(seconds, shown=False)
    with on_cores(scorer) as scoring, watched(as_json) as progress, patience:
        reach = evolve(reach, keep_going=patience.keep_going)
        found = search(scorer, at_the_ends(modifiers_at_hand()), reach, most, progress, scoring)
    ranked = suggestions(found, scorer, most)
    answer = looker.answer(game)
    if as_json:
        known = answer_json(answer) if answer is not None else {}
        if group is not None:  # whether they can play it or not
            known |= {"staging": staging_json(looker.fitted(game, group).staging)}
        say_json(to_json(remix_title(made), scorer.wishes, found, ranked) | known | {"stopped": patience.broken_off})
    else:
        for line in _lines(remix_title(made), scorer.wishes, found, ranked, reach):
            say(line)
        if answer is not None and (group is None or not looker.fitted(game, group).staging.refused):
            say(f"{remix_title(made)} as it is: {verdict(answer)}")
            for line in _too_large(answer, looker):
                say(line)
        for line in _to_play(name, modifiers, asked.class_name, ranked):
            say(line)
        if patience.broken_off:
            say(patience.broken_off)
    return FINE if ranked else TO_MEND


def teams_for_pupils(pupils: int | None) -> Callable[[Game], Teams]:
    """The teams of so many pupils, or of the middle number where nobody says how many, or they are too few."""

    def teams(game: Game) -> Teams:
        found = teams_of(game, pupils) if pupils else None
        return found if found is not None and found.games else usual_teams(game)

    return teams


@contextmanager
def watched(as_json: bool) -> Iterator[Progress]:
    """A line that tells how far the search is and the best that it found, where somebody watches; it goes when the
    search is over."""
    if as_json or not sys.stderr.isatty():
        yield silent
        return
    from rich.console import Console
    from rich.progress import Progress as Shown
    from rich.progress import SpinnerColumn, TextColumn, TimeElapsedColumn

    columns = (SpinnerColumn(), TextColumn("{task.description}"), TimeElapsedColumn())
    with Shown(*columns, console=Console(stderr=True), transient=True) as shown:
        task = shown.add_task("looking", total=None)

        def tell(tried: int, best: Scored | None) -> None:
            so_far = f"best so far: {listing(use.label for use in best.uses)}" if best else "none does it yet"
            shown.update(task, description=f"{count(tried, 'game')} tried, {so_far}"[:SHORT])

        yield tell


def _lines(
    title: str, wishes: Sequence[Wish], found: Found, ranked: Sequence[Suggestion], reach: Reach
) -> Iterator[str]:
    if found.base.met:
        as_wished = listing(wish.words() for wish in wishes)
        yield from textwrap.wrap(f"{title} needs no modifier; it is as wished: {as_wished}.", 78)
        return
    yield f"{title} misses:"
    for each in unmet(found.base, wishes):
        yield from textwrap.wrap(each, 76, initial_indent=" - ", subsequent_indent="   ")
    yield ""
    for number, suggested in enumerate(ranked, start=1):
        uses = listing(bought.use.in_full for bought in suggested.bought)
        lines = f"{number}. {uses}  ({count(suggested.edits, 'line')} changed)"
        yield from textwrap.wrap(lines, 78, subsequent_indent="   ")
        for bought in suggested.bought:
            yield from textwrap.wrap(_bought(bought.use.in_full, bought.wishes, bought.needed_by), 76, **_INDENT)
        for title in suggested.afterwards:
            yield from textwrap.wrap(f"The forecast then finds: {title}", 76, **_INDENT)
    if not ranked:
        yield from _nothing_found(wishes, found)
    yield ""
    yield from textwrap.wrap(_how_sure(found, bool(ranked), reach), 78)


def _too_large(answer: Answer, looker: Looker) -> Iterator[str]:
    """What was done where not all of the game could be looked at."""
    if not answer.whole:
        told = f"It is too large to prove: at most {looker.states:,} situations of each remix were looked at, and "
        told += f"turns, waits and lengths are those of {ROUNDS} rounds played at random."
        yield from textwrap.wrap(told, 78)


def _to_play(name: str, before: Sequence[str], group: str | None, ranked: Sequence[Suggestion]) -> Iterator[str]:
    """The command that makes the card of the first set."""
    if ranked and ranked[0].bought:
        asked = [*before, *(use.asked for use in ranked[0].uses)]
        options = [f"--with {shlex.quote(each)}" for each in asked]
        options += [f"--class {shlex.quote(group)}"] if group is not None else []
        yield f"To play {'the first' if len(ranked) > 1 else 'it'}:"
        yield " \\\n    ".join([f"  ruleweave card {shlex.quote(name)}", *options])


_INDENT: Any = {"initial_indent": "   - ", "subsequent_indent": "     "}


def _nothing_found(wishes: Sequence[Wish], found: Found) -> Iterator[str]:
    """The wish in the way, how near anything came to it, and the set that comes nearest to all of them."""
    yield "Nothing found."
    for number in in_the_way(found):
        closest = found.closest[number]
        miss = closest.misses[number]
        by = listing(use.in_full for use in closest.uses) or "the game as it is"
        near = f"Nearest to it: {by}; {miss.words}." if miss and miss.gap else f"{capital(by)} does it, not the rest."
        told = f"In the way: {wishes[number].words()}. {near}"
        yield from textwrap.wrap(told, 78, subsequent_indent="  ")
    near = listing(use.in_full for use in found.nearest.uses) or "the game as it is"
    left = "; ".join(unmet(found.nearest, wishes))
    yield from textwrap.wrap(f"Nearest to all: {near}; it misses {left}.", 78, subsequent_indent="  ")


def _bought(label: str, wishes: Sequence[str], needed_by: Sequence[str]) -> str:
    if needed_by:
        return f"{label}: without it, {listing(needed_by)} would not fit"
    return f"{label}: {'; '.join(wishes)}"


def _how_sure(found: Found, any_found: bool, reach: Reach) -> str:
    moves = f", and {found.moves:,} moves of rounds played," if found.moves else ""
    looked = f"{count(found.tried, 'remix', 'remixes')} and {found.situations:,} situations{moves} looked at"
    if found.untried:
        looked += f"; {count(found.untried, 'modifier')} and most larger sets were not tried"
    if found.whole:
        none = "No set of at most three modifiers of the library does it"
        return f"{none}, each tried with its least, its usual and its most: {looked}."
    further = f" Look further with --tries {FURTHER * reach.tries} --states {FURTHER * reach.situations}."
    return f"There may be other sets: {looked}.{'' if any_found and not found.untried else further}"
