"""Turns of phrase that say who did it: "a gull touches a player", "knocked over by accident by a team-mate"."""

from __future__ import annotations

import re

from grammar.heard.saying import Saying, saying

_WHAT = r"(?:ǁ\d+|[\w-]+(?: ball)?)"
_DONE = {"touches": "touched", "tags": "touched", "hits": "hit", "knocks": "knocked", "catches": "caught",
         "intercepts": "intercepted", "blocks": "blocked"}  # fmt: skip


def _done_by(match: re.Match[str]) -> str:
    done = _DONE[match["does"].split()[0].lower()]
    return f"{match['whom']}{match['more']} is {done} by {match['doer']}:"


_OF_ONES_OWN = r"(?:someone|somebody|a player|one) (?:of|from) (?:their|its)(?: own)? side"

BY_WHOM: tuple[Saying, ...] = (
    saying(rf"^(?P<doer>an? {_WHAT}) (?P<does>touches|tags|hits|knocks(?: over| down)?|catches|intercepts|blocks) "
           rf"(?P<whom>an? {_WHAT})(?P<more>[^:]*):", _done_by, "when"),
    saying(r"(?<=is knocked )(?:over|down) (?=by )", "", "when"),
    saying(r"\b(?:by accident|accidentally) (?=by )|(?<=\w) by accident(?=:)", "", "when"),
    saying(rf"\bby {_OF_ONES_OWN}(?=:| )", "by its own side", "when"),
    saying(r"\bby (?:an opponent|opponents|the opponents|someone else|the others)(?=:| )", "by the other side", "when"),
)  # fmt: skip
