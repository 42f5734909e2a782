"""Other ways in which people write what the language says: each with the wording of the language.

Only lines that are no sentence are looked at, so a wording may be wide; a wording that does not lead to a
sentence is not spoken of.
"""

from __future__ import annotations

import re
from fractions import Fraction

from grammar.core.skills import Skill
from grammar.heard.saying import Saying
from grammar.heard.turns import IN_A_CIRCLE, IS_TAGGED, LIKE_A, OVERARM_THROWS
from grammar.mistakes.ball_wordings import BALL_WORDINGS
from grammar.mistakes.wording import Wording
from grammar.mistakes.wording import wording as _wording

_NUMBERS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_IN_QUOTES = "a text stands in quotes"
_OF_OTHER_SENTENCES = (Skill.TOUCH, Skill.TAKE)
_PLURAL_VERBS = "|".join(skill.value for skill in Skill if " " not in skill.value and skill not in _OF_OTHER_SENTENCES)


def _as_heard(known: Saying, *sections: str) -> Wording:
    """What is read as it stands, as advice for lines with other slips, in these sections."""
    return Wording(re.compile(known.old, re.IGNORECASE), known.new, sections)


def _in_metres(match: re.Match[str]) -> str:
    per_unit = 0.9144 if match.group(2).lower().startswith("y") else 0.3048
    return f"{float(match.group(1)) * per_unit:.1f}".removesuffix(".0") + " m"


def _as_chance(match: re.Match[str]) -> str:
    part = Fraction(int(match.group(1)), 100)
    return f"{part.numerator} in {part.denominator} {match.group(2)}"


def _number(match: re.Match[str]) -> str:
    return str(_NUMBERS.index(match.group().lower()) + 2)


def _hyphened(match: re.Match[str]) -> str:
    return "licence " + re.sub(r"[\s-]+", "-", match.group(1).strip().upper())


def _of_rounds(match: re.Match[str]) -> str:
    """Who is first to 3 rounds has won the best of 5, where none is drawn."""
    return f"best of {2 * int(match['needed']) - 1} rounds"


_TILL_FREED = (
    r"(?:freezes|is frozen|stands still),? (?:until|till) [^:]*"
    r"\b(?:frees|touches|tags|unfreezes|releases|rescues|saves) (?:him|her|them|it|that player)\b.*$"
)
_WHO_FREES = "who frees them is a line of play, such as `players free frozen players of their side`"


def _froze(match: re.Match[str]) -> str:
    return f"a player is {'hit' if match[1].lower() == 'hit' else 'touched'}: that player freezes"


_OF_A_ROUND = "how long a round lasts its own line says, such as `after 3 min: more points wins`"


