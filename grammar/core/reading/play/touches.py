"""A line about touching → offers: an attempt without a ball at players."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from grammar.core.declared import Cut
from grammar.core.play import AtPlayers, Attempt, Figures, Offer
from grammar.core.reading.phrases.aims import at_players, spoken_by
from grammar.core.reading.phrases.carrying import balls_in_hand, with_load
from grammar.core.reading.play.offers import acting, details_of, figures_of, only_of
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, whose
from grammar.core.values import PLAIN, Laden, Landmark, Population, Skill
from grammar.said import quoting
from grammar.sentences import attempting, play

_OF_BALLS = (attempting.CaughtChance, attempting.FromWhere, attempting.Stray)


def read_touch(busy: frozenset[Population], reader: Reader, sentence: play.Touch, line: int) -> Iterator[Offer]:
    """All offers of a line. Those with the same task leave each other alone, unless the line names them."""
    named = reader.player_phrase(sentence.who)[1] is not None
    details = details_of(sentence)
    for detail in sentence.details:
        if isinstance(detail, _OF_BALLS):
            raise Senseless(detail, "`{said}` is of a ball; whoever touches has none.", "Leave that out.")
    share = details.get(attempting.PartOf)
    part = Fraction(share.times.whole, share.of.whole) if isinstance(share, attempting.PartOf) else None
    nobody = True
    for who in acting(reader, sentence.who):
        if not named and who in busy:
            continue
        spoken = spoken_by(reader, who.side)
        figures: Figures = figures_of(reader, details, spoken)
        attempts = tuple(Attempt(Skill.TOUCH, None, frozenset(), aim) for aim in _touched(reader, sentence, who))
        if attempts:
            nobody = False
            yield Offer(who, attempts, only_of(reader, details, spoken), figures, part, (line,))
    if nobody:
        raise Senseless(sentence, "Nobody of whom this line speaks has anybody to touch.", "Name players of others.")


def _touched(reader: Reader, sentence: play.Touch, who: Population) -> Iterator[AtPlayers]:
    role = reader.player_phrase(sentence.whom)[1]
    alike = frozenset({who}) if role is None and who.role is not PLAIN else frozenset()
    for aim in at_players(reader, sentence.whom, who, spoken_by(reader, who.side)):
        holding = balls_in_hand(reader, sentence.load)
        laden = frozenset(_free_handed(aim.of)) if holding else with_load(reader, aim.of, sentence.load)
        touched = _come_over(reader, sentence, laden) - alike
        if touched:
            yield AtPlayers(touched, holding, sentence.where is not None)


def _free_handed(who: Iterable[Population]) -> Iterator[Population]:
    return (each for each in who if not isinstance(each.role, Laden))


def _come_over(reader: Reader, sentence: play.Touch, whom: frozenset[Population]) -> frozenset[Population]:
    """Of players who stay in their own half those who come into that of the others: who carry something from there."""
    where = sentence.where
    if where is None:
        return whom
    own = whose(reader.game, where, place=True).whose in (Whose.OWN, Whose.UNSAID)
    stays = (each.where for each in reader.game.all_of("play", play.Stay))
    halves = all(reader.place(each) is Landmark.HALF for each in (where, *stays))
    if sentence.preposition != "in" or not own or not halves or reader.court.cut is Cut.WHOLE:
        title = quoting("Where they are touched is read only of one's own half: not `{where}`.", where=where.words())
        raise Senseless(where, title, "Write: in their half, on a court that is halved, or leave it out.")
    found = frozenset(each for each in whom if isinstance(each.role, Laden))
    if not found:
        hint = "Say who takes what from there, or let some stay in the half of the other side."
        raise Senseless(where, "The check knows only those in the other half who carry something from there.", hint)
    return found
