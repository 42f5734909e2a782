"""Pupils and ages: who is over, who does not play, whom the game is not for."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.found import note, refused, warning
from compose.staging.school_class import SchoolClass
from compose.staging.teams import Teams, least_pupils
from grammar.finding import Finding
from grammar.game import Game
from grammar.words import count


def people_findings(
    game: Game, school_class: SchoolClass, teams: Teams, allowed: int, courts: int | None
) -> Iterator[Finding]:
    """Too few or too many pupils, the odd one, and ages."""
    pupils, least, place = school_class.pupils, least_pupils(game), game.sides[0].span
    if pupils < least:
        rest = least - sum(side.least for side in game.sides)
        of_whom = f", of whom {rest} {'rests' if rest == 1 else 'rest'}" if rest else ""
        title = f"{game.title} needs at least {count(least, 'pupil')}{of_whom}; the class has {pupils}."
        hint = "Choose another game, or let the sides be smaller."
        yield refused("F-too-few", title, place, hint, short=least - pupils)
    elif teams.over and not _odd_only(game, teams):
        title = f"{count(teams.over, 'pupil')} of {pupils} would not play: {teams.words()} is all that is possible."
        yield refused("F-too-many", title, place, _for_more(allowed, courts), over=teams.over)
    elif teams.over:
        who = "One pupil is over" if teams.over == 1 else f"{teams.over} pupils are over"
        does = f": the odd pupil {teams.odd}" if teams.odd else ""
        hint = "" if teams.odd else 'Say what the odd pupil does, such as: "the odd pupil keeps the score".'
        yield note("F-odd", f"{who}{does}.", place, hint, over=teams.over)
    elif _uneven(game, teams):
        title = f"The sides cannot be equal: {teams.words()}."
        hint = 'The sides with fewer get the first throw, or say: "the odd pupil changes in each round".'
        yield note("F-odd", title, place, hint)
    yield from _age_findings(game, school_class)


def _odd_only(game: Game, teams: Teams) -> bool:
    """Whether only those are over that a rule for the odd pupil takes out of play."""
    return bool(teams.odd) and teams.over < len(game.sides)


def _uneven(game: Game, teams: Teams) -> bool:
    mirrored = {side.name for side in game.sides if side.mirrored}  # two bears against both need not be as many
    return any(len({number for side, number in sides.items() if side in mirrored}) > 1 for sides in teams.games)


def _for_more(allowed: int, courts: int | None) -> str:
    if courts is not None and courts < allowed:
        return f"The sheet allows {allowed} games side by side; the hall has room for {count(courts, 'court')}."
    return "Let them take turns, or play two games side by side."


def _age_findings(game: Game, school_class: SchoolClass) -> Iterator[Finding]:
    if school_class.ages_years is None:
        return
    (youngest, oldest), (least, most) = school_class.ages_years, game.ages_years
    if youngest < least or oldest > most:
        title = f"{game.title} is for ages {least:g} to {most:g}; the class is {youngest:g} to {oldest:g}."
        hint = "Make it easier: larger or nearer targets, softer balls." if youngest < least else "Make it harder."
        place = game.sheet.span
        yield warning("F-age", title, place, hint, below=max(0.0, least - youngest), above=max(0.0, oldest - most))
