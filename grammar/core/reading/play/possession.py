"""Who has the ball: after a catch, a miss, a rule, and at the start.

On a court in halves a side has what lies in its half. On one in one piece a sheet that gives the ball to a side makes
it that side's: only it may use it, and what nobody has lies on the court until somebody takes it up.
"""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from grammar.core.declared import ALL, Cut, Start
from grammar.core.play import Fetch
from grammar.core.reading.phrases.aims import goes_on_with_it
from grammar.core.reading.phrases.going_back import goes_back_to_side
from grammar.core.reading.play.handed import in_their_hands, side_with_a_task, task_named, the_only_side
from grammar.core.reading.sheet.pairs import parts_of
from grammar.core.reading.sheet.reader import Reader, with_which
from grammar.core.reading.sheet.whose import Claimed, Senseless, Spoken, Whose, is_keeper, of_name, the_one, whose_side
from grammar.core.rules import Rest, Result
from grammar.core.values import SHARED, KindId, Landmark, Owner, SideId, Spot
from grammar.game import Game
from grammar.meanings import AgentMeaning, side_named
from grammar.said import listed, quoting, write
from grammar.sentences import resting
from grammar.sentences.attempting import Attempt
from grammar.sentences.ball import BeginsWith, CatcherHas, FirstHas, HasBall, KeptBy, RestTo, RestToSide
from grammar.sentences.base import Node

GIVING = (RestToSide, KeptBy, HasBall, CatcherHas, FirstHas, BeginsWith)


def gives_the_ball(game: Game, node: Node) -> bool:
    """Whether a sentence says anywhere that a side has the ball."""
    if isinstance(node, Attempt) and any(goes_on_with_it(node, aim) for aim in node.aims):
        return True
    if isinstance(node, GIVING) or goes_back_to_side(game, node):
        return True
    if isinstance(node, RestTo) and side_of_place(game, node) is not None:
        return True
    values = [getattr(node, field.name) for field in attrs.fields(type(node))]
    parts = [part for value in values for part in (value if isinstance(value, tuple) else (value,))]
    return any(gives_the_ball(game, part) for part in parts if isinstance(part, Node))


def side_of_place(game: Game, place: resting.RestingPlace) -> Claimed | None:
    """The side to which a ball goes, where the phrase names a side or somebody of it instead of a place."""
    if isinstance(place, KeptBy):
        return side_of_place(game, place.whom) or _no_side(place)
    if isinstance(place, RestToSide):
        return whose_side(game, place.side)
    if isinstance(place, RestTo):
        meaning = game.meaning(place.where.name)
        if task_named(game, place.where) is not None:
            return side_with_a_task(game, place.where)
        if isinstance(meaning, AgentMeaning) or is_keeper(meaning) or side_named(meaning) is not None:
            return of_name(game, place.where, place.where.name.text)
    return None


def _no_side(place: KeptBy) -> Claimed:
    raise Senseless(place, "A ball {place}?", write("stays with the catcher"), place=place.words())


def with_side(reader: Reader, said: Claimed, spoken: Spoken, balls: frozenset[KindId]) -> Spot:
    """Where a side has a ball that goes to it, or those of it with a task whom the phrase names."""
    if len(reader.sides) < 2:
        title = "Where each plays for themselves no side has the ball."
        raise Senseless(said.node, title, "Name a place of the court.")
    role = task_named(reader.game, said.node)
    if role is None:
        return reader.own_part(the_one(said, spoken.meant(said, frozenset())))
    said = the_only_side(reader, said, role, frozenset(spoken.parts))
    side = the_one(said, spoken.meant(said, frozenset()))
    return in_their_hands(reader, said, role, reader.own_part(side), balls)


def sent(reader: Reader, side: SideId, against: Owner, results: frozenset[Result]) -> Spoken:
    """Who the words of a resting line mean, of a ball that a side sent at something of an owner."""
    others = reader.others(side)
    aimed_at = frozenset({against}) if isinstance(against, SideId) and against != side else None
    other = aimed_at or (others if len(others) == 1 else None)
    return Spoken(reader.side_ids, other=other, parts=parts_of(results, side, other))


def read_begins_with(reader: Reader, sentence: BeginsWith, line: int) -> Iterator[Start]:
    """Which side has balls at the start."""
    said = whose_side(reader.game, sentence.side)
    if said.whose not in (Whose.NAMED, Whose.ONE_EACH):
        sides = listed([side.key for side in reader.side_ids], "or")
        raise Senseless(
            sentence.side, "`{said}`: it is not clear which.", quoting("Name the side: {sides}.", sides=sides)
        )
    all_of_them = all(line.is_for_each_who(sentence) for line in reader.kit_lines(sentence.ball.name))
    count = ALL if sentence.number is None or all_of_them else sentence.number
    meant = Spoken(reader.side_ids).meant(said, frozenset())
    for ball in reader.balls(sentence.ball):
        for thing in reader.owned(ball):
            for side in reader.side_ids:
                if side in meant and thing.owner in (SHARED, side):
                    yield Start(thing, count, _own_hands(reader, sentence, side), None, (line,))


def _own_hands(reader: Reader, node: Node, side: SideId) -> Spot:
    return with_side(reader, Claimed(Whose.NAMED, node, side), Spoken(reader.side_ids), frozenset())


def read_catcher_has(reader: Reader, sentence: CatcherHas, line: int) -> Iterator[Rest]:
    """Whoever catches a ball has it: the other side, or a team-mate to whom it was passed."""
    skills, balls = with_which(reader, sentence.ball)
    for side, against in reader.all_pairs:
        for results in (frozenset({Result.CAUGHT}), frozenset({Result.PASSED})):
            catching = sent(reader, side, against, results).parts.get(Whose.CATCHER)
            if catching is not None:
                to = _own_hands(reader, sentence, next(iter(catching)))
                yield Rest(results, side, frozenset({against}), balls, to, False, (line,), skills=skills)


def read_first_has(reader: Reader, sentence: FirstHas, line: int) -> Iterator[Rest | Fetch]:
    """A ball that is missed, and that no other line sends anywhere, lies loose on the court, and all run for it."""
    if reader.court.cut is not Cut.WHOLE:
        title = "On a court in halves a ball lies in a half, and whoever plays there has it."
        raise Senseless(sentence, title, write("a missed ball rests in the half it was sent to"))
    court = Spot(Landmark.COURT, SHARED)
    balls = frozenset(reader.balls(sentence.ball))
    for side, against in reader.all_pairs:
        missed = frozenset({Result.MISSED, Result.LEFT})
        yield Rest(missed, side, frozenset({against}), balls, court, True, (line,), loose=True)
    for side in reader.side_ids:
        for ball in sorted(balls):
            yield Fetch(frozenset(reader.populations([side])), ball, court, None, (line,))
