"""Pupils and ages: who is over, who does not play, whom the game is not for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from compose.staging.found import note, refused, warning
from compose.staging.school_class import SchoolClass
from compose.staging.teams import Teams, least_pupils
from grammar.finding import Finding
from grammar.game import Game
from grammar.said import Figure, Listed, Many, Players, Value, Written, said


def people_findings(
    game: Game, school_class: SchoolClass, teams: Teams, allowed: int, courts: int | None
) -> Iterator[Finding]:
    """Too few or too many pupils, the odd one, and ages."""
    pupils, least, place = school_class.pupils, least_pupils(game), game.sides[0].span
    if pupils < least:
        rest = least - sum(side.least for side in game.sides)
        pattern = "{game} needs at least {pupils}; the class has {there}."
        if rest:
            pattern = "{game} needs at least {pupils}, of whom {rest} rest; the class has {there}."
        title = said(pattern, game=Written(game.title), pupils=_pupils(least), there=pupils, rest=rest)
        hint = "Choose another game, or let the sides be smaller."
        yield refused("F-too-few", title, place, hint, short=least - pupils)
    elif teams.over and not _odd_only(game, teams):
        title = said(
            "{over} of {pupils} would not play: {teams} is all that is possible.",
            over=_pupils(teams.over),
            pupils=pupils,
            teams=_teams(teams),
        )
        yield refused("F-too-many", title, place, _for_more(allowed, courts), over=teams.over)
    elif teams.over:
        who: Value = "One pupil is over" if teams.over == 1 else said("{number} pupils are over", number=teams.over)
        if teams.odd:
            who = said("{who}: {odd}", who=who, odd=f"the odd pupil {teams.odd}")
        hint = "" if teams.odd else 'Say what the odd pupil does, such as: "the odd pupil keeps the score".'
        yield note("F-odd", said("{who}.", who=who), place, hint, over=teams.over)
    elif _uneven(game, teams):
        title = said("The sides cannot be equal: {teams}.", teams=_teams(teams))
        hint = 'The sides with fewer get the first throw, or say: "the odd pupil changes in each round".'
        yield note("F-odd", title, place, hint)
    yield from _age_findings(game, school_class)


def _pupils(number: int) -> Many:
    return Many(number, "pupil", "pupils")


def _teams(teams: Teams) -> Value:
    """ "14 north and 13 south", "13 games of 1 west and 1 east"."""
    kinds = Counter(tuple(sides.items()) for sides in teams.games)
    people = {kind: Listed(tuple(Players(number, side) for side, number in kind)) for kind in kinds}
    told: Value = Listed(
        tuple(
            said("{games} of {people}", games=Many(number, "game", "games"), people=people[kind])
            for kind, number in kinds.items()
        )
    )
    if len(teams.games) == 1:
        told = next(iter(people.values()))
    return said("{teams}; {number} rest", teams=told, number=teams.resting) if teams.resting else told


def _odd_only(game: Game, teams: Teams) -> bool:
    """Whether only those are over that a rule for the odd pupil takes out of play."""
    return bool(teams.odd) and teams.over < len(game.sides)


def _uneven(game: Game, teams: Teams) -> bool:
    mirrored = {side.name for side in game.sides if side.mirrored}  # two bears against both need not be as many
    return any(len({number for side, number in sides.items() if side in mirrored}) > 1 for sides in teams.games)


def _for_more(allowed: int, courts: int | None) -> Value:
    if courts == 0:
        return "The hall has no room for one court with the least strip all round: play on a smaller one."
    if courts is not None and courts < allowed:
        return said(
            "The sheet allows {allowed} games side by side; the hall has room for {courts}.",
            allowed=allowed,
            courts=Many(courts, "court", "courts"),
        )
    return "Let them take turns, or play two games side by side."


def _age_findings(game: Game, school_class: SchoolClass) -> Iterator[Finding]:
    if school_class.ages_years is None:
        return
    (youngest, oldest), (least, most) = school_class.ages_years, game.ages_years
    if youngest < least or oldest > most:
        title = said(
            "{game} is for ages {least} to {most}; the class is {ages}.",
            game=Written(game.title),
            least=Figure(least),
            most=Figure(most),
            ages=Figure(youngest)
            if youngest == oldest
            else said("{low} to {high}", low=Figure(youngest), high=Figure(oldest)),
        )
        hint = "Make it easier: larger or nearer targets, softer balls." if youngest < least else "Make it harder."
        place = game.sheet.span
        yield warning("F-age", title, place, hint, below=max(0.0, least - youngest), above=max(0.0, oldest - most))
