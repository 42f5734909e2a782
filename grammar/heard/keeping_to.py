"""How teachers say what all keep to: one's own half, how long a ball is held, which hits count, who may be touched."""

from __future__ import annotations

import re

from grammar.heard.saying import WHAT, Saying, saying
from grammar.words import capital

_MIDDLE = r"the (?:middle|centre|center|half-?way)(?: line)?"
_NOBODY = r"(?:(?:nobody|no one|no player)(?: (?:may|can|is allowed to))?|players (?:(?:may|can|must|do) not|never))"
_STAY = r"(?:stay|remain|keep)s?"
_TIME = r"(?P<time>\d+(?:\.\d+)? (?:s|min))"
_HOLD = rf"(?:hold|keep) (?:the|a) (?P<ball>{WHAT})"
_OTHER_HALF = r"(?:the other(?: side's)? half|the half of the other side)"
_BY_THEM = r"(?: by (?:any (?:opponent|player of the other side)|opponents|the other side|players of the other side))?"
_SKILL = r"((?:overarm |underarm )?throw|roll|kick|strike)"


def _held(match: re.Match[str]) -> str:
    return f"a {match['ball']} is held at most {match['time']}"


def _for_people(match: re.Match[str]) -> str:
    return f'"{capital(match[0])}."'


