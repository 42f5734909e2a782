"""What people write of who has the ball and what they do with it, with the wording of the language."""

from __future__ import annotations

import re

from grammar.mistakes.wording import Wording, wording

_WHERE_TO = "where to is said in the line of play: `players carry the ball to the back line of the other side`"

_BACK_IN = "from where on the line a ball comes back is not reckoned with"
_ITS_SIDE = r"(?:the [\w-]+'s|that) side"
_BRINGS_IN = r"(?:throws|kicks|rolls|brings|plays) (?:it|the ball|a ball) (?:back )?in\b[^:]*"

_A_FOUL = "a foul is whatever the teacher calls one, such as a step over a line"
_OVER_A_LINE = (
    r"^(?:whoever|anyone who|a player who|who) (?:crosses|oversteps|(?:steps|goes|walks|runs) (?:over|on|across)) "
    r"(?:the|a|their) (?:[\w-]+ ){0,2}?(?:line|lines)(?:,|:)?"
)


def _for_a_run(match: re.Match[str]) -> str:
    points = match[1] or "1"
    return f"a ball arrives: the carrier's side scores {points} point{'' if points == '1' else 's'}"


BALL_WORDINGS: tuple[Wording, ...] = (
    wording(r"^players (?:may |can )?(?:run with|carry) (the|a) ball(?: or pass it(?: to a team-?mate)?)?$",
             r"players carry \1 ball to the back line of the other side", "play",
             said="it is said where to, such as the back line of the other side, and passing is a line of its own"),
    wording(r"^a ball is (?:put|laid|placed|carried|brought) (?:down )?(?:behind|on|over|in|to) [^:]+(?=:)",
             "a ball arrives", "when", said=_WHERE_TO),
    wording(r"^a side scores(?: (?:a|1|one) point)? by (?:putting|laying|placing|carrying|bringing|running with) "
             r"the ball .*$", "a ball arrives: the carrier's side scores 1 point", "when", said=_WHERE_TO),
    wording(r"^(?:a|every|each) run with the ball to [^:]+? (?:is|counts|is worth) (?:a|one|(\d+)) points?$",
             _for_a_run, "when", said=_WHERE_TO),
    wording(rf"{_OVER_A_LINE} (?:gives|loses|hands over) (the|a) ball(?: to the other (?:side|team))?$",
             r"a player fouls: \1 ball goes to the other side", "when", said=_A_FOUL),
    wording(rf"{_OVER_A_LINE} (?=\w)", "a player fouls: that player ", "when", said=_A_FOUL),
    wording(r"^(?:the player nearest|the nearest player|whoever is nearest) (?:takes|gets|has|fetches) (?:the|a) ball$",
             "whoever is first at a loose ball has it", "play"),
    wording(rf"\b(the other side|{_ITS_SIDE}) (?:{_BRINGS_IN}|(?:has|gets|takes) (?:a|the) (?:throw|kick)-?in\b[^:]*)$",
             r"\1 has the ball", "when", said=_BACK_IN),
    wording(rf"\b(the other side|{_ITS_SIDE}) has the ball (?:at|on|from|behind|beside) [^:]+$",
             r"\1 has the ball", "when", said=_BACK_IN),
    wording(r"\b(?:it|the [\w-]+(?: ball)?) (?:comes|goes|is brought|is thrown) back (?:in )?(?:from )?"
             r"where it (?:went out|left)[^:]*$", "the ball goes to the half it left", "when", said=_BACK_IN),
    wording(r"(?<=: )it (?=(?:stays with|goes to)\b)", "the ball ", "when"),
)  # fmt: skip
