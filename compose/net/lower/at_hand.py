"""Which balls players have at hand, and how many of them act at once.

Players and the kinds of balls that they may use make pools: who shares a kind of ball is in one pool. In a pool
as many act as the fewer of players and balls; each role and each kind has its part by its number.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.net.lower.builder import Builder, at_least
from compose.net.lower.own_ground import spots_at_hand
from compose.net.lower.tokens import ball_place, in_play, places_at
from compose.net.net import Condition, Rate, Ratio
from grammar.core.play import Along, PickUp
from grammar.core.values import At, KindId, Population, SideId, Spot

Uses = dict[Population, dict[KindId, tuple[Spot, ...]]]


def uses_of(builder: Builder, side: SideId) -> Uses:
    """Which kinds of balls the players of each population of a side may use, and where they have them at hand."""
    found: Uses = {who: {} for who in builder.play.populations(side)}
    for offer in builder.play.offers:
        as_they_play = not offer.at or any((offer.by, spot) in builder.reached for spot in offer.at)
        if offer.by.side == side and as_they_play:
            spots = tuple(spot for spot in spots_at_hand(builder.play, offer.by) if spot.role is None)
            for each in offer.attempts:
                if each.ball is not None and not isinstance(each.aim, PickUp):
                    found[offer.by][each.ball] = (each.aim.start,) if isinstance(each.aim, Along) else spots
    return found


def rate_of(builder: Builder, who: Population, ball: tuple[KindId, Spot] | None, uses: Uses) -> Rate:
    """The rate of a population's attempts with balls of a kind that lie at a spot."""
    mine = in_play(builder, who)
    if ball is None:
        return Rate((mine,))
    together, kinds = _pool(who, uses)
    everyone = in_play(builder, *together)
    at_hand = tuple(dict.fromkeys(ball_place(builder, kind, spot) for kind, spots in kinds.items() for spot in spots))
    ratios: tuple[Ratio, ...] = (Ratio(mine, everyone),) if len(everyone) > 1 else ()
    if len(at_hand) > 1:
        ratios += (Ratio((ball_place(builder, *ball),), at_hand),)
    return Rate((everyone, at_hand), ratios)


def rate_outside(builder: Builder, who: Population, ball: KindId, spot: Spot) -> Rate:
    """The rate of attempts of those who wait at a spot, with the balls that lie there: whoever may, of any side."""
    there = [offer for offer in builder.play.offers if spot in offer.at]
    kinds = dict.fromkeys(each.ball for offer in there for each in offer.attempts if each.ball is not None)
    players = dict.fromkeys(place for offer in there for place in places_at(builder, offer.by, At(spot)))
    balls = tuple(ball_place(builder, kind, spot) for kind in kinds)
    mine, own = places_at(builder, who, At(spot)), ball_place(builder, ball, spot)
    ratios: tuple[Ratio, ...] = (Ratio(mine, tuple(players)),) if len(players) > len(mine) else ()
    ratios += (Ratio((own,), balls),) if len(balls) > 1 else ()
    return Rate((tuple(players), balls), ratios)


def rate_handed(builder: Builder, who: Population, ball: KindId, spot: Spot, uses: Uses) -> Rate:
    """The rate of attempts of those who alone have what a line gave them."""
    balls = tuple(ball_place(builder, kind, spot) for kind in uses[who])
    own = ball_place(builder, ball, spot)
    return Rate((in_play(builder, who), balls), (Ratio((own,), balls),) if len(balls) > 1 else ())


def _pool(who: Population, uses: Uses) -> tuple[list[Population], dict[KindId, tuple[Spot, ...]]]:
    """The populations that share kinds of balls with one, at once or by way of others, and all these kinds."""
    kinds = dict(uses[who])
    while True:
        together = [each for each, own in uses.items() if own.keys() & kinds.keys()]
        more = {kind: spots for each in together for kind, spots in uses[each].items()}
        if more.keys() == kinds.keys():
            return together, more
        kinds = more


def balls_in_hand(
    builder: Builder, kinds: Iterable[KindId], who: Population
) -> Iterator[tuple[tuple[KindId, Spot], Condition, tuple[Ratio, ...]]]:
    """Each ball that somebody of a population may have just now, with what must be so, and its share of them all."""
    hands = [(kind, spot) for kind in sorted(kinds) for spot in spots_at_hand(builder.play, who)]
    balls = tuple(dict.fromkeys(ball_place(builder, *held) for held in hands))
    for held in hands:
        ball = ball_place(builder, *held)
        yield held, at_least((ball,)), (Ratio((ball,), balls),) if len(balls) > 1 else ()
