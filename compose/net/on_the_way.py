"""Things that players carry."""

from __future__ import annotations

from compose.net.net import Place


def on_the_way(place: Place) -> bool:
    """Whether a place counts things that players carry: whoever carries one is counted as well."""
    return place.token == "load" and place.standing is None
