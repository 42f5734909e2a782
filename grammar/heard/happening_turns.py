"""How teachers say what becomes of players: who freezes and is freed, what counts in a row; they come before others."""

from __future__ import annotations

import re

from grammar.heard.by_whom import BY_WHOM
from grammar.heard.saying import Saying, saying
from grammar.heard.substitutes import SUBSTITUTES
from grammar.heard.tries import TRIES

_WHAT = r"(?:ǁ\d+|[\w-]+)"
_SPOT = (
    r"(?:right |exactly |still )?(?:on the spot|in (?:their|its) place|"
    r"where (?:they|it|he|she) (?:are|is|was|were|stands?)(?: hit| touched| caught)?)"
)
_HELD = r"(?:apart|up|stretched out|behind (?:the|their) back)"
_POSE = rf"(?:,? (?:with|and holds?|holding) [^:]*? {_HELD}(?: and \w+ {_HELD})?)?"
_GONE = r"(?:is out|has no lives left|has lost (?:all (?:\d+ )?|the last |its last |all its )li(?:fe|ves))"
_FROZEN = rf"(?:an? |the |all |each )?frozen {_WHAT}(?: of (?:their|its|the other) side)?"


def _freezes(match: re.Match[str]) -> str:
    several = match["who"].lower().startswith((": all ", "and all "))
    return f"{match['who']} {'freeze' if several else 'freezes'}"


# What happens to whom comes first: what becomes of them is said of "that player".
HAPPENING_TURNS: tuple[Saying, ...] = (*BY_WHOM, *TRIES, *SUBSTITUTES,
    saying(r"^(?:without|unless(?: with)?) (?=[^,:]+, )", "not with ", "play", "when", "finish"),
    saying(r"^(?:when|if|once) (.+?)(?:, then |, |: )", r"\1: ", "when"),
    saying(r"^(?:whoever|anyone who|anybody who|everyone who|who|a player who|a player that) (?:is|gets|has been) "
           r"(?P<event>hit|touched|tagged)(?: by (?:a|the) ball)?[,:]? (?=\w)",
           lambda m: f"a player is {'hit' if m['event'].lower() == 'hit' else 'touched'}: that player ", "when"),
    saying(r": (?:he or she|he/she|she|he|they|this player|the player) (?=(?:must |has to |have to )?"
           r"(?:freeze|is frozen|are frozen|stand|sit|stop|stay|kneel|lie|crouch))", ": that player ", "when"),
    saying(rf"(?P<who>(?::|\band) (?:that|the|all|its|each) [^:]+?) (?:must |has to |have to )?"
           rf"(?:(?:freezes?|is frozen|are frozen|stands? still|stays still)(?: {_SPOT})?|"
           rf"(?:stands?|sits? down|sits?|stops?|stays?|kneels? down|lies down|crouches) {_SPOT}){_POSE}"
           r"(?=$| and )", _freezes, "when"),
    saying(r"\b(?:may|can) (?:move|play|run|act|join in|go on) again$", "is free", "when"),
    saying(r"\b(?:is|are) (?:free again|freed|unfrozen|released|back in (?:the game|play))$", "is free", "when"),
    saying(rf"\ba pass (?:is caught by|reaches|comes to) (?:an?|the) frozen (?:{_WHAT})(?=:)",
           r"a pass is caught by a frozen player", "when"),
    saying(rf"^(?:an?|the) frozen ({_WHAT}) catches a pass(?=:)", r"a pass is caught by a frozen \1", "when"),
    saying(rf"^frozen ({_WHAT}) are freed by (?:(?:a|the) (?:touch|tag) (?:of|from) )?(?:their |a |any |free )*"
           r"(?:team-mates?|mates?|players)$", r"players free frozen \1 of their side", "play"),
    saying(r"^(?:a |any |every )?(?:free |unfrozen )(players?|team-mates?) (?=frees? )", "players ", "play"),
    saying(rf"^another ({_WHAT}) (?:may |can )?(?=frees? )", r"every \1 ", "play"),
    saying(rf"\b(frees? )({_FROZEN}) (?:by|with) (?:touching|a touch|tagging|a tag|crawling|high) .*$", r"\1\2",
           "play"),
    saying(r"\b(free) (?:each other|1 another|their (?:team-)?mates)$", r"\1 frozen players of their side", "play"),
    saying(r"^(?:whoever|who|anyone who) (?:is frozen|froze|freezes) (?:comes back|is free again|is free|plays on|"
           r"may move again) after ", "whoever is frozen is free after ", "play"),
    saying(rf"\bwhen (\d+|no|all|at least \d+|at most \d+) ({_WHAT}) (?:are|is) frozen"
           r"(?: at (?:once|the same time))?\b",
           r"when \2 have \1 frozen players", "finish"),
    saying(r"\bhas (\d+|no|all|at least \d+|at most \d+) players frozen\b", r"has \1 frozen players", "finish", "when"),
    saying(rf"\b(?:nobody|no one|none)(?: else)? (?:of|on|in) (the other side|{_WHAT}) is (?:still )?"
           r"(?:free|moving|unfrozen)(?: any ?more)?\b", r"\1 has no players in", "finish"),
    saying(r"\bhas (?:nobody|no players?|no one) (?:free|moving)(?: any ?more)?\b", "has no players in", "finish"),
    # successes in a row
    saying(r"\b(\d+) consecutive (\w+)\b", r"\1 \2 in a row", "play", "when"),
    saying(r",? (?:but )?only (?:after|once|when|if) (?:they|it|the side|a side|that side|you) (?:have|has)"
           r"(?: made| had)? (\d+ \w+)(?: in a row)?$", r", only after \1 in a row", "play"),
    saying(r"\bonly after (?:at least )?(\d+ passes)(?: made)?(?! in a row)", r"only after \1 in a row", "play"),
    # lives by task
    saying(r"^(?:everyone|everybody|all players|all) else has (?=\d+ li(?:fe|ves))", "each other player has ", "sides"),
    saying(r"^(?:all (?:the )?other(?:s| players)|the other(?:s| players)) have (?=\d+ li(?:fe|ves))",
           "each other player has ", "sides"),
    saying(rf"\b(the other|that) side's ({_WHAT}) {_GONE}", r"\1 side has all \2 out", "finish"),
    saying(rf"\bits ({_WHAT}) {_GONE}", r"it has all \1 out", "finish"),
    saying(rf"\b(?:the|its) ({_WHAT}) of (the other side|ǁ\d+) {_GONE}", r"\2 has all \1 out", "finish"),
    saying(rf"\bwhen (\d+|all) players (?:of|on) (the other side|{_WHAT}) are out\b", r"when \2 has \1 players out",
           "finish"),
    # two who change places
    saying(rf"(?<!\d min: )(?<!\d s: )\b(the|that|its) ({_WHAT}) and (the|that|its) ({_WHAT}) "
           r"(?:change|swap|exchange)(?: places| over| tasks)?"
           r"(?=$| and |,)", r"\1 \2 changes places with \3 \4", "when"),
    # until somebody scores
    saying(r",? (?:until|till) (?:the next (?:point|goal)(?: by (?:either|any|a) side)?|"
           r"(?:somebody|anybody|a side) scores)(?=$| and )", " until the next point", "when"),
    saying(r"\b(?:goes to|stands in|sits in) (the [^:]+? until the next point)", r"waits in \1", "when"),
    saying(r"\bcomes back (?:after|with|at|when) (?:the next (?:point|goal)|(?:somebody|a side) scores)$",
           "comes back after the next point", "play"),
)  # fmt: skip
