"""Wishes that the sheet alone answers: skill, ages, pupils, court, kit, nobody out, a class."""

from __future__ import annotations

from attrs import frozen

from compose.fit.fit import fit
from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import SHEET
from compose.staging.resolved import resolved
from compose.staging.school_class import SchoolClass
from compose.staging.teams import teams_of
from grammar.core.play import ComeBack, Free
from grammar.core.rules import Go, Swap
from grammar.core.values import At, Presence, Skill
from grammar.finding import Severity
from grammar.game import Game, GameKit
from grammar.meanings import CATEGORY_WORDS
from grammar.words import count, plural
from library import Norms


def kit_called(game: Game, what: str) -> tuple[GameKit, ...]:
    """The lines of the kit that a word of the teacher means: by their names, or by their sort."""
    sort = next((kind for word, kind in CATEGORY_WORDS.items() if what in (word, plural(word))), None)
    return tuple(line for line in game.kit if what in (line.name, line.plural) or line.category == sort)


@frozen
class Practises:
    """Players try a skill: "kick"."""

    skill: str
    cost: int = SHEET

    def words(self) -> str:
        return f"players {self.skill}"

    def gap(self, game: Game, looker: Looker) -> float:
        tried = {each.skill for offer in resolved(game).play.offers for each in offer.attempts}
        return 0.0 if Skill(self.skill) in tried else 1.0


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
        return sum(line.total(players) for line in kit_called(game, self.what))


@frozen
class NobodyOut:
    """Nobody is out for the round, and who waits comes back whatever the others do."""

    cost: int = SHEET

    def words(self) -> str:
        return "nobody is out"

    def gap(self, game: Game, looker: Looker) -> float:
        play = resolved(game).play
        follows = [effect for rule in play.rules for effect in rule.effects]
        sent = [each.to for each in follows if isinstance(each, Go)]
        back = any(isinstance(service, Free | ComeBack) for service in play.services)
        swaps = any(isinstance(each, Swap) for each in follows)
        waits = any(isinstance(to, At) for to in sent) and not (back or swaps)
        return 1.0 if Presence.OUT in sent or waits else 0.0


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
