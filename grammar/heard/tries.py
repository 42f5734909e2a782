"""How teachers say that somebody brings a ball over a line, or runs there: the ball, or the runner, arrives at it."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_WHO = r"(?:whoever|anyone who|somebody|an? player(?: who)?)"
_OVER = r"(?:over|across|behind|beyond|past|to|onto|on|at)"
_LINE = r"(?P<line>the back line(?: of the other side)?)"  # over another line they rather foul
_BALL = rf"(?:the|an?) (?P<ball>{WHAT})"
_SIDE = r"(?P<side>: (?:their|its|his|her|that player's|the player's) side)?"


def _arrives(match: re.Match[str]) -> str:
    side = ": the carrier's side" if match["side"] else ""
    return f"a {match['ball']} arrives at {match['line']}{side}"


TRIES: tuple[Saying, ...] = (
    saying(rf"^{_WHO} (?:carries|brings|takes|runs with|gets) {_BALL} {_OVER} {_LINE}(?=:){_SIDE}", _arrives, "when"),
    saying(rf"^{_WHO} (?:(?:runs|goes|gets|walks|steps) {_OVER}|crosses) {_LINE} with {_BALL}(?=:){_SIDE}",
           _arrives, "when"),
    saying(rf"^{_BALL} is (?:carried|brought|(?:laid|put|touched)(?: down)?|placed|grounded) {_OVER} {_LINE}"
           rf"(?=:){_SIDE}", _arrives, "when"),
)  # fmt: skip
