"""What the changes of a modifier touch, as far as a search for modifiers asks: nothing is promised by it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import Enum, auto

from compose.modifiers.modifier import Modifier
from grammar.sentences import attempting, finish, head, play, points, queues, resting, sides, then, when
from grammar.sentences import modifier as said
from grammar.sentences.base import Node


class Touch(Enum):
    """A part of a game that may change."""

    AGES = auto()
    GAMES_AT_ONCE = auto()
    ODD_PUPIL = auto()
    SIZES_OF_SIDES = auto()
    COURT = auto()
    LENGTH_OF_COURT = auto()
    WIDTH_OF_COURT = auto()
    MORE_KIT = auto()
    LESS_KIT = auto()
    SIZE_OF_KIT = auto()
    OTHER_KIT = auto()
    SKILL = auto()
    DISTANCE = auto()
    SUCCESS = auto()
    PACE = auto()
    STANDING_UP = auto()
    CLOCK = auto()
    POINTS_TO_WIN = auto()
    POINTS = auto()
    COMING_BACK = auto()
    CHANGING_PLACES = auto()
    WAITING = auto()
    PLAYING_ON = auto()
    JOINING = auto()
    FETCHING = auto()
    RESTING = auto()
    ROUNDS = auto()
    HOLD_LIMIT = auto()


_OF_SENTENCES: Mapping[type[Node], Touch] = {
    head.Ages: Touch.AGES,
    sides.SideBySide: Touch.GAMES_AT_ONCE,
    sides.OddPupil: Touch.ODD_PUPIL,
    said.UnevenSides: Touch.SIZES_OF_SIDES,
    said.ScaleCourt: Touch.COURT,
    said.MakeCourt: Touch.COURT,
    said.AddKit: Touch.MORE_KIT,
    said.AddLater: Touch.MORE_KIT,
    said.TakeKit: Touch.LESS_KIT,
    said.ScaleKit: Touch.SIZE_OF_KIT,
    said.MakeLike: Touch.OTHER_KIT,
    said.ChangeSkill: Touch.SKILL,
    said.AimFrom: Touch.DISTANCE,
    play.SucceedAsOften: Touch.SUCCESS,
    play.TakeAsLong: Touch.PACE,
    play.StandUp: Touch.STANDING_UP,
    finish.After: Touch.CLOCK,
    finish.FirstTo: Touch.POINTS_TO_WIN,
    finish.BestOf: Touch.ROUNDS,
    then.Scores: Touch.POINTS,
    play.PointsCount: Touch.POINTS,
    points.TargetPoints: Touch.POINTS,
    points.SetPoints: Touch.POINTS,
    points.AtTheEnd: Touch.POINTS,
    queues.Free: Touch.COMING_BACK,
    play.ComesBack: Touch.COMING_BACK,
    then.Returns: Touch.COMING_BACK,
    then.ChangesPlaces: Touch.CHANGING_PLACES,
    then.Waits: Touch.WAITING,
    then.PlaysOn: Touch.PLAYING_ON,
    then.Joins: Touch.JOINING,
    resting.Fetch: Touch.FETCHING,
    resting.Rest: Touch.RESTING,
    play.HoldLimit: Touch.HOLD_LIMIT,
}


def touches(modifier: Modifier) -> frozenset[Touch]:
    """All that a modifier changes, of what is listed."""
    return frozenset(each for sentence in _all(modifier) for each in _of(sentence))


def skills_brought(modifier: Modifier) -> frozenset[str]:
    """The skills that players try by what a modifier puts there."""
    return frozenset(skill for sentence in _all(modifier) for skill in _skills(sentence))


def _of(sentence: Node) -> Iterator[Touch]:
    if type(sentence) in _OF_SENTENCES:
        yield _OF_SENTENCES[type(sentence)]
    if isinstance(sentence, said.ScaleCourt):
        yield Touch.LENGTH_OF_COURT if sentence.dimension == "as long" else Touch.WIDTH_OF_COURT


def _skills(sentence: Node) -> tuple[str, ...]:
    if isinstance(sentence, said.ChangeSkill):
        return (sentence.to,)
    return sentence.skills if isinstance(sentence, attempting.Attempt) else ()


def _all(modifier: Modifier) -> Iterator[Node]:
    """The sentences of a modifier's changes, those in its blocks and what follows in their rules included."""
    for line in modifier.changes:
        yield line.sentence
        for inner in line.block:
            yield inner.sentence
            if isinstance(inner.sentence, when.When):
                yield from inner.sentence.consequences
