"""The other lines of the play: where players stay, where balls rest, who fetches, frees and stands up."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.declared import Cut
from grammar.core.factor import Factor, Of
from grammar.core.play import Fetch, Hold, Home, StandUp, Unfetched, Who
from grammar.core.reading.phrases.aims import spoken_of
from grammar.core.reading.phrases.clock import read_wait
from grammar.core.reading.phrases.going_back import back_to
from grammar.core.reading.play.offers import acting
from grammar.core.reading.play.possession import sent, side_of_place, with_side
from grammar.core.reading.sheet.pairs import parts_of
from grammar.core.reading.sheet.reader import ALL_SKILLS, Reader, exactly, with_which
from grammar.core.reading.sheet.whose import Senseless, Spoken
from grammar.core.rules import Rest, Result
from grammar.core.values import SHARED, TEACHER, Landmark, Owner, Part, SideId, Skill, Sort, Spot
from grammar.meanings import TeacherMeaning
from grammar.said import quoting, write
from grammar.sentences import play, resting
from grammar.sentences.ball import RestTo
from grammar.sentences.base import Np

REST_RESULTS = {
    "missed": frozenset({Result.MISSED, Result.LEFT}),
    "caught": frozenset({Result.CAUGHT}),
    "scored": frozenset({Result.KNOCKED, Result.HIT, Result.THROUGH, Result.CROSSED, Result.ARRIVED}),
    "passed": frozenset({Result.PASSED}),
    "blocked": frozenset({Result.BLOCKED}),
    None: frozenset(Result),
}


def read_stay(reader: Reader, sentence: play.Stay, line: int) -> Iterator[Home]:
    """Where each population stays."""
    for who in acting(reader, sentence.who):
        spots = reader.spots(sentence.preposition, sentence.where, spoken_of(reader, who.side), frozenset({who.side}))
        for spot in spots:
            if spot.part is not Part.AT and not isinstance(spot.of, Landmark):
                raise Senseless(sentence.where, "That is no floor to stay on.", write("stay in"))
            yield Home(who, spot, (line,))


def read_rest(reader: Reader, sentence: resting.Rest, line: int) -> Iterator[Rest]:
    """Where balls of some results come to lie: for each side that acts and each owner who is concerned."""
    skills, balls = with_which(reader, sentence.ball)
    if sentence.determiner in ("their", "its", "that"):
        raise Senseless(
            sentence,
            "`{determiner} {ball}`: of no ball has been spoken.",
            write("a ball"),
            determiner=sentence.determiner,
            ball=sentence.ball.text,
        )
    results = REST_RESULTS[sentence.state]
    _refuse_what_never_comes(reader, sentence)
    skills = ALL_SKILLS if reader.tried <= skills else skills
    named = side_of_place(reader.game, sentence.place)
    for side, against in reader.all_pairs:
        if named is not None:
            met = (side, against) in reader.pairs and (against != side or Skill.PASS in skills)
            if len(reader.sides) > 2 and not met:
                continue  # of several others "the other side" is that at which it was sent
            to, spreads = with_side(reader, named, sent(reader, side, against, results), balls), False
        elif reader.granted and reader.held and sentence.state == "missed":
            to, spreads = Spot(Landmark.COURT, SHARED), True  # nobody has it: it lies where all may take it
        else:
            to, spreads = resting_place(reader, sentence.place, side, against, results)
        yield Rest(results, side, frozenset({against}), balls, to, spreads, (line,), reader.granted, skills)


def _refuse_what_never_comes(reader: Reader, sentence: resting.Rest) -> None:
    """Raises Senseless for a passed ball where nobody passes, and a blocked one where nobody blocks."""
    nobody = {"passed": Skill.PASS not in reader.tried, "blocked": not reader.blocked}
    if not reader.granted and nobody.get(sentence.state or "", False):
        title = quoting("No ball is {state} in this game.", state=sentence.state or "")
        raise Senseless(sentence, title, "Say in play who does it, or leave the line out.")


def sent_to(reader: Reader, side: SideId, against: Owner) -> SideId:
    """The side to which a ball goes: that whose thing it is, else the other side (of several the next)."""
    if isinstance(against, SideId):
        return against
    at = reader.side_ids.index(side)
    return reader.side_ids[(at + 1) % len(reader.side_ids)]


def resting_place(
    reader: Reader,
    place: resting.RestingPlace,
    side: SideId,
    against: Owner,
    results: frozenset[Result],
    own: frozenset[SideId] | None = None,
) -> tuple[Spot, bool]:
    """Where a ball comes to lie that a side sent at something of an owner, and whether it may stop anywhere there."""
    toward = sent_to(reader, side, against)
    match place:
        case resting.RestInHalf() | resting.RestToHalf():
            if reader.court.cut is Cut.WHOLE and not reader.granted:
                raise Senseless(place, "This court has no halves.", "Name a place of the court where it comes to lie.")
            back = place.which == "half it came from" or (place.which == "half it left" and results != {Result.LEFT})
            preposition = place.preposition if isinstance(place, resting.RestInHalf) else "in"
            if preposition not in ("in", "on"):
                raise Senseless(place, "A ball lies in a half.", write(f"in the {place.which}"))
            return reader.own_part(side if back else toward), True
        case resting.RestThere() | RestTo():
            where_to = place.preposition if isinstance(place, resting.RestThere) else None
            spot = _one_spot(reader, where_to, place.where, side, toward, results, own)
            return spot, (spot.of, spot.part) == (Landmark.HALF, Part.AT)
        case resting.RestBack():
            return back_to(reader, place, side), False
    raise Senseless(place, "A ball does not lie on a step of a track.", "Name a place of the court.")


def _one_spot(
    reader: Reader,
    preposition: str | None,
    where: Np,
    side: SideId,
    toward: SideId,
    results: frozenset[Result],
    own: frozenset[SideId] | None,
) -> Spot:
    to = frozenset({toward})
    spoken = Spoken(reader.side_ids, own=own, that=own, other=to, parts=parts_of(results, side, to))
    spots = reader.spots(preposition, where, spoken, frozenset({toward}))
    if len(spots) > 1:
        raise Senseless(where, "`{said}` is more than one place.", "Say of which side.")
    return spots[0]


def read_fetch(reader: Reader, sentence: resting.Fetch, line: int) -> Iterator[Fetch]:
    """Who brings which balls from where; the lines taken for granted are of the same form."""
    per_minute, turn = exactly(sentence.pace.times) if sentence.pace else None, sentence.in_turn
    for who, side in doers_of(reader, sentence.who):
        if turn is not None and (side is None or turn.number.value != 1):
            title = "`{said}`: only of players who go one by one is it counted."
            raise Senseless(turn, title, write("only 1 player at a time", "leave it out."))
        for ball in reader.balls(sentence.what):
            for spot in spots_of_place(reader, sentence.preposition, sentence.where, side):
                if reader.granted and spot.of is Landmark.COURT and not reader.held:
                    continue  # what lies on the court is at hand there
                yield Fetch(who, ball, spot, per_minute, (line,), reader.granted, turn is not None)


def doers_of(reader: Reader, phrase: Np) -> Iterator[tuple[Who, SideId | None]]:
    """The teacher, or the populations of each side that a phrase means."""
    if isinstance(reader.game.meaning(phrase.name), TeacherMeaning):
        if phrase.possessive or phrase.owner or phrase.other:
            raise Senseless(phrase, "There is one teacher, who is of no side.", write("the teacher"))
        yield TEACHER, None
        return
    found = acting(reader, phrase)
    for side in reader.side_ids:
        own = frozenset(who for who in found if who.side == side)
        if own:
            yield own, side


def spots_of_place(
    reader: Reader, preposition: str | None, where: Np, side: SideId | None, parts: tuple[Part, ...] | None = None
) -> tuple[Spot, ...]:
    """The places of a phrase for whoever does it: one's own where nothing is said; for the teacher, everybody's."""
    allowed = parts or (Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE)
    if side is None:
        everybody = Spoken(reader.side_ids)
        return reader.spots(preposition, where, everybody, reader.all_sides, allowed)
    return reader.spots(preposition, where, spoken_of(reader, side), frozenset({side}), allowed)


def read_nobody_fetches(reader: Reader, sentence: resting.NobodyFetches, line: int) -> Iterator[Unfetched]:
    """From where nobody brings balls."""
    for ball in reader.balls(sentence.what):
        for spot in spots_of_place(reader, sentence.preposition, sentence.where, None):
            yield Unfetched(ball, spot, (line,))


def read_stand_up(reader: Reader, sentence: play.StandUp, line: int) -> Iterator[StandUp]:
    """Who puts up what."""
    per_minute = exactly(sentence.pace.times) if sentence.pace else None
    for who, side in doers_of(reader, sentence.who):
        spoken = Spoken(reader.side_ids) if side is None else spoken_of(reader, side)
        own = reader.all_sides if side is None else frozenset({side})
        for thing in reader.thing_phrase(sentence.what, spoken, own, Sort.TARGET):
            yield StandUp(who, thing, per_minute, (line,))


def read_hold(reader: Reader, sentence: play.HoldLimit, line: int) -> Iterator[Hold]:
    """How long a ball is held at most."""
    for ball in reader.balls(sentence.ball):
        yield Hold(ball, read_wait(reader, sentence.limit, sentence.limit), (line,))


def read_factor(reader: Reader, sentence: play.SucceedAsOften | play.TakeAsLong, line: int) -> Iterator[Factor]:
    """All attempts rarer or slower."""
    of = Of.SUCCESS if isinstance(sentence, play.SucceedAsOften) else Of.TIME
    yield Factor(of, exactly(sentence.percent) / Fraction(100), (line,))
