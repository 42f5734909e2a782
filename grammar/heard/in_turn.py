"""How teachers say who plays when: halves and innings, who rests, and what is otherwise in the last minute."""

from __future__ import annotations

import re

from grammar.heard.saying import Saying, saying

_TIME = r"(?:\d+ (?:min|s))"
_LAST = rf"(?:the )?last (?P<time>minute|{_TIME})"
_COUNT = r"(?:points?|goals?)(?: that are (?:scored|won))? counts?"
_ROUNDS = r"(?P<rounds>,? (?:for )?\d+ rounds)?"


def _last(match: re.Match[str]) -> str:
    return f"in the last {match['time']}, points count {match['often']}"


def _rests(match: re.Match[str]) -> str:
    """Who stays on, and for how many rounds where that is said."""
    return f"{match['who']}, the winner stays on{_rounds(match)}"


def _winners(match: re.Match[str]) -> str:
    return f"{match['who']}, winners meet winners{_rounds(match)}"


def _rounds(match: re.Match[str]) -> str:
    rounds = re.search(r"\d+", match["rounds"] or "")
    return f", {rounds.group()} rounds" if rounds else ""


IN_TURN: tuple[Saying, ...] = (
    # halves and innings
    saying(r"^(?:at half-?time|after the first half),? (?:the )?sides (?:change|swap|switch)(?: ends| halves| sides)$",
           "the sides change ends at half-time", "finish"),
    saying(r"^(?:at half-?time|after the first half),? (?:the )?sides (?:change|swap|switch)(?: their)? "
           r"(?:tasks|roles|jobs)$", "two halves, the sides change tasks", "finish"),
    saying(rf"^each side (?:bats|is in|goes in|attacks|is at bat) (?:for )?(?P<time>{_TIME})$",
           r"2 innings of \g<time>, the sides change tasks", "finish"),
    saying(r"^each side (?:bats|is in|goes in|attacks|is at bat) (?P<often>once|twice|\d times)$",
           lambda m: f"{2 * int({'once': '1', 'twice': '2'}.get(m['often'].lower(), m['often'][0]))} innings, "
           "the sides change tasks", "finish"),
    saying(rf"^(?P<number>\d+) innings(?P<time> of {_TIME})?(?: each)?(?:,? then (?:they |the sides )?change)?$",
           lambda m: f"{m['number']} innings{m['time'] or ''}, the sides change tasks", "finish"),
    # who rests
    saying(r"^(?:of (?:the )?3 sides,? )?(?:2 (?:sides )?play,? (?:and )?)?1 (?:side )?(?:rests|sits out|has a rest)"
           r"(?=[,;]|$)", "one side rests", "finish"),
    saying(r"^(?:of (?:the )?4 sides,? )?(?:2 (?:sides )?play,? (?:and )?)?(?:the other )?2 (?:sides )?"
           r"(?:rest|sit out|have a rest)(?=[,;]|$)", "two sides rest", "finish"),
    saying(rf"^(?P<who>one side rests|two sides rest)[,;] (?:the )?winners? stays? (?:on|in){_ROUNDS}$", _rests,
           "finish"),
    saying(r"^4 sides,? (?:play )?on 2 courts(?=[,;])", "four sides on two courts", "finish"),
    saying(rf"^(?P<who>four sides on two courts)[,;] (?:the )?winners? (?:meets?|plays?(?: against)?) (?:the )?"
           rf"(?:other )?winners?{_ROUNDS}$", _winners, "finish"),
    saying(r"^(?P<who>one side rests|two sides rest|four sides on two courts)[,;] (?:each|every side|everybody) "
           r"(?:plays|meets) (?:each other|all others|everybody|every other)(?: side)?(?: once)?$",
           r"\g<who>, all meet all", "finish"),
    # turns of so many attempts
    saying(r"\b(?:changes?|swaps?)(?: over| places| roles| tasks)? (?:after|every)(?: every| each)? (?P<number>\d+) "
           r"(?:throws|rolls|kicks|shots|tries|turns|goes|balls)(?: each)?$", r"change every \g<number> attempts",
           "play"),
    # by the clock
    saying(rf"^(?:in )?{_LAST},? (?:all |every |each )?(?:{_COUNT}|counts?) (?P<often>double|three times)$", _last,
           "play"),
    saying(rf"^(?:all |every |each )?{_COUNT} (?P<often>double|three times) in {_LAST}$", _last, "play"),
    saying(rf"^(after {_TIME}|every {_TIME}|at half-time),? (?=[^:]* comes? in(?:to play)?$)", r"\1: ", "when"),
    saying(r"\b(comes? in)to play$", r"\1", "when"),
)  # fmt: skip
