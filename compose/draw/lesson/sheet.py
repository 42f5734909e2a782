"""The timetable of a lesson → a sheet like a card: a bar of the minutes, the kit to lay out first, each game."""

from __future__ import annotations

from collections.abc import Iterator

from compose.care.of_staging import care_of
from compose.care.reminders import by_gravity
from compose.draw.card.authors import as_written
from compose.draw.card.card import LAST_WORD, Card, CardSection, about_of, cues_of
from compose.draw.card.proof import turns_said
from compose.draw.lesson.marked_floor import floor_lines
from compose.draw.lesson.minutes_bar import slot_line, time_bar
from compose.draw.lesson.plans import with_plans
from compose.draw.lesson.talk import talk_lines, warm_up_lines
from compose.draw.lesson.timetable import (
    KitShared,
    LessonTable,
)
from compose.staging.cautions import together
from compose.staging.resolved import resolved
from compose.telling.amounts import ages_said, minutes_said
from compose.telling.care import with_cautions
from compose.telling.cautions import cautions_told
from compose.telling.for_class import team_lines
from compose.telling.french import joined
from compose.telling.kit import likeness_told
from compose.telling.needed import instead_told, kit_lines, stand_in_lines, unlisted_of_all
from compose.telling.rules import rules_of
from compose.telling.sentences import sentence
from compose.telling.voice import Voice
from compose.telling.wording import ENGLISH, Wording
from grammar.core.declared import Odd
from grammar.core.game import Core

PLANS_PT = 245.0  # our choice: below the bar of minutes plans are read from a step away, too


def lesson_card(table: LessonTable, title: str, wording: Wording = ENGLISH, known: tuple[str, ...] = ()) -> Card:
    """The sheet of a lesson that fits into its minutes; `known` are lines of what is known of its games."""
    say = wording.say
    games = [resolved(one.game) for one in table.games]
    ages = sorted({age for one in table.games for age in one.staging.ages_years})
    pupils = dict.fromkeys(str(one.staging.pupils) for one in table.games)
    sections = [
        CardSection(say("Minute by minute"), tuple(slot_line(table, slot, wording) for slot in table.slots)),
        CardSection(say("Warm-up"), warm_up_lines(table.games, wording)),
        CardSection(say("Lay out first"), tuple(_first(table, wording))),
        CardSection(say("Kit of the whole lesson"), tuple(_kit_of_all(table, wording))),
        *(
            CardSection(f"{order}. {game.title}", tuple(_of_game(table, order - 1, wording)))
            for order, game in enumerate(games, start=1)
        ),
        CardSection(say("Talk"), talk_lines(games, frozenset().union(*(each.before for each in table.games)), wording)),
        CardSection(say("Take care"), (*_cautions(table, wording), say(LAST_WORD)), "care"),
        CardSection(say("Checked and forecast"), known, "proof"),
        CardSection(say("Where the minutes come from"), tuple(_minutes_from(table, wording)), "proof"),
    ]
    credits = dict.fromkeys(told for game in games for told in game.told.credit)
    credit = say("Credit: {credit}.", credit="; ".join(wording.author(told) for told in credits)) if credits else ""
    licences = dict.fromkeys(game.told.licence for game in games if game.told.licence)
    licence = say("Licence: {licence}.", licence=wording.listed(licences)) if licences else ""
    stays = next((line for game in games if (line := as_written(game, (), {}, wording))), "")
    return Card(
        title=title,
        about=wording.listed(game.title for game in games),
        facts=(
            (say("Lesson"), wording.counted(round(table.lesson.minutes), "minute", "minutes")),
            (say("Pupils"), " / ".join(pupils)),
            (say("Ages"), ages_said(ages[0], ages[-1], wording)),
            (say("Play"), _play(table, wording)),
            *_active(table, wording),
            *_practised(games, wording),
        ),
        sections=tuple(part for part in sections if part.lines),
        footer=tuple(line for line in (credit, licence, stays) if line),
        author="; ".join(credits),
        plan=with_plans(time_bar(table, wording), table, wording),
        language=wording.language,
        colon=say(":"),
        plan_pt=PLANS_PT,
    )


def _play(table: LessonTable, wording: Wording) -> str:
    minutes = minutes_said(table.played_min, wording)
    if all(slot.rounds < 2 for slot in table.slots):
        return minutes
    return wording.say("{minutes}, with the pauses between rounds", minutes=minutes)


def _active(table: LessonTable, wording: Wording) -> Iterator[tuple[str, str]]:
    """Not the share of the forecast for its game alone, which knows no warm-up and no talk."""
    if table.active is not None:
        share = wording.percent(table.active)
        yield wording.say("Active"), wording.say("{share} of class time, with a warm-up and a talk", share=share)


def _practised(games: list[Core], wording: Wording) -> Iterator[tuple[str, str]]:
    said = dict.fromkeys(skill for game in games for skill in game.facts.skills)
    if said:
        yield wording.say("Practises"), ", ".join(wording.known("skill", skill) or skill for skill in said)


