"""Relays: how often a side has run."""

from __future__ import annotations

import re

from grammar.frozen import frozen
from grammar.sentences.base import spoken
from grammar.sentences.claims import Claim


@frozen
class HasRun(Claim):
    """Such as "it has run 10 times", or "it has run once with each player"."""

    def words(self) -> str:
        often = spoken(self.quantity, self.counted)
        return spoken(self.side, self.verb, re.sub("^1 times", "once", often))
