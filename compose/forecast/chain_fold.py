"""Mirrored sides: every situation and its mirror image count as one, which halves the work.

Exact lumping by a symmetry of the chain (J. G. Kemeny and J. L. Snell, Finite Markov Chains, 1960,
sec. 6.3; from memory): if swapping the sides maps the start to itself and every rate to an equal one,
play is as likely in a situation as in its mirror image at every moment. Nothing is assumed: the
symmetry is looked for by the names of the places and then checked on every rate.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from compose.check.space import StateSpace
from compose.net.net import Net, Place

if TYPE_CHECKING:
    from numpy.typing import NDArray
    from scipy.sparse import csr_array

    Longs = NDArray[np.int64]
    Floats = NDArray[np.float64]

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
    return mirror if _symmetric(inner, leaving, mirror) else None


def swapped_places(net: Net) -> list[int] | None:
    """For each place the one that takes its part when the two sides change ends, None where one has none."""
    if len(net.sides) != 2:
        return None
    number = {place.name: position for position, place in enumerate(net.places)}
    swap = [number.get(_swapped(place.name, net.sides), -1) for place in net.places]
    if any(other < 0 or not _alike(net.places[other], place) for other, place in zip(swap, net.places, strict=True)):
        return None
    return swap if sorted(swap) == list(range(len(swap))) and swap != list(range(len(swap))) else None


def _swapped(name: str, sides: tuple[str, ...]) -> str:
    one, other = sides
    between = "\0"
    return name.replace(one, between).replace(other, one).replace(between, other)


def _alike(one: Place, other: Place) -> bool:
    return (one.token, one.capacity, one.start, one.kind) == (other.token, other.capacity, other.start, other.kind)


def _symmetric(inner: csr_array, leaving: Floats, mirror: Longs) -> bool:
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
