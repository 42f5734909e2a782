"""How teachers say who has won: "whoever has nine in their base wins", "a side without players loses"."""

from __future__ import annotations

from grammar.heard.saying import WHAT, Saying, saying

_COUNT = r"(?:\d+|no|all(?: \d+)?|at least \d+)"
_WHO = (
    r"(?:whoever|whichever side|the side (?:that|which|who)|the first (?:side )?(?:that|to)|the first side|the first|"
    r"the first to)"
)

WHO_HAS_WON: tuple[Saying, ...] = (
    saying(rf"^{_WHO} (?:first )?(?:has|have|gets|get|owns|with) (?P<what>{_COUNT} .+?)(?: first)? wins$",
           r"a side wins when it has \g<what>", "finish"),
    saying(rf"^(?:a|the) (?:first )?side with (?P<what>{_COUNT} .+?)(?: first)? (?P<end>wins|loses)$",
           r"a side \g<end> when it has \g<what>", "finish"),
    saying(r"^(?:a|any|the) side (?:without|with no(?: more)?) players(?: left| in)? loses$",
           "a side loses when it has no players in", "finish"),
    saying(r"^(?:when|if|once) (?:a|1|any) side has (?:no more players|no players(?: left)?)(?: left| in)?,? (?:then )?"
           r"the other(?: side)? wins$", "a side wins when the other side has no players in", "finish"),
    saying(rf"^{_WHO} (?:first )?(?:knocks(?: down| over)?|clears) all (?:of )?(?:the )?({WHAT}) of the other side"
           r"(?: first)? wins$", r"a side wins when the other side has no \1 standing", "finish"),
    saying(r"^(?:the side with )?(?:the )?(?:most|more) (.+?) after (\d+ (?:min|s)) wins$", r"after \2: more \1 wins",
           "finish"),
)  # fmt: skip