KEEPING_TO: tuple[Saying, ...] = (
    saying(rf"^{_NOBODY} (?:cross(?:es)?|(?:steps?|goe?s?) (?:over|across)) {_MIDDLE}$|^(?:players )?{_STAY} (?:on|to|"
           rf"in) (?:their|each) (?:side|part) of (?:{_MIDDLE}|the court)$|^(?:players )?{_STAY} (?:on|to) their side$|"
           rf"^{_NOBODY} (?:(?:goe?s?|runs?|come|comes) (?:into|to)|enters?) {_OTHER_HALF}$",
           "players stay in their half", "play"),
    saying(r"^(?:players |all players )?(?:go|run|move|play|walk)s? (?:anywhere|everywhere|freely|where they (?:like|"
           r"want)|in the whole (?:court|hall))(?: on the court| in the hall)?$", '"Players may go anywhere."', "play"),
    saying(r"^no running with (?:the|a) ball$|^nobody (?:may )?(?:walk|move)s? with (?:the|a) ball$",
           "nobody runs with the ball", "play"),
    saying(r"^nobody (?:may )?touch(?:es)? (?:an )?(?:opponents?|players? of the other side|anybody)$",
           '"No contact."', "play"),
    saying(rf" (?:over|across) (?:the line|{_MIDDLE})(?= at )", "", "play"),
    saying(rf"^(?:players )?(?:may |can |must )?(?:only )?{_HOLD} (?:for )?(?:(?:at most|up to|no more than|no longer "
           rf"than|not longer than) )?{_TIME}(?: at (?:the )?most| or less)?$", _held, "play"),
    saying(rf"^no (?:holding|keeping) (?:the|a) (?P<ball>{WHAT}) (?:for )?(?:longer than|more than|over) {_TIME}$",
           _held, "play"),
    saying(rf"^(?:the|a) (?P<ball>{WHAT}) (?:may |can |must )?(?:only )?be (?:held|kept) (?:for )?{_TIME} at (?:the )?"
           "most$", _held, "play"),
    saying(r"^(?:only )?(\d+) steps with (?:the|a) ball(?: are allowed| at (?:the )?most)?$",
           r"at most \1 steps with the ball", "play"),
    saying(r"^only (?:a hit|hits|balls|throws)(?: that (?:land|hit|are))? (?:below|under) the (shoulder|hip|knee)s? "
           r"counts?$", r"a hit above the \1 does not count", "play"),
    saying(r"^(?:a hit|hits|a ball|balls) (?:to|against|in) the (?:head|face) (?:do|does) not count$",
           "a hit above the shoulder does not count", "play"),
    saying(r"^(?:players )?(?:may |must )?(?:only )?(?:be hit|aim|are hit|hits?) (?:only )?(?:below|under) the "
           r"(shoulder|hip|knee)s?(?: only)?$", r"a hit above the \1 does not count", "play"),
    saying(rf"^(?:(?:the|a) ball (?:must )?(?:be |is )?passed(?: on)?|(?:players )?pass(?: the ball)?(?: on)?) (?:in|"
           rf"within|after) (?:at most )?{_TIME}$", r"a ball is held at most \g<time>", "play"),
    saying(r"^after (\d+) steps (?:the ball (?:must )?(?:be |is )?passed(?: on)?|(?:players )?pass(?: the ball)?)$",
           r"at most \1 steps with the ball", "play"),
    saying(r"^no (?:body |physical )?(?:contact|pushing|shoving|grabbing|tripping|tackling|blocking)$",
           _for_people, "play"),
    saying(r",? from (?:a distance of |at least )(\d+(?:\.\d+)? m)(?: away)?$", r", from \1 away", "play"),
    saying(r"^(?:the )?(caught|missed|scored|blocked) balls (stay|go|rest|belong)(?= )", r"a \1 ball \2s", "play"),
    saying(r"^(?:a )?loose balls? (?:are|is|be) (?:picked up|taken|fetched) by (?:anyone|anybody|everyone|whoever is "
           r"first)$|^(?:a )?loose balls? (?:belongs?|goe?s?|are|is) (?:to|for) whoever (?:gets|is|comes)(?: (?:to "
           r")?(?:it|them))?(?: at (?:it|them))? first$", "whoever is first at a loose ball has it", "play"),
    saying(rf"^balls? (?:from |which (?:are|lie) |that (?:are|lie) )?(?P<where>(?:in|on|behind|before) .+?) (?:are|is|"
           rf"be) fetched by (?:the )?(?P<who>{WHAT})$", r"\g<who> fetch balls from \g<where>", "play"),
    saying(r"^only direct hits count$", "a hit after a bounce or off the wall does not count", "play"),
    saying(rf"^players (?:are|be)? ?(?:only )?(?:touched|tagged)(?: only)? in {_OTHER_HALF}(?: only)?{_BY_THEM}$",
           "players touch players of the other side in their half", "play"),
    saying(rf"^(?:a player|players|whoever|anyone)(?: who)? (?:holds?|carry|carries|has|have|with) (an?|the) ({WHAT}) "
           rf"(?:is |are |be )?(?:touched|tagged){_BY_THEM}$",
           r"players touch players of the other side who carry \1 \2", "play"),
    saying(r"\b(?:an?|the) missed balls? (?:is for|belongs to|goes to) whoever (?:gets|is|comes)(?: to)? it first$|\ba "
           r"missed ball is for whoever (?:is|gets there) first$", "whoever is first at a loose ball has it",
           "play"),
    saying(r"^(?:a )?missed balls? (?:stay|lie|rest|remain|come to rest)s? in the half (?:where|in which) (?:they|it) "
           r"(?:land|fall|stop|end up|come to rest|lie)s?$", "a missed ball rests in the half it was sent to", "play"),
    saying(r"\b(?:cross|go|get|run|come)(?:es|s)? from (?:1 |the )?wall to (?:the other|the opposite|another)(?: wall)?"
           r"(?: without being (?:touched|caught|tagged|hit))?$", "run from wall to wall", "play"),
    saying(r"\b(?:cross|go|get|come)(?:es|s)? from wall to wall(?: without being (?:touched|caught|tagged|hit))?$",
           "run from wall to wall", "play"),
    saying(rf"^(?:after )?(?:every|each) (\d+ (?:min|s)|minute|round)[,:]? (?:(?:there (?:is|are) |we have )?(?:"
           rf"an? |\d+ )?"
           rf"(?:new|other)|another player becomes the(?: new)?) ({WHAT})(?: takes? over| comes? in| starts?)?$",
           r"\2 change every \1", "play"),
    saying(rf"^(?:an? |the )?({WHAT}) (?:protect|guard|defend)s? (?=(?:the|their|its) )",
           r"\1 block shots at ", "play"),
    saying(r"\bpass (the|a) ball (?:to each other|to 1 another|among themselves|around)$",
           r"pass \1 ball to a team-mate", "play"),
    saying(rf"\b{_SKILL}s? at (?=the |their |a )", r"\1 a ball at ", "play"),
    saying(rf"\b(at the {WHAT}) (?:on|in) the other side(?=$|,)", r"\1 of the other side", "play"),
)  # fmt: skip
