"""A line about a task that passes from pupil to pupil → rotations: one for each side that has it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.reading.phrases.clock import read_wait
from grammar.core.reading.play.offers import Trying, acting
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose
from grammar.core.rotation import Occasion, Rotation, Tries
from grammar.core.values import PLAIN, Population, RoleId
from grammar.said import quoting, write
from grammar.sentences import attempting, play
from grammar.sentences.base import Quantity
from grammar.sentences.determiners import EACH


def read_rotation(reader: Reader, sentence: play.Rotate, line: int) -> Iterator[Rotation]:
    """Raises Senseless where there is no task that could pass on, or no time after which it does."""
    after = after_what(reader, sentence)
    for who in acting(reader, sentence.who):
        role = next((each for each in reader.roles if (each.side, each.id) == (who.side, who.role)), None)
        if role is None or not isinstance(who.role, RoleId):
            _a_side(reader, sentence, who)
            yield Rotation(who, after, (line,))
            continue
        if role.least < 1:
            title = quoting("There may be no {role} at all, so that nothing passes on.", role=who.role.key)
            raise Senseless(
                sentence.who, title, quoting("Say in sides that there is at least 1 {role}.", role=who.role.key)
            )
        yield Rotation(who, after, (line,))


def _a_side(reader: Reader, sentence: play.Rotate, who: Population) -> None:
    """Foxes against hedgehogs: as many of the others become foxes, who are from then on what those were."""
    if after_what(reader, sentence) in (Occasion.POINT, Occasion.AGAINST):
        raise Senseless(sentence, "A whole side changes by the clock, or after a round.", write("every 60 s"))
    said = reader.player_phrase(sentence.who)[0]
    if said.whose is not Whose.NAMED or who.role is not PLAIN or any(role.side == who.side for role in reader.roles):
        hint = "Name a role that `sides` declares, such as: role tagger: 2 players of each side"
        if reader.roles:
            hint = "All through all tasks, one after the other: all move on every 60 s"
        raise Senseless(sentence.who, "`{said}` have no task that could pass on.", hint)
    if len(reader.sides) != 2:
        title = "`{said}`: with {number} sides it is not clear with whom they change."
        role_or_people = quoting(
            "Name a role of one side. That whole sides take turns cannot be said of more than two: take the line out, "
            "so that one turn is checked, and put it in quotes under `play`, for people, such as: {line}",
            line=f'"Each side takes its turn as {sentence.who.name.text}; the points of all turns count together."',
        )
        raise Senseless(sentence.who, title, role_or_people, number=len(reader.sides))
    if reader.lives:
        hint = "Leave the lives out, or let each side keep its players."
        told = "Where lives are counted, those of two sides cannot change: who has how many is not known."
        raise Senseless(sentence.who, told, hint)


def read_idle(reader: Reader, sentence: play.Idle, line: int) -> Iterator[Rotation]:
    """They have the task of their own to try nothing, so that no line about players is theirs. Raises Senseless where
    that leaves nobody, or another line gives them something to try."""
    for who in acting(reader, sentence.who):
        if who.role is PLAIN:
            title = "`{said}`: then others could not act either."
            raise Senseless(sentence.who, title, "Name a role.")
        trying: tuple[type[Trying], ...] = (attempting.Attempt, play.Touch, play.Take)
        for said in (each for kind in trying for each in reader.game.all_of("play", kind)):
            if reader.player_phrase(said.who)[1] == who.role:
                twice = quoting("Another line says what {name} try.", name=sentence.who.name.text)
                raise Senseless(sentence, twice, "Take one of the two out.")
    return iter(())


def after_what(reader: Reader, sentence: play.Rotate | play.MoveOn | play.AllMoveOn) -> Fraction | Occasion | Tries:
    """After what it is. Raises Senseless."""
    every = sentence.every
    if sentence.each not in EACH:
        said = every if isinstance(every, str) else every.words()
        raise Senseless(sentence, "`{each} {said}` is no time.", write("every 60 s"), each=sentence.each, said=said)
    if isinstance(every, play.Tries):
        if every.number.whole < 1:
            raise Senseless(every, "They would change all the time.", "Write a number from 1.")
        return Tries(every.number.whole)
    if isinstance(every, Quantity) and every.seconds <= 0:
        raise Senseless(every, "They would change all the time.", write("every 60 s"))
    return read_wait(reader, every, every) if isinstance(every, Quantity) else _every(every)


def _every(every: str) -> Fraction | Occasion:
    return Fraction(60) if every == "minute" else Occasion("point" if every == "points" else every)
