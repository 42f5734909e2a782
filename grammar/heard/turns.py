"""Turns of phrase that mean what a sentence of the language means; they come after the words of words.py.

Names of the sheet are single letters with a number here (heard.py), so that `WHAT` holds a name of many words.
"""

from __future__ import annotations

import re

from grammar.class_turns import CLASS_TURNS
from grammar.heard.ball_turns import BALL_TURNS
from grammar.heard.bringing import BRINGING
from grammar.heard.counted import COUNTED, TO_WHOM
from grammar.heard.forbidden import FORBIDDEN
from grammar.heard.happening_turns import HAPPENING_TURNS
from grammar.heard.hit_turns import HIT_TURNS
from grammar.heard.how_many_turns import HOW_MANY_TURNS
from grammar.heard.in_turn import IN_TURN
from grammar.heard.keeping_to import KEEPING_TO
from grammar.heard.laid_out import LAID_OUT
from grammar.heard.moving_on import MOVING_ON
from grammar.heard.relays import RELAYS
from grammar.heard.round_over import ROUND_OVER
from grammar.heard.saying import WHAT, Saying, saying
from grammar.heard.stores import STORES
from grammar.heard.told_happenings import TOLD_HAPPENINGS
from grammar.heard.waiting_place import WAITING_PLACE
from grammar.heard.what_there_is import WHAT_THERE_IS
from grammar.heard.who_has_won import WHO_HAS_WON
from grammar.heard.who_there_is import WHO_THERE_IS

_ONE = rf"(?:an? |the |any |each |every )?{WHAT}"
_FALLS = r"(?:falls|falls over|falls down|is knocked over|is knocked down|is hit over|is overturned|goes down|topples)"
_ACTOR = r"(?:thrower|roller|kicker|striker|passer|carrier|pusher|runner|tagger|shooter|hitter)"
_SIDE_OF_ACTOR = rf"(?:the )?(?P<actor>{_ACTOR})"


def _worth(match: re.Match[str]) -> str:
    points = int(match["points"] if match["points"].isdigit() else 1)
    noun = "point" if points == 1 else "points"
    return f"{match['event']}: {match['side'] or 'the thrower'}'s side scores {points} {noun}"


def _commas_to_and(match: re.Match[str]) -> str:
    return ": " + re.sub(r",\s*(?:and )?", " and ", match.group(1))


def _subject_again(match: re.Match[str]) -> str:
    parts = re.split(r",? and |, ", match["what"])
    return " and ".join(f"{match['who']} has {part}" for part in parts)


_THEY_DO = {
    "go": "goes", "wait": "waits", "return": "returns", "join": "joins", "become": "becomes", "change": "changes",
    "are": "is", "sit": "sits",
}  # fmt: skip


def _that_player(match: re.Match[str]) -> str:
    verb = match["verb"].lower()
    return f": that player {_THEY_DO.get(verb, verb)} "


# Those that are advice, too, where a line has other slips (wordings.py).
OVERARM_THROWS = saying(r"\b(overarm|underarm) throws\b", r"\1 throw", "play")
IS_TAGGED = saying(r"\bis tagged\b", "is touched", "when")
IN_A_CIRCLE = saying(r"\b(?:in a circle)$", "in a ring", "set-up")
LIKE_A = saying(r"\blike (?!an? |the )(?=\w)", "like a ", "kit", "class")

