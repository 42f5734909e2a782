"""Which modifiers mend a game or meet wishes, in words and as JSON."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from textwrap import fill, wrap
from typing import Any

from attrs import evolve

import library
from compose.answer.answer import Answer
from compose.answer.proving import with_switches
from compose.check import Budget
from compose.fit.suggest.amounts import at_the_ends
from compose.fit.suggest.look import ROUNDS, Looker
from compose.fit.suggest.played_wishes import mends, no_worse
from compose.fit.suggest.score import Scored, Scorer
from compose.fit.suggest.search import Found, in_the_way, search
from compose.fit.suggest.side_by_side import on_cores
from compose.fit.suggest.suggestion import Bought, Suggestion, suggestions, unmet
from compose.fit.suggest.to_json import to_json
from compose.fit.suggest.trying import Progress, Reach, silent
from compose.fit.suggest.wish import Wish
from compose.modifiers.modifier import Use
from compose.modifiers.remix_sheet import remix_title
from compose.staging.teams import Teams, teams_of, usual_teams
from compose.telling.uses import label_said
from compose.telling.wording import ENGLISH, Wording
from compose.terminal.answer import FINE, TO_MEND, WIDTH, say, say_json
from compose.terminal.answering import answer_json, verdict
from compose.terminal.patience import Patience
from compose.terminal.stages import remixed
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import granted, kit, modifiers_at_hand
from compose.terminal.typed.offering import offered
from compose.terminal.typed.wishing import Asked, group_asked, wishes_of
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
    language: str,
    as_json: bool,
) -> int:
    """Print the smallest sets of modifiers that do what is asked; the exit code. 1 where none was found."""
    wording = wording_named(language, as_json)
    made, _ = remixed(name, modifiers, as_json)
    game = made.game
    group = group_asked(asked, as_json)
    looker = Looker(granted(), kit(), library.norms(), teams_for_pupils(asked.pupils), group=group)
    wanted = wishes_of(asked, game, as_json)
    to_mend = mend or all(wish.miss(game, looker).met for wish in wanted)
    scorer = Scorer(game, (*wanted, *(mends if to_mend else no_worse)(game, looker)), looker)
    patience = Patience(seconds, shown=False)
    with on_cores(scorer) as scoring, watched(as_json) as progress, patience:
        reach = evolve(reach, keep_going=patience.keep_going)
        found = search(scorer, at_the_ends(modifiers_at_hand()), reach, most, progress, scoring)
    ranked = suggestions(found, scorer, most, ENGLISH if as_json else wording)
    answer = looker.answer(game)
    answer = with_switches(answer, Budget(looker.states)) if answer is not None else None
    if as_json:
        known = answer_json(answer) if answer is not None else {}
        if group is not None:  # whether they can play it or not
            known |= {"staging": staging_json(looker.fitted(game, group).staging)}
        say_json(to_json(remix_title(made), scorer.wishes, found, ranked) | known | {"stopped": patience.broken_off})
    else:
        for line in _lines(remix_title(made), scorer.wishes, found, ranked, reach, wording):
            say(line)
        if answer is not None and (group is None or not looker.fitted(game, group).staging.refused):
            told = wording.say("{game} as it is: {rule}", game=remix_title(made), rule=verdict(answer, wording))
            say(fill(told, WIDTH))
            for line in _too_large(answer, looker, wording):
                say(line)
        for line in _to_play(name, modifiers, asked.who, ranked, wording):
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
    title: str, wishes: Sequence[Wish], found: Found, ranked: Sequence[Suggestion], reach: Reach, wording: Wording
) -> Iterator[str]:
    told = wording.say
    if found.base.met:
        as_wished = wording.listed(wish.words(wording) for wish in wishes)
        fine = told("{game} needs no modifier; it is as wished: {wishes}.", game=title, wishes=as_wished)
        yield from wrap(fine, WIDTH)
        return
    yield told("{game} misses:", game=title)
    for each in unmet(found.base, wishes, wording=wording):
        yield from wrap(each, 76, initial_indent=" - ", subsequent_indent="   ")
    yield ""
    for number, suggested in enumerate(ranked, start=1):
        uses = wording.listed(_in_full(use, wording) for use in suggested.uses)
        lines = told("{number} changed", number=wording.counted(suggested.edits, "line", "lines"))
        yield from wrap(f"{number}. {uses}  ({lines})", WIDTH, subsequent_indent="   ")
        for bought in suggested.bought:
            yield from wrap(_bought(bought, wording), 76, **_INDENT)
        for each in suggested.afterwards:
            yield from wrap(told("The forecast then finds: {what}", what=each), 76, **_INDENT)
    if not ranked:
        yield from _nothing_found(wishes, found, wording)
    yield ""
    yield from wrap(_how_sure(found, bool(ranked), reach, wording), WIDTH)


def _in_full(use: Use, wording: Wording) -> str:
    """A modifier with all its values; in another language beside the words that are typed."""
    return use.in_full if wording.english else f"{label_said(use, wording)} [{use.asked}]"


def _too_large(answer: Answer, looker: Looker, wording: Wording) -> Iterator[str]:
    """What was done where not all of the game could be looked at."""
    if not answer.whole:
        told = wording.say(
            "It is too large to prove: at most {states} situations of each remix were looked at, and turns, waits and "
            "lengths are those of {rounds} rounds played at random.",
            states=_number(looker.states, wording),
            rounds=ROUNDS,
        )
        yield from wrap(told, WIDTH)


def _number(number: int, wording: Wording) -> str:
    return f"{number:,}" if wording.english else wording.figure(number, 0)


def _to_play(
    name: str, before: Sequence[str], who: Who, ranked: Sequence[Suggestion], wording: Wording
) -> Iterator[str]:
    """The command that makes the card of the first set."""
    if ranked and ranked[0].bought:
        asked = [*before, *(use.asked for use in ranked[0].uses)]
        yield wording.say("To play the first:" if len(ranked) > 1 else "To play it:")
        yield "  " + " \\\n    ".join(offered("card", name, asked, who, wording.language))


_INDENT: Any = {"initial_indent": "   - ", "subsequent_indent": "     "}


def _nothing_found(wishes: Sequence[Wish], found: Found, wording: Wording) -> Iterator[str]:
    """The wish in the way, how near anything came to it, and the set that comes nearest to all of them."""
    told = wording.say
    yield told("Nothing found.")
    for number in in_the_way(found):
        closest = found.closest[number]
        miss = closest.misses[number]
        by = wording.listed(_in_full(use, wording) for use in closest.uses) or told("the game as it is")
        near = told("{by} does this, but not all else that is asked.", by=capital(by))
        if miss and miss.gap:
            near = told("Nearest to it: {by}; {missing}.", by=by, missing=miss.said(wording))
        in_the_way_of_it = told("In the way: {wish}. {near}", wish=wishes[number].words(wording), near=near)
        yield from wrap(in_the_way_of_it, WIDTH, subsequent_indent="  ")
    near = wording.listed(_in_full(use, wording) for use in found.nearest.uses) or told("the game as it is")
    left = "; ".join(unmet(found.nearest, wishes, wording=wording))
    nearest = told("Nearest to all: {near}; it misses {left}.", near=near, left=left)
    yield from wrap(nearest, WIDTH, subsequent_indent="  ")


def _bought(bought: Bought, wording: Wording) -> str:
    label = _in_full(bought.use, wording)
    what = "; ".join(bought.wishes)
    if bought.needed_by:
        others = wording.listed(_in_full(each, wording) for each in bought.needed_by)
        what = wording.say("without it, {others} would not fit", others=others)
    return wording.say("{name}: {rule}", name=label, rule=what)


def _how_sure(found: Found, any_found: bool, reach: Reach, wording: Wording) -> str:
    told = wording.say
    remixes, situations = wording.counted(found.tried, "remix", "remixes"), _number(found.situations, wording)
    looked = told("{remixes} and {situations} situations looked at", remixes=remixes, situations=situations)
    if found.moves:
        pattern = "{remixes} and {situations} situations, and {moves} moves of rounds played, looked at"
        looked = told(pattern, remixes=remixes, situations=situations, moves=_number(found.moves, wording))
    if found.untried:
        untried = wording.counted(found.untried, "modifier", "modifiers")
        looked = told("{looked}; {untried} and most larger sets were not tried", looked=looked, untried=untried)
    if found.whole:
        return told(
            "No set of at most three modifiers of the library does it, each tried with its least, its usual and "
            "its most: {looked}.",
            looked=looked,
        )
    sure = told("There may be other sets: {looked}.", looked=looked)
    if any_found and not found.untried:
        return sure
    options = f"--tries {FURTHER * reach.tries} --states {FURTHER * reach.situations}"
    return f"{sure} {told('Look further with {options}.', options=options)}"
