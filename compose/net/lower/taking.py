"""Who takes things along: of which kinds, and how many of a side are on the way at a time."""

from __future__ import annotations

from collections.abc import Sequence

from compose.net.lower.builder import Builder
from compose.net.lower.own_ground import spots_at_hand
from compose.net.lower.tokens import ball_place, in_play
from compose.net.net import Rate, Ratio
from grammar.core.game import Play
from grammar.core.play import Offer, PickUp
from grammar.core.values import KindId, Laden, Population, Spot


def rate_of_some(builder: Builder, offer: Offer, way: PickUp, source: tuple[KindId, Spot]) -> Rate:
    """Of a side so many go, however many stand ready; of several roles and kinds each has its share."""
    kinds = taken_alike(builder.play, offer, way)
    there = tuple(ball_place(builder, kind, way.start) for kind in kinds)
    side = [each for each in builder.play.offers if each.at_once and each.by.side == offer.by.side]
    busy = in_play(builder, *on_the_way_in_turn(builder.play, offer))
    return _some_of(builder, offer, side, source, there, busy)


def rate_in_turn(builder: Builder, offer: Offer, source: tuple[KindId, Spot] | None) -> Rate:
    """Of a side so many try it at a time, however many stand ready and with whichever of the balls at hand."""
    together = [each for each in builder.play.offers if (each.by.side, each.lines) == (offer.by.side, offer.lines)]
    spots = spots_at_hand(builder.play, offer.by)
    there = tuple(ball_place(builder, source[0], spot) for spot in spots) if source is not None else ()
    return _some_of(builder, offer, together, source, there, ())


def _some_of(
    builder: Builder,
    offer: Offer,
    ready: Sequence[Offer],
    source: tuple[KindId, Spot] | None,
    there: tuple[int, ...],
    busy: tuple[int, ...],
) -> Rate:
    """The share of a population among all who are ready, and of a kind at its spot among all that are there."""
    who = offer.by
    mine, all_ready = in_play(builder, who), in_play(builder, *dict.fromkeys(each.by for each in ready))
    ratios = [Ratio((ball_place(builder, *source),), there)] if source is not None and len(there) > 1 else []
    ratios += [Ratio(mine, all_ready)] if len(all_ready) > len(mine) else []
    limits = (all_ready, there) if there else (all_ready,)
    return Rate(limits, tuple(ratios), (offer.at_once, busy))


def on_the_way_in_turn(play: Play, offer: Offer) -> tuple[Population, ...]:
    """Who of the side is on the way by a line that lets some go at a time."""
    lines = {line for each in play.offers if each.at_once and each.by.side == offer.by.side for line in each.lines}
    bringing = (each for each in play.offers if isinstance(each.by.role, Laden) and lines & set(each.lines))
    return tuple(dict.fromkeys(each.by for each in bringing if each.by.side == offer.by.side))


def taken_alike(play: Play, offer: Offer, way: PickUp) -> tuple[KindId, ...]:
    """The kinds of which a line lets somebody take whichever they come upon."""
    alike = (each for each in play.offers if (each.by, each.lines) == (offer.by, offer.lines))
    return tuple(try_.ball for each in alike for try_ in each.attempts if try_.aim == way and try_.ball is not None)
