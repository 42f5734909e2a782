"""How teachers speak of who waits without naming where: where a sheet has one bench or queue, that is meant."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.heard.saying import Saying, saying

_MARK = "§"  # what stands between two of them says whose place it is
_MARKED = re.compile(rf"{_MARK}([^{_MARK}]*){_MARK}")
_OF_THEIRS = r"(?:of|from) (?:their|that|the catcher's|the thrower's) side"
_ONE = rf"(?:(?:an?|1|another) (?:team-mate|mate|player|prisoner)(?: {_OF_THEIRS})?|1 {_OF_THEIRS})"
_BACK = r"(?:may |can )?(?:returns?|comes? (?:back|in)(?: in)?)"
_ALL = r"(?:everyone|everybody|all(?: (?:waiting )?players)?|all who wait|whoever waits)"
_TIME = r"\d+(?:\.\d+)? (?:s|min)"


def _returns(match: re.Match[str]) -> str:
    """Of a catch it is the catcher's mate; else that of who acted."""
    whose = "catcher" if "is caught" in match["event"] or "intercepted" in match["event"] else "thrower"
    return f"{match['event']}: the first {_MARK}the {whose}'s{_MARK} returns"


WAITING_PLACE: tuple[Saying, ...] = (
    saying(r"^(?:catching a ball|a catch|each catch|every catch|whoever catches a ball|a player who catches a ball),? "
           r"(?:brings|frees|lets|gets) (?:back )?(?:an?|1|1 of their|another) (?:team-mate|mate|player)?s?(?: (?:of|"
           r"from) their side)?(?: back)?(?: in)?$",
           f"a ball is caught: the first {_MARK}the catcher's{_MARK} returns", "when"),
    saying(rf"^(?P<event>an? [^:]+): {_ONE} {_BACK}$", _returns, "when"),
    saying(rf"^(every {_TIME}|after {_TIME}|every minute|at half-time)[,:]? {_ALL} {_BACK}$",
           rf"\1: all {_MARK}each{_MARK} return", "when"),
    saying(rf"(?<=that player )(?:sits out|waits outside|goes out|is out|must wait|waits) for ({_TIME})$",
           rf"waits {_MARK}the{_MARK} for \1", "when"),
    saying(rf"^(?:after ({_TIME}),? )?(?:players who (?:wait|are out|are hit)|whoever (?:waits|is out|is hit)|those "
           rf"who wait) {_BACK}(?: after ({_TIME}))?$",
           lambda match: f"whoever waits {_MARK}the{_MARK} comes back after {match[1] or match[2]}", "play"),
)  # fmt: skip


def placed(text: str, names: Sequence[str]) -> str:
    """The text with the one bench or queue among the names where somebody waits; as it is where there is not one."""
    places = [name for name in names if name.split()[-1] in ("bench", "queue")]
    if _MARK not in text or len(places) != 1:
        return text
    within = "on" if places[0].endswith("bench") else "in"
    return _MARKED.sub(lambda match: f"{within} {match[1]} {places[0]}", text)
