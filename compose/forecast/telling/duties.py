"""Tasks that pass from pupil to pupil, in words."""

from __future__ import annotations

from collections.abc import Iterator

from compose.forecast.telling.speech import Speech
from compose.net.duties import Duty
from compose.net.net import Net
from grammar.core.rotation import Occasion, Tries


def duties_told(net: Net, speech: Speech) -> Iterator[tuple[str, str, int]]:
    """For each such task a row with the share of the time, and one that says when all have had it: with its indent."""
    for duty in net.duties:
        others = [each for each in net.duties if each.task == duty.task]
        alike = len({(each.holders, each.players) for each in others}) == 1
        if alike and duty is not others[0]:
            continue  # told for all sides at once
        task = speech.role(duty.task)
        if alike:
            about = speech.say("is a {task}, of the time", task=task)
        else:
            about = speech.say("is a {task} of {side}, of the time", task=task, side=speech.side(duty.side))
        yield about, speech.percent(duty.holders / duty.players), 0
        yield speech.say("all have had a turn after"), _after(duty, speech), 4
        if duty.onward:
            yield speech.say("and goes on to be"), speech.say("a {task}", task=speech.role(duty.onward)), 4


def _after(duty: Duty, speech: Speech) -> str:
    """After how long all have had a task."""
    if isinstance(duty.every, Tries):
        return speech.wording.counted(duty.turns * duty.every.number, "attempt", "attempts")
    if duty.every is Occasion.AGAINST:
        points = speech.wording.counted(duty.turns, "point", "points")
        return speech.say("{points} against them", points=points)
    if isinstance(duty.every, Occasion):
        return speech.wording.counted(duty.turns, duty.every.value, f"{duty.every.value}s")
    return speech.minutes(duty.turns * duty.every / 60)
