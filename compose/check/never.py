"""Why a condition never came true in any state of play, in words."""

from __future__ import annotations

import numpy as np

from compose.check.condition import clauses, evaluate, holds
from compose.check.pointing import short_of
from compose.check.rate import factor
from compose.check.study import Study
from compose.check.words import condition_in_words
from compose.net.net import Comparison, Condition, Move, Net, Transition


def why_never(study: Study, condition: Condition) -> str:
    """The first part that is never true, or the parts that are never true together."""
    parts = clauses(condition)
    for part in parts:
        if not holds(part, study.table).any():
            return _never(condition_in_words(part, study.net)) + _no_room(part, study.net)
    if len(parts) > 1:
        return f"never all at once: {', '.join(condition_in_words(part, study.net) for part in parts)}"
    return "an end comes first each time"


def _never(told: str) -> str:
    if told.startswith("no "):
        return f"there are always some {told[3:]}"
    if told.startswith("a rule "):
        return f"there is never {told}"
    return f"there are never {told}"


def _no_room(condition: Condition, net: Net) -> str:
    """Such as ", for there is room for 2", where the condition asks for more in a place than find room there."""
    if not isinstance(condition, Comparison) or condition.relation != ">=":
        return ""
    asked = {place for times, place in condition.terms if times > 0}
    lists = [t.effects for t in net.transitions] + [r.effects for r in net.reactions]
    rooms = {room for effects in lists for effect in effects if isinstance(effect, Move) for room in effect.rooms}
    short = [room.most for room in rooms if asked <= set(room.places) and room.most < condition.bound]
    return f", for there is room for {min(short)}" if short else ""


def why_not_fired(study: Study, transition: Transition) -> str:
    """What keeps a transition from ever happening in play: its guard, or whom or what it needs."""
    live = study.table[~study.ended]
    for part in clauses(transition.guard):
        if not evaluate(part, lambda p: live[:, p], len(live)).any():
            return f"never so in play: {condition_in_words(part, study.net)}"
    if not factor(transition.rate, lambda p: live[:, p], len(live)).any():
        most = [int(count) for count in np.max(live, axis=0, initial=0)]
        missing = short_of(transition.rate, most, study.net)
        if missing:
            return f"there are never any: {', '.join(missing)}"
    return "what it needs is never there all at once"
