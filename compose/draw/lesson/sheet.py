"""The timetable of a lesson → a sheet like a card: a bar of the minutes, the kit to lay out first, each game."""

from __future__ import annotations

from collections.abc import Iterator

from compose.care.of_staging import care_of
from compose.care.reminders import by_gravity
from compose.draw.card.authors import as_written
from compose.draw.card.card import LAST_WORD, Card, CardSection, about_of
from compose.draw.lesson.plans import with_plans
from compose.draw.lesson.talk import talk_lines, warm_up_lines
from compose.draw.lesson.timetable import (
    ARRIVE,
    CHANGE_OVER,
    CLEAR,
    COOL_DOWN,
    EXPLAIN,
    PLAY,
    SET_UP,
    WARM_UP,
    KitShared,
    LessonTable,
    Slot,
)
from compose.draw.signs.palette import ACCENT, DARK, MIDDLE, PALE, STYLES, WHITE
from compose.draw.signs.shapes import Drawing, Ink, Label, Lines, Shape, hatch, rectangle
from compose.staging.floor.values import Rectangle
from compose.staging.resolved import resolved
from compose.telling.care import care_lines
from compose.telling.for_class import courts_said, stand_in_lines, team_lines
from compose.telling.french import joined
from compose.telling.rules import rules_of
from compose.telling.sentences import sentence
from compose.telling.wording import ENGLISH, Wording
from grammar.core.declared import Odd
from grammar.core.game import Core

NAMES = {
    ARRIVE: "Change and arrive",
    WARM_UP: "Warm-up",
    SET_UP: "Set up",
    EXPLAIN: "Explain",
    PLAY: "Play",
    CHANGE_OVER: "Change over",
    COOL_DOWN: "Cool-down and talk",
    CLEAR: "Clear away",
}


def lesson_card(table: LessonTable, title: str, wording: Wording = ENGLISH, known: tuple[str, ...] = ()) -> Card:
    """The sheet of a lesson that fits into its minutes; `known` are lines of what is known of its games."""
    say = wording.say
    games = [resolved(one.game) for one in table.games]
    ages = sorted({age for one in table.games for age in one.staging.ages_years})
    pupils = dict.fromkeys(str(one.staging.pupils) for one in table.games)
    instead = dict.fromkeys(line for one in table.games for line in stand_in_lines(one.staging, wording))
    sections = [
        CardSection(say("Minute by minute"), tuple(_line(table, slot, wording) for slot in table.slots)),
        CardSection(say("Warm-up"), warm_up_lines(table.games, wording)),
        CardSection(say("Lay out first"), tuple(_first(table, wording))),
        CardSection(say("Kit of the whole lesson"), (*(_kit(table, each, wording) for each in table.kit), *instead)),
        *(
            CardSection(f"{order}. {game.title}", tuple(_of_game(table, order - 1, wording)))
            for order, game in enumerate(games, start=1)
        ),
        CardSection(say("Talk"), talk_lines(games, wording)),
        CardSection(say("Take care"), (*_cautions(table, wording), say(LAST_WORD)), "care"),
        CardSection(say("Checked and forecast"), known, "proof"),
        CardSection(say("Where the minutes come from"), (_known_by(table, wording),), "proof"),
    ]
    credits = dict.fromkeys(told for game in games for told in game.told.credit)
    credit = say("Credit: {credit}.", credit="; ".join(wording.author(told) for told in credits)) if credits else ""
    stays = next((line for game in games if (line := as_written(game, (), {}, wording))), "")
    return Card(
        title=title,
        about=wording.listed(game.title for game in games),
        facts=(
            (say("Lesson"), wording.counted(round(table.lesson.minutes), "minute", "minutes")),
            (say("Pupils"), " / ".join(pupils)),
            (say("Ages"), _ages(ages[0], ages[-1], wording)),
            (say("Play"), wording.counted(round(table.played_min), "minute", "minutes")),
            *_active(table, wording),
            (say("Practises"), ", ".join(_skills(games, wording))),
        ),
        sections=tuple(part for part in sections if part.lines),
        footer=tuple(line for line in (credit, stays) if line),
        author="; ".join(credits),
        plan=with_plans(time_bar(table, wording), table, wording),
        language=wording.language,
        colon=say(":"),
    )


