"""People who are aimed at: how young they are, by which skill, with how hard a ball, from how near."""

from __future__ import annotations

from collections.abc import Iterator

from compose.care.scene import Scene, said_by
from compose.staging.floor.throws import throws
from grammar.core.limits import Posture
from grammar.core.play import AtPlayers
from grammar.core.skills import SKILL_WORDS
from grammar.core.values import KindId, Skill, without_load
from grammar.finding import Finding
from grammar.frozen import evolve
from grammar.said import Figure, Listed, Named, said

BEING = {skill: f"{words.done} at{words.way}" for skill, words in SKILL_WORDS.items()}
NEVER = (Skill.KICK, Skill.STRIKE)


def people_reminders(scene: Scene) -> Iterator[Finding]:
    """Whoever is aimed at: ages and skills, hard balls, kicks, who sits or kneels, distance."""
    yield from _hard_balls(scene)
    yield from _kicks(scene)
    yield from _low_down(scene)
    yield from _too_young(scene)
    yield from _too_near(scene)


def _by_skill(scene: Scene) -> dict[Skill, set[int]]:
    """The skills by which people are aimed at, with the lines that say so."""
    found: dict[Skill, set[int]] = {}
    for _, attempt, lines in scene.attempts():
        if isinstance(attempt.aim, AtPlayers):
            found.setdefault(attempt.skill, set()).update(lines)
    return found


def _hard_balls(scene: Scene) -> Iterator[Finding]:
    hard: dict[KindId, set[int]] = {}
    for _, attempt, lines in scene.attempts():
        if isinstance(attempt.aim, AtPlayers) and attempt.ball is not None:
            item = scene.item(attempt.ball)
            if item is not None and item.category == "ball" and not item.soft:
                hard.setdefault(attempt.ball, set()).update(lines)
    for ball, of_lines in hard.items():
        title = said("Players are aimed at with {balls}, which are not soft.", balls=Named(scene.plural(ball)))
        yield scene.remind("S-hard-ball", title, of_lines, "Take soft balls.")


def _kicks(scene: Scene) -> Iterator[Finding]:
    found = _by_skill(scene)
    for skill in NEVER:
        if skill in found:
            title = said(
                "Players are {being}: nobody can tell how high and how hard such a ball comes.", being=BEING[skill]
            )
            yield scene.remind("S-kick", title, found[skill], "Aim at targets, or roll or throw underarm at people.")


def _low_down(scene: Scene) -> Iterator[Finding]:
    """Whoever sits or kneels has the face where balls come, and cannot step aside."""
    low = {each.who: each for each in scene.core.play.low}
    found: dict[Posture, set[int]] = {}
    for _, attempt, lines in scene.attempts():
        for who in attempt.aim.of if isinstance(attempt.aim, AtPlayers) else ():
            sits = low.get(evolve(who, role=without_load(who.role)))
            if sits is not None:
                found.setdefault(sits.posture, set()).update((*lines, *sits.lines))
    for posture, of_lines in found.items():
        pattern = "Balls are aimed at players who play {posture}: at the face, and they cannot step aside."
        title = said(pattern, posture=posture.value)
        yield scene.remind("S-low", title, of_lines, "Aim at targets only, or roll a soft ball.")


def _too_young(scene: Scene) -> Iterator[Finding]:
    youngest = scene.ages_years[0]
    for skill, lines in _by_skill(scene).items():
        if skill.value not in scene.norms.tables["care people"].rows:
            continue
        reading = scene.read("care people", skill.value)
        if youngest < reading.value:
            low, high = map(Figure, scene.ages_years)
            ages = low if low == high else said("{low} to {high}", low=low, high=high)
            title = said(
                "Players of {ages} years are {being}; from {usual} years on is usual.",
                ages=ages,
                being=BEING[skill],
                usual=Figure(reading.value),
            )
            hint = f"Roll, take a lighter ball, or aim at targets only. ({said_by(reading)}.)"
            yield scene.remind("S-young", title, lines, hint, youngest=youngest, usual=reading.value)


def _too_near(scene: Scene) -> Iterator[Finding]:
    reading = scene.read("space apart", "throwing")
    for throw in throws(scene.core, scene.floor):
        skills = [skill for skill in throw.ways if skill is not Skill.ROLL]
        if isinstance(throw.aim, AtPlayers) and skills and throw.reach.metres < reading.value - 1e-9:
            title = said(
                "Players are {being} from {far} m; {usual} m is usual.",
                being=Listed(tuple(BEING[skill] for skill in skills)),
                far=Figure(throw.reach.metres, ".2g"),
                usual=Figure(reading.value),
            )
            hint = f"Keep a line that nobody crosses to throw. ({said_by(reading)}.)"
            yield scene.remind("S-near", title, throw.lines, hint, there=throw.reach.metres, usual=reading.value)
            return
