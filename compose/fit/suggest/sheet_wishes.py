"""Wishes that the sheet alone answers: skill, ages, pupils, court, kit, nobody out, a class."""

from __future__ import annotations

from attrs import frozen

from compose.fit.fit import fit
from compose.fit.school_class import SchoolClass
from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import SHEET
from compose.fit.teams import teams_of
from grammar.finding import Severity
from grammar.game import Game
from grammar.sentences.base import Name
from grammar.sentences.play import Attempt, ComesBack, Free
from grammar.sentences.when import ChangesPlaces, Out, Waits
from grammar.words import count
from library import Norms


@frozen
class Practises:
    """Players try a skill: "kick"."""

    skill: str
    cost: int = SHEET

    def words(self) -> str:
        return f"players {self.skill}"

    def gap(self, game: Game, looker: Looker) -> float:
        tried = {skill for attempt in game.all_of("play", Attempt) for skill in attempt.skills}
        return 0.0 if self.skill in tried else 1.0


@frozen
class ForAges:
    """The game is for all of these ages in years."""

    least: float
    most: float
    cost: int = SHEET

    def words(self) -> str:
        return f"for ages {self.least:g} to {self.most:g}"

    def gap(self, game: Game, looker: Looker) -> float:
        least, most = game.ages_years
        outside = max(0.0, least - self.least) + max(0.0, self.most - most)
        return min(2.0, outside / 2)


@frozen
class ForPupils:
    """So many pupils play, but for an odd one."""

    pupils: int
    cost: int = SHEET

    def words(self) -> str:
        return f"for {count(self.pupils, 'pupil')}"

    def gap(self, game: Game, looker: Looker) -> float:
        teams = teams_of(game, self.pupils)
        odd = len(game.sides) - 1 if teams.odd else 0
        return 0.0 if teams.over <= odd else 0.5 + teams.over / self.pupils


@frozen
class OnCourt:
    """The court is at most so long and wide, in m."""

    length_m: float
    width_m: float
    cost: int = SHEET

    def words(self) -> str:
        return f"on a court of at most {self.length_m:g} m by {self.width_m:g} m"

    def gap(self, game: Game, looker: Looker) -> float:
        length, width = game.court_m
        over = max(length / self.length_m, width / self.width_m, 1.0) - 1
        return 0.0 if over < 1e-6 else 0.5 + over


@frozen
class KitAtMost:
    """At most so many of a thing or of a sort of thing: "3 balls"."""

    most: int
    what: str
    cost: int = SHEET

    def words(self) -> str:
        return f"at most {count(self.most, self.what, self.what)}"

    def gap(self, game: Game, looker: Looker) -> float:
        over = self.there(game) - self.most
        return 0.0 if over <= 0 else 0.5 + over / max(1, self.there(game))

    def there(self, game: Game) -> int:
        """How many there are with the players that the looker takes."""
        players = {side.name: side.least for side in game.sides}
        return sum(line.total(players) for line in game.kit_meant(Name(self.what)))


@frozen
class NobodyOut:
    """Nobody is out for the round, and who waits comes back whatever the others do."""

    cost: int = SHEET

    def words(self) -> str:
        return "nobody is out"

    def gap(self, game: Game, looker: Looker) -> float:
        follows = [each for rule in game.whens for each in rule.consequences]
        back = any(game.all_of("play", ComesBack)) or any(game.all_of("play", Free))
        swaps = any(isinstance(each, ChangesPlaces) for each in follows)
        out = any(isinstance(each, Out) for each in follows)
        waits = any(isinstance(each, Waits) for each in follows) and not (back or swaps)
        return 1.0 if out or waits else 0.0


@frozen
class FitsClass:
    """A class can play it as it is: pupils, ages, hall and kit; the time is another wish."""

    school_class: SchoolClass
    norms: Norms
    cost: int = SHEET

    def words(self) -> str:
        return f"fits {self.school_class.name}"

    def gap(self, game: Game, looker: Looker) -> float:
        found = fit(game, self.school_class, self.norms, looker.kit).findings
        return 0.5 * sum(each.severity is Severity.WARNING and each.code != "F-time" for each in found)
