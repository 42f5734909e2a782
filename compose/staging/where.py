"""The lines of a sheet that a finding about a class, its hall or its time speaks of."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator

from compose.staging.open_floor import safe_places
from compose.staging.resolved import resolved
from grammar.core.values import Part, Spot
from grammar.game import Game
from grammar.span import Span


def of_court(game: Game) -> Span:
    """The line of the court."""
    return _first(game, resolved(game).play.court.lines)


def beside_court(game: Game) -> tuple[Span, ...]:
    """The lines that put areas or things outside the lines of the court: they take room there."""
    play = resolved(game).play
    laid = [(area.lies, area.lines) for area in play.areas]
    laid += [(start.at, start.lines) for start in play.starts if isinstance(start.at, Spot)]
    out = [lines for spot, lines in laid if spot.part in (Part.BEHIND, Part.BESIDE)]
    return tuple(dict.fromkeys(place for lines in out for place in _spans(game, lines)))


def of_safe_places(game: Game) -> tuple[Span, ...]:
    """The lines of the places in which nobody is touched."""
    found = (place for area in safe_places(resolved(game).play) for place in _spans(game, area.lines))
    return tuple(dict.fromkeys(found))


def of_areas(game: Game, names: Container[str]) -> tuple[Span, ...]:
    """The lines of the places that are called so."""
    lines = (area.lines for area in resolved(game).play.areas if area.id.key in names)
    return tuple(dict.fromkeys(place for each in lines for place in _spans(game, each)))


def of_length(game: Game) -> Span:
    """The line that ends a round: the clock's, else the first way to win."""
    play = resolved(game).play
    ends = [play.bell.lines] if play.bell is not None else [end.lines for end in play.ends]
    return _first(game, (number for lines in ends for number in lines))


def _first(game: Game, lines: Iterable[int]) -> Span:
    return next(_spans(game, lines), game.sheet.span)


def _spans(game: Game, lines: Iterable[int]) -> Iterator[Span]:
    core = resolved(game)
    return (core.lines[number].span for number in lines if not core.lines[number].granted)
