"""Does a game fit a class? The answer in words and as JSON."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

import library
from compose.answer.answer import to_mend
from compose.check import Budget
from compose.fit.fit import Fit, fit, teams_for
from compose.modifiers.remix_sheet import remix_title
from compose.staging.teams import usual_players
from compose.terminal.answer import exit_code, finding_json, say, say_findings, say_json
from compose.terminal.answering import answer_json, say_in_short
from compose.terminal.checking import headline
from compose.terminal.classes import school_class
from compose.terminal.finding_games import kit
from compose.terminal.stages import answered, checked, ready_of, remixed
from grammar.words import count, listing


def show_fit(
    name: str,
    modifiers: Sequence[str],
    class_name: str,
    hall: str | None,
    quick: bool,
    budget: Budget,
    as_json: bool,
) -> int:
    """Print how a game and a class go together, and what is known of the game for its teams; the exit code.

    `quick` leaves out the forecast."""
    group = school_class(class_name, as_json, hall)
    made, said = remixed(name, modifiers, as_json)
    teams = teams_for(made.game, group, library.norms()).games
    prepared = ready_of(made, teams[0] if teams else usual_players(made.game), said, as_json)
    answer = checked(prepared, budget) if quick else answered(prepared, budget)
    found = fit(made.game, group, library.norms(), kit(), answer.round_minutes)
    findings = (*found.findings, *answer.findings)
    if as_json:
        told = answer_json(answer)
        told["findings"] += [finding_json(each) | {"set": "class"} for each in found.findings]
        say_json(_json(found) | {"game": remix_title(made), "players": dict(prepared.players)} | told)
        return exit_code(findings)
    say(f"{remix_title(made)} for {group.name}: {count(group.pupils, 'pupil')}")
    say()
    for line in fit_lines(found):
        for part in textwrap.wrap(line, 78, subsequent_indent="  "):
            say(part)
    say()
    say_findings(found.findings)
    wrong = len(to_mend(found.findings))
    say("The game fits the class." if not wrong else f"The class: {count(wrong, 'thing')} to mend.")
    say()
    say(headline(prepared))
    say_in_short(answer)
    return exit_code(findings)


def fit_lines(found: Fit) -> Iterator[str]:
    """The fit as sentences."""
    yield f"Teams: {found.teams.words()}." if found.teams.games else "Teams: none."
    if found.teams.over:
        odd = f"; the odd pupil {found.teams.odd}" if found.teams.odd else ""
        yield f"Over: {count(found.teams.over, 'pupil')}{odd}."
    if found.room:
        yield _room(found)
    for each in found.limits:
        verdict = "kept" if each.kept else "less than usual" if not each.broken else "too little"
        yield f"{each.what[:1].upper()}{each.what[1:]}: {each.there:.3g} {each.unit} ({each.usual:g} usual, {verdict})."
    for row in found.kit:
        there = f"{row.there} of {row.needed}"
        stand_in = listing(f"{each.count} {each.name}" for each in row.stand_ins)
        more = f", {stand_in} can stand in" if stand_in else ""
        yield f"Kit: {row.line.plural}, {there} there{more}" + (f"; {row.short} short." if row.short > 0 else ".")
    yield from _lesson(found)
    for caution in found.cautions:
        yield f"Mind: {caution}"


def _room(found: Fit) -> str:
    room = found.room
    assert room is not None
    way = "across" if room.turned else "along"
    courts = f"{count(room.courts, 'court')} of {room.long:.4g} m by {room.wide:.4g} m"
    return f"Hall: {room.hall.name}, {room.area_m2:.4g} m2; {courts} {way} it."


def _lesson(found: Fit) -> Iterator[str]:
    plan = found.lesson
    lesson = plan.lesson
    yield (
        f"Lesson: {lesson.minutes:.3g} min; changing {lesson.changing:.3g}, setting up {lesson.setting_up:.3g}, "
        f"explaining {lesson.explaining:.3g}, clearing away {lesson.clearing:.3g}: {lesson.play:.3g} min of play."
    )
    if plan.round_min:
        yield f"Rounds: {plan.rounds} of {plan.round_min:.3g} min ({plan.known_by}); the game asks for {plan.wanted}."
    yield f"Times by: {listing(str(source) for source in plan.sources)}."


def _json(found: Fit) -> dict[str, Any]:
    plan, room = found.lesson, found.room
    return {
        "class": found.school_class.name,
        "pupils": found.school_class.pupils,
        "games": [dict(sides) for sides in found.teams.games],
        "over": found.teams.over,
        "odd_pupil": found.teams.odd,
        "room": None
        if room is None
        else {
            "hall": room.hall.name,
            "courts": room.courts,
            "turned": room.turned,
            "beside_m": round(room.beside, 3),
            "behind_m": round(room.behind, 3),
        },
        "limits": [
            {
                "what": each.what,
                "unit": each.unit,
                "there": round(each.there, 3),
                "least": each.least,
                "usual": each.usual,
                "kept": each.kept,
                "sources": [str(source) for source in each.sources],
                "why": list(each.why),
            }
            for each in found.limits
        ],
        "kit": [
            {
                "name": row.line.plural,
                "needed": row.needed,
                "there": row.there,
                "stand_ins": {each.name: each.count for each in row.stand_ins},
                "short": max(0, row.short),
            }
            for row in found.kit
        ],
        "lesson": {
            "minutes": plan.lesson.minutes,
            "play_minutes": plan.lesson.play,
            "round_minutes": plan.round_min,
            "known_by": plan.known_by,
            "rounds": plan.rounds,
            "wanted": plan.wanted,
        },
        "cautions": list(found.cautions),
    }
