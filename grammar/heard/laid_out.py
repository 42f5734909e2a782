"""Turns of phrase for where places lie and how things stand at the set-up, and that they stand up again."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_WHICH = r"(?:(?P<other>the other|another)|1|an?) (?:of the )?"  # the other one is another place, which is refused


def _which(match: re.Match[str]) -> str:
    return "the other" if match["other"] else "a"


def _by_a_side_line(match: re.Match[str]) -> str:
    return f"along {_which(match)} side line"


def _at_an_end(match: re.Match[str]) -> str:
    return f"before {_which(match)} back line"


def _one_of(match: re.Match[str]) -> str:
    what = match["what"].lower().replace("end", "back")
    return f"{'in' if match[1] == 'at' and what == 'corner' else match[1]} {_which(match)} {what}"


LAID_OUT: tuple[Saying, ...] = (
    saying(r"\bat (?=(?:the|a|1|each) wall\b)", "on ", "set-up"),
    # one place for all, where there are several like it
    saying(rf"\b(?:on|at|along|by|beside|against) {_WHICH}(?:long )?side(?: (?:wall|line))?s?"
           r"(?: of the (?:court|hall))?(?=,|$)", _by_a_side_line, "space"),
    saying(rf"\b(?:at|on) {_WHICH}(?:(?:short )?end|short side)s?(?: of the (?:court|hall))?(?=,|$)", _at_an_end,
           "space"),
    saying(rf"\b(in|at|on|before|behind|beside) {_WHICH}(?P<what>back line|end line|wall|corner)s?(?=,|$)", _one_of,
           "space"),
    saying(r" (?:that )?(?:are |is )?(?:lie down|lying down|lies down|down|fallen|lying on their sides?) "
           r"(?=(?:in|on|behind|before|beside) )", " lying ", "set-up"),
    saying(r" (?:that )?(?:are |is )?(?:standing|stands?)(?: up)? (?=(?:in|on|behind|before|beside) )", " ", "set-up"),
    # what is in the cupboard, and what it is worth
    saying(r"\blike an? (?:box|crate)(?: lying)? on its side\b", "like an open box", "kit"),
    saying(r"\blike an? (?:gym |long )?bench(?: (?:tipped|turned|lying|laid))?(?: over)? on (?:its|the) side"
           r"(?: against (?:the|a) wall)?", "like a tipped bench", "kit"),
    saying(r"\blike an? (?:goal|gate) (?:made )?(?:of|from) 2 (?:poles|cones|posts)\b", "like a pole goal", "kit"),
    saying(rf"^((?:the |an? )?{WHAT}) scores (?=\d[^:]*$)", r"\1 is worth ", "when"),
    # all at once
    saying(rf"\b(?:all )?(?:of )?(their|its|the) (?:\d+ )?({WHAT}) "
           r"(?:(?:are |get )?(?:put|set|stood) up|stand up) again\b", r"\1 \2 stand up again", "when"),
)  # fmt: skip
