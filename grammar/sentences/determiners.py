"""The small words before a name that mean the same to whoever asks about them."""

from __future__ import annotations

EACH = ("each", "every")
ALL = ("all", *EACH)
ONE = ("a", "an", "any")
