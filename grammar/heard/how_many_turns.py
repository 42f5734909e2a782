"""How many: more or fewer than so many, parts of all there are, and how much more than the other side."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_HALF = r"(?:(?P<part>more than|over|at least|at most|fewer than|less than) )?"
_OF = r"half (?:of )?(?:all )?(?:its|their|the)"
_DOWN = r"(?:are|is|have|has|lie) (?:(?:all )?(?P<state>down|standing|out)|(?:fallen|been knocked (?:over|down)))"
_WHOSE = r"(?:(?P<of_other> of the other side)|(?P<of_own> of (?:its|their) side))?"


def _half(match: re.Match[str]) -> str:
    words = {None: "", "over": "more than ", "less than": "fewer than "}
    part = match["part"]
    return f"has {words.get(part, f'{part} ')}half of its"


def _half_so(match: re.Match[str]) -> str:
    who = "the other side" if match["of_other"] else "it"
    part = {None: "", "over": "more than ", "less than": "fewer than "}.get(match["part"], f"{match['part']} ")
    return f"{who} has {part}half of its {match['what']} {match['state'] or 'down'}"


def _than(match: re.Match[str]) -> str:
    number, more = int(match["number"]), match["more"] in ("more than", "over")
    return f"has at least {number + 1}" if more else f"has at most {number - 1}" if number > 1 else "has no"


def places(match: re.Match[str]) -> str:
    """What each place is worth, of a match with that in its group `places`, or of a whole one."""
    said: str = match.groupdict().get("places") or match[0]
    first, *others = re.findall(r"\d+", said)
    *more, last = others
    listed = f"{', '.join(more)} and {last}" if more else last
    return f"the first side scores {first}, the next {listed} points"


_AHEAD = r"\b(?:leads|is ahead|is in front|is leading)\b"
_WHO = r"^(?:if |when )?(?:whoever|a player who|who) (?=[^:]*$)"
_ROUNDS = (
    r"^(?:we (?:play|run) |after )?(\d+) (?:rounds|races|games|heats)(?: (?:are|have been))?(?: all)?"
    r"(?: (?:played|run))?(?:,|:| and| then)* "
    r"(?:(?:the )?side (?:with|that (?:wins|(?:has )?won)) |whoever (?:wins|has won) )?(?:the )?"
)
_PLACED = r"(?:(?:the )?(?:first|best)(?: (?:place|side))?|the winner|whoever wins a round)"
_IS_WORTH = r"(?:scores?|gets?|has|have|is worth|wins?)"
_PLACED_NEXT = r"the (?:next|others|second(?: place| side)?)"
PLACE_BY_PLACE = (
    rf"{_PLACED} (?:{_IS_WORTH} )?\d+(?: points?)?(?:,? (?:and )?the (?:second|third|fourth|next|last)(?: side)? "
    rf"(?:{_IS_WORTH} )?\d+(?: points?)?)+"
)
_IN = ("finish", "when", "play")

HOW_MANY_TURNS: tuple[Saying, ...] = (
    saying(r", (?:only |at most )?([2-9]|1[0-2])(?: players)?(?: of each side)? at (?:a time|once|the same time)$",
           r", only \1 players at a time", "play"),
    saying(rf"\b(has|have) exactly (\d+) (?=(?:{WHAT}) (?:standing|in)\b)", r"\1 \2 ", *_IN),
    saying(r"\blives left\b", "lives", "finish"),
    saying(r"\b(?:has lost|loses) all (?:of )?(?:its|their) lives\b", "has no lives", "finish"),
    saying(rf"{_WHO}loses all (?:of )?(?:their|its) lives,? (?:then )?", "a player loses the last life: that player ",
           "when"),
    saying(rf"{_WHO}loses (\d+) lives,? (?:then )?", r"a player has lost \1 lives: that player ", "when"),
    saying(rf"{_WHO}catches a ball,? (?=(?:gets|wins|gains)\b)", "a ball is caught: the catcher ", "when"),
    saying(r"\b(?:gets back|gets|wins back|wins|gains) (?:a|1) life(?: back)?\b", "gets a life back", "when"),
    saying(rf"\b{_HALF}{_OF} (?P<what>{WHAT}){_WHOSE} {_DOWN}", _half_so, *_IN),
    saying(rf"\b(?:has|have) {_HALF}{_OF}\b", _half, *_IN),
    saying(rf"\ball but (\d+) (?:of )?(?:the )?({WHAT}) of the other side (?:are|have) (down|standing)",
           r"the other side has all but \1 \2 \3", "finish"),
    saying(rf"\ball but (\d+) (?:of )?(?:its|their) ({WHAT}) (?:are|have) (down|standing)",
           r"it has all but \1 \2 \3", "finish"),
    saying(r"\b(?:has|have) all but (\d+) of (?:its|their|the) ", r"has all but \1 ", "finish", "when"),
    saying(r"\b(?:has|have) (?P<more>more than|over|fewer than|less than) (?P<number>\d+)\b", _than, *_IN),
    saying(rf"{_AHEAD} by (?:at least )?(\d+) points?\b", r"has at least \1 more points than the other side", *_IN),
    saying(rf"{_AHEAD}(?! by)", "has more points than the other side", *_IN),
    saying(rf"\bhas (?:at least )?(\d+) (points|{WHAT}(?: standing| down| in)?) more than the "
           r"(?:other side|others|other)\b", r"has at least \1 more \2 than the other side", *_IN),
    saying(r"\bhas (\d+) more (?=[^:]* than\b)", r"has at least \1 more ", *_IN),
    saying(r"\bhas (?:at least )?(?:double|2 times) (?:as many )?(?:the )?(?=[^:]* (?:as|of)\b)", "has twice as many ",
           "finish", "when"),
    saying(r"\b(twice as many|3 times as many) (points|[^:,]+?) (?:as|of) the (?:others|other)\b(?! side)",
           r"\1 \2 as the other side", "finish", "when"),
    saying(r"^(?:the side with )?(?:the )?(?:most|more) points (?:after|over|in) (?:all )?(\d+) rounds wins?$",
           r"\1 rounds are played, more points over all wins", "finish"),
    saying(rf"{_ROUNDS}(?:most|more) points (?:over|in|of) (?:all|total)(?: (?:of them|rounds|together))? wins?$",
           r"\1 rounds are played, more points over all wins", "finish"),
    saying(rf"{_ROUNDS}(?:most|more)(?: of the)? rounds(?: won)? (?:wins?|is (?:king|champion|ǁ\d+|the "
           r"(?:winner|champion)))$", r"\1 rounds are played, more rounds wins", "finish"),
    saying(r"^(?:we (?:play|run) )?(\d+) (?:rounds|races|games|heats)(?: are)?(?: (?:played|run))?(?:,? and|,) "
           r"(?:(?:all )?(?:the|their) points|the points of all of them) are added(?: up)?$",
           r"\1 rounds are played, more points over all wins", "finish"),
    saying(rf"^{_PLACED} (?:{_IS_WORTH} )?(\d+)(?: points?)?,? (?:and )?{_PLACED_NEXT} "
           rf"(?:{_IS_WORTH} )?((?:\d+(?:, | and |, and )?)+)(?: points?)?$", places, "finish"),
    saying(rf"^{PLACE_BY_PLACE}$", places, "finish"),
    saying(r"\belse (?:the )?next (?:goal|basket|score) (?:wins|decides(?: it)?)$", "else the next point wins",
           "finish"),
    saying(rf"\bthere (?:is|are) (?:only |just )?(no|\d+|at most \d+) ({WHAT}) left(?: in)?\b", r"there are \1 \2 in",
           "finish"),
    saying(rf"\bonly (\d+) ({WHAT}) (?:is|are) left(?: in)?\b", r"there are \1 \2 in", "finish"),
    saying(rf"\belse (?:the )?next (?!point|goal|basket|score|hit)({WHAT}?)(?: (?:to fall|that falls|that is knocked))?"
           r"(?: over| down)? (?:wins|decides(?: it)?)$", r"else the next \1 knocked wins", "finish"),
    saying(r"\bthan the (?:others|other)\b(?! side)", "than the other side", *_IN),
)  # fmt: skip
