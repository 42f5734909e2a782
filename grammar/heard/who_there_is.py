"""How teachers say who plays: sides by their colours, each for themselves, all together against the clock."""

from __future__ import annotations

import re

from grammar.heard.saying import Saying, saying

_NAMES = r"(?P<names>[\w-]+(?:, [\w-]+)*,? and [\w-]+)"
_PLAYERS = r"(?P<number>\d+(?: to \d+)?)(?: players)?(?: each| for each side)?"
_THEMSELVES = (
    r"(?:each|everyone|everybody|every player|each player|all) (?:plays? )?(?:for \w+sel(?:f|ves)|against all)"
)


def _colours(match: re.Match[str]) -> str:
    return f"{match['names'].replace(', and', ' and')}, {match['number']} players each, mirrored"


WHO_THERE_IS: tuple[Saying, ...] = (
    saying(rf"^[2-6] sides[:,] {_NAMES}, {_PLAYERS}(?:, mirrored)?$", _colours, "sides"),
    saying(rf"^(\d+(?: to \d+)?) players,? {_THEMSELVES}$", r"rovers, \1 players, each for themselves", "sides"),
    saying(rf"^{_THEMSELVES}[:,]? (?:with )?(\d+(?: to \d+)?) players$", r"rovers, \1 players, each for themselves",
           "sides"),
    saying(r"^(\d+(?: to \d+)?) players,? (?:who are )?(?:all )?(?:(?:in|on|as|of) )?(?:1|a(?: single)?|the same) side"
           r"(?: together)?(?:,? against the clock)?$", r"crew, \1 players", "sides"),
    saying(r"^(?:1|a single) side (?:of|with) (\d+(?: to \d+)?)(?: players)?(?:,? against the clock)?$",
           r"crew, \1 players", "sides"),
)  # fmt: skip
