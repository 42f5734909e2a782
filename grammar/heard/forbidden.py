"""How teachers say what nobody may do: run with the ball, keep it, enter, fetch, leave."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_NOBODY = (  # all that forbids: what allows is another rule
    r"(?:(?:nobody|no[ -]one|no player)(?: (?:may|can|is allowed to))?|no players(?: (?:may|can|are allowed to))?|"
    r"(?:players|you) (?:(?:may|can|must|do) not|are not allowed to))"
)


def _spared(match: re.Match[str]) -> str:
    return f"nobody is {'hit' if match['what'].lower() == 'hit' else 'touched'} there"


FORBIDDEN: tuple[Saying, ...] = (
    saying(rf"^{_NOBODY} runs? with (?:the|a) ball$", "nobody runs with the ball", "play"),
    saying(rf"^{_NOBODY} (?:hold|keep|have)s? (?:a|the) ({WHAT}) (?:for )?(?:longer than|more than|over) ",
           r"a \1 is held at most ", "play"),
    saying(r"\b(is (?:held|kept)) for (?=at most )", r"\1 ", "play"),
    saying(rf"^(?:a|the) ({WHAT}) (?:(?:may|must|can) not be (?:held|kept) (?:for )?(?:longer than|more than)|"
           r"(?:may|must|can)(?: only)? be (?:held|kept) (?:for )?(?:at most|up to)) ", r"a \1 is held at most ",
           "play"),
    saying(r"(?<=, )(?:nobody|no players?|players (?:may|can|must) not) (?:(?:may|can|is allowed to|are allowed to) )?"
           r"(?:enter|go|go in)(?: there)?(?=,|$)", "nobody enters there", "space"),
    saying(rf"(?<=, )(?:no ({WHAT}) (?:may|can|are allowed to)|({WHAT}) (?:(?:may|can|must) not|are not allowed to)) "
           r"(?:enter|go|go in)(?: there)?(?=,|$)", lambda m: f"no {m[1] or m[2]} there", "space"),
    saying(rf"(?<=, )(?:nobody|no one|no {WHAT}) (?:(?:is|may be|can be|gets) )?(?P<what>touched|tagged|caught|hit)"
           r"(?: there| (?:in|on) it)?(?=,|$)", _spared, "space"),
    saying(rf"(?<=, )only (?:the )?({WHAT}) (?:(?:may|can|are allowed to) )?(?:enter|go|come|be|stand|stay|play|walk)"
           r"(?: in(?:to it)?| on it)?(?: there)?(?=,|$)", r"only \1 enter there", "space"),
    saying(rf"^{_NOBODY} fetch(?:es)?\b", "nobody fetches", "play"),
    saying(rf"^{_NOBODY} leaves? (their|the) ({WHAT})$", r"players stay in \1 \2", "play"),
    saying(rf"^(?:the )?({WHAT}) (?:(?:may|can|must|do) not|are not allowed to) leave (their|the) ({WHAT})$",
           r"\1 stay in \2 \3", "play"),
)  # fmt: skip
