"""Which modifiers are likely to bring a wish nearer, by what they change: these are tried first.

A promise is only an order of trying; what is not promised is tried later, and what is promised is looked at.
"""

from __future__ import annotations

from collections.abc import Mapping

from compose.fit.suggest.class_wishes import Fits, Part
from compose.fit.suggest.played_wishes import Mended, RoundLasts, TurnsAtLeast, WaitsAtMost
from compose.fit.suggest.sheet_wishes import ForAges, ForPupils, KitAtMost, NobodyOut, OnCourt, Practises
from compose.fit.suggest.wish import Wish
from compose.modifiers.modifier import Modifier
from compose.modifiers.touches import Touch, skills_brought, touches

_BACK = frozenset({Touch.COMING_BACK, Touch.CHANGING_PLACES, Touch.WAITING})
_TURNS = frozenset({Touch.MORE_KIT, Touch.COURT, Touch.FETCHING, Touch.RESTING, Touch.GAMES_AT_ONCE, *_BACK})
_LENGTH = frozenset(
    {
        Touch.CLOCK,
        Touch.POINTS_TO_WIN,
        Touch.MORE_KIT,
        Touch.LESS_KIT,
        Touch.SIZE_OF_KIT,
        Touch.COURT,
        Touch.DISTANCE,
        Touch.SUCCESS,
        Touch.PACE,
        Touch.STANDING_UP,
    }
)
_PROMISES: Mapping[type, frozenset[Touch]] = {
    ForAges: frozenset({Touch.AGES}),
    ForPupils: frozenset({Touch.GAMES_AT_ONCE, Touch.SIZES_OF_SIDES}),
    OnCourt: frozenset({Touch.COURT}),
    KitAtMost: frozenset({Touch.LESS_KIT}),
    NobodyOut: frozenset({Touch.COMING_BACK, Touch.CHANGING_PLACES, Touch.PLAYING_ON, Touch.JOINING, Touch.POINTS}),
    RoundLasts: _LENGTH,
    WaitsAtMost: _BACK,
    TurnsAtLeast: _TURNS,
}
# What a modifier does for a class by itself was seen when it was tried alone; here stands what may come of two.
_FOR_CLASS: Mapping[Part, frozenset[Touch]] = {
    Part.PUPILS: frozenset({Touch.GAMES_AT_ONCE, Touch.ODD_PUPIL, Touch.SIZES_OF_SIDES, Touch.COURT}),
    Part.AGES: frozenset({Touch.AGES}),
    Part.HALL: frozenset({Touch.GAMES_AT_ONCE}),
    Part.SPACE: frozenset({Touch.GAMES_AT_ONCE}),
    Part.KIT: frozenset({Touch.OTHER_KIT, Touch.GAMES_AT_ONCE}),
    Part.TIME: _LENGTH,
    Part.REST: frozenset({Touch.OTHER_KIT}),
}
_MENDS: Mapping[str, frozenset[Touch]] = {
    "N-too-high": frozenset({Touch.OTHER_KIT, Touch.SKILL}),
    "N-hard-ball": frozenset({Touch.OTHER_KIT, Touch.LESS_KIT}),
    "N-unfit": frozenset({Touch.OTHER_KIT, Touch.SKILL}),
    "C-stranded": frozenset({Touch.FETCHING, Touch.RESTING, Touch.COMING_BACK}),
    "C-dead-end": frozenset({Touch.CLOCK, Touch.FETCHING, Touch.RESTING, Touch.COMING_BACK}),
    "C-endless": frozenset({Touch.CLOCK}),
    "C-stall": frozenset({Touch.HOLD_LIMIT, Touch.CLOCK}),
    "C-no-end": frozenset({Touch.CLOCK}),
    "F-long-round": _LENGTH,
    "F-short-round": _LENGTH,
    "F-out-of-reach": _LENGTH,
    "F-long-wait": _BACK,
    "F-idle-pupils": _BACK | {Touch.ROUNDS},
    "F-freed-faster": _BACK,
    "F-few-turns": _TURNS,
    "F-inactive": _TURNS,
}


def promises(modifier: Modifier, wish: Wish) -> bool:
    """Whether a modifier changes what a wish is about."""
    if isinstance(wish, Practises):
        return not skills_brought(modifier).isdisjoint(wish.skills)
    return bool(_wanted(wish) & touches(modifier))


def _wanted(wish: Wish) -> frozenset[Touch]:
    if isinstance(wish, Fits):
        return _FOR_CLASS[wish.part]
    if isinstance(wish, Mended):
        return _MENDS.get(wish.code, frozenset())
    return _PROMISES.get(type(wish), frozenset())
