"""A line about taking things from place to place → who carries them, and two offers: to take one, and to bring it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from grammar.core.guards import ALWAYS
from grammar.core.play import Along, Attempt, Figures, Offer, PickUp
from grammar.core.reading.phrases.aims import spoken_of
from grammar.core.reading.play.offers import acting, details_of, figures_of, is_some, only_of
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, whose
from grammar.core.values import KindId, Laden, Plain, Population, RoleId, Skill, Sort
from grammar.said import quoting, write
from grammar.sentences import attempting, play
from grammar.sentences.base import Node, Np

_KNOWN = (attempting.Pace, attempting.PartOf, attempting.OnlyWhen, attempting.OnlyIn, attempting.AtATime)


def taken_kinds(reader: Reader, sentences: Iterable[play.Take]) -> frozenset[KindId]:
    """The kinds of which a line of the play says that players take them from place to place."""
    phrases = (phrase for said in sentences for phrase in said.phrases)
    return frozenset(KindId(line.name) for phrase in phrases for line in reader.game.kit_meant(phrase.name))


def carrying(busy: frozenset[Population], reader: Reader, sentence: play.Take, line: int) -> Iterator[Population]:
    """Who carries something by a line: one for each side, kind and way."""
    for who, kind, way in _ways(busy, reader, sentence):
        yield Population(who.side, Laden(_base(who), kind, way.start, way.goal))


def read_take(busy: frozenset[Population], reader: Reader, sentence: play.Take, line: int) -> Iterator[Offer]:
    """The offers of a line: to take one, and for whoever has one to bring it."""
    if reader.lives:
        title = "Where lives are counted, what players carry is not: the check cannot read both."
        raise Senseless(sentence, title, "Leave the lives out, or write carry where nobody can be stopped on the way.")
    if sentence.number is not None and sentence.number.value != 1:
        hint = quoting("Leave out {number}: they are then taken one after the other.", number=sentence.number.words())
        raise Senseless(sentence.number, "Whoever takes something along carries one at a time.", hint)
    details = details_of(sentence)
    for detail in sentence.details:
        if not isinstance(detail, _KNOWN):
            raise Senseless(detail, "`{said}`: whoever takes something has it.", "Leave that out.")
    at_once = _at_once(reader, details.get(attempting.AtATime))
    share = details.get(attempting.PartOf)
    part = Fraction(share.times.whole, share.of.whole) if isinstance(share, attempting.PartOf) else None
    for who, kind, way in _ways(busy, reader, sentence):
        spoken = spoken_of(reader, who.side)
        take = Attempt(Skill.TAKE, kind, frozenset(), way)
        only, figures = only_of(reader, details, spoken), figures_of(reader, details, spoken)
        yield Offer(who, (take,), only, figures, part, (line,), at_once=at_once)
        laden = Population(who.side, Laden(_base(who), kind, way.start, way.goal))
        bring = Attempt(Skill.CARRY, None, frozenset(), Along(way.start, way.goal, False))
        yield Offer(laden, (bring,), ALWAYS, Figures(), None, (line,))


def _at_once(reader: Reader, said: Node | None) -> int:
    """How many of a side are on the way at most, so that the next waits till one is back; 0: all."""
    if not isinstance(said, attempting.AtATime):
        return 0
    owner, role = reader.player_phrase(said.who)
    if not is_some(said.number) or role is not None or owner.whose not in (Whose.UNSAID, Whose.ONE_EACH):
        title = "`{said}`: of each side so many players go at once."
        raise Senseless(said, title, write("only 2 players at a time"))
    return said.number.whole


def _ways(
    busy: frozenset[Population], reader: Reader, sentence: play.Take
) -> Iterator[tuple[Population, KindId, PickUp]]:
    """Who takes what from where to where: of the other sides from each of them."""
    named = reader.player_phrase(sentence.who)[1] is not None
    kinds = tuple(dict.fromkeys(kind for phrase in sentence.phrases for kind in _kinds(reader, phrase)))
    nobody = True
    for who in acting(reader, sentence.who):
        if not named and who in busy:
            continue
        spoken, own = spoken_of(reader, who.side), frozenset({who.side})
        goals = reader.spots(sentence.goal_part or "in", sentence.goal, spoken, own)
        if len(goals) > 1:
            raise Senseless(sentence.goal, "`{said}` is more than one place.", "Say of which side.")
        for start in reader.spots(sentence.start_part or "in", sentence.start, spoken, own):
            if start == goals[0]:
                continue
            nobody = False
            yield from ((who, kind, PickUp(start, goals[0])) for kind in kinds)
    if nobody:
        raise Senseless(sentence.goal, "They would stay where they are.", "Name another place to go to.")


def _kinds(reader: Reader, phrase: Np) -> tuple[KindId, ...]:
    said = whose(reader.game, phrase)
    if said.whose is not Whose.UNSAID:
        title = quoting(
            "`{said}`: what is taken from place to place is whoever's place it lies in.", said=phrase.words()
        )
        raise Senseless(said.node, title, write(f"a {phrase.name.text}"))
    found = reader.kinds_meant(phrase, Sort.LOAD, Sort.BALL)
    if not found:
        raise Senseless(
            phrase, "Nobody can take `{phrase}` along.", "Name a small thing of the kit.", phrase=phrase.words()
        )
    return found


def _base(who: Population) -> RoleId | Plain:
    """The task of somebody who has nothing yet."""
    assert not isinstance(who.role, Laden)
    return who.role
