"""How two games differ: in words, and in the forecast."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from typing import Any

from compose.answer.answer import Answer, to_mend
from compose.check import Budget
from compose.fit.forecast_difference import Told, forecast_differences
from compose.modifiers.difference.difference import Difference, differences
from compose.modifiers.remix_sheet import remix_title
from compose.terminal.answer import exit_code, refuse, say, say_json
from compose.terminal.answering import answer_json, verdict
from compose.terminal.stages import answered, checked, ready
from compose.terminal.typed.classes import Who
from grammar.words import capital


def show_difference(
    name: str,
    other: str | None,
    modifiers: Sequence[str],
    who: Who,
    quick: bool,
    budget: Budget,
    as_json: bool,
) -> int:
    """Print how another game, or the game with modifiers, differs from a game; the exit code is that of the other.

    `quick` leaves out the forecast."""
    if other is None and not modifiers:
        hint = 'Name a second game, or modifiers: --with "roll instead"'
        refuse("One game alone does not differ from anything.", hint, as_json)
    one = ready(name, [], who, as_json)
    two = ready(other or name, modifiers, who, as_json)
    said = differences(one.game, two.game)
    known = [checked(each, budget) if quick else answered(each, budget) for each in (one, two)]
    told = tuple(_in_the_forecast(*known))
    titles = remix_title(one.remix), remix_title(two.remix)
    if as_json:
        say_json(_json(titles, said, told, known))
    else:
        _say(titles, said)
        _say_findings(known)
        if not quick:
            _say_forecast(told)
    return exit_code(known[1].findings)


def _say(titles: tuple[str, str], said: Sequence[Difference]) -> None:
    if not said:
        say(f"{titles[1]} and {titles[0]} say the same.")
        return
    say(f"{titles[1]}, going by {titles[0]}:")
    heading = ""
    for each in said:
        if each.heading != heading:
            heading = each.heading
            say(capital(heading))
        _paragraph(each.words)


def _in_the_forecast(one: Answer, two: Answer) -> Iterable[Told]:
    ours, theirs = one.numbers, two.numbers
    return forecast_differences(ours, theirs) if ours is not None and theirs is not None else ()


def _say_findings(known: Sequence[Answer]) -> None:
    """What is to mend in the other game, and what is no more."""
    before, now = (to_mend(each.findings) for each in known)
    was = {each.code for each in before}
    say("To mend")
    for each in now:
        _paragraph(f"{each.code}{', as before' if each.code in was else ''}: {each.title}")
    for each in before:
        if each.code not in {other.code for other in now}:
            _paragraph(f"no more {each.code}: {each.title}")
    _paragraph(verdict(known[1]))


def _say_forecast(told: Sequence[Told]) -> None:
    say("Forecast")
    differing = [each for each in told if each.differs]
    for each in differing:
        _paragraph(each.words())
    if not told:
        _paragraph("not worked out: a game is too large for the time")
    elif not differing:
        _paragraph("no clear difference")


def _paragraph(words: str) -> None:
    for line in textwrap.wrap(words, 76, initial_indent="  - ", subsequent_indent="    "):
        say(line)


def _json(
    titles: tuple[str, str], said: Sequence[Difference], told: Sequence[Told], known: Sequence[Answer]
) -> dict[str, Any]:
    return {
        "going_by": titles[0],
        "other": titles[1],
        "differences": [{"heading": each.heading, "words": each.words} for each in said],
        "forecast": [
            {
                "name": each.name,
                "one": each.one.value,
                "other": each.other.value,
                "margin": each.one.margin + each.other.margin,
                "differs": each.differs,
            }
            for each in told
        ],
        "answers": [answer_json(each) for each in known],
    }
