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
_DO = (
    r"(?:changes?|swaps?|switch|switches|runs?|goe?s?|sits?|waits?|returns?|joins?|becomes?|freezes?|loses?|drops?|"
    r"puts?|brings?|stands?|stops?|kneels?|leaves?)"
)
_NEXT = r"(?:the|its|that|it|they|he|she|all|everyone|everybody|play)"
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


def _third_person(verb: str) -> str:
    """ "goes", "carries", "puts"."""
    verb = verb.lower()
    return {"go": "goes", "carry": "carries"}.get(verb, f"{verb}s")


def _who_is(match: re.Match[str]) -> str:
    whom = match.groupdict().get("whom") or "player"
    return f"a {whom} is {_DOES[match['event'].lower()]}: that player "


TO_WHOM: tuple[Saying, ...] = (
    saying(r"^(?:(?:on|with|for|after) )?(?:a |each |every )?(?:catch|caught ball)(?:,|:| (?=the |all )) ?(?=\w)",
           "a ball is caught: ", "when"),
    saying(rf"^(?:if |when )?(?:someone|somebody|anyone|anybody|you) catch(?:es)? (?:a|the) ({WHAT})([^,:]*)[,:] ",
           r"a \1 is caught\2: ", "when"),
    saying(r"\b(?:a|the) ball hits (?:you|a player)(?=[:, ])", "a player is hit", "when"),
    saying(r"(?<=[:,] )you are (?=out\b)", "that player is ", "when"),
    saying(r"(\bit )?\bis out,? and (?:that player )?(?:must |has to )?(sit|wait|go|stand)(?:e?s)? ",
           lambda match: f"{'that player ' if match[1] else ''}{_third_person(match[2])} ", "when"),
    saying(r"^(the thrower) of a caught ball(?= )", r"a ball is caught: \1", "when"),
    saying(rf"^(?:if|when) (?:you are |you get |players are )?(?P<event>hit|touched|tagged),? (?:you |they )?(?:must |"
           rf"have to )?(?=(?:{_DO}) )", _who_is, "when"),
    saying(r"(?<=[:,] )you (?:must |have to )?(go|sit|wait|stand|freeze|lose|drop|put|bring)(?= |$)",
           lambda match: f"that player {_third_person(match[1])}", "when"),
    saying(r"(?<= and )(?:(?:you|they|then) )?(go|sit|wait|come|stand|join|return|drop|put)(?= )",
           lambda match: _third_person(match[1]), "when"),
    saying(rf"\bgoe?s (?:in)?to (?!the |their )({WHAT}) for (?=\d)", r"waits in the \1 for ", "when"),
    saying(rf"^(?P<event>hit|touched|tagged) (?:players|children) (?=(?:{_DO}|are) )", _who_is, "when"),
    saying(rf"^(?:when|if|once) all (?:of )?(?:the )?({WHAT}) of (?:a|1) side (?:are|have) (?:down|fallen|knocked "
           rf"over)[,:]? ",
           r"a side has no \1 standing: ", "when"),
    saying(rf"^(?:a player|whoever|anyone who|a runner) (?:brings|takes|carries|gets) (?:home )?(an? {WHAT})(?: "
           rf"home)?: "
           r"(?:(?:their|the player's|the runner's|that) side )?(?=scores|gets)", r"\1 arrives: the carrier's side ",
           "when"),
    saying(rf"^(?:a|each|every) ({WHAT}) (?:who|that) (?:gets|makes it|comes|runs)(?: safely)? (?:across|over|through|"
           rf"home|to the other side)[,:]? (?:scores|gets) {_POINTS}$",
           lambda match: f"a {match[1]} arrives: the {match[1]}'s side scores {_number(match)}", "when"),
    saying(r"\ba ball is (?:stopped|saved|parried|kept out)\b", "a ball is blocked", "when"),
    saying(r" without being (?:touched|tagged|hit|caught)(?=:)", "", "when"),
    saying(r"^(?:an?|the) ball goes over the side ?line(?=:)", "a ball leaves the court", "when"),
    saying(r"(?<=: )(?:a )?throw-?in for (the other side|that side)$", r"\1 has the ball", "when"),
    saying(rf"^(after \d+ (?:min|s))[,:]? (?:there is )?(?:a|1) (?:second|third|fourth|new|further|extra) ({WHAT})$",
           r"\1: another \2 comes in", "when"),
    saying(rf"^(?:when|if|once) (an? {WHAT} (?:{_FALLS}|is (?:caught|touched|tagged|missed|hit))(?: above the "
           rf"shoulder)?) (?={_NEXT} )",
           r"\1: ", "when"),
    saying(rf"^(?P<then>[^:]+?),? (?:when|if|every time|each time|once) (?P<event>an? {WHAT} (?:{_FALLS}|is \w+|"
           r"goes (?:into|through|out) ?[^:]*|leaves [^:]*|arrives[^:]*))$", r"\g<event>: \g<then>", "when"),
    saying(rf"^(?:an?|each|every) (?P<event>hit|touched|tagged) (?P<whom>{WHAT})[,:]? (?=(?:{_DO}|is|must|has to) )",
           _who_is, "when"),
    saying(r"\b(is|are) added(?: to (?:the game|play))?$",
           lambda match: "comes in" if match[1].lower() == "is" else "come in", "when"),
    saying(rf"^(?:{_ANYBODY}|each player|players)(?: (?:who )?(?:is|are|gets|get))? (?P<event>hit|touched|tagged)[,:]? "
           rf"(?=(?:{_DO}|is|are) )", _who_is, "when"),
    saying(r"(?<=that player )(?:(?:changes?|swaps?|switch(?:es)?) (?:sides?|to the other side|over)|goes over to the "
           r"other side)$", "joins the other side", "when"),
    saying(r"(?<=that player )(?:must |has to )?(?:runs?|goes|go|walks?) back to (?=the |their )", "goes to ", "when"),
    saying(rf"(?<=that player )(?:is|becomes) the (?:new|next) ({WHAT})$", r"becomes a \1", "when"),
    saying(r"(?<=: )(?:everyone|everybody|all players|each player|all those)(?: who (?:is|are|waits?|sits?))? (in|on) "
           r"(the [^:]+?) (?:may |can )?(?:comes?|returns?)(?: back)?(?: in)?$", r"all \1 \2 return", "when"),
    saying(r"\bloses 1 life\b", "loses a life", "when"),
    saying(r"\bthe (?:(?:throwing|scoring|rolling|kicking|attacking) side|side (?:that|which|who) (?:threw|rolled|"
           r"kicked|scored)(?: it)?) (?=scores|gets|has)", "the thrower's side ", "when"),
    saying(rf"^(an?) (?!ball\b)({WHAT}) (?:(?:steps|goes|runs|crosses)(?: (?:over|across|out of))? the (?:middle|"
           r"centre|half-?way|side) ?lines?|(?:runs|goes|steps) (?:out(?! of)|out of the (?:court|hall|field)))(?=:)",
           r"\1 \2 fouls", "when"),
    saying(rf"^((?:if |when )?an? {WHAT} (?:(?:is|gets) (?:touched|tagged)[^:,]*|fouls|is hit[^:,]*"
           r"(?=[:,] it (?:becomes|waits|freezes|is out)\b))[:,]|a player is hit[^:,]*[:,]) it ", r"\1 that player ",
           "when"),
    saying(r"^a foul gives the other side (a|the) ball$", r"a player fouls: the other side has \1 ball", "when"),
    saying(r"^a player (?:with no|without) lives(?: left)? is out$", "a player loses the last life: that player is out",
           "when"),
    saying(rf": {_THEY} (bring|put|take|carry|drop|lose|give|hand)s? ",
           lambda match: f": that player {_third_person(match[1])} ", "when"),
    saying(r"(: that player )(go|sit|wait|join|become|freeze|lose|drop|put|bring)(?= )",
           lambda match: match[1] + _third_person(match[2]), "when"),
)  # fmt: skip

