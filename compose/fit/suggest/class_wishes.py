"""What it takes for a class to play a game as it is: its pupils, ages, hall, kit and time, a wish each."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum

from attrs import evolve, frozen

import library
from compose.fit.fit import Fit
from compose.fit.suggest.look import Looker
from compose.fit.suggest.sheet_wishes import ForPupils
from compose.fit.suggest.wish import FORECAST, MET, SHEET, Miss, Wish, missed, of_finding
from compose.staging.cupboard import KitRow
from compose.staging.kit_findings import kit_findings
from compose.staging.school_class import SchoolClass
from compose.staging.staging import stage
from compose.telling.wording import ENGLISH, Wording
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.said import Figure


class Part(Enum):
    """Something of a class that a game has to fit, in words."""

    PUPILS = "all can play"
    AGES = "it suits their ages"
    HALL = "it goes into the hall"
    SPACE = "there is room for each"
    KIT = "the cupboard has the kit"
    TIME = "the lesson is long enough"
    REST = "nothing else stands in the way"


_PARTS: Mapping[str, Part] = {
    "F-too-few": Part.PUPILS,
    "F-too-many": Part.PUPILS,
    "F-age": Part.AGES,
    "F-hall": Part.HALL,
    "F-fixed": Part.HALL,
    "F-run-off": Part.HALL,
    "F-area": Part.SPACE,
    "F-crowded": Part.SPACE,
    "F-kit": Part.KIT,
    "F-time": Part.TIME,
}
FAR_M = 10.0  # our choice: a hall that lacks 5 m is a wish clearly missed
MOST_OFF = 1.5  # our choice: what is farther off is not told apart
FAR_YEARS = 2.0  # our choice: a game for children two years older is as far off as one whose court is 10 m too long
MOST_MORE = 1.5  # our choice: times as many players as another side has, of sides that are meant to be equal
_TOO_LITTLE = ("F-too-many", "F-area", "F-crowded")  # more or larger courts would do: of the others there is too much


@frozen
class Fits:
    """A part of a class is fitted: nothing of the fit that speaks of it asks to be mended. Of the kit it is one
    thing of the game that is meant, or with "" whatever else there is, and benches beyond the `benches` that the game
    needs as it is: a hall has them for the game that somebody chose, not for what is made of it. All play also in
    sides that are about as large, where those of the game that is mended are `equal`."""

    school_class: SchoolClass
    part: Part
    thing: str = ""
    others: tuple[str, ...] = ()
    equal: bool = False
    benches: int = 0

    @property
    def cost(self) -> int:
        """A round has to be forecast to know whether the lesson has time for it; the rest stands in the sheet."""
        return FORECAST if self.part is Part.TIME else SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        what = wording.say(self.part.value)
        if self.thing:
            what = wording.say("the cupboard has the {things}", things=wording.named(self.thing))
        return wording.say("{name}: {rule}", name=self.school_class.name or wording.say("the class"), rule=what)

    def miss(self, game: Game, looker: Looker) -> Miss:
        fitted = looker.fitted(game, self.school_class)
        found = self._short(fitted) if self.part is Part.KIT else self._found(fitted)
        if self.part is Part.TIME and (found or fitted.lesson.round_min is None):
            numbers = looker.numbers(game)
            if numbers is not None:
                found = self._found(looker.fitted(game, self.school_class, numbers.minutes))
        if not found:
            return self._uneven(fitted) if self.part is Part.PUPILS and self.equal else MET
        room = fitted.staging.room
        gap = sum(0.5 + _how_far(each) for each in found)
        if self.part is Part.HALL and room is not None:  # its findings come of one lack, however many there are
            gap = 0.5 + min(MOST_OFF, room.short_in_all_m / FAR_M)
        return Miss(gap, tuple(map(of_finding, found)), any(each.code in _TOO_LITTLE for each in found))

    def _uneven(self, fitted: Fit) -> Miss:
        """Whether one side has so many more than another that it is no match."""
        sides = max((each.values() for each in fitted.staging.teams.games), key=lambda each: max(each) / min(each))
        if max(sides) <= MOST_MORE * min(sides):
            return MET
        pattern = "One side would have {many} players, another {few}."
        return missed(max(sides) / min(sides) - 1, pattern, many=Figure(max(sides)), few=Figure(min(sides)))

    def _found(self, fitted: Fit) -> list[Finding]:
        wrong = (each for each in fitted.findings if each.severity is not Severity.NOTE)
        return [each for each in wrong if _PARTS.get(each.code, Part.REST) is self.part]

    def _short(self, fitted: Fit) -> list[Finding]:
        mine = [
            row
            for row in fitted.staging.kit
            if row.line.plural == self.thing or (not self.thing and row.line.plural not in self.others)
        ]
        if not self.thing and (benches := self._more_benches(fitted)) is not None:
            mine.append(benches)
        return [each for each in kit_findings(mine) if each.code == "F-kit"]

    def _more_benches(self, fitted: Fit) -> KitRow | None:
        """The benches that no kit lists, held against the cupboard; None where the game needs no more as it is."""
        row = fitted.staging.benches
        if row is None or row.needed <= self.benches or not self.school_class.lists_kit:
            return None
        there = sum(each.count for each in self.school_class.cupboard if each.like == row.line.like)
        return evolve(row, there=min(row.needed, max(there, self.benches)))


def fits(school_class: SchoolClass, game: Game) -> tuple[Fits, ...]:
    """All that a class asks of a game, each thing of its kit by itself."""
    things = tuple(line.plural for line in game.kit) if school_class.lists_kit else ()
    kit = (Fits(school_class, Part.KIT, thing) for thing in things)
    row = stage(game, library.norms(), library.kit_names(), school_class).benches if things else None
    benches = row.needed if row is not None else 0
    equal = len({(side.least, side.most) for side in game.sides}) == 1
    rest = (Fits(school_class, part, others=things, equal=equal, benches=benches) for part in Part)
    return (*kit, *rest)


def asks_for_all(wish: Wish) -> bool:
    """Whether it is a wish that all pupils play."""
    return isinstance(wish, ForPupils) or (isinstance(wish, Fits) and wish.part is Part.PUPILS)


def _how_far(found: Finding) -> float:
    """By how much something is missed, as a share of what is asked for or roughly so."""
    told = dict(found.numbers)
    if "least" in told:
        return (told["least"] - told["there"]) / max(told["least"], 0.1)
    amounts = [told[name] for name in ("short", "over", "short_m") if name in told]
    years = [told[name] for name in ("below", "above") if name in told]
    return min(MOST_OFF, sum(amounts) / FAR_M + sum(years) / FAR_YEARS)
