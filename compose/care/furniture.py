"""What the play stands on or pulls, and the sheet does not bring along: benches, mats, sledges, ropes."""

from __future__ import annotations

from collections.abc import Iterator

from compose.care.scene import Scene
from grammar.core.area_kind import AreaKind
from grammar.core.coming_back import waited_at
from grammar.core.values import Skill
from grammar.finding import Finding
from grammar.said import Listed, said

TOWED = ("mat sledge", "rope")


def furniture_reminders(scene: Scene) -> Iterator[Finding]:
    """Players who stand on benches without benches or mats in the kit, and tows without anything to tow on."""
    play = scene.core.play
    has = {scene.kit[kind.like.key].name for kind in play.kinds if kind.like.key in scene.kit}
    sat_on = {spot.of for spot in waited_at(play)}  # who waits there sits
    benches = [area for area in play.areas if area.kind is AreaKind.BENCH and area.id not in sat_on]
    lines = {line for area in benches for line in area.lines}
    missing = [f"no {name}" for one, name in (("bench", "benches"), ("mat", "mats")) if benches and one not in has]
    if missing:
        title = said("Players stand on benches, and the kit lists {missing}.", missing=Listed(tuple(missing)))
        hint = "Benches stand firm, with mats before and behind them."
        yield scene.remind("S-bench", title, lines, hint)
    tows = {line for _, each, lines in scene.attempts() if each.skill is Skill.TOW for line in lines}
    if tows and not has & set(TOWED):
        without = "Players tow, and the kit lists neither sledges nor ropes."
        hint = "A sledge is pulled by a rope, low and at a walk; nobody ties it on."
        yield scene.remind("S-tow", without, tows, hint)
