"""Turns of phrase for where places lie and how things stand at the set-up, and that they stand up again."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying


def _one_of(match: re.Match[str]) -> str:
    return f"{'in' if match[1] == 'at' and match[2] == 'corner' else match[1]} a {match[2]}"


LAID_OUT: tuple[Saying, ...] = (
    # one place for all, where there are several like it
    saying(r"\b(?:on|at|along|by|beside|against) (?:1|an?) (?:of the )?(?:long )?side (?:wall|line)s?"
           r"(?: of the (?:court|hall))?(?=,|$)", "along a side line", "space"),
    saying(r"\b(?:at|on) (?:1|an?|the other) (?:short )?end(?: of the (?:court|hall))?(?=,|$)", "before a back line",
           "space"),
    saying(r"\b(in|at|on|before|behind|beside) 1 (?:of the )?(back line|wall|corner)s?(?=,|$)", _one_of, "space"),
    saying(r" (?:that )?(?:are |is )?(?:lie down|lying down|lies down|down|fallen|lying on their sides?) "
           r"(?=(?:in|on|behind|before|beside) )", " lying ", "set-up"),
    saying(r" (?:that )?(?:are |is )?(?:standing|stands?)(?: up)? (?=(?:in|on|behind|before|beside) )", " ", "set-up"),
    # what is in the cupboard, and what it is worth
    saying(r"\blike an? (?:box|crate)(?: lying)? on its side\b", "like an open box", "kit"),
    saying(r"\blike an? (?:goal|gate) (?:made )?(?:of|from) 2 (?:poles|cones|posts)\b", "like a pole goal", "kit"),
    saying(rf"^((?:the |an? )?{WHAT}) scores (?=\d[^:]*$)", r"\1 is worth ", "when"),
    # all at once
    saying(rf"\b(?:all )?(?:of )?(their|its|the) (?:\d+ )?({WHAT}) "
           r"(?:(?:are |get )?(?:put|set|stood) up|stand up) again\b", r"\1 \2 stand up again", "when"),
)  # fmt: skip
