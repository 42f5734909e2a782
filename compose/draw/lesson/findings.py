"""What there is to say of the minutes of a lesson."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.lesson.timetable import PLAY, LessonTable
from compose.staging.found import note, warning
from compose.staging.norms import Ability
from compose.staging.where import of_length
from grammar.amounts import percent
from grammar.finding import Finding
from grammar.said import Figure, Many, Named, Percent, said
from library import Norms


def lesson_findings(table: LessonTable, norms: Norms) -> Iterator[Finding]:
    """Too little play, and too little movement."""
    yield from _rounds_lacking(table)
    ability, first = Ability(norms), table.games[0]
    place, ages = first.game.sheet.span, first.staging.ages_years
    least = ability.read("lesson play", "least", ages).value
    share = table.played_min / table.lesson.minutes
    if share < least:
        title = said(
            "Play takes {time} min of the {lesson} min, {share}; a third at least is usual.",
            time=Figure(table.played_min, ".0f"),
            lesson=Figure(table.lesson.minutes, ".0f"),
            share=Percent(share),
        )
        hint = "Play one game less, or get ready faster: each change and each talk takes minutes from play."
        yield warning("F-little-play", title, place, hint, play_min=table.played_min, share=share)
    asked = ability.read("effort target", "class time active", ages).value
    if table.active is not None and table.active < asked and percent(table.active) != percent(asked):
        title = said(
            "In this lesson a pupil is active in {share} of class time; {asked} is asked for.",
            share=Percent(table.active),
            asked=Percent(asked),
        )
        yield note("F-lesson-active", title, place, "Fewer waiting, more balls, shorter talk.", active=table.active)


def _rounds_lacking(table: LessonTable) -> Iterator[Finding]:
    """Games that ask for more rounds than they get: a side may then play twice where others play once."""
    for number, one in enumerate(table.games):
        lacking = table.rounds_lacking(number)
        if one.round_min is None or lacking is None:
            continue
        there, wanted = lacking
        left = sum(slot.minutes for slot in table.slots if slot.game == number and slot.kind == PLAY)
        title = said(
            "Of {game} {rounds} of {wanted} fit: {left} min of the lesson are left for it, a round takes {time} min.",
            game=Named(one.game.title),
            rounds=Many(there, "round", "rounds"),
            wanted=wanted,
            left=Figure(left, ".3g"),
            time=Figure(one.round_min, ".3g"),
        )
        yield warning("F-time", title, of_length(one.game), "Play shorter rounds, or a game less.", rounds=there)
