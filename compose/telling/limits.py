"""What counts, how far one may go with a ball, and who sits or kneels, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped
from compose.telling.voice import Voice
from grammar.core.limits import CountsOnly, LowDown, Posture, Steps, Valid

COUNTS = {
    Valid.AFTER_BOUNCE: "what flies counts only after a bounce on the floor",
    Valid.DIRECT_HIT: "a hit after a bounce on the floor does not count",
    Valid.DIRECT_CATCH: "a catch after a bounce on the floor does not count",
    Valid.NO_WALL_HIT: "a hit off the wall does not count",
    Valid.NO_WALL_CATCH: "a catch off the wall does not count",
    Valid.BELOW_SHOULDER: "a hit above the shoulder does not count",
    Valid.BELOW_HIP: "a hit above the hip does not count",
    Valid.BELOW_KNEE: "a hit above the knee does not count",
}


def counts_told(voice: Voice, values: Sequence[CountsOnly]) -> Iterator[str]:
    """What alone counts."""
    for value in values:
        yield voice.say(COUNTS[value.valid])


def steps_told(voice: Voice, values: Sequence[Steps]) -> Iterator[str]:
    """How many steps with a ball."""
    for group in grouped(values, "ball"):
        balls = voice.balls([value.ball for value in group])
        if group[0].most == 0:
            yield voice.say("nobody takes a step with {ball} in the hand", ball=balls)
        else:
            steps = voice.wording.counted(float(group[0].most), "step", "steps")
            yield voice.say("nobody takes more than {steps} with {ball} in the hand", steps=steps, ball=balls)


LOW = {Posture.SEATED: "{who} play seated", Posture.KNEELING: "{who} play kneeling"}


def low_told(voice: Voice, values: Sequence[LowDown]) -> Iterator[str]:
    """Who sits or kneels."""
    for group in grouped(values, "who"):
        yield voice.say(LOW[group[0].posture], who=voice.players(frozenset(each.who for each in group)))
