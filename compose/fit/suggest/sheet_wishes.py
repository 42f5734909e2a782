"""Wishes that the sheet alone answers: skill, ages, pupils, court, kit, nobody out."""

from __future__ import annotations

from attrs import frozen

from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import MET, SHEET, Miss, missed
from compose.staging.resolved import resolved
from compose.staging.teams import teams_of
from compose.telling.wording import ENGLISH, Wording
from grammar.core.play import ComeBack, Free
from grammar.core.rules import Go, Swap
from grammar.core.values import At, Presence, Skill
from grammar.game import Game, GameKit
from grammar.meanings import CATEGORY_WORDS
from grammar.said import Chain, Figure, Listed, Many, said
from grammar.words import plural


def kit_called(game: Game, what: str) -> tuple[GameKit, ...]:
    """The lines of the kit that a word of the teacher means: by their names, or by their sort."""
    sort = next((kind for word, kind in CATEGORY_WORDS.items() if what in (word, plural(word))), None)
    return tuple(line for line in game.kit if what in (line.name, line.plural) or line.category == sort)


@frozen
class Practises:
    """Players try one of these skills: "kick"; both throws for "throw"."""

    skills: tuple[str, ...]
    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        skills = wording.listed((wording.known("skill", each) or each for each in self.skills), "or")
        return wording.say("players {skill}", skill=skills)

    def miss(self, game: Game, looker: Looker) -> Miss:
        tried = {each.skill for each in resolved(game).play.attempts}
        if tried & {Skill(each) for each in self.skills}:
            return MET
        others = tuple(said(f"they {each}") for each in sorted(each.value for each in tried))
        there = Listed(others) if others else said("nothing is tried")
        return Miss(1.0, (Chain((Listed(tuple(said(f"no {each}") for each in self.skills)), there), ": "),))


@frozen
class ForAges:
    """The game is for all of these ages in years."""

    least: float
    most: float
    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        least, most = wording.figure(self.least), wording.figure(self.most)
        return wording.say("for ages {low} to {high}", low=least, high=most)

    def miss(self, game: Game, looker: Looker) -> Miss:
        least, most = game.ages_years
        younger, older = max(0.0, least - self.least), max(0.0, self.most - most)
        if younger + older == 0:
            return MET
        off = ((younger, "{years} too old"), (older, "{years} too young"))
        return missed(
            min(2.0, (younger + older) / 2),
            "the game is for {low} to {high}: {years}",
            older > 0,
            low=Figure(least),
            high=Figure(most),
            years=Listed(tuple(said(way, years=Many(gap, "year", "years")) for gap, way in off if gap)),
        )


@frozen
class ForPupils:
    """So many pupils play, but for an odd one."""

    pupils: int
    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("for {pupils}", pupils=wording.counted(self.pupils, "pupil", "pupils"))

    def miss(self, game: Game, looker: Looker) -> Miss:
        teams = teams_of(game, self.pupils)
        odd = len(game.sides) - 1 if teams.odd else 0
        if teams.over <= odd:
            return MET
        return missed(
            0.5 + teams.over / self.pupils,
            "{pupils} of {all} would not play",
            teams.playing > 0,
            pupils=Many(teams.over, "pupil", "pupils"),
            all=self.pupils,
        )


@frozen
class OnCourt:
    """The court is at most so long and wide, in m."""

    length_m: float
    width_m: float
    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        long, wide = wording.figure(self.length_m), wording.figure(self.width_m)
        return wording.say("on a court of at most {long} m by {wide} m", long=long, wide=wide)

    def miss(self, game: Game, looker: Looker) -> Miss:
        (length, width), most = game.court_m, (self.length_m, self.width_m)
        over = max(length / most[0], width / most[1], 1.0) - 1
        if over < 1e-6:
            return MET
        beyond = (
            said(f"{{metres}} m too {way}", metres=Figure(there - wanted, ".3g"))
            for there, wanted, way in ((length, most[0], "long"), (width, most[1], "wide"))
            if there > wanted
        )
        return missed(
            0.5 + over,
            "the court is {long} m by {wide} m, {beyond}",
            long=Figure(length, ".4g"),
            wide=Figure(width, ".4g"),
            beyond=Listed(tuple(beyond)),
        )


@frozen
class KitAtMost:
    """At most so many of a thing or of a sort of thing: "3 balls"."""

    most: int
    what: str
    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("at most {things}", things=wording.counted(self.most, self.what, self.what))

    def miss(self, game: Game, looker: Looker) -> Miss:
        there = self.there(game)
        over = there - self.most
        if over <= 0:
            return MET
        return missed(0.5 + over / there, "{there} of them, {over} too many", there=there, over=over)

    def there(self, game: Game) -> int:
        """How many there are with the players that the looker takes."""
        players = {side.name: side.least for side in game.sides}
        return sum(line.total(players) for line in kit_called(game, self.what))


@frozen
class NobodyOut:
    """Nobody is out for the round, and who waits comes back whatever the others do."""

    cost: int = SHEET

    def words(self, wording: Wording = ENGLISH) -> str:
        return wording.say("nobody is out")

    def miss(self, game: Game, looker: Looker) -> Miss:
        play = resolved(game).play
        follows = [effect for rule in play.rules for effect in rule.effects]
        sent = [each.to for each in follows if isinstance(each, Go)]
        back = any(isinstance(service, Free | ComeBack) for service in play.services)
        swaps = any(isinstance(each, Swap) for each in follows)
        waits = any(isinstance(to, At) for to in sent) and not (back or swaps)
        if Presence.OUT in sent:
            return missed(1.0, "somebody goes out for the round")
        return missed(1.0, "who waits comes back only when others let them") if waits else MET
