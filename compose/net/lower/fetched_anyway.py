"""Lines by which players fetch what is reckoned with anyway.

A ball that rests "in the half" stops anywhere in it or rolls on behind its lines, and whoever plays there brings it
back: it counts as at hand. Where a line says so in words, no ball ever comes to lie behind the line, and yet pupils do
fetch there: such a line has its effect.
"""

from __future__ import annotations

from compose.net.lower.landings import FLYING, LINES
from compose.net.lower.own_ground import spots_at_hand
from grammar.core.game import Play
from grammar.core.play import Along, Fetch, PickUp
from grammar.core.precedence import rest_for
from grammar.core.reading.phrases.aims import against
from grammar.core.values import Part, Teacher


def fetched_anyway(play: Play) -> frozenset[int]:
    """The numbers of these lines."""
    fetches = [each for each in play.services if isinstance(each, Fetch) and not each.granted]
    return frozenset(each.lines[0] for each in fetches if _rolls_there(play, each))


def _rolls_there(play: Play, fetch: Fetch) -> bool:
    """Whether a ball that is sent may come to rest where whoever fetches it has it at hand, and so roll on to there."""
    outside = fetch.spot.of in LINES or fetch.spot.part is not Part.AT
    if isinstance(fetch.who, Teacher) or not outside:
        return False
    at_hand = {spot for who in fetch.who for spot in spots_at_hand(play, who)}
    sent = (
        (offer.by.side, owner, each.skill)
        for offer, each in play.tries
        if each.ball == fetch.ball and not isinstance(each.aim, Along | PickUp)
        for owner in against(each.aim, offer.by)
    )
    rests = (rest_for(play.rests, by, owner, fetch.ball, how, skill) for by, owner, skill in sent for how in FLYING)
    return any(rest is not None and rest.spreads and rest.to in at_hand for rest in rests)
