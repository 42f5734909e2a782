"""How teachers say who has a ball, who goes on with it, and who gets it; these come before others."""

from __future__ import annotations

from grammar.heard.saying import WHAT, Saying, saying

_BALL = rf"(?P<the>an?|the) (?P<ball>{WHAT})"
_HAS = r"(?:who (?:have|has|holds?|runs? with|is running with|are running with)|holding|in possession of)"
_WHILE = r"(?:while|when|as)(?: (?:they|he|she) (?:are|is))? (?:carrying|holding|running with|in possession of)"
_MUST = r"(?:must |has to )?"

BALL_TURNS: tuple[Saying, ...] = (
    # whoever has the ball goes on with it
    saying(rf"\brun(?:s)? (?:on )?with {_BALL} (?=(?:to|over|past|across|behind|into) )", r"carry \g<the> \g<ball> ",
           "play"),
    saying(rf"\b(carry|carries) {_BALL} (?:over|past|across|behind|into) (?=the |their )",
           r"carry \g<the> \g<ball> to ", "play"),
    saying(rf"\b(carry {_BALL} to .+?),? or (?:else )?pass (?:it|the ball)(?: on)?(?: to (?:a|any|another) "
           r"(?:team-mate|player of their side))?$", r"\1, pass \g<the> \g<ball> to a team-mate", "play"),
    # whoever has the ball is touched
    saying(rf"\b((?:touch|tag|chase|catch) .+?) {_HAS} {_BALL}$", r"\1 who carry \g<the> \g<ball>", "play"),
    saying(rf"\b(touch|tag|chase|catch) whoever (?:has|holds|carries|is carrying|runs with) {_BALL}$",
           r"\1 players of the other side who carry \g<the> \g<ball>", "play"),
    saying(rf"^(?:whoever|anyone who|a player who) (?:is|gets) (?:touched|tagged) (?:{_WHILE}|{_HAS}|with) {_BALL},? "
           rf"{_MUST}(?:loses|lose|gives|give) it (?:up )?(?:to (?P<side>the other side))?$",
           r"a player who carries \g<the> \g<ball> is touched: the \g<ball> goes to the other side", "when"),
    saying(rf"^(?:whoever|anyone who|a player who) (?:is|gets) (?:touched|tagged) (?:{_WHILE}|{_HAS}) {_BALL}[,:]? "
           r"(?=\w)", r"a player who carries \g<the> \g<ball> is touched: that player ", "when"),
    saying(rf"^(?:whoever|anyone|a player)(?: who)? (?:has|holds|carries|runs with|with) {_BALL} (?:and )?"
           r"(?:is|gets) (?:touched|tagged)(?=:)", r"a player who carries \g<the> \g<ball> is touched", "when"),
)  # fmt: skip
