"""How two games differ: in words, and in the forecast."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from typing import Any

import library
from compose.fit.forecast_difference import Told, forecast_differences
from compose.forecast.answers import Answers, answers
from compose.modifiers.difference import Difference, differences
from compose.modifiers.remix import Remix
from compose.terminal.answer import FINE, refuse, say, say_json
from compose.terminal.finding_games import granted, kit
from compose.terminal.remixing import remix_title
from compose.terminal.stages import remixed, split

MOST_STATES = 200_000
MOST_SECONDS = 5.0


def show_difference(
    name: str, other: str | None, modifiers: Sequence[str], pupils: int | None, quick: bool, as_json: bool
) -> int:
    """Print how another game, or the game with modifiers, differs from a game; the exit code."""
    if other is None and not modifiers:
        hint = 'Name a second game, or modifiers: --with "roll instead"'
        refuse("One game alone does not differ from anything.", hint, as_json)
    one, _ = remixed(name, [], as_json)
    two, _ = remixed(other or name, modifiers, as_json)
    said = differences(one.game, two.game)
    told = () if quick else tuple(_in_the_forecast(one, two, pupils, as_json))
    titles = remix_title(one), remix_title(two)
    if as_json:
        say_json(_json(titles, said, told))
        return FINE
    if not said:
        say(f"{titles[1]} and {titles[0]} say the same.")
        return FINE
    say(f"{titles[1]}, going by {titles[0]}:")
    heading = ""
    for each in said:
        if each.heading != heading:
            heading = each.heading
            say(f"{heading[:1].upper()}{heading[1:]}")
        _paragraph(each.words)
    _say_forecast(told, quick)
    return FINE


def _in_the_forecast(one: Remix, two: Remix, pupils: int | None, as_json: bool) -> Iterable[Told]:
    ours, theirs = (_answers(each, pupils, as_json) for each in (one, two))
    return forecast_differences(ours, theirs) if ours and theirs else ()


def _answers(made: Remix, pupils: int | None, as_json: bool) -> Answers | None:
    """The few numbers of a game's forecast, or None where they would take too long."""
    from compose.check import Budget, TooLarge, explore
    from compose.forecast.chances import chances
    from compose.forecast.exact import exact_course
    from compose.forecast.lesson import lesson_of
    from compose.forecast.simulate import Play, simulate
    from compose.net.from_game import net_of

    net = net_of(made.game, granted(), split(made, pupils, as_json)).value
    if net is None:
        return None
    constants = chances(net, library.norms(), kit())
    minutes = lesson_of(library.norms(), made.game.ages_years).play
    space = explore(net, Budget(MOST_STATES, MOST_SECONDS))
    if isinstance(space, TooLarge) or not space.complete:
        played = simulate(net, constants, minutes, Play(rounds=1000, batch=4000))
        return answers(net, played.course) if played else None
    return answers(net, exact_course(space, constants, minutes, quantiles=False))


def _say_forecast(told: Sequence[Told], quick: bool) -> None:
    if quick:
        return
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


def _json(titles: tuple[str, str], said: Sequence[Difference], told: Sequence[Told]) -> dict[str, Any]:
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
    }