WORDINGS = (
    *BALL_WORDINGS,
    # signs
    _wording(r"[“”„«»]", '"'),
    _wording(r"^[-*•·]\s+|^\d+[.)]\s+", ""),
    _wording(r"\s*[.;!]$", ""),
    _wording(r"(?<=\d)\s*(?:-|–|—|\.\.\.?|\bup to\b|\btill\b|\buntil\b)\s*(?=\d)", " to "),
    _wording(r"(?<=[\dm])\s*(?:x|×|\*|\bon\b)\s*(?=\d)", " by "),
    _wording(r"\s*&\s*", " and "),
    _wording(r"\s*[=]\s*", " "),
    _wording(r"\s*/\s*", " or ", "play", "when"),
    # numbers and units
    _wording(r"\b(?:" + "|".join(_NUMBERS) + r")\b", _number),
    _wording(r"(?<=\d)\s*(?:minutes|minute|mins|mn|')(?![\w])", " min"),
    _wording(r"(?<=\d)\s*(?:seconds|second|secs|sec|\"|'')(?!\w)", " s"),
    _wording(r"(?<=\d)\s*(?:metres|metre|meters|meter|mtrs?|mt)\b", " m"),
    _wording(r"(?<=\d)\s*(?:centimetres|centimetre|centimeters|centimeter|cms)\b", " cm"),
    _wording(r"(?<=\d)\s*(?:per cent|percent|pct)\b", " %"),
    _wording(r"(?<=\d),(?=\d)", "."),
    _wording(r"\b(\d+(?:\.\d+)?)\s*(ft|feet|foot|yards?|yd)\b", _in_metres),
    _wording(r"\b(\d\d?)\s*(?:%|per ?cent)(?: of)? (of the attempts|succeed|are caught)\b", _as_chance, "play"),
    _wording(r"^after (\d+)(?: m)?(?=:)", r"after \1 min", "finish"),
    _wording(r"\b(\d+(?:\.\d+)?) by (\d+(?:\.\d+)?)( m)?(?=,|$)", r"\1 m by \2 m", "space", "modifier"),
    # whose
    _wording(r"\b(?:per|a|for every|on each|to each) (?:side|team)\b(?=,|$)", "for each side", "kit", "modifier"),
    _wording(r"\b(?:each|per (?:side|team))(?=,|$)", "for each side", "kit"),
    _wording(r"\b(?:per|a|on each|in each) (?:side|team)\b", "each", "sides"),
    _wording(r"^(?:2|two) (?:teams|sides)\b", "north and south", "sides"),
    _wording(r"\bteams\b", "sides"),
    _wording(r"\bteam\b(?!-)", "side"),
    _wording(r"\bthe (?:opponents'?|opposing side'?s?|opponent's side)\s+(\w+)\b", r"the \1 of the other side"),
    _wording(r"\b(?:the )?(?:opposing|opposite) side\b", "the other side"),
    _wording(r"\b(?:the )?(?:opponents|enemy|enemies)\b", "the players of the other side"),
    _wording(r"\bteam ?mates?\b", "team-mate"),
    _wording(r"\b(?:in )?both halves\b", "in each half"),
    _wording(r"\b(catcher|thrower|roller|kicker|striker|passer|carrier|pusher|runner|keeper)s'? "
             r"(?=(?:\w+ )?(?:queue|half|side|bench|base|ring)\b)", r"\1's "),
    # verbs
    _wording(r"\b(?:throws?|throwing) (overarm|underarm)\b", r"\1 throw", "play", "head", "modifier"),
    _as_heard(OVERARM_THROWS, "play", "modifier"),
    _wording(r"\b(overarm|underarm)\b(?! throw)", r"\1 throw", "play", "modifier"),
    _wording(r"(?<!arm )\b(?:throws?|shoots?|lobs?|hurls?)\b", "overarm throw", "play", "modifier", cost=0.45),
    _wording(rf"\b({_PLURAL_VERBS})s\b", r"\1", "play"),
    _wording(r"\b(?:passes|carries)\b", lambda m: {"passes": "pass", "carries": "carry"}[m.group().lower()], "play"),
    _wording(r"\b(?:do|does|may|must|can) not (?:throw|shoot|play|take part)$", "do not act", "play"),
    _wording(r"\b(?:may|can) be held (?:for )?(?:at most )?(?=\d)", "is held at most ", "play"),
    _wording(r"\b(?:may|must|can|should|have to|has to|try to|will)\s+", "", "play", "when"),
    _wording(r"\b(?:remain|keep|stays|stand)\b", "stay", "play"),
    _wording(r"\bat (?=past|through|to)\b", ""),
    _wording(r"\bover the (back|side|middle) line", r"past the \1 line", "play"),
    _wording(r"\bheld (?:for )?(?:no longer than|not longer than|up to|a maximum of|max\.?|for at most)\b",
             "held at most"),
    _wording(r"\b(?:hold|holding) (a|the) (.*?) (?:for )?(?:at most|no longer than|up to)\b", r"\1 \2 is held at most",
             "play"),
    _wording(r"\bheld (?:for )?(?:more than|over|too long:?|for longer than)\b", "held longer than"),
    _wording(r"\b(?:collect|retrieve|get|bring back)s?\b(?=.* from\b)", "fetch", "play"),
    _wording(r"\bis (?:knocked (?:over|down)|overturned|toppled|tipped over|felled|hit over)\b", "is knocked", "when",
             "modifier"),
    _wording(r"\b(?:falls(?: over| down)?|topples)\b", "is knocked", "when", "modifier"),
    _wording(r"\bis struck\b", "is hit", "when", "modifier"),
    _as_heard(IS_TAGGED, "when", "modifier"),
    _wording(r"\b(?:tags?|chases?|catch|catches)\b(?= (?:the |all )?(?:players|other|\w+s\b))", "touch", "play"),
    _wording(r"\b(?:goes|is|rolls) (?:over|past|across)\b", "crosses", "when", "modifier"),
    _wording(r"\b(?:goes|rolls|is) (?:out of|outside|off)\b", "leaves", "when", "modifier"),
    _wording(r"\bflies through\b", "goes through", "when", "modifier"),
    _wording(r"\b(?:gets|earns|receives|gains|wins|is given|is awarded|has) (?=\w+ points?\b)", "scores ", "when"),
    _wording(r"\b(?:gets|earns|receives|gains|wins|scores?) (?:a|one) point\b", "scores 1 point", "when"),
    _wording(r"\bscore\b", "scores", "when"),
    _wording(r"\b(?:goes|drops|falls) out\b|\bis eliminated\b|\bsits out\b|\bsit out\b", "is out", "when", "modifier"),
    _wording(r"\b(?:comes? back(?: in| on)?|re-?enters?|rejoins?|is freed|are freed)$", "returns", "when", "modifier"),
    _wording(r"\b(?:queues(?: up)?|lines up|stands) in\b", "waits in", "when", "modifier"),
    _wording(r"\bremains down\b|\bstays? (?:lying|fallen|on the floor)\b", "stays down", "when", "modifier"),
    _wording(r"\bis (?:put|set|stood) up(?: again)?\b|\bgets up again\b", "stands up again", "when", "modifier"),
    _wording(r"\bthe game (?:starts again|restarts)\b|\beverything restarts\b", "everything starts again", "when"),
    _wording(r"\b(?:nothing happens|the game goes on|play continues)\b", "play goes on", "when", "modifier"),
    _wording(r"^(?:when|if|whenever)\s+", "", "when"),
    _wording(
        r"\b(?:everyone|everybody|all players|all those|those)(?: who (?:is|are|waits?))? (in|on) (?=\w)",
        r"all \1 ",
        "when",
        "play",
    ),
    _wording(r"^(?:everyone|everybody) is out\b", "a side has no players in", "when"),
    _wording(r"\s*(?:->|→|=>|,? then)\s*", ": ", "when"),
    _wording(r",\s*(?=it |that |the )", ": ", "when"),
    _wording(r"\bif\b|\bas soon as\b|\bonce\b|\bas long as\b", "while", "when"),
    # who wins
    _wording(r"\b(?:wins?|won)(?: the (?:game|round))? (?:if|once|as soon as|by having)\b", "wins when", "finish"),
    _wording(r"\b(?:loses?|lost)(?: the (?:game|round))? (?:if|once|as soon as)\b", "loses when", "finish"),
    _wording(r"\b(?:game|round|match) (?:ends|finishes|is over) (?:if|once|as soon as)\b", "round ends when", "finish"),
    _wording(r"^(?:the )?first (?:side )?(?:to (?:win |reach |get )?|that wins |who wins |with )(?P<needed>\d+) "
             r"(?:rounds?|games?|sets?|wins)(?: wins?)?$", _of_rounds, "finish",
             said="rounds are played best of so many (the same, unless one has no winner)"),
    _wording(r"^(?:one side rests, )?(?:the )?winners? stays? on,? (?:for |and plays? )?\d+ min(?: each| a round)?$",
             "one side rests, the winner stays on, 6 rounds", "finish", said=_OF_A_ROUND),
    _wording(r"^(?:each|every) side has (\d+) lives$", r"each player has \1 lives", "sides",
             said="lives are each player's own; what a side loses the other side gets as points"),
    _wording(rf"^(?:whoever|anyone who|a player who) (?:is|gets) (hit|touched|tagged) {_TILL_FREED}", _froze, "when",
             said=_WHO_FREES),
    _wording(rf"\bthat player {_TILL_FREED}", "that player freezes", "when", said=_WHO_FREES),
    _wording(r"\b(?:more|most) lives(?: left)? wins?\b", "more players in wins", "finish",
             said="lives are not compared at the end, but who is in"),
    _wording(r"\bwin\b", "wins", "finish"),
    _wording(r"\blose\b", "loses", "finish"),
    _wording(r"\bif\b|\bas soon as\b|\bonce\b", "when"),
    _wording(r"\b(?:everyone|everybody|all) (?:else )?(?:on the other side )?is out\b",
             "the other side has no players in", "finish"),
    _wording(r"\ball (\w+) of the other side are (down|waiting|out)\b",
             lambda m: f"the other side has all {m[1]} down" if m[2] == "down" else "the other side has no players in",
             "finish"),
    _wording(r"\bhas (?:none of its|no more|zero|0) (\w+)\b", r"has no \1"),
    _wording(r"\b(has \w+ \w+) left\b", r"\1 in", "finish"),
    _wording(r"\b(?:up|upright|left standing|still standing|remaining)\b", "standing", "finish"),
    _wording(r"\b(?:knocked|fallen|knocked down|knocked over)\b", "down", "finish"),
    _wording(r"\b(?:more than|over) (\d+)\b", lambda m: f"at least {int(m[1]) + 1}", "finish"),
    _wording(r"\b(?:fewer|less) than (\d+)\b", lambda m: f"at most {int(m[1]) - 1}" if int(m[1]) else m[0], "finish"),
    _wording(r"^(?:the )?(?:first|first team|first one|first side) to (?:reach |get |score )?(\d+)(?: points?)?"
             r"(?: wins?)?$", r"the first side to \1 points wins", "finish"),
    _wording(r"\b(?:most|the most|whoever has (?:the )?(?:most|more)|the side with (?:the )?(?:most|more))\b", "more",
             "finish"),
    _wording(r"\b(?:otherwise|or else|and if equal)\b:?", "else", "finish"),
    _wording(r"\b(?:a tie|it is a draw|tie|it's a draw)$", "a draw", "finish"),
    _wording(r"(?<!a )\bdraw$", "a draw", "finish"),
    _wording(r"\belse (?:the )?next (?:goal|basket|score|hit) wins$", "else the next point wins", "finish"),
    _wording(r"^(?:at the end of|when|once)\s+(?=\d+ m?s?)", "after ", "finish"),
    _wording(r"^time(?: limit)?:?\s+(\d+ (?:min|s))\b(?!:)", r"after \1: a draw", "finish"),
    # the rest of the sheet
    _wording(r"\b(?:age|aged|ages)\b:?(?: from)?", "ages", "head"),
    _wording(r"\s*years?(?: olds?| of age)?$", "", "head"),
    _wording(r"^ages? (\d+)$", r"ages \1 to \1", "head"),
    _wording(r"^(?:author|by|source|from|written by)\b:?", "credit", "head", "modifier"),
    _wording(r"^(?:skill|practises|practice)\b:?", "skills", "head"),
    _wording(r"^license\b", "licence", "head", "modifier"),
    _wording(r"^licen[cs]e:?\s+(CC[ -]?BY[A-Z -]*?[ -]?\d\.\d)$", _hyphened, "head", "modifier"),
    _wording(r"^(about|cue|credit|caution|outcomes):?\s+([^\"“].*?)\"?$", r'\1 "\2"', "head", "modifier",
             said=_IN_QUOTES),
    _wording(r"^(about|cue|credit|caution|outcomes):\s*", r"\1 ", "head", "modifier"),
    _wording(r"^(about|cue|credit|caution|outcomes)? ?\"([^\"]+)$",
             lambda m: (m[1] + " " if m[1] else "") + f'"{m[2]}"', "head", "care", "modifier",
             said="a quote is not closed"),
    _wording(r"^([^\"“”]+)$", r'"\1"', "care", said=_IN_QUOTES),
    _wording(r"\b(?:halved|cut in halves|in two halves|with a middle line|split across)$", "halved across", "space"),
    _wording(r"\b(?:in front of)\b", "before", "space", "set-up", "play"),
    _wording(r"\b(?:next to|alongside)\b", "beside", "space", "set-up", "play", "when"),
    _wording(r"\b(?:within|inside)\b", "in", "set-up", "play", "when"),
    _wording(r"\b(?:at|along) (?=the back line)", "on ", "set-up"),
    _wording(r"\bno[- ]one\b|\bno players?\b", "nobody", "space", "play"),
    _wording(r"\bonly guards(?: may be)? there\b", "only guards enter there", "space"),
    _wording(r"\bno guard(?:ing|s)?(?: there)?\b", "nobody guards there", "space"),
    _wording(r"\bnobody (?:may |can |is allowed to )?(guard|enter|act)s?\b(?: there)?", r"nobody \1s there", "space"),
    _wording(r"\b(?:max\.?|maximum|no more than|up to)\b", "at most", "space"),
    _wording(r"\b(deep|long|wide) strip\b", "deep", "space"),
    _wording(r"\b(?:evenly|equally spaced|spread (?:out )?evenly|spaced evenly)$", "evenly spaced", "set-up"),
    _as_heard(IN_A_CIRCLE, "set-up"),
    _wording(r"\b(?:in the (?:centre|center))\b", "in the middle", "set-up"),
    _wording(r"\b(?:on|at) the (?:centre|half-?way|center) line\b", "on the middle line", "set-up"),
    _as_heard(LIKE_A, "kit", "modifier"),
    _wording(r"^(?:space|task|equipment|people)$", lambda m: f"heading {m[0].lower()}", "modifier"),
    _wording(r"^(?:adds?|more) (?=\w+ \w+)", "add ", "modifier"),
    _wording(r"^(?:remove|take out|take off|drop) (?=\w+ \w+)", "take away ", "modifier"),
    _wording(r"^clashes with ([^\"]+)$", r'clashes with "\1"', "modifier", said=_IN_QUOTES),
    _wording(r"^(?:swap|replace|turn) (.+?) (?:with|by|into|for) ", r"change \1 to ", "modifier"),
    _wording(r"^takes (\w+) (?:from|is|=)\s*(?=\d)", r"takes \1: ", "modifier"),
    _wording(r"\b(?:default|normally|by default)\b", "usually", "modifier"),
    _wording(r"\b(put|replace|take) (in|from) (?:setup|set up)\b", r"\1 \2 set-up", "modifier"),
    _wording(r"\b(?:put into|add to|insert in)\b", "put in", "modifier"),
)  # fmt: skip
