"""Packs that were dropped in and wait for the teacher's choices, the latest few."""

from __future__ import annotations

import threading
from collections import OrderedDict
from typing import TYPE_CHECKING

from attrs import define, field

if TYPE_CHECKING:
    from compose.share.pack.pack import Pack

KEPT = 3


@define(eq=False)
class Arrived:
    """By the hash of the pack: who loads the page of an older one is asked to drop it in again."""

    _packs: OrderedDict[str, Pack] = field(factory=OrderedDict)
    _lock: threading.Lock = field(factory=threading.Lock)

    def put(self, pack: Pack) -> None:
        """Keep a pack."""
        with self._lock:
            self._packs[pack.sha256] = pack
            while len(self._packs) > KEPT:
                self._packs.popitem(last=False)

    def get(self, sha256: str) -> Pack | None:
        """The pack with this hash, where it still waits."""
        with self._lock:
            return self._packs.get(sha256)
