"""How teachers say what there is before play begins: the court, who plays, what stands and lies where."""

from __future__ import annotations

import re

from grammar.core.area_kind import AreaKind
from grammar.heard.saying import WHAT, Saying, saying
from grammar.words import singulars

_SIDES = {"2": "north and south", "3": "red, blue and green", "4": "red, blue, green and yellow"}
_TASK = r"(?:ǁ\d+|[\w-]+(?: [\w-]+){0,2}?)"  # what a task is called, which no line has declared yet
_ON_THE_FLOOR = r"(?:(?:lie|are|stand) )?(?:in|on) the (?:court|hall|floor|field)"
_BEGINS = r"(?:begins?|starts?|stands?|sits?|waits?|is|are|lies?|goes?)"


def _role(match: re.Match[str]) -> str:
    number, called = match["number"], match["who"]
    who = called if number == "1" else next(iter(singulars(called)), called)  # of a name that is known later on
    return f"role {who}: {number} {'player' if number == '1' else 'players'} of each side"


def _spread(match: re.Match[str]) -> str:
    """Places of one sort: "4 islands on the court, 2 m deep"."""
    called = next(iter(singulars(match["what"])), match["what"])
    kind = "" if called.split()[-1] in {kind.value for kind in AreaKind} else " base"
    deep = f"{match['deep']} deep, " if match["deep"] else ""
    return f"{called}{kind}: {deep}in {match['number']} places on the court"


def _of_each(match: re.Match[str]) -> str:
    return f"each player {'begins with' if 'point' in match[1] else 'has'} {match[1]}"


def _for_each(match: re.Match[str]) -> str:
    """Of two sides each has half of them; of other numbers it cannot be told."""
    return f"{match['each']} {match['what']} for each side" if int(match[1]) == 2 * int(match["each"]) else match[0]