def _first(table: LessonTable, wording: Wording) -> Iterator[str]:
    """What the first game needs lies ready; things that later games need as well go where they stay at hand."""
    instead = {row.line.name: instead_told(row, wording) for row in table.games[0].staging.kit if row.stand_ins}
    for each in table.kit:
        if each.by_game[0]:
            told = sentence(wording.counted(each.by_game[0], *each.names[0]))[:-1]
            yield f"{told} ({instead[each.names[0][0]]})" if each.names[0][0] in instead else told
    shared = [wording.named(each.name[1]) for each in table.kit if each.games > 1]
    if shared:
        yield wording.say("Keep at hand for several games: {things}.", things=wording.listed(shared))


def _kit_of_all(table: LessonTable, wording: Wording) -> Iterator[str]:
    """The list of the card, for one game; for several the most that any of them needs, and for which."""
    first = table.games[0].staging
    if len(table.games) == 1:
        yield from (sentence(line)[:-1] for line in kit_lines(first, wording))
        return
    yield from (_kit(table, each, wording) for each in table.kit)
    yield from dict.fromkeys(line for one in table.games for line in stand_in_lines(one.staging, wording))
    yield from (sentence(line)[:-1] for line in unlisted_of_all([one.staging for one in table.games], wording))


def _kit(table: LessonTable, each: KitShared, wording: Wording) -> str:
    number = sentence(wording.counted(each.most, *each.name))[:-1]
    used = [
        f"{one.game.title}{wording.say(':')} {count if many == each.name[1] else wording.counted(count, single, many)}"
        for one, count, (single, many) in zip(table.games, each.by_game, each.names, strict=True)
        if count
    ]
    return f"{number}{_likeness(table, each, wording)} ({', '.join(used)})"


def _likeness(table: LessonTable, each: KitShared, wording: Wording) -> str:
    """Of which thing of the cupboard something is that is called by a name of its game's own: ", like a cone"."""
    if each.name[0] == each.line.like:
        return ""
    called = zip(table.games, (names[0] for names in each.names), strict=True)
    core, own = next((resolved(one.game), name) for one, name in called if name)
    kind = next(kind for kind in core.play.kinds if kind.id.key == own)
    return "".join(f", {like}" for like in likeness_told(Voice(core, wording), kind, each.most))


def _of_game(table: LessonTable, order: int, wording: Wording) -> Iterator[str]:
    """What to change on the floor, how it is set up, played and won, and what to say."""
    game = resolved(table.games[order].game)
    if order:
        yield from _changed(table, order, wording)
    if game.told.about:
        yield about_of(game, table.games[order].before, wording)
    yield from team_lines(table.games[order].staging, wording)
    yield from _rounds_lacking(table, order, wording)
    yield from _swapped_in(table, order, wording)
    rules = rules_of(game, wording)
    yield " ".join(rules.setup)
    yield from dict.fromkeys((*rules.play, *rules.when, *rules.finish))
    yield from cues_of(game, table.games[order].before, wording)
    numbers = table.games[order].numbers
    if numbers is not None:
        yield f"{turns_said(numbers, wording)} {wording.say('(forecast)')}."


def _rounds_lacking(table: LessonTable, order: int, wording: Wording) -> Iterator[str]:
    if lacking := table.rounds_lacking(order):
        there, wanted = lacking
        rounds = wording.counted(wanted, "round", "rounds")
        told = wording.counted(there, "round", "rounds") if there else wording.say("a part of one")
        yield wording.say("The game asks for {wanted}; there is time for {number}.", wanted=rounds, number=told)


def _swapped_in(table: LessonTable, order: int, wording: Wording) -> Iterator[str]:
    """Whoever is to change in from round to round, where there is only one."""
    teams = table.games[order].staging.teams
    if table.rounds_of(order) <= 1 and (teams.resting or (teams.over and teams.odd_pupil is Odd.CHANGES)):
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
    yield from floor_lines(table.games[order - 1].staging, table.games[order].staging, wording)


def _cautions(table: LessonTable, wording: Wording) -> tuple[str, ...]:
    """Those of the games, of their modifiers and of the kit, with whatever stands in."""
    said = cautions_told(together(each for one in table.games for each in one.staging.cautions), wording)
    gravest = by_gravity(each for one in table.games for each in care_of(one.staging))
    return with_cautions(gravest, said, wording)


def _known_by(table: LessonTable, wording: Wording) -> str:
    unknown = [one.game.title for one in table.games if one.round_min is None]
    if unknown:
        return wording.say("Nothing says how long a round of {games} takes: try it.", games=wording.listed(unknown))
    return wording.say("Rounds by the forecast or the game's clock, all else by usual times; a class may be slower.")


def _minutes_from(table: LessonTable, wording: Wording) -> Iterator[str]:
    yield _known_by(table, wording)
    yield _taken_off(table, wording)


def _taken_off(table: LessonTable, wording: Wording) -> str:
    """How the play of this lesson goes with that of a card."""
    whole, warm = (wording.figure(round(minutes, 1)) for minutes in (table.lesson.play, table.lesson.warm_play))
    return wording.say(
        "A card and fit count {whole} min of play, {warm} with a warm-up and a talk; whole rounds here take {here}, "
        "pauses between them counted.",
        whole=whole,
        warm=warm,
        here=wording.figure(round(table.played_min, 1)),
    )
