"""Solving x = M x + b for a matrix M of a stopping chain (no entry negative, powers going to zero).

Small components, or hardly any cycles: direct factorisations in topological order. Large ones:
BiCGSTAB (H. A. van der Vorst, "Bi-CGSTAB", SIAM J. Sci. Stat. Comput. 13(2), 1992, 631-644; from
memory) with refinement, and where that does not get there, the direct way after all, unless a component is
so large that its factors might fill the memory: then there is no solution, and its residual says so.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from grammar.frozen import frozen

if TYPE_CHECKING:
    from scipy.sparse import csr_array

Floats = NDArray[np.float64]
Longs = NDArray[np.int64]
SMALL = 64  # components up to so many unknowns are always solved directly
MIDDLING = 1_200  # up to so many where there are at most `FEW` unknowns in all (measured)
FEW = 4_000
DENSE = 400  # up to so many unknowns in all a dense solve is as quick, and loads no further library
CHAINLIKE = 3  # entries per row up to which a factorisation hardly fills in
FACTORED = 8_000  # unknowns of a component up to which its factors, were they full, take half a gigabyte
GOOD = 1e-13  # residual, relative to the right-hand side, at which iterations count as done
TURNS = 4


@frozen(eq=False)
class Solution:
    """The solution with what is left over: `residual` = sum |b + M x - x|, infinite where there is none, and the
    method in words."""

    x: Floats
    residual: float
    method: str


def fixed_point(matrix: csr_array, right: Floats, good: float = GOOD) -> Solution:
    """Solve x = matrix x + right; no rows at all is fine. `good` is the residual, relative to `right`."""
    if not right.size:
        return Solution(right, 0.0, "nothing to solve")
    if len(right) <= DENSE:
        return _told(matrix, right, _dense(matrix, right), "direct")
    count, label = _components(matrix)
    largest = int(np.bincount(label).max())
    x, done = (right, False) if _easy(matrix, largest) else _iterated(matrix, right, good)
    if done or largest > FACTORED:
        return _told(matrix, right, x if done else np.full(len(right), np.nan), "iterated")
    return _told(matrix, right, _layered(matrix, right, layers(matrix, count, label)), "direct")


def _told(matrix: csr_array, right: Floats, x: Floats, method: str) -> Solution:
    residual = float(np.abs(right + matrix @ x - x).sum())
    return Solution(x, residual if np.isfinite(residual) else np.inf, method)


def _easy(matrix: csr_array, largest: int) -> bool:
    """Whether direct factorisations are the quicker way."""
    unknowns = int(matrix.shape[0])
    if largest <= SMALL or (matrix.nnz <= CHAINLIKE * unknowns and largest <= FACTORED):
        return True
    return largest <= MIDDLING and unknowns <= FEW


def _dense(matrix: csr_array, right: Floats) -> Floats:
    system = np.eye(len(right)) - matrix.toarray()
    try:
        x = np.linalg.solve(system, right)
        return np.asarray(x + np.linalg.solve(system, right + matrix @ x - x), dtype=np.float64)
    except np.linalg.LinAlgError:  # so hard to leave that rounding closes the way out
        return np.full(len(right), np.nan)


def _direct(matrix: csr_array, right: Floats) -> Floats:
    from scipy.sparse import eye_array  # slow to import, only needed here
    from scipy.sparse.linalg import splu

    system = (eye_array(len(right), format="csc") - matrix).tocsc()
    try:
        factors = splu(system)
    except RuntimeError:  # singular: as above
        return np.full(len(right), np.nan)
    x = factors.solve(right)
    return np.asarray(x + factors.solve(right + matrix @ x - x), dtype=np.float64)


def _iterated(matrix: csr_array, right: Floats, good: float) -> tuple[Floats, bool]:
    from scipy.sparse.linalg import LinearOperator, bicgstab  # slow to import

    system = LinearOperator(matrix.shape, matvec=lambda x: x - matrix @ x, dtype=np.float64)
    x, rest = np.zeros(len(right)), right
    aim = good * float(np.abs(right).sum())
    left = float(np.abs(right).sum())
    for _ in range(TURNS):
        step, _ = bicgstab(system, rest, rtol=max(aim / left / 10, 1e-10), atol=0.0, maxiter=1000)
        x = x + step
        rest = right + matrix @ x - x
        if not np.isfinite(rest).all():
            return x, False
        left = float(np.abs(rest).sum())
        if left <= aim:
            return x, True
    return x, False


def _components(matrix: csr_array) -> tuple[int, Longs]:
    """How many strongly connected components there are, and the component of each unknown."""
    from scipy.sparse.csgraph import connected_components

    count, label = connected_components(matrix, connection="strong")
    return int(count), np.asarray(label, dtype=np.int64)


def layers(matrix: csr_array, count: int, label: Longs) -> list[Longs]:
    """The unknowns in layers: components that depend only on those in earlier layers."""
    from scipy.sparse import csr_array

    rows = np.repeat(label, np.diff(matrix.indptr))
    columns = label[matrix.indices]
    between = rows != columns
    pairs = np.unique(rows[between] * count + columns[between])
    needs, needed = pairs // count, pairs % count
    waiting = np.bincount(needs, minlength=count)
    users = csr_array((np.ones(len(pairs)), (needed, needs)), shape=(count, count))
    level = np.zeros(count, dtype=np.int64)
    ready, depth = np.flatnonzero(waiting == 0), 0
    while ready.size:
        level[ready] = depth
        reached = users[ready].indices
        np.subtract.at(waiting, reached, 1)
        ready = np.unique(reached[waiting[reached] == 0])
        depth += 1
    order = np.argsort(level[label], kind="stable")
    return np.split(order, np.cumsum(np.bincount(level[label], minlength=depth))[:-1])


def _layered(matrix: csr_array, right: Floats, order: list[Longs]) -> Floats:
    x = np.zeros(len(right))
    for layer in order:
        rows = matrix[layer]
        known = right[layer] + rows @ x
        own = rows[:, layer]
        x[layer] = _direct(own.tocsr(), known) if own.nnz else known
    return x
