"""Numbers for what comes again, in the order in which it first comes."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.encoding import Codes

Numbers = NDArray[np.int32]
DENSE_LIMIT = 50_000_000
_MIX = np.uint64(0x9E3779B97F4A7C15)  # 2**64 / golden ratio, made odd: spreads neighbouring codes


class Numbering:
    """Gives every new code the next number; a code seen before keeps its number.

    Up to `DENSE_LIMIT` possible codes a plain table serves (its untouched pages cost nothing),
    beyond that an open-addressing table that doubles when half full.
    """

    def __init__(self, size: int, dense_limit: int = DENSE_LIMIT) -> None:
        self.count = 0
        self._dense = size <= dense_limit
        self._bits = 16
        self._values = np.zeros(size if self._dense else 1 << self._bits, dtype=np.int32)
        self._keys = np.full(0 if self._dense else 1 << self._bits, -1, dtype=np.int64)

    def number(self, codes: Codes) -> tuple[Numbers, NDArray[np.int64]]:
        """The number of each code, and where in `codes` the new ones first appear, in order."""
        slots = codes if self._dense else self._slots(codes)
        known = self._values[slots]
        strange = np.flatnonzero(known == 0)
        if not strange.size:
            return known - 1, strange
        slot = slots[strange]
        # Later writes win, so writing backwards leaves the place of the first appearance.
        self._values[slot[::-1]] = np.arange(len(slot), 0, -1, dtype=np.int32)
        first = self._values[slot] == np.arange(1, len(slot) + 1, dtype=np.int32)
        fresh = strange[first]
        self._values[slot[first]] = np.arange(1, len(fresh) + 1, dtype=np.int32) + self.count
        self.count += len(fresh)
        known[strange] = self._values[slot]
        return known - 1, fresh

    def _slots(self, codes: Codes) -> NDArray[np.int64]:
        while 2 * (self.count + len(codes)) > len(self._keys):
            self._grow()
        return self._seek(codes)

    def _seek(self, codes: Codes) -> NDArray[np.int64]:
        """The slot of each code, taken by it now if it had none."""
        mask = np.int64(len(self._keys) - 1)
        slots = ((codes.astype(np.uint64) * _MIX) >> np.uint64(64 - self._bits)).astype(np.int64)
        pending = np.arange(len(codes))
        while pending.size:
            slot, code = slots[pending], codes[pending]
            free = self._keys[slot] == -1
            self._keys[slot[free]] = code[free]
            pending = pending[self._keys[slot] != code]
            slots[pending] = (slots[pending] + 1) & mask
        return slots

    def _grow(self) -> None:
        used = np.flatnonzero(self._values)
        keys, values = self._keys[used], self._values[used]
        self._bits += 1
        self._keys = np.full(1 << self._bits, -1, dtype=np.int64)
        self._values = np.zeros(1 << self._bits, dtype=np.int32)
        self._values[self._seek(keys)] = values