def _ages(youngest: float, oldest: float, wording: Wording) -> str:
    if youngest == oldest:
        return wording.figure(youngest)
    return wording.say("{low} to {high}", low=wording.figure(youngest), high=wording.figure(oldest))


def _active(table: LessonTable, wording: Wording) -> Iterator[tuple[str, str]]:
    if table.active is not None:
        share = wording.percent(table.active)
        yield wording.say("Active"), wording.say("{share} of class time", share=share)


def _skills(games: list[Core], wording: Wording) -> list[str]:
    said = (skill for game in games for skill in game.facts.skills)
    return [wording.known("skill", skill) or skill for skill in dict.fromkeys(said)]


def _clock(minutes: float) -> str:
    """ "0:05": to the nearest minute."""
    number = round(minutes)
    return f"{number // 60}:{number % 60:02}"


def _line(table: LessonTable, slot: Slot, wording: Wording) -> str:
    """ "0:13–0:26  Play: Lantern Row, 3 rounds of about 4 minutes"."""
    say, lead = wording.say, f"{_clock(slot.start)}–{_clock(slot.end)}  {wording.say(NAMES[slot.kind])}"
    if slot.kind in (ARRIVE, CLEAR, COOL_DOWN) or slot.game is None:
        return lead
    one = table.games[slot.game]
    lead = f"{lead}{say(':')} {one.game.title}"
    if slot.kind != PLAY:
        return lead
    if not slot.rounds or one.round_min is None:
        time = wording.counted(round(slot.minutes), "minute", "minutes")
        return f"{lead}, {say('one round, stopped after {time}', time=time)}"
    rounds = wording.counted(slot.rounds, "round", "rounds")
    time = wording.counted(max(1, round(one.round_min)), "minute", "minutes")
    return f"{lead}, {say('{rounds} of about {time}', rounds=rounds, time=time)}"


def _first(table: LessonTable, wording: Wording) -> Iterator[str]:
    """What the first game needs lies ready; things that later games need as well go where they stay at hand."""
    for each in table.kit:
        if each.by_game[0]:
            yield sentence(wording.counted(each.by_game[0], *each.names[0]))[:-1]
    shared = [wording.named(each.name[1]) for each in table.kit if each.games > 1]
    if shared:
        yield wording.say("Keep at hand for several games: {things}.", things=wording.listed(shared))


def _kit(table: LessonTable, each: KitShared, wording: Wording) -> str:
    number = sentence(wording.counted(each.most, *each.name))[:-1]
    if len(table.games) == 1:
        return number
    used = [
        f"{one.game.title}{wording.say(':')} {count if many == each.name[1] else wording.counted(count, single, many)}"
        for one, count, (single, many) in zip(table.games, each.by_game, each.names, strict=True)
        if count
    ]
    return f"{number} ({', '.join(used)})"


def _of_game(table: LessonTable, order: int, wording: Wording) -> Iterator[str]:
    """What to change on the floor, how it is played and won, and what to say."""
    game = resolved(table.games[order].game)
    if order:
        yield from _changed(table, order, wording)
    if game.told.about:
        yield about_of(game, wording)
    yield from team_lines(table.games[order].staging, wording)
    yield from _swapped_in(table, order, wording)
    rules = rules_of(game, wording)
    yield from dict.fromkeys((*rules.play, *rules.when, *rules.finish))
    yield from (sentence(wording.author(cue)) for cue in game.told.cues)


def _swapped_in(table: LessonTable, order: int, wording: Wording) -> Iterator[str]:
    """Whoever is to change in from round to round, where there is only one."""
    teams = table.games[order].staging.teams
    rounds = sum(slot.rounds for slot in table.slots if slot.game == order)
    if rounds <= 1 and (teams.resting or (teams.over and teams.odd_pupil is Odd.CHANGES)):
        yield wording.say("There is time for one round: change whoever does not play in when half of it is over.")


