"""How teachers say who has won: "whoever has nine in their base wins", "a side without players loses"."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_COUNT = r"(?:\d+|no|all(?: \d+)?|at least \d+)"
_WHO = (
    r"(?:whoever|whichever side|the side (?:that|which|who)|the first (?:side )?(?:that|to)|the first side|the first|"
    r"the first to)"
)


def _best_of(match: re.Match[str]) -> str:
    """Whoever wins two of three has won the best of three; of other numbers it is no majority."""
    most = 2 * int(match["won"]) - 1
    told = {int(each) for each in (match["of"], match["all"]) if each}
    return f"best of {most} rounds" if told <= {most} else match[0]


WHO_HAS_WON: tuple[Saying, ...] = (
    saying(rf"^{_WHO} (?:first )?(?:has|have|gets|get|owns|with) (?P<what>{_COUNT} .+?)(?: first)? wins$",
           r"a side wins when it has \g<what>", "finish"),
    saying(rf"^(?:a|the) (?:first )?side with (?P<what>{_COUNT} .+?)(?: first)? (?P<end>wins|loses)$",
           r"a side \g<end> when it has \g<what>", "finish"),
    saying(r"^(?:a|any|the) side (?:without|with no(?: more)?) players(?: left| in)? loses$",
           "a side loses when it has no players in", "finish"),
    saying(r"^(?:when|if|once) (?:a|1|any) side has (?:no more players|no players(?: left)?)(?: left| in)?,? (?:then )?"
           r"the other(?: side)? wins$", "a side wins when the other side has no players in", "finish"),
    saying(rf"^{_WHO} (?:first )?(?:knocks?(?: down| over)?|clears?) all (?:of )?(?:the )?({WHAT}) of the other side"
           r"(?: first)? wins$", r"a side wins when the other side has no \1 standing", "finish"),
    saying(r"^the round ends when (?:1|a|any) side (?:has|reaches|gets) (\d+) points$",
           r"the first side to \1 points wins", "finish"),
    saying(rf"^(?:(?:we play )?(?P<of>\d+) rounds(?: are played)?,?(?: and)? )?{_WHO} (?:first )?wins? (?P<won>\d+)"
           r"(?: of (?:the )?(?P<all>\d+))? rounds(?: first)? wins$", _best_of, "finish"),
    saying(r"^(?:the )?losers (?:go|come) off,? (?:and )?the (?:waiting|resting|third|next) side comes (?:on|in)$",
           "one side rests, the winner stays on", "finish"),
    saying(r"^(?:the )?(?:highest|higher|best) score after (\d+ (?:min|s)) wins$", r"after \1: more points wins",
           "finish"),
    saying(r"\ball (?:of )?(?:its|their) players are (on|in) ", r"it has all players \1 ", "finish"),
    saying(r"\bhas all (?:of )?(?:its|their) players (?:to|onto) ", "has all players on ", "finish"),
    saying(rf"^the round ends when (?:there (?:is|are) )?(?:only )?(\d+) ({WHAT})(?: (?:is|are))? (?:left|in)(?: in)?"
           rf",? (?:and )?(?:that|the|those) {WHAT} wins?$",
           r"the round ends when \2 have at most \1 players in, those who are left win", "finish"),
    saying(r"^the last player (?:left|in)(?: in)? wins$",
           "the round ends when there is at most 1 player in, those who are left win", "finish"),
    saying(r",? (?:else )?(?:if|when|at) (?:it is )?(?:level|a draw|equal|tied|a tie|even|drawn),? (?:then )?(?:the )?"
           r"next (point|goal) (?:decides|wins)(?: it)?$", r", else the next \1 wins", "finish"),
    saying(r"^(?:the )?winner is (?:the side )?(?:with|who has|that has) (?:the )?(?:most|more) (.+?) after (\d+ "
           r"(?:min|s))$",
           r"after \2: more \1 wins", "finish"),
    saying(r"\b(most|more|fewer|fewest) players left\b", r"\1 players in", "finish"),
    saying(r"^(?:a|the) side (?:that reaches|with|wins with) (\d+) points(?: wins)?$|^(\d+) points win$",
           lambda match: f"the first side to {match[1] or match[2]} points wins", "finish"),
    saying(r"^(?:a|the) side wins (?:by|with a lead of) (\d+) (points|goals)$",
           r"a side wins when it has at least \1 more points than the other side", "finish"),
    saying(r"^(?:the side with )?(?:the )?(?:most|more) (.+?) after (\d+ (?:min|s)) wins$", r"after \2: more \1 wins",
           "finish"),
)  # fmt: skip
