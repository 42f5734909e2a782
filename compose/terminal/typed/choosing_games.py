"""The games that are at hand: all of them, or those that are as wished."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Sequence
from contextlib import redirect_stderr
from io import StringIO
from typing import Any

import typer

import library
from compose.fit.choosing import ORDERS, Choice, KitAtHand, OverWithin, choices, in_order
from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import Wish
from compose.staging.class_from_sheet import class_of
from compose.staging.school_class import InCupboard
from compose.staging.teams import least_pupils, most_pupils
from compose.telling.wording import Wording
from compose.terminal.answer import FINE, TO_MEND, WIDTH, refuse, say, say_json, say_to_error, stop
from compose.terminal.suggesting import teams_for_pupils
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.at_hand import GAMES, LIBRARY, Named, each_once
from compose.terminal.typed.finding_games import categories, game_of, granted, kit, reading, shown_path
from compose.terminal.typed.offering import offered
from compose.terminal.typed.wishing import Asked, group_asked, wishes_of
from grammar.frozen import frozen
from grammar.game import Game
from grammar.parse import parse
from grammar.tree import RuleFile
from grammar.words import listing

NAME = "name"
NEAREST = 5
PLENTY = 1000  # of what is at hand without a number


@frozen
class Chosen:
    """What was asked for on the command line."""

    asked: Asked
    kit: Sequence[str] = ()
    minutes: float | None = None
    sort: str = NAME


def show_games(chosen: Chosen, language: str, as_json: bool) -> int:
    """Print the games; the exit code, 1 where none is as wished and the nearest are shown."""
    wording = wording_named(language, as_json)
    if chosen.sort not in (NAME, *ORDERS):
        refuse(f"Games cannot be sorted by `{chosen.sort}`.", f"Say {listing((NAME, *ORDERS), 'or')}.", as_json)
    group = group_asked(chosen.asked, as_json)
    looker = Looker(granted(), kit(), library.norms(), teams_for_pupils(chosen.asked.pupils), group=group)
    cupboard = _cupboard(chosen.kit, as_json)
    files = dict(_games())

    def wishes(game: Game) -> tuple[Wish, ...]:
        own = wishes_of(chosen.asked, game, as_json)
        kit_wish = (KitAtHand(cupboard),) if cupboard else ()
        return (*own, *kit_wish, *((OverWithin(chosen.minutes),) if chosen.minutes is not None else ()))

    found = choices(files.values(), wishes, looker)
    fitting = in_order((each for each in found if not each.lacks), chosen.sort, looker)
    near = () if fitting else tuple(sorted(found, key=lambda each: each.gap))[:NEAREST]
    named = {game.title: each for each, game in files.items()}
    if as_json:
        told = {"games": [_json(each, named) for each in fitting], "nearest": [_json(each, named) for each in near]}
        say_json(told)
        return FINE if fitting else TO_MEND
    if not fitting:
        counts = {"games": wording.counted(len(found), "game", "games"), "near": wording.figure(len(near))}
        pattern = "None of {games} is as you wish. The {near} nearest, with what each lacks; the others lack more:"
        for part in textwrap.wrap(wording.say(pattern, **counts), WIDTH):
            say(part)
    for each in fitting or near:
        _show(each, named, wording)
    if near and group is not None:
        name, asked = named[near[0].game.title].slug.replace("-", " "), chosen.asked
        more = {"skill": asked.skill, "ages": asked.ages, "wait": asked.wait_min}
        say(wording.say("To look for modifiers that make the first one fit:"))
        say("  " + " ".join(offered("suggest", name, (), asked.who, wording.language, more)))
    return FINE if fitting else TO_MEND


def _games() -> Iterator[tuple[Named, Game]]:
    """Games with their files; one of one's own with mistakes is left out, and that is said. Remixes of the library
    are not listed beside the games that they come from."""
    for each in each_once(GAMES):
        if each.where == LIBRARY and each.kind != "game":
            continue
        rules = reading(each.path).value
        game = _made(rules) if rules is not None else None
        if game is not None:
            yield each, game
        elif each.where != LIBRARY:
            say_to_error(f"{shown_path(each.path)} is left out: it has mistakes. Look at it with: check {each.path}")


def _made(rules: RuleFile) -> Game | None:
    """The game of one file of many; None where it cannot be made, which the command for that file says at length."""
    try:
        with redirect_stderr(StringIO()):
            return game_of(rules)
    except typer.Exit:
        return None


def _cupboard(written: Sequence[str], as_json: bool) -> tuple[InCupboard, ...]:
    """ "8 foam balls", or "cones" for as many as it takes."""
    if not written:
        return ()
    lines = [each if re.match(r"\s*\d", each) else f"{PLENTY} {each.strip()}" for each in written]
    read = parse("class Cupboard\n  class of 1\n" + "".join(f"  {line.strip()}\n" for line in lines), "--kit")
    if read.value is None or not read.value.classes:
        refuse(f"{listing(f'`{each}`' for each in written)} is no kit.", 'Write it such as "8 foam balls".', as_json)
    found = class_of(read.value.classes[0], library.halls(), categories())
    if found.value is None:
        stop(found.findings, as_json)
    return found.value.cupboard


def _show(each: Choice, named: dict[str, Named], wording: Wording) -> None:
    game, file = each.game, named[each.game.title]
    least, most = (wording.figure(age) for age in game.ages_years)
    fewest, all_of_them = least_pupils(game), most_pupils(game)
    pattern = "ages {least} to {most}, {fewest} to {all} pupils"
    whom = wording.say(pattern, least=least, most=most, fewest=fewest, all=all_of_them)
    title = wording.author(game.title)
    if title != game.title:
        title = f"{game.title} – {title}"
    say(f"{title}  ({whom})")
    about = " ".join(wording.author(text) for text in game.told("about"))
    lacks = (wording.say("But: {what}.", what=lack.said(wording)) for lack in each.lacks)
    for line in (about, *lacks):
        for part in textwrap.wrap(line, WIDTH, initial_indent="  ", subsequent_indent="  "):
            say(part)
    if file.where != LIBRARY:
        say(f"  {wording.say(file.where.capitalize())}{wording.say(':')} {shown_path(file.path)}")


def _json(each: Choice, named: dict[str, Named]) -> dict[str, Any]:
    game = each.game
    return {
        "name": game.title,
        "ages_years": list(game.ages_years),
        "sides": [{"name": side.name, "least": side.least, "most": side.most} for side in game.sides],
        "kit": [{"name": line.name, "count": line.count, "per": line.owner or "all"} for line in game.kit],
        "about": " ".join(game.told("about")),
        "file": game.sheet.span.file,
        "where": named[game.title].where,
        "lacks": [lack.words for lack in each.lacks],
    }
