"""Sides that only help or chase: the finish speaks of all others, and never of them, so that they need not win."""

from __future__ import annotations

from collections.abc import Collection

from compose.net.net import Assign, Net, Shift


def needs_no_win(net: Net, side: str, lost: Collection[str]) -> bool:
    """Whether a side that cannot win is not said to, while two others can: no line of the finish is about it, or lines
    say it of whichever side and none gives this one any point. `lost`: all sides that cannot win."""
    others = [each for each in net.sides if each != side]
    ends = (*net.ends, *(net.bell.results if net.bell is not None else ()))
    own = [end for end in ends if end.winner == side]
    if side in net.mirrored or sum(each not in lost for each in others) < 2:
        return False
    of_others = {end.rule.span for end in ends if end.winner in others}
    return not own or not (any(end.rule.span not in of_others for end in own) or _scores(net, side))


def _scores(net: Net, side: str) -> bool:
    """Whether it has no points at all, or any line gives it some: only who could have had any lacks them."""
    points = [number for number, place in enumerate(net.places) if (place.token, place.side) == ("points", side)]
    given = any(isinstance(effect, Shift | Assign) and effect.place in points for effect in net.effects)
    return not points or given or any(each.side == side for each in net.at_the_end)
