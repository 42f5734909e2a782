"""How teachers say who has a ball, who goes on with it, and who gets it; these come before others."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying

_BALL = rf"(?P<the>an?|the) (?P<ball>{WHAT})"
_HAS = r"(?:who (?:have|has|holds?|runs? with|is running with|are running with)|holding|in possession of)"
_WHILE = r"(?:while|when|as)(?: (?:they|he|she) (?:are|is))? (?:carrying|holding|running with|in possession of)"
_OUT = r"(?:leaves (?:the )?court|(?:rolls|goes|flies|runs|is) (?:out|off)(?: of)?(?: the)?(?: court)?)"
_SIDE = r"(?P<side>(?:the other|that|the [\w']+) side)"
_OF_A_BALL = (  # so that "it" is the ball, not what was knocked nor who was hit
    r"(?:^a player fouls[^:]*|^(?:an?|the) [^:]*"
    r"(?:is (?:missed|caught|held|intercepted|blocked)|leaves|crosses|goes (?:through|into))[^:]*)"
)
_OF_A_THING = r"(?P<event>^(?:an?|the) [^:]* is knocked[^:]*)"
_OTHER_SIDE = _SIDE.replace("side>", "other>")
_IT_GOES = rf"it (?:goes to|comes back to|belongs to|is given to|is for) {_SIDE}"
_GETS = r"(?:has|gets|takes|keeps|is given|starts with|begins with|throws in|restarts with)"
_CATCHER = r"(?:the catcher(?:'s side)?|the side that (?:caught|intercepted) it|whoever caught it|them)"
_KEEPS = (
    rf"(?:(?:stays with|belongs to|goes to|is for|is) {_CATCHER}|is theirs|is the other side's|"
    r"(?:goes to|belongs to|is for) the other side)"
)
_LIMBS = r"(?:(?:the|their|both|his|her) )?(?:hands?|feet|foot|arms?|legs?|body|bodies|chest)"
_PARTS = {"hands": {"hand", "hands", "arm", "arms"}, "feet": {"foot", "feet", "leg", "legs"},
          "body": {"body", "bodies", "chest"}}  # fmt: skip
_MUST = r"(?:must |has to )?"
_GOAL = r"(?:goal|point|ǁ\d+)"
_MAY = r"(?:may |can |must |should )?"


def _it(said: re.Match[str]) -> str:
    """What was thrown, where it is not named."""
    return "the ball" if said["what"] == "it" else said["what"]


def _with(said: re.Match[str]) -> str:
    """All that balls are stopped with, whatever comes first: none of it is left out."""
    words = set(re.findall(r"\w+", said[1].lower()))
    parts = [part for part, called in _PARTS.items() if words & called]
    return f"with the {' and '.join([', '.join(parts[:-1]), parts[-1]] if parts[1:] else parts)}"


BALL_TURNS: tuple[Saying, ...] = (
    saying(r"^(?:at the (?:whistle|start)|on the (?:signal|whistle)),? (?:everybody|everyone|all|players) "
           r"(?:run|rush)(?:e?s)? (?:for|to) the balls?$", '"At the start the balls are for whoever comes first."',
           "play"),
    saying(r"(\bgoes into [^:]*: (?:.* and )?)(?:it|the ball) (?:stays?|remains?|is left|lies) "
           r"(?:in there|in it|inside(?: it)?|there)$",
           r"\1the ball stays there", "when"),
    # who stops and who fetches it
    saying(rf"^((?:the )?{WHAT}) (?:who )?(?:stand|standing) (?:in front of|before) (?:the |their )?({WHAT}) "
           rf"{_MAY}(?:stop|"
           r"block|save)s? (?:the |all )?(?:balls?|shots|throws)(?= with |$)", r"\1 block shots at the \2 of the"
                                                                               r"ir side",
           "play"),
    saying(rf"^((?:the )?{WHAT}) {_MAY}(?:stop|block|save)s? (?:the |all )?(?:balls?|shots|throws)(?: with (.+))?$",
           lambda m: f"{m[1]} block shots at the targets of their side" + (f" with {m[2]}" if m[2] else ""), "play"),
    saying(r"\bwith (?:any part of (?:the|their)|(?:the|their) whole) body$", "with the hands, feet and body", "play"),
    saying(rf"\bwith (?:either |both )?({_LIMBS}(?:(?:,| and| or|, or|, and) {_LIMBS})*)$", _with, "play"),
    saying(r"^(?:the nearest player|whoever (?:is|stands) nearest) (?:may |must )?fetch(?:es)?\b",
           "players fetch", "play"),
    # which side
    saying(r"\bthe side (?:that|which|who) (?:did not|has not|had not) (?:touch|touched|play|send|throw|have) it "
           r"(?:out )?last\b|"
           r"\b(?:the opponents of whoever touched it last|whoever touched it last's opponents)\b|"
           r"\bthe side (?:that|which|who) (?:let it in|conceded(?: it| the (?:goal|point))?|did not score)\b",
           "the other side", "play", "when"),
    saying(r"\bthe side (?:that|which|who) (?:touched it last|scored|threw it)\b", "the thrower's side", "play",
           "when"),
    # what is caught, dropped, or lies loose
    saying(rf"^(?:an?|every|each) intercepted (?:ball|pass) {_KEEPS}$", "a caught pass stays with the catcher", "play"),
    saying(r"^whoever intercepts (?:a|the) (?:ball|pass) (?:has|keeps) it$", "a caught pass stays with the catcher",
           "play"),
    saying(rf"^(?:if |when )?the other side catches (?P<the>an?|the) (?P<ball>{WHAT}),? it {_KEEPS}$",
           r"a caught \g<ball> stays with the catcher", "play"),
    saying(rf"^(?:an?|every|each) (?P<ball>{WHAT}) (?:that|which) is caught (?=stays|belongs|goes|is)",
           r"a caught \g<ball> ", "play"),
    saying(rf"^(?:an?|the) caught (?P<ball>{WHAT}) (?:stays with|belongs to|is for) {_CATCHER}$",
           r"a caught \g<ball> stays with the catcher", "play"),
    saying(rf"^(?:whoever|the side that) catches (?P<the>an?|the) (?P<ball>{WHAT}) (?:keeps|has) it$",
           r"whoever catches \g<the> \g<ball> has it", "play"),
    saying(rf"^the catcher keeps (?:an?|the) (?P<ball>{WHAT})$", r"a caught \g<ball> stays with the catcher", "play"),
    saying(r"^(?:an?|the) dropped (pass|ball)\b", r"a missed \1", "play"),
    saying(r"^(?:if |when )?(?:an?|the) (pass|ball) (?:is dropped|(?:falls|lands|drops|touches|hits|goes)(?: to| on)? "
           r"the (?:floor|ground))(?:,|:) (?=\w)(?!the thrower)",
           r"a \1 is missed: ", "when"),
    saying(rf"^whoever (?:gets|comes|runs) to (?:an?|the) loose (?P<ball>{WHAT}) first (?:has|keeps|gets|takes) it$",
           r"whoever is first at a loose \g<ball> has it", "play"),
    saying(r"^(?:an?|the) loose ball (?:belongs to|is for|goes to) whoever "
           r"(?:is first|gets (?:to )?it first|is there first|gets there first)$",
           "whoever is first at a loose ball has it", "play"),
    saying(rf"^(?:an?|the) (?P<ball>{WHAT}) goes to {_SIDE} after (?:a|each|every) miss$",
           r"a missed \g<ball> goes to \g<side>", "play"),
    saying(r"\b(?:goes back|is put back|is brought back|is laid back) (?:into|in|onto|on) (?=the |their |its )",
           "goes back to ", "play", "when"),
    saying(r"(?<=\bball )is (?:put|brought|carried|handed) back\b(?! up)", "goes back", "play", "when"),
    saying(rf": (?:the thrower|that player) (?:puts|brings|carries|takes) (?P<what>it|the {WHAT}) back "
           r"(?:into|in|to) (?=the |their )", lambda said: f": {_it(said)} goes back to ", "when"),
    # a ball out of the court, a point
    saying(rf"^(?:when |if )?(?:an?|the) (?P<ball>{WHAT}) {_OUT}(?:,|:)? (?=\w)",
           r"a \g<ball> leaves the court: ", "when"),
    saying(rf"^(?:an?|the) (?P<ball>{WHAT}) (?:that|which) {_OUT},? (?:belongs to|goes to|is for|is thrown in by) "
           rf"{_SIDE}$", r"a \g<ball> leaves the court: \g<side> has the \g<ball>", "when"),
    saying(rf": it is {_SIDE}'s ball$|: {_OTHER_SIDE} {_GETS} the ball$",
           lambda m: f": {m['side'] or m['other']} has the ball", "when"),
    saying(rf"(?P<event>{_OF_A_BALL}): (?:{_IT_GOES}|{_OTHER_SIDE} (?:has|gets|takes|keeps|throws) it(?: in)?)$",
           lambda m: f"{m['event']}: {m['side'] or m['other']} has the ball", "when"),
    saying(rf"(?P<event>{_OF_A_BALL}): it (?=(?:stays with|goes to|goes back) )", r"\g<event>: the ball ", "when"),
    saying(rf"{_OF_A_THING}: (?:{_IT_GOES}|{_OTHER_SIDE} (?:gets|takes|keeps) it)$",
           lambda m: f"{m['event']}: it joins {m['side'] or m['other']}", "when"),
    saying(rf"^(?:when |if )?(?:a|each|every) {_GOAL} is scored[:,] (?=the )", "after a goal, ", "play"),
    saying(rf"^after (?:a|each|every) {_GOAL},? (?:the ball goes to (?P<whom>.+))$",
           r"a scored ball goes to \g<whom>", "play"),
    saying(rf"^after (?:a|each|every) {_GOAL},? {_SIDE} {_GETS} the ball$", r"a scored ball goes to \g<side>",
           "play"),
    saying(rf"^after (?:a|each|every) {_GOAL},? (?P<whom>the {WHAT}(?: of the other side)?) "
           rf"(?:{_GETS} the ball|throws (?:it )?in)$",
           r"a scored ball goes to \g<whom>", "play"),
    saying(rf": (?P<whom>the {WHAT}(?: of (?:the other|that) side)?) throws (?:it )?in$",
           r": the ball goes to \g<whom>", "when"),
    saying(rf": (?P<whom>the [\w-]*keeper(?: of (?:the other|that) side)?) {_GETS} (?:the ball|it)$",
           r": the ball goes to \g<whom>", "when"),
    saying(r"^(?:whoever is hit|who is hit) (?:gets|keeps|has|takes) the ball$|"
           r"^a player is hit: (?:that player|the player) (?:gets|keeps|has|takes) (?:the ball|it)$",
           "a player is hit: that side has the ball", "when"),
    # whoever has the ball goes on with it
    saying(rf"\brun(?:s)? (?:on )?with {_BALL} (?=(?:to|over|past|across|behind|into) )", r"carry \g<the> \g<ball> ",
           "play"),
    saying(rf"\b(carry|carries) {_BALL} (?:over|past|across|behind|into) (?=the |their )",
           r"carry \g<the> \g<ball> to ", "play"),
    saying(rf"\b(carry {_BALL} to .+?),? or (?:else )?pass (?:it|the ball)(?: on)?(?: to (?:a|any|another) "
           r"(?:team-mate|player of their side))?$", r"\1, pass \g<the> \g<ball> to a team-mate", "play"),
    # whoever has the ball is touched
    saying(r"\b(touch|tag|chase|catch) (?:the |all |all the )?(?:opponents|others)(?= |$)",
           r"\1 players of the other side", "play"),
    saying(rf"\b((?:touch|tag|chase|catch) .+?) {_HAS} {_BALL}$", r"\1 who carry \g<the> \g<ball>", "play"),
    saying(rf"\b(touch|tag|chase|catch) (?:(?:whoever|anyone who|anybody who|everyone who|those who) (?:has|have|holds|"
           rf"hold|carries|carry|is carrying|runs with)|(?:anyone|anybody|everyone|players) carrying) {_BALL}$",
           r"\1 players of the other side who carry \g<the> \g<ball>", "play"),
    saying(rf"^(?:whoever|anyone who|a player who) (?:is|gets) (?:touched|tagged) (?:{_WHILE}|{_HAS}|with) {_BALL},? "
           rf"{_MUST}(?:loses|lose|gives|give) it (?:up )?(?:to (?P<side>the other side))?$",
           r"a player who carries \g<the> \g<ball> is touched: the \g<ball> goes to the other side", "when"),
    saying(rf"^(?:whoever|anyone who|a player who) (?:is|gets) (?:touched|tagged) (?:{_WHILE}|{_HAS}) {_BALL}[,:]? "
           r"(?=\w)", r"a player who carries \g<the> \g<ball> is touched: that player ", "when"),
    saying(rf"^(an? {WHAT}) (?:is|gets) (?:touched|tagged|caught) {_WHILE} {_BALL}(?=:)",
           r"\1 who carries \g<the> \g<ball> is touched", "when"),
    saying(rf"^(?:whoever|anyone|a player)(?: who)? (?:has|holds|carries|runs with|with) {_BALL} (?:and )?"
           r"(?:is|gets) (?:touched|tagged)(?=:)", r"a player who carries \g<the> \g<ball> is touched", "when"),
    # fouls
    saying(r"^(?:an?|every|each) foul (?:is|means|gives|counts as) (?:an? )?free (?:throw|ball|kick|pass)"
           r"(?: (?:for|to) the other side)?$", "a player fouls: the other side has the ball", "when"),
    saying(rf"^(?:whoever|anyone who|a player who) fouls[,:]? {_MUST}(?:gives|hands) {_BALL} (?:over )?to "
           r"the other side$", r"a player fouls: \g<the> \g<ball> goes to the other side", "when"),
    saying(rf"(?<=: )(?:(?:that|the) player |(?:their|that) side )?{_MUST}(?:gives?|hands?) {_BALL} (?:over )?to "
           r"(?P<side>the other side|\w+)$", r"\g<the> \g<ball> goes to \g<side>", "when"),
    saying(rf"\b(?:sits?|waits?|stands|goes|is sent) (?:on|onto) (?P<where>(?:the|their|that) {WHAT}) "
           r"for (?P<time>\d+ (?:s|min))(?=$| and )", r"waits on \g<where> for \g<time>", "when"),
    saying(rf"\b(?:sits?|waits?|stands|goes|is sent) (?:in|to) (?P<where>(?:the|their|that) {WHAT}) "
           r"for (?P<time>\d+ (?:s|min))(?=$| and )", r"waits in \g<where> for \g<time>", "when"),
)  # fmt: skip