WHAT_THERE_IS: tuple[Saying, ...] = (
    saying(r"\b(?<!for )(?:on each|per|for every|in each|a|to each) side\b", "for each side", "kit"),
    saying(r"^([2-4]) sides,? (?:of |with )?(\d+(?: to \d+)?)(?: players)?(?: each| for each side)?(?:, mirrored)?$",
           lambda m: f"{_SIDES[m[1]]}, {m[2]} players each, mirrored", "sides"),
    saying(r"^(?:there are |we have )?\d sides,?(?: (?:of|with))? (\d+(?: to \d+)?)(?: players)?(?: each)?: ([^:]+)$",
           r"\2, \1 players each", "sides"),
    saying(r"^(\d+(?: to \d+)?) ((?:\w+ ){0,2}\w+s|ǁ\d+)$", r"\2, \1 players", "sides"),
    saying(r"^(?:an? |the )?(?:hall|court|pitch|field) (?:is |of )?(?=\d)", "court ", "space"),
    saying(r"\b(\d+(?:\.\d+)?) by (\d+(?:\.\d+)? m)\b", r"\1 m by \2", "space"),
    saying(r"\b(\d+(?:\.\d+)? m) long(?:,? and|,) (\d+(?:\.\d+)? m) wide\b", r"\1 by \2", "space"),
    saying(r",? (?:and )?(?:(?:in|with|of) )?2 (?:equal )?halves$|,? (?:with a (?:centre|middle|half-?way) line|"
           r"halved(?: across)?)$|,? (?:divided|split|cut) (?:in|into) (?:2|(?:2 )?(?:equal )?halves|half)(?: by "
           r"(?:the|a) (?:centre|middle|half-?way)(?: line)?)?$", ", halved across",
           "space"),
    saying(r"^((?:an? |1 )?(?:[\w-]+ )?bench:?) (?:at|in|on) the (?:very )?back of each half$",
           r"\1 behind each back line",
           "space"),
    saying(r",? (?:at|in|on) the (?:very )?back of each half(?=,|$)", ", before each back line", "space"),
    saying(r" (?:at|in|on) the (?:very )?back of (each|their) half$",
           lambda m: f" before the back line of {'each' if m[1].lower() == 'each' else 'their'} side", "set-up"),
    saying(r"\bin (?:an?|1) corner for each side(?=,|$)", "in a corner of each side", "space"),
    saying(rf"^(?:there (?:are|is) )?(?P<number>\d+) (?P<what>(?!ǁ){_TASK}) {_ON_THE_FLOOR}"
           r"(?:, (?P<deep>\d+(?:\.\d+)? m)"
           r"(?: deep| wide| across| by (?P=deep))?)?(?=,|$)", _spread, "space"),
    saying(r",? (?:with )?(?:no|without (?:a )?)(?: ?middle line| ?halves)$|,? (?:undivided|(?:over )?the whole hall)$",
           ", in one piece", "space"),
    saying(r"(?<=: )(\d+(?:\.\d+)? m)(?: (?:deep|wide))?,? (?=before |in front of |along |behind |across )",
           r"\1 deep, ", "space"),
    saying(r"(?<=\d m )(?:across|wide|in diameter)(?=,)(?!.* around )", "deep", "space"),
    saying(r"(?<=m deep, )(?:at|by|near|against) (?:1|an?|(the other)) (back line|wall)\b",
           lambda m: f"before {m[1] or 'a'} {m[2]}", "space"),
    saying(rf"^({WHAT})(?: base)?: (?:an? |1 )?(?:mat|hoop)(?:,| (?=[a-z]+ )) ?(?:at|by|near|on) (?:1|an?) "
           r"(back line|wall)(?=,|$)", r"\1 base: before a \2", "space"),
    saying(r"(?<=: )(?:at|on|by) (?:the|each) side of (?:each|the|their) half(?=,|$)", "beside each half", "space"),
    saying(rf"^(?:(?:an?|1) )?({WHAT}|[\w-]+ base) in (each|every|the) corner( of (?:each|every) side)?$",
           r"\1: in \2 corner\3", "space"),
    saying(r"((?:bench|queue|ǁ\d+): )(?:beside|at|on|by|next to|along) the (?:court|side(?: ?line)?|(?:edge|side)(?: "
           r"of the court)?)(?=$|,)", r"\1along a side line", "space"),
    saying(r"^(?:an? |1 )?((?:[\w-]+ )?(?:bench|queue)|ǁ\d+) (?=behind |beside |along |before )", r"\1: ", "space"),
    saying(r"\b(\d+(?: to \d+)?)(?:(?: players)? (?:a|per|on each|in each) side| each)$", r"\1 players each", "sides"),
    saying(rf"^(?:there (?:is|are) )?(?P<number>\d+) (?P<who>{_TASK}) (?:per|(?:in|on|for|of) each) side$", _role,
           "sides"),
    saying(rf"^each side has (?P<number>\d+) (?P<who>(?!li(?:fe|ves)\b|points?\b|players?\b){_TASK})$",
           _role, "sides"),
    saying(r"^(?P<number>\d+) players? of (?:each|every) side (?:is|are) (?:the |an? )?(?P<who>[\w-]+)$",
           _role, "sides"),
    saying(r"^(?:everyone|everybody|each player|every player|players|all players) (?:has|have|gets?|starts? with|"
           r"begins? with) (\d+ (?:li(?:fe|ves)|points?))$", _of_each, "sides"),
    saying(rf"^({WHAT}) (?:against|versus|vs|v) ({WHAT})(?=,)", r"\1 and \2", "sides"),
    saying(rf"^an? ({WHAT} for each (?:side|{WHAT}))\b", r"1 \1", "kit"),
    saying(rf"^(\d+) (?P<what>{WHAT}), (?P<each>\d+) (?:for|to|per) (?:each )?side$", _for_each, "kit"),
    saying(r",? (?:at|to) (?:the )?(?:start|begin|begin with)$", "", "set-up"),
    saying(rf"^({WHAT}) (?:has|have|gets?) ((?:the|a|\d+) {WHAT})(?: first)?$", r"\1 begins with \2", "set-up"),
    saying(rf"^each side (?:has|gets|is given) (\d+ {WHAT})$", r"each side begins with \1", "set-up"),
    saying(rf"^(\d+ {WHAT}) (?:on|for|to|per) (?:each )?side$", r"each side begins with \1", "set-up"),
    saying(r"^(?:put|place|lay|set|set up|stand|we (?:put|place)) (?=.+ (?:in|on|behind|beside) )", "", "set-up"),
    saying(r",? (?:stand )?(?:in a (?:row|line)|lined up)(?= (?:on|along) )", "", "set-up"),
    saying(r"\b(players?) per side\b", r"\1 of each side", "set-up"),
    saying(rf"\b(in|on|behind) 1 (?:of the )?({WHAT})s?$", r"\1 the \2", "set-up"),
    saying(r"(?<=\w) for each side$", " of each side", "set-up"),
    saying(rf"^(\d+ players? (?:of|from) (?:each|every) side|(?:all )?(?:the )?{WHAT}) {_BEGINS} "
           r"(?=on |in |behind |before |beside |along )", r"\1 ", "set-up"),
    saying(rf"^((?:the |all (?:the )?)?{WHAT}) (?:are )?(?:spread|set|put|placed|laid|lined)(?: out| up)? "
           r"(?:along|on) (the|their|each) ((?:back|middle|side) line.*?)(?:, (?:evenly spaced|spread out))?$",
           r"\1 on \2 \3, evenly spaced", "set-up"),
    saying(r"\bthe middle of the (?:court|hall|floor|field)\b", "the middle", "set-up", "play"),
    saying(r", (?:evenly )?(?:spread|spread out|spread evenly|with (?:even )?gaps)$", ", evenly spaced", "set-up"),
)  # fmt: skip