TURNS: tuple[Saying, ...] = (*TO_WHOM, *BALL_TURNS, *HAPPENING_TURNS, *MOVING_ON, *IN_TURN, *RELAYS, *FORBIDDEN,
    # sides called by their players: "foxes win when they have", "the foxes score"
    saying(rf"^(the )?({WHAT}) (win|lose)(?= when\b)", r"\1\2 \3s", "finish"),
    saying(rf"(?<=[:d] )(the )?({WHAT}) (score|lose)(?= \d)", r"\1\2 \3s", "when"),
    # one after the other of the same player: "that player drops the log and waits in the queue"
    saying(rf"(: that {WHAT} [^:]*?) and (?=(?:waits|freezes|goes|joins|becomes|changes|loses|drops)\b)",
           r"\1 and that player ", "when"),
    # whose: "the other side's lanterns"
    saying(rf"\b(the other|that|each|every|a|any|the) side's ({WHAT})", r"the \2 of \1 side"),
    saying(rf"\b(?:the )?(?:opponents'|opposing|opposite) ({WHAT})", r"the \1 of the other side"),
    saying(r"\b(?:at |on )?(?:the )?(?:opponents|opposition|others)\b(?= (?:scores?|wins|loses?|gets?)\b)",
           "the other side", "when", "finish"),
    saying(r"\b(at )(?:the )?(?:opponents|opposition)\b", r"\1the players of the other side", "play"),
    # who may, who must
    saying(r"^(?:everyone|everybody|all players|all the players|the players) (?=\w)", "players ", "play"),
    saying(r"^you (?=\w)", "players ", "play"),
    saying(r"(?<!\bnobody )(?<!\bno one )\b(?:must|have to|has to) (?!not\b|only\b|guard\b)", "", "play", "when"),
    saying(r"\b(?:may|can|should|try to|tries to|are allowed to|is allowed to) (?!not\b|only\b|guard\b)", "", "play",
           "when"),
    saying(r"\b(?:inside|within)\b", "in", "set-up", "play", "when"),
    saying(r"\b(?:stays|remain|remains|keep|keeps|are|stand) (in|on|behind|before|beside)\b", r"stay \1", "play"),
    saying(r"\bin front of\b", "before", "space", "set-up", "play"),
    saying(r"\bnext to\b", "beside", "space", "set-up", "play"),
    # what may be somewhere
    saying(r"(?<=, )for (at most \d+ (?:s|min))(?: there)?(?=,|$)", r"\1 there", "space"),
    saying(rf"^({WHAT}) (?:are seated|are sitting|sits?|sits? down|play sitting)(?: on the floor| on chairs)?$",
           r"\1 play seated", "play"),
    saying(rf"^({WHAT}) (?:kneels?|kneels? down|are kneeling)(?: on the floor)?$", r"\1 play kneeling", "play"),
    # what they do
    saying(r"\bonce (?:a|every|per) minute\b", "1 times a minute", "play"),
    saying(r"\btwice (?:a|every|per) minute\b", "2 times a minute", "play"),
    saying(r"\b(\d+) (?:\w+ )?(?:in|out of) (\d+) (?:hits?|succeeds?|goes in|go in)\b", r"\1 in \2 succeed", "play"),
    saying(r"\b(\d+) (?:\w+ )?(?:in|out of) (\d+) (?:is|gets) caught\b", r"\1 in \2 are caught", "play"),
    saying(r"\bthrows? (overarm|underarm)\b", r"\1 throw", "play"),
    saying(rf"\bthrows? ({_ONE}) (overarm|underarm)(?= (?:at|to|through|into) )", r"\2 throw \1", "play"),
    saying(r"(?<!arm )\bthrows? or (roll|kick|strike)s?\b", r"overarm throw, underarm throw or \1", "play"),
    saying(r"\b(rolls?|kicks?|strikes?) or throws?\b", r"\1, overarm throw or underarm throw", "play"),
    saying(r"(?<!arm )\bthrows?\b(?= )", "overarm throw or underarm throw", "play"),
    saying(r"\b(roll|kick|strike|push|tow|run)s\b", r"\1", "play"),
    OVERARM_THROWS,
    saying(r"(?<!\b\d )(?<!\b\d\d )\bpasses\b", "pass", "play"),
    saying(r"\bcarries\b", "carry", "play"),
    saying(rf"( (?:at|into|through|past) )({_ONE}), ({_ONE})(?:, ({_ONE}))?,? (?:or|and) ",
           lambda m: m[1] + " or ".join(each for each in m.groups()[1:] if each) + " or ", "play"),
    saying(r"\b(?:changes?|swaps?|rotates?)(?: over)? (?:after )?(?:each|every) (?:goal|point)$", "change every point",
           "play"),
    saying(rf"^(?:after (?:each|every|a) (?:goal|point),? )?the ({WHAT}) (?:who|that) lets? (?:it|one|(?:the|a) "
           r"(?:ball|goal|point)) in (?:changes?|swaps?)(?: (?:after )?(?:each|every) (?:goal|point))?$",
           r"each \1 changes every point of the other side", "play"),
    saying(r"\b(?:changes?|swaps?|rotates?)(?: over)? (?:after )?(?:each|every) (?=round$|minute$|\d)", "change every ",
           "play"),
    saying(r"^(.+) only guards?$", r"\1 do not act", "play"),
    saying(r"\b(in (?:their|each)) part\b", r"\1 half", "set-up", "play"),
    saying(rf"\b(blocks? shots at|stands? before) ({_ONE}(?: of \w+ side)?) and (?=the |an? |each )", r"\1 \2 or ",
           "play"),
    saying(r"^(?:players |you )?(?:may |can )?(?:take |run )?(?:no more than|at most|only|up to) (\d+) steps with "
           r"(?:the|a) ball$", r"at most \1 steps with the ball", "play"),
    saying(r"^(?:whoever|who|anyone who) (?:waits|sits|is|stands) (in|on) (.+?) (?:comes? back|returns?|comes? in) "
           r"after ", r"whoever waits \1 \2 comes back after ", "play"),
    saying(r"^(?:players|you) (?:may |can )?(?:only )?(?:hold|keep) (?:a|the) ball (?:for )?(?:at most|up to) ",
           "a ball is held at most ", "play"),
    saying(r"\b(?:collect|retrieve|get|pick up)s? (?=.* from\b)", "fetch ", "play"),
    saying(r"\b(set)(s?) free (?=an?\b)", r"free\2 ", "play"),
    saying(r"\b(?:release|rescue|unfreeze)(s?) (?=(?:an?|1|the|all)\b)", r"free\1 ", "play"),
    saying(r"\b(frees?) (?:an?|1) (?:team-mate|teammate|mate|player|prisoner)(?: (?:who is|who waits))? (?=(?:in|on) )",
           r"\1 the first ", "play"),
    saying(rf"^(\d+ {WHAT}),? together,? (?=frees? )", r"\1 ", "play"),
    saying(r"\b(?:chases?|tags?|catch(?:es)?|touches) (?=(?:the |all |other )*(?:players|ǁ\d+|opponents)\b)", "touch ",
           "play"),
    *HIT_TURNS,
    # when something happens
    saying(r"\bis hit (?:in the face|(?:on|at|in) the head)(?=[:,])", "is hit above the shoulder", "when"),
    saying(r"^(?:after )?(?:every|each) (?:whole )?minute[:,] ", "every 60 s: ", "when"),
    saying(rf"^(an?|the|any|each|every) ({WHAT}) (?:that|which|who) (?:is|gets) (hit|knocked|touched|caught)"
           r"(?: over| down)?,? (?=\w)", r"a \2 is \3: it ", "when"),
    saying(r"^a (?:foul|player fouls): a free (?:pass|throw|ball|kick)(?: for the other side)?$",
           "a player fouls: the other side has the ball", "when"),
    saying(r"^a foul: ", "a player fouls: ", "when"),
    saying(r"^only the first time,? ", "the first time, ", "when"),
    saying(r"^([^:]+): (?:but )?only the first time,? ", r"the first time, \1: ", "when"),
    saying(r"^(?:whoever|anyone who|anybody who|a player who|who) fouls(?: somebody| anybody| another player)?[,:]? "
           r"(?=\w)", "a player fouls: that player ", "when"),
    saying(r"^(\d+) passes(?: in a row)?(?: without (?:a drop|dropping it|the ball touching the floor))?: ",
           r"\1 passes in a row: ", "when"),
    IS_TAGGED,
    saying(r"\bgets (hit|touched|knocked|caught)\b", r"is \1", "when"),
    saying(rf"\b{_FALLS}(?=:|,| while| and| is | counts |$)", "is knocked", "when"),
    saying(r"^(?P<event>an? [^:]+? (?:is knocked|goes through [^:]+|crosses [^:]+)) (?:is|counts|is worth|counts as) "
           r"(?P<points>\d+|a) points?(?: for (?P<side>the \w+))?$", _worth, "when"),
    saying(r"^(?P<event>[^:]+): (?:it|that) (?:is|counts|is worth|counts as|gives) (?P<points>\d+|a) points?"
           r"(?: for (?P<side>the \w+))?$", _worth, "when"),
    saying(r": (?:he or she|he/she|she|he|they|this player|the player) (?P<verb>go|goes|wait|waits|sit|sits|"
           r"return|returns|join|joins|become|becomes|change|changes|is|are) ", _that_player, "when"),
    saying(r":\s*(.+)$", _commas_to_and, "when"),
    saying(r"\b(?:gets|earns|receives|gains|wins|scores?|is given) (?:a|1) point\b", "scores 1 point", "when"),
    saying(r"\b(?:gets|earns|receives|gains|wins|score|is given) (?=\d+ points?\b)", "scores ", "when"),
    saying(r"\bloses (?:a|1) point\b", "loses 1 point", "when"),
    saying(r"\b(loses \d+ points?)(?:,| and)? (?:but )?(?:never|not) (?:below|under) (?:0|zero)$", r"\1", "when"),
    saying(rf"{_SIDE_OF_ACTOR} (?=scores \d)", r"the \g<actor>'s side ", "when"),
    saying(rf"^(an? (?!ball|pass|shot|throw){WHAT}) (?:reaches|gets to|makes it to|comes to|arrives (?:in|on|by)) "
           r"(?=(?:the|their|its) )", r"\1 arrives at ", "when"),
    saying(r"\b(?:(?:sits|stands|queues)(?: down| up| out)?|takes? a seat) (?=(?:in|on) )", "waits ", "when"),
    saying(r"\bwaits on\b(?! .*\b(?:for \d|until the next ))", "goes to", "when"),
    saying(r"\b(?:is put up|is set up|is stood up|gets up|is put up|stands up)(?: again)?$", "stands up again", "when"),
    saying(r"\b(?:remains|stays) (?:down|lying|on the floor)$", "stays down", "when"),
    saying(r"\bit (?:(?:remains|stays) (?:where it is|standing|up|there)|does not fall(?: over| down)?|cannot fall)"
           r"(?=$| and )", "it stays as it is", "when"),
    saying(r"\b(?:comes back(?: in| on)?|comes in again)$", "returns", "when"),
    saying(r"\b(?:nothing happens|the game goes on|play continues)$", "play goes on", "when"),
    saying(r"\b(?:swaps|changes) (?:places )?with\b", "changes places with", "when"),
    saying(rf"^(an? |the )({WHAT})( is knocked[^:]*: (?:.* and )?)the \2 (?=stays|stands)", r"\1\2\3it ", "when"),
    saying(r"\b(?:a|1) (?:second|2nd|third|3rd|fourth|new|further|extra) (?=.* comes? in\b)", "another ", "when"),
    # who wins
    saying(rf"\b(?:the (?!side\b){WHAT} with|whoever has) (?:the )?most points (?:wins|is (?:the )?winner)\b"
           r"(?:, else a draw$)?(?! )",
           "the player with the most points wins", "finish"),
    *ROUND_OVER,
    saying(r"\bthey have\b", "it has", "finish"),
    saying(r"^the side (?:that|which|who) (?P<what>has .+?|.+? )(?: first)? (?P<end>wins|loses)$",
           r"a side \g<end> when it \g<what>", "finish"),
    saying(r"^the side whose ([^,]+?) (?:are|is) all (down|standing) (?:first )?loses$",
           r"a side loses when it has all \1 \2", "finish"),
    saying(r"\b(wins?|loses?) the (?:game|round|match)(?=$|,| (?:if|once|when)\b)", r"\1", "finish"),
    saying(r"^(?:a|the) side ((?:wins|loses)) (?:if|once|when) ", r"a side \1 when ", "finish"),
    saying(r"^(\w+|ǁ\d+) ((?:win|lose)) (?:if|once|when) ", lambda m: f"{m[1]} {m[2]}s when ", "finish"),
    saying(r"\b(win|lose)(?=,|$)", r"\1s", "finish"),
    saying(r"\bif\b|\bonce\b", "when", "finish"),
    saying(r",? or (?:when|if) ", " or ", "finish"),
    saying(r"\ball (?:of )?(?:the )?(\w+|ǁ\d+) of the other side are (down|standing)\b",
           r"the other side has all \1 \2", "finish"),
    saying(r"\ball (?:of )?(?:its|their) (\w+|ǁ\d+) are (down|standing)\b", r"it has all \1 \2", "finish"),
    saying(r"\b(?:everyone|everybody|all players)(?: else)? (?:on|of|in) (the other side|ǁ\d+) is out\b",
           r"\1 has no players in", "finish"),
    saying(r"\bhas (?:nobody|no players|no one) (?:left in|left inside|left|in)\b(?: on the (?:floor|court|field))?",
           "has no players in", "finish"),
    saying(r"\b(has|have) (?:only )?(\d+) players? left\b", r"\1 \2 players in", "finish"),
    saying(r"\bhas (no|\d+|at least \d+|at most \d+) (\w+|ǁ\d+) left\b", r"has \1 \2", "finish"),
    saying(r"(?P<who>\b(?:it|a side|the other side|ǁ\d+)) has (?P<what>(?:no|all|at least|at most|\d+) [^,]+?"
           r"(?:, (?:no|all|at least|at most|\d+) [^,]+?)*,? and (?:no|all|at least|at most|\d+) [\w ǁ]+)$",
           _subject_again, "finish"),
    # parts of all, and leads
    *HOW_MANY_TURNS,
    saying(r"^(?:the )?first(?: side| one)? to (?:reach |get |score |make )?(\d+)(?: (points?))?(?: wins)?$",
           r"the first side to \1 points wins", "finish"),
    saying(r"^(?:we play )?(?:in )?2 halves(?: of| with) (\d+ (?:min|s))(?: each)?", r"two halves of \1", "finish"),
    saying(r"^(?:we play )?(?:in )?2 halves$", "two halves", "finish"),
    saying(r"^(?:we play )?best of (\d+)$", r"best of \1 rounds", "finish"),
    saying(r"^(?:we play |the game lasts |the round lasts |it lasts |play )?(?:after )?(\d+ (?:min|s))"
           r"(?:,|:| and| then)* ", r"after \1: ", "finish"),
    *STORES,
    saying(r"(?<!player with )(?<!with the )\b(?:the side with )?(?:the )?(?:most|more) (\w+|ǁ\d+)( standing| in"
           r"| down| [^,]*?)?"
           r"(?: wins?| is the winner)\b",
           lambda m: f"more {m[1]}{m[2] or ''} wins", "finish"),
    saying(r"\b(?:the side with )?(?:the )?(?:fewest|fewer|least) (\w+|ǁ\d+)( standing| in| down| [^,]*?)? wins?\b",
           lambda m: f"fewer {m[1]}{m[2] or ''} wins", "finish"),
    saying(r",? ?\b(?:otherwise|or else)\b:? ", ", else ", "finish"),
    saying(r"\belse (?:it is )?(?:a )?(?:draw|tie)$", "else a draw", "finish"),
    saying(r"^(?:the |a )?(?:game|round|it) (?:is over|ends|stops) after (\d+ (?:min|s))(?:,| and|:)+ ", r"after \1: ",
           "finish"),
    saying(r"\bthere is no winner\b|\bthere are no winners\b|\bno one wins\b", "nobody wins", "finish"),
    saying(r"(?<=loses when )(?:nobody|no player|no one) is left(?: in| inside)?$", "it has no players in", "finish"),
    saying(rf"^({WHAT}) (\d+)((?:, {WHAT} \d+)*) and ({WHAT}) (\d+) points$",
           r"\1 score \2\3 and \4 \5 points", "when"),
    # what there is
    saying(r"^(about|cue|credit|caution|outcomes):? ([^\"]+)$", r'\1 "\2"', "head"),
    saying(r"^([^\"]+)$", r'"\1"', "care"),
    LIKE_A,
    saying(r"\bin the (?:centre|center)\b", "in the middle", "set-up"),
    saying(r"\b(?:in both|on both) (\w+)s\b", r"in each \1", "set-up"),
    saying(r"\bon the (?:centre|center|half-?way) line\b", "on the middle line", "set-up"),
    IN_A_CIRCLE,
    *LAID_OUT,
    *BRINGING, *KEEPING_TO, *COUNTED, *WHO_HAS_WON, *WHAT_THERE_IS, *WHO_THERE_IS, *TOLD_HAPPENINGS,
    *WAITING_PLACE,
    *CLASS_TURNS,
)  # fmt: skip
