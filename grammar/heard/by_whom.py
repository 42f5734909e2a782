"""Turns of phrase that say who did it, and what a ball goes into: "a gull touches a player", "it lands in a box"."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_DONE = {"touches": "touched", "tags": "touched", "hits": "hit", "knocks": "knocked", "catches": "caught",
         "intercepts": "intercepted", "blocks": "blocked"}  # fmt: skip


def _done_by(match: re.Match[str]) -> str:
    done = _DONE[match["does"].split()[0].lower()]
    return f"{match['whom']}{match['more']} is {done} by {match['doer']}:"


_OF_ONES_OWN = r"(?:(?:someone|somebody|a player|one) (?:of|from) (?:their|its)(?: own)? side|its (?:own player|owner))"

_INTO = r"(?:lands|falls|drops|flies|rolls|goes) (?:in|into|inside)"

BY_WHOM: tuple[Saying, ...] = (
    saying(r"\b(?:with empty hands|who (?:have|has) (?:empty hands|nothing in their hands)|who (?:do|does) not carry "
           r"anything)\b", "who carry nothing", "play", "when"),
    saying(rf"^(?P<doer>an? {WHAT}) (?P<does>touches|tags|hits|knocks(?: over| down)?|catches|intercepts|blocks) "
           rf"(?P<whom>an? {WHAT})(?P<more>[^:]*):", _done_by, "when"),
    saying(r"(?<=is knocked )(?:over|down) (?=by )", "", "when"),
    saying(r"\b(?:by accident|accidentally) (?=by )|(?<=\w) by accident(?=:)", "", "when"),
    saying(rf"\bby {_OF_ONES_OWN}(?=:| )", "by its own side", "when"),
    saying(r"\bby (?:an opponent|opponents|the opponents|someone else|the others)(?=:| )", "by the other side", "when"),
    saying(r"\b(?:its|the) owner(?: of it)? (?=(?:loses|scores) \d)", "its side ", "when"),
    saying(r"(: | and )(?:its|the) owner (?=waits|goes to|is out|changes|becomes|joins|freezes)", r"\1its keeper ",
           "when"),
    saying(rf"^(an? {WHAT}) (?:that )?{_INTO} (?=an? |the |any )", r"\1 goes into ", "when"),
)  # fmt: skip
