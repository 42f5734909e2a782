"""How teachers say that those who sit on a bench and those who play change places: all go to the end of it, and as many
as played come in, whoever has waited longest first."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_BENCH = rf"(?P<where>(?:{WHAT}|bench|queue|substitutes' bench))"
_SUBSTITUTES = r"(?:the )?(?:substitutes|subs|reserves)"
_COURT = r"(?:court|field|pitch|floor|game)"
_ON_COURT = rf"(?:{_COURT}|players|players? (?:on|in) the {_COURT}|(?:those|all) who play)"
_SWAP = r"(?:(?:change|swap|switch|exchange)(?: places)?|change over|take turns)"
_ALL = r"all players change places with all on the \g<where>"
_COME_ON = r"(?:comes?|goes?|runs?) (?:on(?:to the court)?|in)"
_OTHERS_OFF = r"(?:,? and (?:as many|the same number|(?:as many|the )?others) (?:go|come|sit) (?:off|down|out)[^:]*)"

_HOW_MANY = r"(?P<number>\d+) (?P<who>(?:players?|ǁ\d+)(?: (?:of|from) each side)?)"


def _so_many(match: re.Match[str]) -> str:
    who = match["who"].replace(" from ", " of ")
    return f"{match['number']} {who} change places with the first {match['number']} on the {match['where']}"


SUBSTITUTES: tuple[Saying, ...] = (
    saying(rf"^((?:every|after) \d+ (?:min|s)|at half-time),? (?=[^:]*\b{_SWAP}\b)", r"\1: ", "when"),
    saying(rf"(?<=: ){_HOW_MANY} {_SWAP} with (?:the )?(?:first )?(?P=number) (?:players? |others |of those )?"
           rf"(?:on|in|from) the {_BENCH}$",
           _so_many, "when"),
    saying(rf"(?<=: ){_SUBSTITUTES} (?:{_SWAP} (?:with )?(?:the |all )?{_ON_COURT}|{_COME_ON}(?:{_OTHERS_OFF})?)$",
           "all players change places with all on the bench", "when"),
    saying(rf"(?<=: )(?:the )?{_BENCH} and (?:the )?{_ON_COURT} {_SWAP}$", _ALL, "when"),
    saying(rf"(?<=: )(?:the )?{_ON_COURT} and (?:the )?{_BENCH} {_SWAP}$", _ALL, "when"),
    saying(rf"(?<=: )(?:the players|all players|those|all|everyone|whoever is) (?:on|in) the {_BENCH} {_SWAP} "
           rf"with (?:the |all )?{_ON_COURT}$", _ALL, "when"),
    saying(rf"(?<=: )(?:the players|all players|those|all|everyone|whoever is) (?:on|in) the {_BENCH} {_COME_ON}"
           rf"{_OTHERS_OFF}$", _ALL, "when"),
)  # fmt: skip
