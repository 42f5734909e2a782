"""How teachers say what an event is worth, and to whom it happens: "each cone that falls gives a point"."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_POINTS = r"(?P<points>\d+|an?) points?"
_GIVES = r"(?:gives?|counts?(?: as| for)?|is|are|is worth|are worth|brings?|makes?|earns?|scores?|means?)"
_DOWN = r"(?:knocked(?: over| down)?|fallen|toppled|overturned|hit)"
_FALLS = rf"(?:falls?(?: over| down)?|(?:is|are|gets?) {_DOWN})"
_THEY = r"(?:he or she|he/she|she|he|they|this player|the player)"
_ANYBODY = r"(?:anyone|anybody|whoever|everyone|everybody|a player)"
_DO = r"(?:goe?s?|sits?|waits?|returns?|joins?|becomes?|freezes?|loses?|drops?|puts?|brings?)"
_EACH = r"(?:each|every|a|any|the)"
_DOES = {"hit": "hit", "touched": "touched", "tagged": "touched", "caught": "touched"}


def _number(match: re.Match[str]) -> str:
    points = int(match["points"]) if match["points"].isdigit() else 1
    return f"{points} point{'s' if points > 1 else ''}"


def _for_whom(match: re.Match[str]) -> str:
    return f"{match['event']}: {match['side']} scores {_number(match)}"


def _by_event(match: re.Match[str]) -> str:
    """Points of nobody in particular are of who did it: the carrier, the passer, or whoever sent the ball."""
    event = match["event"]
    actor = "carrier" if " arrives" in event else "passer" if "pass" in event else "thrower"
    return f"{event}: the {actor}'s side scores {_number(match)}"


def _each_down(match: re.Match[str]) -> str:
    return f"a {match['what']} is knocked: the thrower's side scores {_number(match)}"


def _stays(match: re.Match[str]) -> str:
    then = "it stays down" if "down" in match["then"].lower() else "it stands up again"
    return f"a {match['what'] or match['these']} is knocked: {then}"


def _in_a_row(match: re.Match[str]) -> str:
    return f"{match['row']} in a row: the passer's side scores {_number(match)}"


def _who_is(match: re.Match[str]) -> str:
    return f"a player is {_DOES[match['event'].lower()]}: that player "


TO_WHOM: tuple[Saying, ...] = (
    saying(rf"^(?:when|if|once) (an? {WHAT} {_FALLS}) (?=(?:the|its|that|it) )", r"\1: ", "when"),
    saying(r"\b(is|are) added(?: to (?:the game|play))?$",
           lambda match: "comes in" if match[1].lower() == "is" else "come in", "when"),
    saying(rf"^(?:{_ANYBODY}|each player|players)(?: who (?:is|are|gets|get))? (?P<event>hit|touched|tagged)[,:]? "
           rf"(?=(?:{_DO}|is|are) )", _who_is, "when"),
    saying(rf": {_THEY} (bring|put|take|carry|drop|lose|give|hand)s? ", lambda match: ": that player "
           + {"carry": "carries"}.get(match[1].lower(), f"{match[1].lower()}s") + " ", "when"),
    saying(r"(: that player )(go|sit|wait|join|become|freeze|lose|drop|put|bring)(?= )", r"\1\2s", "when"),
)  # fmt: skip

COUNTED: tuple[Saying, ...] = (
    saying(rf"^{_EACH} {_DOWN} (?P<what>{WHAT}) {_GIVES} {_POINTS}$", _each_down, "when"),
    saying(rf"^{_EACH} (?P<what>{WHAT}) (?:that|which) {_FALLS},? {_GIVES} {_POINTS}$", _each_down, "when"),
    saying(rf"^(?:{_EACH} )?(?:{_DOWN} (?P<what>{WHAT})|(?P<these>{WHAT}) (?:that|which) {_FALLS}) (?:is |are )?"
           r"(?P<then>stays? down|(?:stood|put|set) up again|stands? up again)(?: at once)?$", _stays, "when"),
    saying(rf"^(?:each|every) (?P<what>{WHAT}) {_GIVES} {_POINTS}$",
           lambda match: f"a {match['what']} is worth {_number(match)}", "when"),
    saying(rf"^(?P<row>\d+ passes)(?: in a row)? {_GIVES} {_POINTS}$", _in_a_row, "when"),
    saying(rf"^(?:a|any|the) side (?:that )?(?:makes?|has made|has|completes?|plays?) (?P<row>\d+ passes)(?: in a row)?"
           rf"(?::|,)? (?:(?:it|that side) )?(?:scores|gets|has) {_POINTS}$", _in_a_row, "when"),
    saying(rf"^(?P<event>[^:]+): {_POINTS} (?:for|to) (?P<side>[^:]+? side|(?:the )?{WHAT})$", _for_whom, "when"),
    saying(rf"^(?P<event>(?:an? {WHAT} (?:is knocked|arrives|goes (?:through|into)|crosses)|\d+ passes in a row)\b"
           rf"[^:]*): {_POINTS}$", _by_event, "when"),
    saying(r"(?<=: )(?:1|an?|another) (?:player|team-mate|mate) (?:from|in|on|of) (the|their) ([^:]+?) (?:may |can )?"
           r"(?:returns?|comes? (?:back|in)(?: in)?)$", lambda match: f"the first in {match[1]} {match[2]} returns",
           "when"),
    saying(r"^a player (?:loses|has lost) all (?:of )?(?:their |its )?(?:\d+ )?lives:", "a player loses the last life:",
           "when"),
)  # fmt: skip
