"""What a finding of the check says of its net, in another language than English: places, conditions, ends and rules.

What stands in the fields of its patterns becomes names; the patterns themselves are told as those of all findings are.
"""

from __future__ import annotations

from typing import Any

from compose.check.found import (
    BackAfter,
    BackBy,
    Counted,
    FetchedBy,
    Instead,
    KeptBy,
    Likewise,
    Share,
    Sides,
    StoodUpBy,
    Wins,
)
from compose.net.match import Match
from compose.net.net import RESULT, All, AnyOf, Comparison, Condition, End, Net, Not, Place, Reaction, Rule, Transition
from compose.net.sums import whose_lives
from compose.telling.counts import kind_of, standing
from compose.telling.english.findings import line_instead, percents
from compose.telling.english.matches import part_words
from compose.telling.french import joined
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.values import Population, RoleId, SideId
from grammar.frozen import frozen
from grammar.said import Capital, Chain, Listed, Named, Said, Written

SO_MANY = {"<=": "at most {number} {things}", ">=": "at least {number} {things}", "==": "exactly {number} {things}"}
MORE = {
    "<=": "at most {number} more {things} than {others}",
    ">=": "at least {number} more {things} than {others}",
    "==": "exactly {number} more {things} than {others}",
}


@frozen
class OfNet:
    """The values of the findings of one net, in one language."""

    voice: Voice
    net: Net

    def told(self, value: Any) -> Any:
        """The value without anything of the net: patterns, names and numbers."""
        match value:
            case Said(pattern, fields):
                return Said(pattern, tuple((name, self.told(each)) for name, each in fields))
            case Chain(items, between, most):
                return Chain(tuple(self.told(each) for each in items), between, most)
            case Listed(items, last):
                return Listed(tuple(self.told(each) for each in items), last)
            case Capital(what):
                return Capital(self.told(what))
            case (
                Rule()
                | End()
                | Transition()
                | Reaction()
                | (BackAfter() | BackBy() | FetchedBy() | KeptBy() | StoodUpBy())
            ):
                return Written(f"«\u00a0{self._line(value)}\u00a0»")
        words = self._words(value)
        return value if words is None else Named(joined(words))

    def _words(self, value: Any) -> str | None:
        """What stands in the net in words; None for what does not."""
        match value:
            case Place():
                return self._place(value, True)
            case Counted(place, number):
                return self._place(place, number >= 2)
            case Sides(first, others):
                return self._sides(first) + self._likewise(others)
            case Likewise(others):
                return self._likewise(others)
            case Wins(side):
                return self.voice.wins(SideId(side))
            case Share(part, whole):
                return self.voice.wording.percent(percents(part, whole) / 100)
            case Match():
                return self.voice.say(part_words(value))
            case Comparison() | All() | AnyOf() | Not():
                return self._condition(value)
        return None

    def _line(self, value: Rule | End | Transition | Reaction | Instead) -> str:
        """The line of the sheet that says so, as it is written."""
        match value:
            case Rule():
                return value.text
            case End():
                return value.rule.text
            case BackAfter() | BackBy() | FetchedBy() | KeptBy() | StoodUpBy():
                return line_instead(self.net, value)
        return value.rules[0].text if value.rules else value.effects[0].rule.text

    def _sides(self, side: str) -> str:
        return self.voice.name(SideId(side))

    def _likewise(self, others: tuple[str, ...]) -> str:
        if not others:
            return ""
        named = self.voice.wording.listed(self._sides(each) for each in others)
        return f" {self.voice.say('(and likewise {sides})', sides=named)}"

    def _place(self, place: Place, several: bool) -> str:
        """Such as "lanternes du Sud debout", "joueurs du Nord dans la file des hérons"."""
        voice = self.voice
        owners = [SideId(place.side)] if place.side else []
        if place.token == "player" and owners:
            who = voice.players([Population(owners[0], RoleId(place.kind))], None, several) if place.kind else None
            who = who or voice.players(voice.play.populations(owners[0]), None, several)
            return f"{who} {standing(voice.about(owners[0], Subject.PLAYERS), place)}"
        if place.token == "points":
            return voice.of(voice.nouns.noun("point"), several, owners, None)
        if place.token == "runs":
            return voice.of(voice.nouns.noun("finished run"), several, owners, None)
        if place.kind is None:
            return voice.say("what is counted of the clock and the rules")
        if place.token == "ball" or place.standing is None:
            return f"{kind_of(voice, place).form(several)} {standing(voice, place) if place.standing else ''}".strip()
        return f"{voice.of(kind_of(voice, place), several, owners, None)} {standing(voice, place)}"

    def _condition(self, condition: Condition) -> str:
        match condition:
            case Not(part):
                return self.voice.say("not so: {it}", it=self._condition(part))
            case All(parts) | AnyOf(parts):
                every = [self._condition(each) for each in parts]
                return self.voice.wording.listed(every, "and" if isinstance(condition, All) else "or")
            case Comparison():
                return self._comparison(condition)

    def _comparison(self, comparison: Comparison) -> str:
        say, places = self.voice.say, self.net.places
        if any(places[place].token == RESULT for _, place in comparison.terms):
            return say("a rule that ends the round at once")
        plus = [(times, places[place]) for times, place in comparison.terms if times > 0]
        minus = [(-times, places[place]) for times, place in comparison.terms if times < 0]
        relation, bound = comparison.relation, comparison.bound
        if not plus:
            plus, minus, bound = minus, plus, -bound
            relation = {"<=": ">=", ">=": "<=", "==": "=="}[relation]
        things, others = self._sum(plus), self._sum(minus)
        if minus:
            return say(MORE[relation], number=str(bound), things=things, others=others)
        if relation != ">=" and bound == 0:
            return say("no {tokens}", tokens=things)
        return say(SO_MANY[relation], number=str(bound), things=things)

    def _sum(self, terms: list[tuple[int, Place]]) -> str:
        if (side := whose_lives(terms)) is not None:
            return self.voice.of(self.voice.nouns.noun("life", "lives"), True, [SideId(side)], None)
        return self.voice.wording.listed([self._place(each, True) for _, each in terms])