def _changed(table: LessonTable, order: int, wording: Wording) -> Iterator[str]:
    more, away = list[str](), list[str]()
    for each in table.kit:
        now, before = each.by_game[order], each.by_game[order - 1]
        names = each.names[order] if now > before else each.names[order - 1]
        if now != before:
            (more if now > before else away).append(wording.counted(abs(now - before), *names))
        if now and before and each.names[order] != each.names[order - 1]:
            things = wording.counted(min(now, before), *each.names[order - 1])
            as_what = wording.named(each.names[order][1 if min(now, before) > 1 else 0])
            line = wording.say("{things} now serve as {names}.", things=things, names=as_what)
            yield line if wording.english else joined(line)
    if away:
        yield wording.say("Put away {things}.", things=wording.listed(away))
    if more:
        yield wording.say("Bring out {things}.", things=wording.listed(more))
    if not more and not away:
        yield wording.say("The kit stays out.")
    marked, before_that = (courts_said(table.games[at].staging, wording) for at in (order, order - 1))
    if marked != before_that:
        yield wording.say("Mark the floor anew: {courts}.", courts=marked)


def _cautions(table: LessonTable, wording: Wording) -> tuple[str, ...]:
    """Those of the games, of their modifiers and of the kit, with whatever stands in."""
    said = (sentence(wording.author(text)) for one in table.games for text in one.staging.cautions)
    gravest = by_gravity(each for one in table.games for each in care_of(one.staging))
    return tuple(dict.fromkeys((*said, *care_lines(gravest, wording))))


def _known_by(table: LessonTable, wording: Wording) -> str:
    unknown = [one.game.title for one in table.games if one.round_min is None]
    if unknown:
        return wording.say("Nothing says how long a round of {games} takes: try it.", games=wording.listed(unknown))
    return wording.say("Rounds by the forecast or the game's clock, all else by usual times; a class may be slower.")


def time_bar(table: LessonTable, wording: Wording = ENGLISH) -> Drawing:
    """The lesson as a bar, one metre of drawing to a minute; each game has the colour of a side."""
    total = table.lesson.minutes
    unit = total / 100
    high, size = 7.0 * unit, 2.1 * unit
    shapes: list[Shape] = []
    for slot in table.slots:
        box = Rectangle(slot.start, 0.0, slot.end, high)
        style = STYLES[slot.game % len(STYLES)] if slot.game is not None else None
        fill = style.fill if style and slot.kind == PLAY else style.tint if style else WHITE
        shapes.append(rectangle(box, Ink(fill, DARK, 0.15 * unit)))
        if slot.kind in (ARRIVE, CLEAR, SET_UP, CHANGE_OVER):
            shapes.append(hatch(box, 1.2 * unit, Ink(stroke=PALE, width_m=0.2 * unit)))
        if slot.kind == PLAY and style:
            number = str((slot.game or 0) + 1)
            shapes.append(
                Label(
                    (box.left + box.right) / 2,
                    0.5 * high - 0.36 * 2.6 * unit,
                    number,
                    2.6 * unit,
                    style.mark,
                    "middle",
                    True,
                )
            )
    for tick in range(0, int(total) + 1, 5):
        shapes.append(Lines((((tick, -0.9 * unit), (tick, 0.0)),), Ink(stroke=MIDDLE, width_m=0.2 * unit)))
        shapes.append(Label(tick, -3.1 * unit, str(tick), size, DARK, "middle"))
    shapes.append(Label(0.0, -6.2 * unit, wording.say("minutes from the start; numbers are the games"), size, MIDDLE))
    shapes.append(rectangle(Rectangle(0.0, 0.0, total, high), Ink(None, ACCENT, 0.35 * unit)))
    box = Rectangle(-2.5 * unit, -7.2 * unit, total + 2.5 * unit, high + unit)
    words = "; ".join(_line(table, slot, wording) for slot in table.slots)
    return Drawing(wording.say("The lesson, minute by minute"), words, box, (rectangle(box, Ink(WHITE)), *shapes))
