"""Mirrored sides: every situation and its mirror image count as one, which halves the work.

Exact lumping by a symmetry of the chain (J. G. Kemeny and J. L. Snell, Finite Markov Chains, 1960,
sec. 6.3; from memory): if swapping the sides maps the start to itself and every rate to an equal one,
play is as likely in a situation as in its mirror image at every moment. Nothing is assumed: the
symmetry is looked for by what each place counts and then checked on every rate.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy as np
from attrs import evolve

from compose.check.space import StateSpace
from compose.net.net import Net, Place
from grammar.core.values import At, OnStep, Posture, Presence, SideId, TrackId

if TYPE_CHECKING:
    from numpy.typing import NDArray
    from scipy.sparse import csr_array

    Longs = NDArray[np.int64]
    Floats = NDArray[np.float64]

Part = tuple[str, str | None, str | None, Presence | Posture | At | OnStep | None]
SAME = 1e-12  # relative difference up to which two rates are the same number


def mirror_images(space: StateSpace, running: Longs, inner: csr_array, leaving: Floats) -> Longs | None:
    """The place of each running state's mirror image among them, None where the chain is not symmetric."""
    swap = swapped_places(space.net)
    if swap is None or space.net.start() != tuple(space.net.start()[place] for place in swap):
        return None
    codes = space.codes[running]
    image = space.encoding.codes(space.encoding.markings(codes)[:, swap])
    order = np.argsort(codes)
    found = np.minimum(np.searchsorted(codes, image, sorter=order), len(codes) - 1)
    mirror: Longs = order[found]
    if not (codes[mirror] == image).all():
        return None
    return mirror if symmetric(inner, leaving, mirror) else None


def swapped_places(net: Net) -> list[int] | None:
    """For each place the one that takes its part when the two sides change ends, None where one has none."""
    if len(net.sides) != 2:
        return None
    number = {_part(place): position for position, place in enumerate(net.places)}
    last_steps = _last_steps(net)
    images = [_exchanged(place, net.sides, last_steps) for place in net.places]
    if not number.keys() >= set(images):
        return None
    swap = [number[image] for image in images]
    if not all(_alike(net.places[other], place) for other, place in zip(swap, net.places, strict=True)):
        return None
    return swap if sorted(swap) == list(range(len(swap))) and swap != list(range(len(swap))) else None


def _part(place: Place) -> Part:
    """What tells a place from all others."""
    return place.token, place.kind, place.side, place.standing


def _last_steps(net: Net) -> dict[TrackId, int]:
    """How many steps lead from home to home on each track; each step that can be stood on is a place."""
    found: dict[TrackId, int] = {}
    for place in net.places:
        if isinstance(place.standing, OnStep):
            track = place.standing.track
            found[track] = max(found.get(track, 0), place.standing.step)
    return found


def _exchanged(place: Place, sides: tuple[str, ...], last_steps: Mapping[TrackId, int]) -> Part:
    """The part of a place with the other side in the place of each; a track is walked from its other end."""
    token, kind, side, standing = _part(place)
    other = dict(zip(sides, reversed(sides), strict=True))
    if isinstance(standing, OnStep):
        standing = evolve(standing, step=last_steps[standing.track] - standing.step)
    elif isinstance(standing, At) and isinstance(standing.spot.owner, SideId):
        standing = At(evolve(standing.spot, owner=SideId(other[standing.spot.owner.key])))
    return token, kind, other.get(side, side) if side else None, standing


def _alike(one: Place, other: Place) -> bool:
    return (one.capacity, one.start) == (other.capacity, other.start)


def symmetric(inner: csr_array, leaving: Floats, mirror: Longs) -> bool:
    """Whether all rates stay the same when every state is replaced by its mirror image."""
    if not np.allclose(leaving[mirror], leaving, rtol=SAME, atol=0):
        return False
    turned = inner[mirror]
    turned.indices = mirror[turned.indices].astype(turned.indices.dtype)
    turned.has_sorted_indices = False
    turned.sort_indices()
    inner.sort_indices()
    return (
        np.array_equal(turned.indptr, inner.indptr)
        and np.array_equal(turned.indices, inner.indices)
        and np.allclose(turned.data, inner.data, rtol=SAME, atol=0)
    )
