"""A forecast in words for a teacher: short sections of lines, each line under 80 letters."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from textwrap import wrap

from compose.forecast.answers import Answers
from compose.forecast.forecast import Forecast
from compose.forecast.sensitivity import Swing
from compose.forecast.standings import PLAYING
from compose.forecast.telling.duties import duties_told
from compose.forecast.telling.of_lesson import lesson_heading, lesson_lines
from compose.forecast.telling.results import NAMES, row, winners
from compose.forecast.telling.speech import ENGLISH_SPEECH, Speech
from grammar.amounts import SELDOM
from grammar.core.values import SHARED, At
from grammar.frozen import frozen

Telling = Callable[[Forecast, Speech], Iterator[str]]
SHOWN = 3  # swings told
WIDE = 76  # letters in a line: it is set in under its heading
STANDING_VERBS = {
    "playing": "plays",
    "waiting": "waits",
    "on a bench": "sits on a bench",
    "out for the round": "is out for the round",
    "resting": "rests while others play",
}


@frozen
class Section:
    """A heading with its lines."""

    title: str
    lines: tuple[str, ...]


def told(forecast: Forecast, speech: Speech = ENGLISH_SPEECH) -> tuple[Section, ...]:
    """The whole forecast; sections without lines are left out."""
    return (*told_first(forecast, speech), *told_then(forecast, speech), *told_in_detail(forecast, speech))


def told_first(forecast: Forecast, speech: Speech = ENGLISH_SPEECH) -> tuple[Section, ...]:
    """What is known before band and swings are."""
    return _sections(
        forecast,
        speech,
        ("How long a round lasts", _length),
        ("Who wins", winners),
        ("What a pupil does in a round", _pupil),
        (lesson_heading(forecast.lesson, speech), lesson_lines),
    )


def told_then(forecast: Forecast, speech: Speech = ENGLISH_SPEECH) -> tuple[Section, ...]:
    """What it is for a class of another ability, and the seed of all that was played at random."""
    return _sections(
        forecast,
        speech,
        ("With a class of low, usual and high ability", _band),
        ("Found by playing at random", _played),
    )


def told_in_detail(forecast: Forecast, speech: Speech = ENGLISH_SPEECH) -> tuple[Section, ...]:
    """What the numbers hang on, for those who want to know."""
    return _sections(
        forecast,
        speech,
        ("What moves this most, if it is otherwise than assumed", _swings),
        ("What it rests on", _assumptions),
        ("How it was found", _method),
    )


def _sections(forecast: Forecast, speech: Speech, *parts: tuple[str, Telling]) -> tuple[Section, ...]:
    sections = (Section(speech.say(title), tuple(lines(forecast, speech))) for title, lines in parts)
    return tuple(section for section in sections if section.lines)


def _length(forecast: Forecast, speech: Speech) -> Iterator[str]:
    length, course, say = forecast.course.length, forecast.course, speech.say
    yield row(say("on average"), speech.minutes_with_margin(length.mean))
    yield row(say("half of the rounds, at most"), speech.minutes_with_margin(length.median))
    yield row(say("nine in ten rounds, at most"), speech.minutes_with_margin(length.ninety))
    if math.isfinite(course.clock_minutes):
        stop = "stopped by the clock, after {time}" if course.clock_rings else "still going, after {time}"
        about = say(stop, time=speech.minutes(course.clock_minutes))
        yield row(about, speech.share_with_margin(forecast.odds.running))
    elif length.over_by:
        lesson_end, over = length.over_by[-1]
        yield row(say("over before {time} of play", time=speech.minutes(lesson_end)), speech.share_with_margin(over))
    if forecast.odds.never.value > SELDOM:
        yield row(say("never over by itself"), speech.share_with_margin(forecast.odds.never))
    if not length.settled:
        yield say("Rounds may go on for very long; the longest are estimated.")


def _pupil(forecast: Forecast, speech: Speech) -> Iterator[str]:
    say = speech.say
    shares = speech.parts([each.share.value for each in forecast.standings])
    for each, said in zip(forecast.standings, shares, strict=True):
        yield row(say(STANDING_VERBS[each.name]), speech.share_with_margin(each.share, said))
    yield from (row(*each) for each in duties_told(forecast.net, speech))
    wait = forecast.longest_wait
    if wait is not None:
        place = forecast.net.places[wait.place]
        what = speech.for_what(place)
        for_all = isinstance(place.standing, At) and place.standing.spot.owner is SHARED
        if place.side and len(forecast.net.sides) > 1 and not for_all:
            yield say("the longest waits are {what} of {side}:", what=what, side=speech.side(place.side))
        else:
            yield say("the longest waits are {what}:", what=what)
        yield row(say("on average"), speech.minutes_with_margin(wait.mean), 4)
        yield row(say("nine in ten, at most"), speech.minutes_with_margin(wait.ninety), 4)
    turns = forecast.turns
    yield row(say("turns a minute"), speech.figure(turns.each.value))
    if len({round(figure.value, 1) for _, figure in turns.by_side}) > 1:
        for side, figure in turns.by_side:
            yield row(say("for {side}", side=speech.side(side)), speech.figure(figure.value), 4)
    if len(turns.by_skill) > 1:
        for skill, figure in turns.by_skill:
            yield row(speech.skill(skill), speech.figure(figure.value), 4)


def _band(forecast: Forecast, speech: Speech) -> Iterator[str]:
    band, say = forecast.band, speech.say
    if band.low is None or band.high is None:
        return
    ends = (band.low, band.usual, band.high)

    def ends_of(name: str, tell: Callable[[Answers], str]) -> str:
        wide = 12 if speech.wording.english else 14  # letters
        return f"{name:<{NAMES - wide}}" + "".join(f"{tell(end):>{wide}}" for end in ends)

    won = {id(end): speech.parts([chance.value for _, chance in end.wins] + [_not_won(end)]) for end in ends}
    yield ends_of(say("a round lasts"), lambda a: speech.minutes(a.minutes.value))
    for number, (side, _) in enumerate(band.usual.wins):
        if any(end.wins[number][1].value > 0 for end in ends):
            name = speech.wins(side, forecast.net.solo)
            yield ends_of(name, lambda a, n=number: won[id(a)][n])  # type: ignore[misc]
    if any(end.stopped.value > SELDOM for end in ends):
        stop = "stopped by the clock" if forecast.course.clock_rings else "still going at the end"
        yield ends_of(say(stop), lambda a: speech.percent(a.stopped.value))
    yield ends_of(say("turns a minute"), lambda a: speech.figure(a.turns.value))
    if any(end.idle.value > SELDOM for end in ends):
        yield ends_of(say("not playing"), lambda a: speech.percent(a.idle.value))


def _not_won(end: Answers) -> float:
    return max(0.0, 1.0 - sum(chance.value for _, chance in end.wins))


def _swings(forecast: Forecast, speech: Speech) -> Iterator[str]:
    say = speech.say
    for swing in [each for each in forecast.swings if each.by > 0 and each.beyond_chance][:SHOWN]:
        yield say("{name}:", name=speech.norm(swing.about))
        for each in swing.assumptions:
            low, high, usual = (_three(number, speech) for number in (each.low, each.high, each.usual))
            name, unit = speech.norm(each.name), speech.norm(each.unit)
            pattern = "{name}: {low} to {high} {unit}, taken as {usual}"
            yield f"    {say(pattern, name=name, low=low, high=high, unit=unit, usual=usual)}"
        low, high = _told(swing, 0, speech), _told(swing, 1, speech)
        yield f"    → {say('{what}: {low} to {high}', what=say(swing.most), low=low, high=high)}"


def _told(swing: Swing, end: int, speech: Speech) -> str:
    figure, share = (swing.low, swing.high)[end].named()[swing.most]
    if share:
        return speech.percent(figure.value)
    return speech.minutes(figure.value) if swing.most == "mean length" else speech.figure(figure.value)


def _three(number: float, speech: Speech) -> str:
    """A number of three digits."""
    return speech.wording.figure(float(f"{number:.3g}"))


def _assumptions(forecast: Forecast, speech: Speech) -> Iterator[str]:
    if not forecast.assumptions:
        return
    low, usual, high = (speech.say(end) for end in ("low", "usual", "high"))
    yield f"{'':<{NAMES - 4}}{low:>7}{usual:>8}{high:>8}"
    for table in dict.fromkeys(each.table for each in forecast.assumptions):
        of_table = [each for each in forecast.assumptions if each.table == table]
        yield from wrap(speech.say("{name}:", name=speech.norm(of_table[0].about)), WIDE, subsequent_indent="  ")
        for each in of_table:
            name, unit, mark = speech.norm(each.name), speech.norm(each.unit), "" if each.assumed else "  *"
            numbers = [_three(number, speech) for number in (each.low, each.usual, each.high)]
            yield f"    {name:<{NAMES - 8}}{numbers[0]:>7}{numbers[1]:>8}{numbers[2]:>8} {unit}{mark}"
    yield speech.say("Rows marked * have a published source; the others are assumptions.")


def _played(forecast: Forecast, speech: Speech) -> Iterator[str]:
    course, say = forecast.course, speech.say
    if course.rounds is not None:
        rounds = speech.wording.counted(course.rounds, "round", "rounds")
        pattern = "Played {rounds} at random (seed {seed}); ± holds in 95 of 100 cases."
        yield say(pattern, rounds=rounds, seed=course.seed)
    played = next((wait for wait in forecast.waits if wait.in_a_round > 0 and wait.seed is not None), None)
    if played is not None:
        rounds = speech.wording.counted(played.rounds, "round", "rounds")
        yield say("The waits of nine in ten: {rounds} played at random (seed {seed}),", rounds=rounds, seed=played.seed)
        yield say("each in the order in which the rules let them go.")


def _method(forecast: Forecast, speech: Speech) -> Iterator[str]:
    course, say = forecast.course, speech.say
    if course.rounds is None:
        error = f"{max(course.chance_error, 1e-12):.0e}"
        yield say("Worked out exactly; chances are right to {error}.", error=error)
    if forecast.passed_bound:
        yield say("Points past the bound of the check were counted by playing rounds at random.")
    idle = [each.name for each in forecast.standings if each.name != PLAYING]
    if idle:
        yield say("A wait that the end of the round cuts off counts as ended there.")
    if any(math.isfinite(each.longest) for each in forecast.waits):
        yield say("A fixed wait is told as it is; all other numbers take it for a mean.")
