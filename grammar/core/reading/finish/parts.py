"""Halves and innings that say themselves how long each of them lasts."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.ends import Bell
from grammar.core.reading.finish.finish_lines import read_verdicts
from grammar.core.reading.sheet.reader import Reader, seconds
from grammar.core.reading.sheet.whose import Spoken
from grammar.game import Game
from grammar.sentences import claims, finish, points, then, when

Parts = finish.Halves | finish.Innings


def said_length(game: Game) -> Parts | None:
    """The line that says how long each part lasts, where none of the clock does."""
    if any(True for _ in game.all_of("finish", finish.After)):
        return None
    said: list[Parts] = [*game.all_of("finish", finish.Halves), *game.all_of("finish", finish.Innings)]
    return next((each for each in said if each.length is not None), None)


def length_of_parts_s(game: Game) -> Fraction | None:
    """How long each part lasts, where no line of the clock says so."""
    said = said_length(game)
    return seconds(said.length) if said is not None and said.length is not None else None


def read_parts(reader: Reader, sentence: Parts, line: int) -> Iterator[Bell]:
    """The clock of each part: whoever has more points is ahead, if any are given."""
    if sentence.length is None or sentence != said_length(reader.game):
        return
    ahead = (finish.MoreWins("more", claims.CountedPoints()),) if _gives_points(reader.game) else ()
    verdicts = read_verdicts(reader, (*ahead, finish.Draw()), Spoken(reader.side_ids))
    yield Bell(seconds(sentence.length), verdicts, (line,))


def _gives_points(game: Game) -> bool:
    effects = (each for rule in game.all_of("when", when.When) for each in rule.consequences)
    lines = (*game.sentences("when"), *game.sentences("finish"))
    worth = any(isinstance(each, points.TargetPoints | points.SetPoints | points.AtTheEnd) for each in lines)
    return worth or any(isinstance(each, then.Scores) for each in effects)
