"""How teachers say what happens: a line that is stepped over, a count that begins again, prisoners who are free."""

from __future__ import annotations

from grammar.heard.saying import WHAT, Saying, saying

_AGAIN = r"(?:from (?:0|zero|the beginning)|anew|again|afresh|over)"
_COUNT = (
    rf"(?:the )?(?:count|counting|row) (?:starts|begins) {_AGAIN}|"
    rf"(?:they|it|that side) (?:starts?|begins?) (?:counting|the count) {_AGAIN}"
)
_SO_OFTEN = r"(minute|round|\d+ (?:min|s))"
_ENDS_A_ROW = r"(?:^an? [^:]* (?:is (?:missed|intercepted|blocked)|leaves the court)|^\d+ passes in a row)"
_A_LINE = r"(?:the|a|their) (?:(?:side|middle|centre|half-?way) ?)?line"
_NO_REWARD = r"(?! (?:the (?!other )[\w']+|that|their|its) side (?:scores|gets|wins))"

TOLD_HAPPENINGS: tuple[Saying, ...] = (
    saying(rf"(?P<then>{_ENDS_A_ROW}: .+?),? and (?:then )?(?:{_COUNT})$", r"\g<then>", "when"),  # as it is anyway
    saying(rf"^(an? (?!ball\b){WHAT}) steps (?:over|across|past) {_A_LINE}(?=:{_NO_REWARD})", r"\1 fouls", "when"),
    saying(r"\bafter 1 bounce\b|\b(?:after|if) (?:it )?(?:has )?bounc(?:ing|es|ed) once(?: first)?\b", "after a bounce",
           "when"),
    saying(r"\b(?:everyone|everybody|all players|all prisoners) (?:who (?:is|are|waits?|sits?) )?(in|on) "
           r"(?=the |each )", r"all \1 ", "when"),
    saying(r"\b(all (?:in|on) [^:]+?) (?:is|are) (?:set )?free$", r"\1 return", "when"),
    saying(r"(?<=: )(\d+) (?:more|new|further|extra|additional) (?=.* comes? in\b)", r"another \1 ", "when"),
    saying(r"\babove the (shoulder|hip|knee)s\b", r"above the \1", "play", "when"),
    saying(rf"^every {_SO_OFTEN}[:,]? (?:the )?({WHAT}) (?:change|swap|rotate|switch)(?: (?:places )?"
           r"with (?:\d+ |the )?others?)?$", r"\2 change every \1", "play"),
    saying(rf"\b(?:pulls?|pulls? out|pulls? off) (?:(?:an?|the) )?{WHAT} (?:out |off )?(?:of|from) (?:the )?"
           r"(?:others|other players)$", "touch other players", "play"),
    saying(rf"\b(?:pulls?|pulls? out|pulls? off) (?:(?:an?|the) )?{WHAT} (?:out |off )?(?:of|from) "
           r"(?:the )?players of the other side$", "touch players of the other side", "play"),
    saying(r"\b(?:collect|retrieve|get|pick up|gather)s? (?:the |loose )*balls (?:that lie |lying )?(?:in|on) "
           r"(?=the |their )", "fetch balls from ", "play"),
    saying(rf"^every {_SO_OFTEN}[:,]? (?:the )?({WHAT}) becomes? (?:the )?({WHAT}), (?:the )?\3 becomes? (?:the )?"
           rf"({WHAT}),? and (?:the |\d+ )?\4 becomes? (?:the )?\2$", r"\2, \3 and \4 move on every \1", "play"),
    saying(rf"^every {_SO_OFTEN}[:,]? (?:the )?({WHAT}) becomes? (?:the )?({WHAT}),? and (?:the |\d+ )?\3 becomes? "
           r"(?:the )?\2$", r"\2 and \3 move on every \1", "play"),
    saying(r"^(?:when |if |once )?(there are no [^:,]+)[:,] (?:then )?(?:only then )?([^:]+ take [^:]+)$",
           r"\2, only when \1", "play"),
)  # fmt: skip
