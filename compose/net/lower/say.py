"""A transition as a sentence: "a north player throws a foam ball overarm at a south lantern and knocks it"."""

from __future__ import annotations

from compose.net.lower.moment import CAUGHT, LEFT, MISSED, Moment
from compose.net.lower.tokens import does, of_side, player_noun
from grammar.words import article

_DOES = {
    "overarm throw": ("throws", "overarm"),
    "underarm throw": ("throws", "underarm"),
    "roll": ("rolls", ""),
    "kick": ("kicks", ""),
    "strike": ("strikes", ""),
    "pass": ("passes", ""),
    "carry": ("carries", ""),
    "tow": ("tows", ""),
    "push": ("pushes", ""),
    "run": ("runs", ""),
}


def player_words(side: str, role: str | None) -> str:
    """Such as "a north player", "a north keeper", "a carrier"."""
    return article(f"{side} {role}" if role else player_noun(side))


def attempt_words(moment: Moment, skill: str) -> str:
    """What is tried: "a north player rolls a foam ball at a south cone"."""
    verb, manner = _DOES[skill]
    ball = article(moment.ball[0]) if moment.ball else ""
    parts = (player_words(moment.actor, moment.actor_role), verb, ball, manner, _aim_words(moment))
    return " ".join(part for part in parts if part)


def _aim_words(moment: Moment) -> str:
    match moment.aim:
        case "target":
            return f"at {article(of_side(str(moment.thing), moment.owner))}"
        case "player":
            return f"at {player_words(moment.other, moment.hit_role)}"
        case "ring":
            return f"through {article(of_side(str(moment.thing), moment.owner))}"
        case "line":
            return f"past the {of_side(str(moment.line), moment.other)}"
        case "mate":
            where = f" on the {moment.mates_at}" if moment.mates_at and moment.mates_at != "in" else ""
            return f"to a team-mate{where}"
    return f"to the {moment.line}" if moment.line else ""


def outcome_words(moment: Moment, skill: str, follows: list[str]) -> str:
    """The attempt with its outcome and what follows from it."""
    ending = {
        CAUGHT: f"and {does(moment.other, 'catches', 'catch')} it",
        MISSED: "and misses",
        LEFT: "and the ball leaves the court",
    }.get(moment.outcome)
    if ending is None:
        ending = {
            "target": "and knocks it",
            "player": "and hits",
            "ring": "and it goes through",
            "line": "and it crosses",
            "mate": "and it is caught",
        }.get(moment.aim, "and arrives")
    said = "".join(f"; {words}" for words in follows if words != "play goes on")
    return f"{attempt_words(moment, skill)} {ending}{said}"
