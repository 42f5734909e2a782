"""What counts, how far one may go with a ball, and who sits or kneels, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped
from compose.telling.voice import Voice
from grammar.core.limits import CountsOnly, LowDown, Posture, Steps, Valid
from grammar.core.play import AtPlayers, Attempt, AtThing, Through
from grammar.core.skills import BOUNCING

HITS = {
    Valid.DIRECT_HIT: "{hitting} after a bounce on the floor does not count",
    Valid.NO_WALL_HIT: "{hitting} off the wall does not count",
    Valid.BELOW_SHOULDER: "{hitting} above the shoulder does not count",
    Valid.BELOW_HIP: "{hitting} above the hip does not count",
    Valid.BELOW_KNEE: "{hitting} above the knee does not count",
}
COUNTS = {
    Valid.AFTER_BOUNCE: "what flies counts only after a bounce on the floor",
    Valid.DIRECT_CATCH: "a catch after a bounce on the floor does not count",
    Valid.NO_WALL_CATCH: "a catch off the wall does not count",
}
ON_THE_BODY = (Valid.BELOW_SHOULDER, Valid.BELOW_HIP, Valid.BELOW_KNEE)


def counts_told(voice: Voice, values: Sequence[CountsOnly]) -> Iterator[str]:
    """What alone counts; of hits whom and what they are about, for a line may be about all or about some."""
    for value in values:
        if value.valid in HITS:
            yield voice.say(HITS[value.valid], hitting=_hitting(voice, value))
        else:
            yield voice.say(COUNTS[value.valid])


def _hitting(voice: Voice, value: CountsOnly) -> str:
    """ "hitting a player of either side or a mat or a shot at a ring": all that a line is about."""
    aims = [each.aim for each in _sent(voice, value.valid)]
    players = {one for aim in aims if isinstance(aim, AtPlayers) for one in aim.of if value.rules_out(one)}
    bodies = value.valid in ON_THE_BODY
    things = {aim.thing for aim in aims if isinstance(aim, AtThing) and not bodies and value.rules_out(aim.thing)}
    rings = {aim.thing for aim in aims if isinstance(aim, Through) and not bodies and value.rules_out(aim.thing)}
    hit = [voice.players(players, "a", several=False)] if players else []
    hit += [voice.things(things, several=False, determiner="a")] if things else []
    said = [voice.say("hitting {what}", what=voice.wording.listed(hit, "or"))] if hit else []
    if rings:
        through = voice.things(rings, several=False, determiner="a")
        said.append(voice.say("a shot at {what}", what=through))
    return voice.wording.listed(said, "or") if said else voice.say("a hit")


def _sent(voice: Voice, valid: Valid) -> Iterator[Attempt]:
    """The attempts with a ball, of a bounce those whose ball may touch the floor on its way."""
    for attempt in (each for offer in voice.play.offers for each in offer.attempts):
        if attempt.ball is not None and (valid is not Valid.DIRECT_HIT or attempt.skill in BOUNCING):
            yield attempt


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
