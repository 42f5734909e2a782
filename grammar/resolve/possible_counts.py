"""Counts and sizes that cannot be: seen without playing, each with its place."""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from grammar.finding import Correction, Finding, mistake
from grammar.game import Game
from grammar.said import Figure, quoting, said
from grammar.sentences.attempting import (
    AtATime,
    Attempt,
    BounceShare,
    CaughtChance,
    Pace,
    PartOf,
    Stray,
    SucceedChance,
)
from grammar.sentences.base import Node, Quantity
from grammar.sentences.claims import AtMost, Exactly
from grammar.sentences.finish import After, BestOf, FirstTo, OpenEnded, Rests, RoundsPlayed
from grammar.sentences.head import Ages
from grammar.sentences.limits import StepLimit
from grammar.sentences.lives import HasLives, LastLife
from grammar.sentences.play import GuardLimit, SaidRule
from grammar.sentences.points import EndWorth, SetPoints, Worth
from grammar.sentences.queues import Queued
from grammar.sentences.resting import RestOnStep
from grammar.sentences.runs import InARow, OnlyAfterRow
from grammar.sentences.sides import Headcount, Placing, PlacingOnStep, Role
from grammar.sentences.space import AtMostThere, Court
from grammar.sentences.then import Scores
from grammar.sentences.time import OfClock, TimeSpan

MOST_ROUNDS = 99
_CHANCE = SucceedChance | CaughtChance | BounceShare | PartOf | Stray
_MAY_BE_NONE = Exactly | AtMost | Headcount | AtMostThere | GuardLimit | StepLimit | PlacingOnStep | RestOnStep
_SAID_ELSEWHERE = (
    _CHANCE | TimeSpan | OfClock | InARow | OnlyAfterRow | AtATime | Queued | Placing | FirstTo | Scores | SetPoints
    | Worth | EndWorth | BestOf | RoundsPlayed | Rests | HasLives | LastLife
)  # fmt: skip
_COUNTED_ELSEWHERE = frozenset(("Kit.count", "Innings.number", "Court.length", "Court.width"))

LEAST_COURT_M, MOST_COURT_M = 2, 60  # our choice: lengths and widths that a hall may have a court of


def one_of_each(game: Game) -> Iterator[Finding]:
    """A sheet has one court, one line of ages, one clock."""
    once: dict[type[Node], str] = {Court: "court", Ages: "line of ages", After: "clock", OpenEnded: "open end"}
    for section in ("head", "space", "finish"):
        first: dict[type[Node], Node] = {}
        for sentence in game.sentences(section):
            kind = type(sentence)
            if kind in once and kind in first:
                yield mistake(
                    "G-twice",
                    quoting("This game has a second {what}.", what=said(once[kind])),
                    sentence.span,
                    "Keep one of the two lines.",
                    first[kind].span,
                )
            first.setdefault(kind, sentence)
    if game.sheet.lines("space") and not any(game.all_of("space", Court)):
        yield mistake(
            "G-missing",
            "The space says nothing of the court.",
            game.sheet.span,
            'Add a line such as "court 18 m by 9 m, halved across".',
        )


def age_findings(ages: Ages) -> Iterator[Finding]:
    """Ages run upwards and are those of pupils."""
    if ages.least.value > ages.most.value:
        title = quoting("Ages {least} to {most} run backwards.", least=ages.least.words(), most=ages.most.words())
        turned = Correction(ages.span, f"ages {ages.most.words()} to {ages.least.words()}")
        backwards = mistake("G-range", title, ages.span, "Give the younger age first.")
        yield attrs.evolve(backwards, corrections=(turned,))
    elif not 3 <= ages.least.value <= ages.most.value <= 20:
        yield mistake("G-range", "These are not the ages of pupils.", ages.span, "Write ages from 3 to 20.")


def ranges(game: Game) -> Iterator[Finding]:
    """The ages are those of pupils; the court is of a size that a hall can have."""
    for ages in game.all_of("head", Ages):
        yield from age_findings(ages)
    for court in game.all_of("space", Court):
        if not all(LEAST_COURT_M <= side.metres <= MOST_COURT_M for side in (court.length, court.width)):
            yield mistake(
                "G-range",
                quoting(
                    "A hall has no court of {length} by {width}.",
                    length=court.length.words(),
                    width=court.width.words(),
                ),
                court.span,
                "Write lengths from 2 m to 60 m.",
            )
    for area in game.areas:
        if area.depth_m is not None and game.halved and area.depth_m > game.court_m[0] / 2:
            yield mistake(
                "G-range",
                quoting("The {name} is deeper than a half of the court.", name=area.name),
                area.span,
                quoting("A half is {number} m deep.", number=Figure(game.court_m[0] / 2)),
            )


