"""How teachers say what there is before play begins: the court, who plays, what stands and lies where."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying
from grammar.words import singulars

_BEGINS = r"(?:begins?|starts?|stands?|sits?|waits?|is|are|lies?|goes?)"


def _role(match: re.Match[str]) -> str:
    number = match["number"]
    who, players = (match["who"], "player") if number == "1" else (singulars(match["who"])[0], "players")
    return f"role {who}: {number} {players} of each side"


def _for_each(match: re.Match[str]) -> str:
    """Of two sides each has half of them; of other numbers it cannot be told."""
    return f"{match['each']} {match['what']} for each side" if int(match[1]) == 2 * int(match["each"]) else match[0]


WHAT_THERE_IS: tuple[Saying, ...] = (
    saying(r"^(?:an? |the )?(?:hall|court|pitch|field) (?:is |of )?(?=\d)", "court ", "space"),
    saying(r"\b(\d+(?:\.\d+)?) by (\d+(?:\.\d+)? m)\b", r"\1 m by \2", "space"),
    saying(r",? (?:and )?(?:(?:in|with|of) )?2 halves$|,? (?:with a (?:centre|middle|half-?way) line|halved across)$|"
           r",? (?:divided|split|cut) (?:in|into) (?:2 )?halves$", ", halved across", "space"),
    saying(r"^(?:an? |1 )?((?:[\w-]+ )?(?:bench|queue)) (?=behind |beside |along |before )", r"\1: ", "space"),
    saying(r"\b(\d+(?: to \d+)?)(?: players)? (?:a|per|on each|in each) side$", r"\1 players each", "sides"),
    saying(rf"^(?:there (?:is|are) )?(?P<number>\d+) (?P<who>{WHAT}) (?:per|(?:in|on|for|of) each) side$", _role,
           "sides"),
    saying(rf"^(\d+) (?P<what>{WHAT}), (?P<each>\d+) (?:for|to|per) (?:each )?side$", _for_each, "kit"),
    saying(rf"^each side (?:has|gets|is given) (\d+ {WHAT})$", r"each side begins with \1", "set-up"),
    saying(rf"^(\d+ {WHAT}) (?:on|for|to|per) (?:each )?side$", r"each side begins with \1", "set-up"),
    saying(r"\b(players?) per side\b", r"\1 of each side", "set-up"),
    saying(rf"^(\d+ players? (?:of|from) (?:each|every) side) {_BEGINS} (?=on |in |behind |before |beside )", r"\1 ",
           "set-up"),
    saying(rf"^((?:the |all (?:the )?)?{WHAT}) (?:are )?(?:spread|set|put|placed|laid|lined)(?: out| up)? "
           r"(?:along|on) (the|their|each) ((?:back|middle|side) line.*?)(?:, (?:evenly spaced|spread out))?$",
           r"\1 on \2 \3, evenly spaced", "set-up"),
    saying(r", (?:evenly )?(?:spread|spread out|spread evenly|with (?:even )?gaps)$", ", evenly spaced", "set-up"),
)  # fmt: skip
