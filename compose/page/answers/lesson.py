"""A lesson of several games: its minutes as a bar and a list, and its sheet as PDF."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import library
from compose.answer.answer import Answer, to_mend
from compose.draw.card.of_remix import titled
from compose.draw.lesson.known import known_line
from compose.draw.lesson.minutes_bar import NAMES, play_said, time_bar
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import PLAY, LessonTable, Planned, Slot, lesson_table
from compose.draw.lesson.to_pdf import lesson_pdf_of
from compose.draw.signs.to_svg import svg_of
from compose.modifiers.words_before import words_before
from compose.net.match import match_of
from compose.page.answers.at_hand import remixed
from compose.page.answers.for_class import LARGER
from compose.page.answers.known import all_of, proved_of
from compose.page.answers.paper import PAPER
from compose.page.answers.said import said
from compose.page.answers.values import Asked, LessonShown, Stretch
from compose.page.wording import page_wording
from compose.page.work.worker import raise_if_withdrawn
from compose.staging.resolved import resolved
from compose.telling.amounts import minutes_said
from compose.telling.wording import Wording

TITLE = "A lesson of games"


def lesson(games: Sequence[Asked], forecast: bool) -> LessonShown:
    """The lesson as it is shown; without the forecast rounds are as long as the games' clocks."""
    wording = page_wording(games[0].language)
    planned, _ = _planned(games, forecast, wording)
    if len(planned) < len(games):
        return LessonShown("", "", (), (), _cannot(games, wording))
    table = lesson_table(planned, library.norms())
    if table.short_min > 0:
        missing = wording.counted(round(table.short_min + 0.5), "minute", "minutes")
        return LessonShown(
            "", "", (), (), (wording.say("The lesson is {minutes} too short for these.", minutes=missing),)
        )
    card = lesson_card(table, wording.say(TITLE), wording)
    first = next((part.lines for part in card.sections if part.heading == wording.say("Lay out first")), ())
    narrow = svg_of(time_bar(table, wording, LARGER), key="narrow-bar-")
    stretches, lacks = _stretches(table, wording), tuple(_lacks(table, wording))
    return LessonShown(svg_of(card.plan, key="bar-"), narrow, stretches, first, (), lacks)


def _lacks(table: LessonTable, wording: Wording) -> Iterator[tuple[str, str]]:
    """What is to mend before the class can play a game, but for the time, of which the whole lesson speaks."""
    for each in table.games:
        yield from ((each.game.title, said(lack, wording).title) for lack in to_mend(each.staging.findings))


def sheet(games: Sequence[Asked]) -> bytes | str:
    """The sheet of the lesson as PDF; or why there is none."""
    wording = page_wording(games[0].language)
    planned, known = _planned(games, True, wording)
    if len(planned) < len(games):
        return " ".join(_cannot(games, wording))
    table = lesson_table(planned, library.norms())
    if table.short_min > 0:
        return wording.say("The lesson is too short for these games.")
    outcome = lesson_pdf_of(lesson_card(table, wording.say(TITLE), wording, tuple(known)), PAPER)
    return outcome.value if outcome.value is not None else " ".join(each.title for each in outcome.findings)


def _planned(games: Sequence[Asked], forecast: bool, wording: Wording) -> tuple[list[Planned], list[str]]:
    planned, known = [], []
    for asked in games:
        raise_if_withdrawn()
        made, answer = remixed(asked.texts, asked.uses).value, None
        looking = all_of if forecast else proved_of
        answer = looking(asked) if made is not None else None
        if made is None or not isinstance(answer, Answer):
            continue
        bell = answer.staged.net.bell
        clock = bell.after_s / 60 if bell is not None else None
        game = titled(made)
        minutes = answer.round_minutes or clock
        told = answer.staged.staging, minutes, answer.active_in_round, answer.numbers
        planned.append(Planned(game, *told, words_before(made)))
        known.append(known_line(game.title, answer, wording))
    return planned, known


def _cannot(games: Sequence[Asked], wording: Wording) -> tuple[str, ...]:
    """Which of the games the class cannot play."""
    found = []
    for asked in games:
        made = remixed(asked.texts, asked.uses).value
        if made is None or not isinstance(proved_of(asked), Answer):
            name = made.game.title if made is not None else "?"
            found.append(wording.say("Your class cannot play {game} like this.", game=name))
    return tuple(found)


def _rounds(table: LessonTable, slot: Slot, wording: Wording) -> str:
    """The rounds that a stretch has time for, and how many the game asks for, where that is said."""
    told = play_said(slot, wording)
    wanted = match_of(resolved(table.games[slot.game or 0].game)).most_rounds
    if wanted < 2:
        return told
    rounds = wording.counted(wanted, "round", "rounds")
    return f"{told} ({wording.say('the game asks for up to {rounds}', rounds=rounds)})"


def _stretches(table: LessonTable, wording: Wording) -> tuple[Stretch, ...]:
    return tuple(
        Stretch(
            wording.say(NAMES[slot.kind]),
            f"{slot.start:.0f}",
            minutes_said(slot.minutes, wording),
            table.games[slot.game].game.title if slot.game is not None else "",
            _rounds(table, slot, wording) if slot.kind == PLAY else "",
        )
        for slot in table.slots
    )
