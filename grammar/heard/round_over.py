"""How teachers say that a round is over: "the game ends when all cones of one side are down, more points wins"."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_ARE_DOWN = r"(?:are down|have fallen(?: over)?|are knocked (?:over|down)|lie)"


def _all_down(match: re.Match[str]) -> str:
    more = match.end() < len(match.string)
    return f"the round ends when each side has no {match[1]} standing{', ' if more else ''}"


ROUND_OVER: tuple[Saying, ...] = (
    saying(r"^(?:(?:the|a) )?(?:round|game|it) (?:is over|ends|stops|is finished),? (?:if|when|once) ",
           "the round ends when ", "finish"),
    saying(r"^(?:if|when|once) (.+?),? (?:then )?the (?:game|round) (?:is over|ends|stops)(?: and| then|[,;])+ ",
           r"the round ends when \1, ", "finish"),
    saying(rf"\ball (?:of )?(?:the )?({WHAT}) of (?:a|1|any) side {_ARE_DOWN}",
           r"a side has no \1 standing", "finish"),
    saying(rf"^(?:the round ends )?(?:if|when|once) all (?:of )?(?:the )?({WHAT}) {_ARE_DOWN}(?:,? (?:then )?(?="
           rf"\w)|$)", _all_down,
           "finish"),
)  # fmt: skip
