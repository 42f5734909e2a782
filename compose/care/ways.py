"""Ways that people run: across each other, up to a wall, and into a strip too short to stop in."""

from __future__ import annotations

from collections.abc import Iterator

from compose.care.scene import Scene, said_by
from compose.staging.floor.lanes import in_line
from compose.staging.floor.regions import regions
from grammar.core.play import Along
from grammar.core.rules import AllPlaying, Becoming, Go, Happening, Own, Person, Rule
from grammar.core.values import SAME, At, Landmark, SideId, Skill
from grammar.finding import Finding
from grammar.said import Figure, Named, said

LOADS = {Skill.CARRY: "carry", Skill.TOW: "tow", Skill.PUSH: "push"}


def way_reminders(scene: Scene) -> Iterator[Finding]:
    """Sides that cross, walls that are run at, strips too short to stop in, things close to a wall."""
    yield from _crossing(scene)
    yield from _up_to_walls(scene)
    yield from _too_short_to_stop(scene)
    yield from _things_at_walls(scene)


def _crossing(scene: Scene) -> Iterator[Finding]:
    runners = {by for by, attempt, _ in scene.attempts() if isinstance(attempt.aim, Along)}
    in_lanes = all(in_line(scene.core.play, scene.ground, each) for each in runners)
    if len({each.side for each in runners}) > 1 and not in_lanes:
        lines = {line for _, attempt, lines in scene.attempts() if isinstance(attempt.aim, Along) for line in lines}
        hint = "Give each side a lane, or let them go one after the other."
        yield scene.remind("S-crossing", "Several sides run at the same time: their ways may cross.", lines, hint)
    over = [rule for rule in scene.core.play.rules if any(_leads_over(rule, effect) for effect in rule.effects)]
    if over and any(attempt.ball is not None for _, attempt, _ in scene.attempts()):
        lines = {line for rule in over for line in rule.lines}
        title = "Players cross the other side's floor while balls are in play."
        yield scene.remind("S-crossing", title, lines, "Send them round the court, never across it.")


def _leads_over(rule: Rule, effect: object) -> bool:
    """Whether somebody has to go to the other side for it: a player who changes sides, or who carries a thing over."""
    if isinstance(effect, Own):
        return isinstance(rule.trigger, Happening) and effect.side not in rule.trigger.against
    if not isinstance(effect, Go):
        return False
    if effect.becomes != Becoming() and effect.becomes.side is not SAME:
        return True
    return isinstance(effect.to, At) and isinstance(effect.to.spot.owner, SideId) and _foreign(rule, effect)


def _foreign(rule: Rule, effect: Go) -> bool:
    """Whether who goes belongs to other sides than the place."""
    assert isinstance(effect.to, At)
    if isinstance(effect.who, AllPlaying):
        sides = {each.side for each in effect.who.who}
    elif isinstance(effect.who, Person) and isinstance(rule.trigger, Happening):
        acting = effect.who in (Person.ACTOR, Person.MATE)
        known = {each.side for each in rule.trigger.by} if acting else set(rule.trigger.against)
        sides = {each for each in known if isinstance(each, SideId)}
    else:
        return False
    return bool(sides) and effect.to.spot.owner not in sides


def _up_to_walls(scene: Scene) -> Iterator[Finding]:
    lines = {line for _, each, lines in scene.attempts() if _at_a_wall(each.aim) for line in lines}
    if lines:
        title = "Players run up to a wall: a wall is no goal and no turning point."
        source = scene.norms.tables["care walls"].rows["line before"][0].figure
        hint = f"Mark a line {source.usual:g} m before it and let that be the goal. ({source.why}.)"
        yield scene.remind("S-wall", title, lines, hint)


def _at_a_wall(aim: object) -> bool:
    return isinstance(aim, Along) and Landmark.WALL in (aim.start.of, aim.goal.of)


def _too_short_to_stop(scene: Scene) -> Iterator[Finding]:
    """Goals of runs in a hall, against the way that it takes to stop at full pace."""
    if scene.behind_m is None or scene.beside_m is None:
        return
    for by, attempt, lines in scene.attempts():
        aim = attempt.aim
        if not isinstance(aim, Along) or _at_a_wall(aim):
            continue
        needed = stopping_m(scene, attempt.skill)
        strips = [_strip_m(scene, region.rectangle.centre) for region in regions(scene.ground, aim.goal, None, by.side)]
        if min(strips) < needed - 1e-9:
            title = said(
                "Players who run to their goal have {there} m to stop in and need {needed} m.",
                there=Figure(min(strips), ".2g"),
                needed=Figure(needed, ".2g"),
            )
            slowing = scene.read("care stop", "slowing")
            hint = f"Move the goal away from the wall, or let them walk. ({said_by(slowing)}.)"
            yield scene.remind("S-stop", title, lines, hint, there=min(strips), needed=needed)
            return


def stopping_m(scene: Scene, skill: Skill) -> float:
    """How far a pupil runs on after the goal of a straight run, with the load of the skill."""
    load = scene.read("running load", LOADS[skill]).value if skill in LOADS else 1.0
    return _stop_m(scene, load * scene.read("running speed", "straight").value)


def running_stop_m(scene: Scene) -> float:
    """How far a pupil runs on who is in the middle of play."""
    return _stop_m(scene, scene.read("running speed", "with turns").value)


def _stop_m(scene: Scene, speed: float) -> float:
    """The way until the reaction, and the way of slowing down; speed in m/s."""
    reaction, slowing = (scene.read("care reaction", "simple").value, scene.read("care stop", "slowing").value)
    return speed * reaction + speed**2 / (2 * slowing)


def _strip_m(scene: Scene, point: tuple[float, float]) -> float:
    """How far a point of the floor is from the nearest wall."""
    assert scene.behind_m is not None and scene.beside_m is not None
    box, (x, y) = scene.floor.extent, point
    return min(min(x - box.left, box.right - x) + scene.behind_m, min(y - box.bottom, box.top - y) + scene.beside_m)


def _things_at_walls(scene: Scene) -> Iterator[Finding]:
    """Targets so close to a wall that who runs up to them cannot stop; less than the least strip is told as such."""
    if scene.behind_m is None or scene.beside_m is None:
        return
    needed, least = running_stop_m(scene), scene.read("space run-off", "least").value
    for kind in scene.core.play.kinds:
        things = [item for item in scene.floor.items_of(kind.id.key) if item.category in ("target", "body")]
        there = min((_strip_m(scene, (item.x, item.y)) for item in things), default=needed)
        if least <= there < needed - 1e-9:
            title = said(
                "The {things} stand {there} m from a wall; to stop takes {needed} m.",
                things=Named(scene.plural(kind.id)),
                there=Figure(there, ".2g"),
                needed=Figure(needed, ".2g"),
            )
            hint = "Move them in, or let nobody run up to them."
            yield scene.remind("S-wall-thing", title, kind.lines, hint, there=there, needed=needed)
