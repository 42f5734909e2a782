"""A line about tasks that all move on through → rotations, each with the task that comes after it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from grammar.core.reading.play.offers import acting
from grammar.core.reading.play.rotations import after_what
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rotation import Occasion, Rotation, Tries
from grammar.core.values import PLAIN, Population
from grammar.said import Capital, listed, quoting
from grammar.sentences import play
from grammar.sentences.base import Node, Np


def read_move_on(reader: Reader, sentence: play.MoveOn, line: int) -> Iterator[Rotation]:
    """Once for each side that has all of these tasks, or once where each is of one side. Raises Senseless."""
    for circle in _circles(reader, sentence.jobs):
        yield from _moving(reader, sentence.jobs, circle, after_what(reader, sentence), line)


def _circles(reader: Reader, jobs: play.Jobs) -> list[tuple[Population, ...]]:
    steps = [_having(reader, job) for job in jobs.each]
    if len({frozenset(each.side for each in step) for step in steps}) == 1:
        return [*zip(*steps, strict=True)]
    if all(len(step) == 1 for step in steps):
        return [tuple(step[0] for step in steps)]
    title = "Some of these tasks are of one side, others of several: who moves on to which side?"
    raise Senseless(jobs, title, "Name tasks of one side, or the same ones of each.")


def read_all_move_on(reader: Reader, sentence: play.AllMoveOn, line: int) -> Iterator[Rotation]:
    """Each side through its roles, and then without one; where there are none through the sides. Raises Senseless."""
    after = after_what(reader, sentence)
    of_roles = [Population(role.side, role.id) for role in reader.roles if role.least]
    circles = [
        (*(who for who in of_roles if who.side == side), Population(side, PLAIN))
        for side in reader.side_ids
        if any(who.side == side for who in of_roles)
    ]
    if not circles and len(reader.sides) > 1 and not any(side.mirrored for side in reader.game.sides):
        circles = [tuple(Population(side, PLAIN) for side in reader.side_ids)]
    alike = [side.name for side in reader.game.sides if side.mirrored]
    if not circles and 0 < len(alike) < len(reader.sides):
        told = quoting(
            "{sides} are called mirrored, so that they have the same task: from which side to which all move on is not "
            "clear.",
            sides=Capital(listed(alike, "and")),
        )
        hint = quoting(
            "Say in sides who has which task, such as: {role}. That whole sides take turns can stand in quotes under "
            "`play`, for people.",
            role="role keeper: 1 player of each side",
        )
        raise Senseless(sentence, told, hint)
    if not circles:
        title = "All have the same task, so that there is none to move on to."
        raise Senseless(sentence, title, "Say in sides who has which, such as: role keeper: 1 player of each side")
    for circle in circles:
        yield from _moving(reader, sentence, circle, after, line)


def _having(reader: Reader, job: Np) -> tuple[Population, ...]:
    """The populations that have a task, in the order of the sides; of a side those without a role."""
    role = reader.player_phrase(job)[1]
    return tuple(each for each in acting(reader, job) if each.role == (role or PLAIN))


def _moving(
    reader: Reader, node: Node, circle: Sequence[Population], after: Fraction | Occasion | Tries, line: int
) -> Iterator[Rotation]:
    if len(set(circle)) < len(circle):
        raise Senseless(node, "One of these tasks stands twice.", "Name each once.")
    for role in reader.roles:
        if role.least < 1 and Population(role.side, role.id) in circle:
            title = quoting("There may be no {role} at all, so that nobody can move on to it.", role=role.id.key)
            raise Senseless(node, title, quoting("Say in sides that there is at least 1 {role}.", role=role.id.key))
    if len({next((each.number for each in reader.lives if each.who == who), None) for who in circle}) > 1 or (
        reader.lives and len({who.side for who in circle}) > 1
    ):
        told = "Whoever moves on would have other lives: who has how many left is not known."
        raise Senseless(node, told, "Leave the lives out, or give all the same number.")
    for who, onward in pairwise((*circle, circle[0])):
        yield Rotation(who, after, (line,), onward)