def chances(game: Game) -> Iterator[Finding]:
    """Such as "3 in 5" is a chance; "6 in 5" is none."""
    for attempt in game.all_of("play", Attempt):
        for part in attempt.details:
            if (
                isinstance(part, _CHANCE)
                and not 0 <= part.times.value <= part.of.value > 0
            ):
                yield mistake(
                    "G-chance",
                    quoting("`{said}` is not possible.", said=part.words()),
                    part.span,
                    quoting('Write a number from 0 to {of} before "in".', of=part.of.words())
                    if part.of.value
                    else 'Write at least 1 behind "in".',
                )


def whole_numbers(game: Game) -> Iterator[Finding]:
    """Players, kit and points are counted in whole numbers."""
    for section in ("set-up", "play", "when", "finish"):  # of sides and kit it is said where they are declared
        for sentence in game.sentences(section):
            for part in _parts(sentence):
                if isinstance(part, Quantity) and part.unit == "" and part.value != int(part.value):
                    yield _fraction(part)
                if isinstance(part, FirstTo | Scores | SetPoints | Worth | EndWorth):
                    yield from _whole(part.points, 1, "points")
    for placing in game.placings:
        if placing.count is not None:
            yield from _whole(placing.count, 1, placing.what.name.text)


def _parts(node: Node) -> Iterator[Node]:
    """A sentence and all that it consists of, but for how often a minute somebody tries: that may be a fraction."""
    if isinstance(node, Pace):
        return
    yield node
    for part in attrs.fields(type(node)):
        value = getattr(node, part.name)
        for each in value if isinstance(value, tuple) else (value,):
            if isinstance(each, Node):
                yield from _parts(each)


def _fraction(number: Quantity) -> Finding:
    title = quoting("`{said}`: a part of one cannot be counted.", said=number.words())
    return mistake("G-count", title, number.span, "Write a whole number.")


def nothing_at_all(game: Game) -> Iterator[Finding]:
    """No time passes in 0 s, nothing is 0 m away: only what is counted may be none, and a chance be never."""
    for section in ("space", "sides", "kit", "set-up", "play", "when", "finish"):
        for sentence in game.sentences(section):
            for number in _that_is_some(sentence):
                if number.value == 0:
                    title = quoting("`{said}` is nothing at all.", said=number.words())
                    yield mistake("G-count", title, number.span, "Write a number above 0, or take the line out.")
            if isinstance(sentence, BestOf) and not 2 <= sentence.rounds.value <= MOST_ROUNDS:
                title = quoting("The best of {said} is none.", said=sentence.rounds.words())
                yield mistake("G-count", title, sentence.rounds.span, "Write 2 to 99, or take the line out.")


def _that_is_some(node: Node) -> Iterator[Quantity]:
    """All numbers of a sentence but those that may be none, or of which it is said elsewhere."""
    if isinstance(node, Quantity):
        yield node
    elif isinstance(node, Role):
        yield node.headcount.most or node.headcount.least
        for detail in node.details:
            yield from _that_is_some(detail)
    elif not isinstance(node, _MAY_BE_NONE | _SAID_ELSEWHERE):
        for part in attrs.fields(type(node)):
            value = getattr(node, part.name)
            for each in value if isinstance(value, tuple) else (value,):
                if isinstance(each, Node) and f"{type(node).__name__}.{part.name}" not in _COUNTED_ELSEWHERE:
                    yield from _that_is_some(each)


def _whole(number: Quantity, least: int, what: str) -> Iterator[Finding]:
    if number.value == int(number.value) and not least <= number.value <= 1000:
        yield mistake(
            "G-count",
            quoting("`{number} {what}` cannot be counted.", number=number.words(), what=what),
            number.span,
            quoting("Write a whole number from {least} to 1000.", least=least),
        )


def halves(game: Game) -> Iterator[Finding]:
    """Only a halved court has halves."""
    if game.halved or not any(game.all_of("space", Court)):
        return
    for section in ("set-up", "play"):
        for sentence in game.sentences(section):
            if isinstance(sentence, SaidRule):
                continue  # what is in quotes is for people
            if " half" in sentence.words() or "halves" in sentence.words():
                yield mistake(
                    "G-half",
                    "This court has no halves.",
                    sentence.span,
                    'Write "court ... , halved across", or name a zone.',
                )
