"""Turns of phrase about what lies in a store, a nest, the middle, and about who has most of it."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_KINDS = rf"(?P<first>{WHAT})(?:,? and |, )(?P<others>{WHAT}(?:(?:,? and |, ){WHAT})*)"


def _each_worth(match: re.Match[str]) -> str:
    """Of several kinds in one place each is worth as much: the language says it of one after the other."""
    points, rest = match["points"], re.sub(r"^ points?$", "", match["rest"])
    others = [f"{each} {points}" for each in re.split(r",? and |, ", match["others"])]
    *before, last = others
    listed = "".join(f", {each}" for each in (others if rest else before)) + ("" if rest else f" and {last}")
    noun = "" if rest else " point" if points == "1" else " points"
    return f"at the end {match['first']} {match['where']} score {points}{listed}{noun}{rest}"


STORES: tuple[Saying, ...] = (
    saying(r"\bthere (?:is|are) nothing(?: left| more)? (?=in |on )", "there are no things ", "play", "when", "finish"),
    saying(rf"\bthe ({WHAT}) is empty\b", r"there are no things in the \1", "play", "when", "finish"),
    saying(rf"\b(?:its|their) ({WHAT}) is empty\b", r"it has no things in its \1", "play", "when", "finish"),
    saying(r"^(?:at|in) the end(?: of the (?:round|game))?,? (?:we count: )?", "at the end ", "finish"),
    saying(rf"^(?P<each>(?:an?|each|every) {WHAT} (?:in|on|at) .*?) (?:is worth|counts|scores) "
           r"(?P<points>\d+ points?)$", r"at the end \g<each> is worth \g<points>", "finish"),
    saying(r"(?<=^at the end )(.*?)\b(?:counts?(?: for)?) (?=\d)", r"\1score ", "finish"),
    saying(rf"^at the end (?:the )?{_KINDS} (?P<where>(?:in|on|at) [^,:]*?) scores? (?P<points>\d+)(?P<rest>.*)$",
           _each_worth, "finish"),
    saying(r"(?<=^at the end )(.*\d points?) each$", r"\1", "finish"),
    saying(r"^(?:when|once|if) (.+?), (?:then )?(?=(?:more|fewer|most|the side with|the side (?:that|which) has|"
           r"whoever has|those with) )", r"the round ends when \1, ", "finish"),
    saying(r"^(.* wins) after (\d+ (?:min|s))$", r"after \2: \1", "finish"),
    saying(r"\b(?:the side (?:that|which) has|whoever has|those with) (?=(?:the )?(?:most|more) )", "", "finish"),
)  # fmt: skip
