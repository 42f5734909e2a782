"""How many act at once: as many as there are players and balls for it.

Players and the kinds of balls that they may use make pools: who shares a kind of ball is in one pool. In a pool
as many act as the fewer of players and balls; each role and each kind has its part by its number.
"""

from __future__ import annotations

from compose.net.lower.builder import Builder, Key
from compose.net.lower.tokens import ball_place, in_play
from compose.net.net import Rate, Ratio

Uses = dict[str | None, dict[str, Key]]


def rate_of(builder: Builder, side: str, role: str | None, ball: tuple[str, Key] | None, uses: Uses) -> Rate:
    """The rate of one role's attempts with one kind of ball; `uses` says which kinds each role of the side uses."""
    mine = in_play(builder, side, role)
    if ball is None:
        return Rate((mine,))
    roles, kinds = _pool(role, uses)
    everyone = tuple(place for each in roles for place in in_play(builder, side, each))
    at_hand = tuple(ball_place(builder, kind, spot) for kind, spot in kinds.items())
    ratios: tuple[Ratio, ...] = (Ratio(mine, everyone),) if len(everyone) > 1 else ()
    if len(at_hand) > 1:
        ratios += (Ratio((ball_place(builder, *ball),), at_hand),)
    return Rate((everyone, at_hand), ratios)


def _pool(role: str | None, uses: Uses) -> tuple[list[str | None], dict[str, Key]]:
    """The roles that share kinds of balls with a role, at once or by way of others, and all these kinds."""
    kinds = dict(uses[role])
    while True:
        roles = [each for each, own in uses.items() if own.keys() & kinds.keys()]
        more = {kind: spot for each in roles for kind, spot in uses[each].items()}
        if more.keys() == kinds.keys():
            return roles, more
        kinds = more
