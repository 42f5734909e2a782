"""From what a teacher types to wishes: "4 to 6", "15 by 8", "3 balls"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from compose.fit.suggest.class_wishes import fits
from compose.fit.suggest.played_wishes import RoundLasts, TurnsAtLeast, WaitsAtMost
from compose.fit.suggest.sheet_wishes import (
    ForAges,
    ForPupils,
    KitAtMost,
    NobodyOut,
    OnCourt,
    Practises,
    kit_called,
)
from compose.fit.suggest.wish import Wish
from compose.staging.school_class import SchoolClass
from compose.terminal.answer import refuse
from compose.terminal.typed.classes import Who, named_group
from grammar.core.values import Skill
from grammar.frozen import evolve, frozen
from grammar.game import Game
from grammar.words import did_you_mean, listing

SKILLS = tuple(skill.value for skill in Skill)
_NUMBER = r"(\d+(?:\.\d+)?)"


@frozen
class Asked:
    """The wishes as they were typed; None or nothing for those that were not."""

    skill: str | None = None
    ages: str | None = None
    pupils: int | None = None
    court: str | None = None
    at_most: Sequence[str] = ()
    round_min: str | None = None
    wait_min: float | None = None
    turns: float | None = None
    nobody_out: bool = False
    class_name: str | None = None
    hall: str | None = None

    @property
    def who(self) -> Who:
        """Who is to play and where, as it was typed."""
        return Who(self.pupils, self.class_name, self.hall)


def group_asked(asked: Asked, as_json: bool = False) -> SchoolClass | None:
    """The class that is to play, with what was said beside it, or so many pupils in a hall; None where neither a class
    nor a hall is named. Ends the command where nobody says for whom the hall is."""
    if asked.class_name is None and asked.hall is None:
        return None
    if asked.class_name is None and asked.pupils is None:
        refuse("Nobody says for whom.", "Name a class with --class, or how many pupils with --pupils.", as_json)
    group = named_group(asked.who, as_json)
    ages = _ages(asked.ages, as_json) if asked.ages is not None else group.ages_years
    return evolve(group, ages_years=ages)


def wishes_of(asked: Asked, game: Game, as_json: bool = False) -> tuple[Wish, ...]:
    """The wishes; ends the command where one cannot be understood."""
    return tuple(_wishes(asked, game, as_json))


def _wishes(asked: Asked, game: Game, as_json: bool) -> Iterator[Wish]:
    if asked.skill is not None:
        yield Practises(_skills(asked.skill, as_json))
    group = group_asked(asked, as_json)
    if group is None and asked.ages is not None:
        yield ForAges(*_ages(asked.ages, as_json))
    if group is None and asked.pupils is not None:
        yield ForPupils(asked.pupils)
    if asked.court is not None:
        yield OnCourt(*_two(asked.court, "by", "court", "15 by 8", as_json))
    for each in asked.at_most:
        yield _kit(each, game, as_json)
    if asked.nobody_out:
        yield NobodyOut()
    if group is not None:
        yield from fits(group, game)
    if asked.round_min is not None:
        yield RoundLasts(*_two(asked.round_min, "to", "round", "4 to 6", as_json))
    if asked.wait_min is not None:
        yield WaitsAtMost(asked.wait_min)
    if asked.turns is not None:
        yield TurnsAtLeast(asked.turns)


def _skills(written: str, as_json: bool) -> tuple[str, ...]:
    """The skill of that name, or all that have the word in theirs: both throws for "throw"."""
    said = " ".join(written.lower().split())
    if said in SKILLS:
        return (said,)
    words = dict.fromkeys(word for skill in SKILLS for word in (skill, *skill.split()))
    named = tuple(skill for skill in SKILLS if {said, said.removesuffix("ing")} & set(skill.split()))
    if not named:
        hint = did_you_mean(said, words) or f"Choose {listing(SKILLS, 'or')}."
        refuse(f"There is no skill called `{written}`.", hint, as_json)
    return named


def _ages(written: str, as_json: bool) -> tuple[float, float]:
    """The ages in years, of which there may be one alone: "9 to 11", "9"."""
    alone = re.fullmatch(rf"\s*{_NUMBER}\s*", written)
    return _two(f"{written} to {written}" if alone else written, "to", "ages", "9 to 11", as_json)


def _two(written: str, between: str, what: str, example: str, as_json: bool) -> tuple[float, float]:
    match = re.fullmatch(rf"\s*{_NUMBER}\s*(?:m|min|years)?\s*{between}\s*{_NUMBER}\s*(?:m|min|years)?\s*", written)
    if match is None:
        refuse(f"`{written}` is not a wish for the {what}.", f'Write it such as "{example}".', as_json)
    first, second = float(match[1]), float(match[2])
    if between == "to" and first > second:
        refuse(f"`{written}` runs backwards.", f'Write it such as "{example}".', as_json)
    return first, second


def _kit(written: str, game: Game, as_json: bool) -> KitAtMost:
    match = re.fullmatch(r"\s*(\d+)\s+(\S.*?)\s*", written)
    if match is None:
        refuse(f"`{written}` does not say how many of what.", 'Write it such as "3 balls".', as_json)
    what = match[2].lower()
    if not kit_called(game, what):
        names = [name for line in game.kit for name in (line.name, line.plural)]
        hint = did_you_mean(what, names) or f"{game.title} has {listing(line.plural for line in game.kit)}."
        refuse(f"{game.title} knows no `{what}`.", hint, as_json)
    return KitAtMost(int(match[1]), what)
