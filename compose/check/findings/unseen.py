"""What can never be however many situations there are: proved from bounds of every count, where not all is looked at.

Sentences that never take effect, and sides that can never win. More may be idle than bounds show; what they show is so.
"""

from __future__ import annotations

from compose.check.bounds import Bounds, bounds
from compose.check.findings.idle import idle_in
from compose.check.findings.unwinnable import lost_sides_told
from compose.check.found import Found
from compose.check.match import decides
from compose.net.net import Net


def unseen(net: Net) -> list[Found]:
    """What bounds of a net prove; no situation is looked at."""
    known = bounds(net)
    lost = lost_sides_told(known, _lost(known))
    return [*lost, *idle_in(known, lost)]


def _lost(known: Bounds) -> list[str]:
    """The sides of which no end and no result at the bell may hold; over two halves that says nothing of a group."""
    net = known.net
    if net.match.halves or not decides(net):
        return []
    results = (*net.ends, *(net.bell.results if net.bell is not None else ()))
    return [side for side in net.sides if not any(end.winner == side and known.ever(end.guard) for end in results)]
