"""Wishes that the sheet alone answers: skill, ages, pupils, court, kit, nobody out."""

from __future__ import annotations

from attrs import frozen

from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import MET, SHEET, Miss
from compose.staging.resolved import resolved
from compose.staging.teams import teams_of
from grammar.core.play import ComeBack, Free
from grammar.core.rules import Go, Swap
from grammar.core.values import At, Presence, Skill
from grammar.game import Game, GameKit
from grammar.meanings import CATEGORY_WORDS
from grammar.words import count, listing, plural


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

    def miss(self, game: Game, looker: Looker) -> Miss:
        tried = {each.skill for each in resolved(game).play.attempts}
        if Skill(self.skill) in tried:
            return MET
        return Miss(1.0, f"no {self.skill}: they {listing(sorted(each.value for each in tried)) or 'try nothing'}")


@frozen
class ForAges:
    """The game is for all of these ages in years."""

    least: float
    most: float
    cost: int = SHEET

    def words(self) -> str:
        return f"for ages {self.least:g} to {self.most:g}"

    def miss(self, game: Game, looker: Looker) -> Miss:
        least, most = game.ages_years
        younger, older = max(0.0, least - self.least), max(0.0, self.most - most)
        if younger + older == 0:
            return MET
        years = listing(
            [f"{count(gap, 'year')} {way}" for gap, way in ((younger, "too old"), (older, "too young")) if gap]
        )
        return Miss(min(2.0, (younger + older) / 2), f"the game is for {least:g} to {most:g}: {years}", older > 0)


@frozen
class ForPupils:
    """So many pupils play, but for an odd one."""

    pupils: int
    cost: int = SHEET

    def words(self) -> str:
        return f"for {count(self.pupils, 'pupil')}"

    def miss(self, game: Game, looker: Looker) -> Miss:
        teams = teams_of(game, self.pupils)
        odd = len(game.sides) - 1 if teams.odd else 0
        if teams.over <= odd:
            return MET
        would = f"{count(teams.over, 'pupil')} of {self.pupils} would not play"
        return Miss(0.5 + teams.over / self.pupils, would, teams.playing > 0)


@frozen
class OnCourt:
    """The court is at most so long and wide, in m."""

    length_m: float
    width_m: float
    cost: int = SHEET

    def words(self) -> str:
        return f"on a court of at most {self.length_m:g} m by {self.width_m:g} m"

    def miss(self, game: Game, looker: Looker) -> Miss:
        (length, width), most = game.court_m, (self.length_m, self.width_m)
        over = max(length / most[0], width / most[1], 1.0) - 1
        if over < 1e-6:
            return MET
        beyond = [
            f"{there - wanted:.3g} m too {way}"
            for there, wanted, way in ((length, most[0], "long"), (width, most[1], "wide"))
            if there > wanted
        ]
        return Miss(0.5 + over, f"the court is {length:.4g} m by {width:.4g} m, {listing(beyond)}")


@frozen
class KitAtMost:
    """At most so many of a thing or of a sort of thing: "3 balls"."""

    most: int
    what: str
    cost: int = SHEET

    def words(self) -> str:
        return f"at most {count(self.most, self.what, self.what)}"

    def miss(self, game: Game, looker: Looker) -> Miss:
        there = self.there(game)
        over = there - self.most
        return MET if over <= 0 else Miss(0.5 + over / there, f"{there} of them, {over} too many")

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

    def miss(self, game: Game, looker: Looker) -> Miss:
        play = resolved(game).play
        follows = [effect for rule in play.rules for effect in rule.effects]
        sent = [each.to for each in follows if isinstance(each, Go)]
        back = any(isinstance(service, Free | ComeBack) for service in play.services)
        swaps = any(isinstance(each, Swap) for each in follows)
        waits = any(isinstance(to, At) for to in sent) and not (back or swaps)
        if Presence.OUT in sent:
            return Miss(1.0, "somebody goes out for the round")
        return Miss(1.0, "who waits comes back only when others let them") if waits else MET
