"""Whatever the way of solving, x = M x + b holds but for what is said to be left over, and that is next to nothing."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.sparse import csr_array, random_array

from compose.forecast.chain.solve import DENSE, GOOD, fixed_point, layers


def drawn(unknowns: int, forward: bool, seed: int) -> tuple[csr_array, np.ndarray[tuple[int], np.dtype[np.float64]]]:
    """A matrix whose rows sum to less than one, each unknown of later ones alone where it only goes `forward`."""
    chance = np.random.default_rng(seed)
    matrix = random_array((unknowns, unknowns), density=min(1.0, 4 / max(unknowns, 1)), rng=chance, format="csr")
    if forward:
        matrix = csr_array(np.triu(matrix.toarray(), 1))
    most = max(matrix.sum(axis=1).max(initial=0.0), 1.0)
    return csr_array(matrix / (1.05 * most)), chance.random(unknowns)


@pytest.mark.parametrize("unknowns", [0, 1, 2, DENSE, DENSE + 1, 3 * DENSE])
@pytest.mark.parametrize("forward", [True, False])
def test_what_is_left_over_is_what_it_says(unknowns: int, forward: bool) -> None:
    matrix, right = drawn(unknowns, forward, seed=unknowns)
    solved = fixed_point(matrix, right)
    assert solved.residual == pytest.approx(float(np.abs(right + matrix @ solved.x - solved.x).sum()))
    assert solved.residual <= GOOD * max(float(right.sum()), 1.0)
    assert solved.x == pytest.approx(np.linalg.solve(np.eye(unknowns) - matrix.toarray(), right))


def test_each_layer_waits_for_the_one_before_it_and_for_no_later_one() -> None:
    matrix, _ = drawn(60, forward=True, seed=4)
    found = layers(matrix, 60, np.arange(60))
    layer_of = {int(unknown): number for number, layer in enumerate(found) for unknown in layer}
    assert len(layer_of) == 60 and len(found) > 3
    for unknown, number in layer_of.items():
        needed = [layer_of[int(each)] for each in matrix[[unknown]].indices]
        assert max(needed, default=-1) == number - 1
