"""Phrases of the rules in another language, built from the patterns of its catalogue."""

from __future__ import annotations

from attrs import frozen

from compose.draw.speak import SPACES, many_of, one_of
from compose.net.side_words import is_plural, singular_side
from compose.telling.french import article, feminine, joined, noun, side_name, side_noun
from compose.telling.wording import Wording
from grammar.game import Game
from grammar.sentences import finish
from grammar.sentences.base import (
    AnySide,
    Name,
    Np,
    Owner,
    OwnerName,
    Quantity,
    SideNamed,
    SideOf,
    SideRef,
    SideSame,
)
from grammar.sentences.play import AllQueued, Queued

TIMES = {"s": ("second", "seconds"), "min": ("minute", "minutes")}


@frozen
class Phrases:
    """The phrases of one game in one language."""

    game: Game
    wording: Wording

    def say(self, pattern: str, feminine: bool = False, /, **fields: str) -> str:
        """A pattern of the catalogue, filled in; in its feminine form where that is asked for and there is one."""
        return self.wording.say(pattern, feminine, **fields)

    def sentence(self, text: str) -> str:
        """Contracted, with a capital and a full stop."""
        tidy = joined(SPACES.sub(" ", text)).strip().replace(" ,", ",")
        if not tidy:
            return ""
        ended = tidy if tidy[-1] in ".!?" else f"{tidy}."
        return ended[0].upper() + ended[1:]

    def amount(self, quantity: Quantity) -> str:
        """ "10 secondes", "18 m"."""
        if quantity.unit in TIMES and not quantity.parameter:
            return self.wording.counted(quantity.value, *TIMES[quantity.unit])
        return quantity.words().replace(".", ",").replace(" ", "\u00a0")

    def noun(self, name: Name, several: bool) -> tuple[str, bool]:
        """A noun alone in a number, and whether it is feminine."""
        for side in self.game.sides:
            if is_plural(side.name) and name.text in (side.name, singular_side(side.name)):
                return side_noun(self.wording, side.name, several)
        one = one_of(self.game, name)
        if one == "half" and len(self.game.sides) > 2:
            one = "part"
        if one == "ball" and self._small_balls:
            one = "small ball"
        return noun(self.wording, one, several, many_of(self.game, name) if several else one)

    @property
    def _small_balls(self) -> bool:
        """Whether every ball of the game is a "balle" and none a "ballon"."""
        balls = [line.name for line in self.game.kit if line.category == "ball"]
        return bool(balls) and all(feminine(self.wording, ball) for ball in balls)

    def feminine(self, phrase: Np | Queued | AllQueued) -> bool:
        """Whether what agrees with a phrase is feminine."""
        return isinstance(phrase, Np) and self.noun(phrase.name, False)[1]

    def counted(self, number: float, name: Name) -> str:
        """A figure with its noun: "3 lanternes", "1 joueur"."""
        return f"{self.wording.figure(number)} {self.noun(name, number >= 2)[0]}"

    def one(self, name: Name) -> str:
        """A noun alone, in the singular."""
        return self.noun(name, False)[0]

    def many(self, name: Name) -> str:
        """A noun alone, in the plural."""
        return self.noun(name, True)[0]

    def several(self, name: Name) -> bool:
        """Whether the name is written in the plural."""
        if any(name.text == side.name and is_plural(side.name) for side in self.game.sides):
            return True
        return name.text == many_of(self.game, name) and name.text != one_of(self.game, name)

    def plural(self, phrase: Np | Queued | AllQueued) -> bool:
        """Whether the verb beside it is plural."""
        if isinstance(phrase, AllQueued):
            return True
        return isinstance(phrase, Np) and self.several(phrase.name)

    def np(self, phrase: Np, determiner: str | None = None) -> str:
        """ "les lanternes de l’autre équipe"; `determiner` stands instead of its own."""
        several = self.several(phrase.name)
        text, female = self.noun(phrase.name, several)
        said = article(determiner or phrase.determiner, female, several)
        other = f"{'autres' if several else 'autre'} " if phrase.other else ""
        whose = f" de {self._agent(phrase.possessive)}" if phrase.possessive else ""
        owner = f" de {self.owner(phrase.owner)}" if phrase.owner else ""
        return f"{said} {other}{text}{whose}{owner}"

    def _agent(self, possessive: str) -> str:
        """ "the catcher's" as "le receveur"."""
        one = possessive.replace("\u2019", "'").removesuffix("'s")
        text, female = noun(self.wording, one, False, one)
        return f"{article('the', female, False)} {text}"

    def owner(self, owner: Owner | OwnerName) -> str:
        """Whose: "l’autre équipe", "chaque équipe", "le Nord", "les porteurs"."""
        if isinstance(owner, Owner):
            return self._team(owner.determiner, owner.other)
        if owner.determiner is None and not owner.other:
            return self.side_name(owner.name.text)
        return self.np(Np(owner.determiner, None, owner.other, owner.name))

    def side_name(self, side: str) -> str:
        """A side by its name: "les hérons", "le Nord"."""
        return side_name(self.wording, side)

    def _team(self, determiner: str | None, other: str | None) -> str:
        text, female = noun(self.wording, "side", False, "side")
        return f"{article(determiner, female, False)} {'autre ' if other else ''}{text}"

    def side(self, side: AnySide) -> str:
        """A side as the one who does something."""
        match side:
            case SideRef():
                return self._team(side.determiner, side.other)
            case SideOf():
                return f"{self._team('the', None)} de {self._agent(side.possessive)}"
            case SideNamed():
                return self.side_name(side.name.text)
            case SideSame():
                return self.say("it (a side)")

    def who(self, who: Np | Queued | AllQueued) -> str:
        """Who does or suffers something."""
        match who:
            case Queued():
                end = self.say("the first in") if who.end == "first" else self.say("the last in")
                return f"{end} {self.np(who.where)}"
            case AllQueued():
                return f"{self.say('all in')} {self.np(who.where)}"
            case Np():
                return self.np(who)

    def place(self, preposition: str | None, where: Np) -> str:
        """ "derrière leur ligne de fond"."""
        if preposition in (None, "in") and where.name.text == "middle":
            return self.say("in the middle")
        return f"{self.preposition(preposition)} {self.np(where)}"

    def preposition(self, word: str | None) -> str:
        """A preposition of the language; "from" where there is none."""
        return self.wording.known("preposition", word or "from") or str(word)

    def thing_counted(self, counted: finish.Counted | finish.CountedPoints, number: float | None) -> str:
        """ "lanternes debout", "3 points"; without a number the plural."""
        if isinstance(counted, finish.CountedPoints):
            return self.wording.counted(number, "point", "points") if number is not None else self.many(Name("points"))
        noun_said = self.counted(number, counted.what) if number is not None else self.many(counted.what)
        return f"{noun_said} {self.state(counted.state)}".rstrip()

    def state(self, state: finish.State | None) -> str:
        """ "debout", "à terre", "en jeu", "sur le banc"."""
        match state:
            case finish.Standing():
                return self.say("standing")
            case finish.Down():
                return self.say("down")
            case finish.Inside():
                return self.say("in play")
            case finish.AtHome():
                return self.say("at home")
            case finish.Placed():
                return self.place(state.preposition, state.where)
            case None:
                return ""

    def many_in(self, side: AnySide) -> bool:
        """Whether the verb of a side is plural: "les porteurs"."""
        return isinstance(side, SideNamed) and is_plural(side.name.text)

    def pronoun(self, side: AnySide) -> tuple[str, bool]:
        """What a side is called once it was named, and whether its verb is plural: "elle", "ils"."""
        if not isinstance(side, SideNamed):
            return self.say("it (a side)"), False
        many = self.many_in(side)
        return self.say("they (a side)" if many else "it (a named side)", self.noun(side.name, False)[1]), many

    def claim(self, claim: finish.Claim, it: tuple[str, bool] | None = None) -> str:
        """ "l’autre équipe n’a plus de lanternes debout"; `it` is what the side spoken of before is called."""
        same = isinstance(claim.side, SideSame)
        side, many = it if same and it else (self.side(claim.side), self.many_in(claim.side))
        quantity, counted = claim.quantity, claim.counted
        match quantity:
            case finish.NoneOf():
                pattern, things = "{side} have no {things}" if many else "{side} has no {things}", None
            case finish.AtLeast():
                pattern = "{side} have at least {things}" if many else "{side} has at least {things}"
                things = quantity.count.value
            case finish.AtMost():
                pattern = "{side} have at most {things}" if many else "{side} has at most {things}"
                things = quantity.count.value
            case finish.Exactly():
                pattern, things = "{side} have {things}" if many else "{side} has {things}", quantity.count.value
            case finish.AllOf():
                pattern = "{side} have {things}" if many else "{side} has {things}"
                return self.say(pattern, side=side, things=self._all_of(quantity.determiner, counted))
        return self.say(pattern, side=side, things=self.thing_counted(counted, things))

    def does(self, side: AnySide, one: str, several: str, **fields: str) -> str:
        """What a side does, the verb in its number."""
        return self.say(several if self.many_in(side) else one, side=self.side(side), **fields)

    def _all_of(self, determiner: str, counted: finish.Counted | finish.CountedPoints) -> str:
        if isinstance(counted, finish.CountedPoints):
            return self.say("all the points")
        several = determiner == "all" or self.several(counted.what)
        text, female = self.noun(counted.what, several)
        return f"{article(determiner, female, several)} {text} {self.state(counted.state)}".rstrip()

    def condition(self, condition: finish.AnyWay, it: tuple[str, bool] | None = None) -> str:
        """Claims joined by and, ways by or."""
        ways = [self.wording.listed(self.claim(claim, it) for claim in way.claims) for way in condition.ways]
        return f" {self.say('or')} ".join(ways)