COUNTED: tuple[Saying, ...] = (
    saying(rf"^{_EACH} {_DOWN} (?P<what>{WHAT}) {_GIVES} {_POINTS}$", _each_down, "when"),
    saying(rf"^{_EACH} (?P<what>{WHAT}) (?:that|which) {_FALLS},? {_GIVES} {_POINTS}$", _each_down, "when"),
    saying(rf"^(?:{_EACH} )?(?:{_DOWN} (?P<what>{WHAT})|(?P<these>{WHAT}) (?:that|which) {_FALLS}) (?:is |are )?"
           r"(?P<then>stays? down|(?:stood|put|set) up again|stands? up again)(?: at once)?$", _stays, "when"),
    saying(rf"^(?:each|every) (?P<what>{WHAT}) {_GIVES} {_POINTS}$",
           lambda match: f"a {match['what']} is worth {_number(match)}", "when"),
    saying(rf"^(?:hitting|knocking(?: down| over)?|toppling) an? (?P<what>(?!players?\b){WHAT}) {_GIVES} {_POINTS}$",
           _each_down, "when"),
    saying(rf"^for (?:each|every) (?P<what>{WHAT}) (?:that )?(?:{_FALLS}|{_DOWN}),? (?:the|that|a) side (?:gets|scores|"
           rf"has|earns) {_POINTS}$", _each_down, "when"),
    saying(rf"^(?:hitting|a hit on|a hit at|each hit on) an? (?:player|opponent|player of the other side) {_GIVES} "
           rf"{_POINTS}$", lambda match: f"a player is hit: the thrower's side scores {_number(match)}", "when"),
    saying(rf"^(?:a|each|every) ball (?:in|into) the (?P<what>{WHAT}) {_GIVES} {_POINTS}$",
           lambda match: f"a ball goes into the {match['what']}: the thrower's side scores {_number(match)}", "when"),
    saying(rf"^a pass to (?P<where>the [^:]+?) {_GIVES} {_POINTS}$",
           lambda match: f"a pass is caught on {match['where']}: the passer's side scores {_number(match)}", "when"),
    saying(rf"^after (?P<row>\d+ passes)(?: in a row)?,? (?:the|that|a|its) side (?:scores|gets|has) {_POINTS}$",
           _in_a_row, "when"),
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
