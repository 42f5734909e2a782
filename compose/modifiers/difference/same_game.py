"""Whether two games are the same game, by their cores: wording, titles and notes do not count, and the order of
lines counts where it decides something.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from attrs import evolve

from compose.staging.resolved import resolved
from grammar.core.declared import ALL, Per, Start
from grammar.core.game import Core, Play
from grammar.game import Game


def same_game(one: Game, other: Game) -> bool:
    """Whether two games say the same: they are played alike, and tell people the same."""
    return same_lines(one, other) or same_meaning(one, other)


def same_lines(one: Game, other: Game) -> bool:
    """Whether two sheets have the same lines, those of care in any order: a quick look that needs no core."""
    return _lines(one) == _lines(other)


def same_meaning(one: Game, other: Game) -> bool:
    """Whether the cores of two games say the same, whatever their sheets look like."""
    return played_as(one) == played_as(other) and _told(resolved(one)) == _told(resolved(other))


def _lines(game: Game) -> Hashable:
    sections = ((part.name, tuple(line.sentence for line in part.lines)) for part in game.sheet.sections)
    parts = (("head", tuple(line.sentence for line in game.sheet.head)), *sections)
    return tuple((name, frozenset(lines) if name == "care" else lines) for name, lines in parts)


def played_as(game: Game) -> Hashable:
    """Equal for games that are played alike by the same pupils."""
    core = resolved(game)
    return evolve(core.play, starts=tuple(_starts(core.play))), core.facts.ages_years, frozenset(core.facts.skills)


def led_alike(one: Game, other: Game) -> bool:
    """Whether nobody would play, lay out or tell one game otherwise than the other, but for cautions."""
    cores = resolved(one), resolved(other)
    facts, quotes = (
        [each.facts for each in cores],
        [frozenset(text for _, text in each.told.quotes) for each in cores],
    )
    return played_as(one) == played_as(other) and facts[0] == facts[1] and quotes[0] == quotes[1]


def _told(core: Core) -> Hashable:
    told = core.told
    quotes = frozenset(text for _, text in told.quotes)
    return tuple(frozenset(texts) for texts in (told.cues, (*told.cautions, *told.care), told.outcomes)), quotes


def _starts(play: Play) -> Iterator[Start]:
    """Where everything is at the set-up; "4 in each half" of 8 are all of them."""
    for start in play.starts:
        alike = [each for each in play.starts if each.what == start.what]
        even = {each.count for each in alike} == {start.count}
        there = [each.count for each in play.supplies if each.thing == start.what and each.per is Per.OWNER]
        all_of_them = isinstance(start.count, int) and even and start.count * len(alike) == sum(there)
        yield evolve(start, count=ALL) if all_of_them else start
