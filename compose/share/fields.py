"""Reading one JSON object field by field, with a refusal that names the field."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from datetime import date
from typing import Any, TypeVar

from compose.share.refusal import RefusedError, shown
from grammar.frozen import frozen

HASH = re.compile(r"[0-9a-f]{64}")
Value = TypeVar("Value")
_UNSEEN = frozenset(("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"))


@frozen
class Fields:
    """A JSON object of a file; `way` leads to it: "items[3]"."""

    file: str
    way: str
    values: dict[str, Any]

    @classmethod
    def of(cls, value: Any, file: str, way: str, needed: tuple[str, ...], also: tuple[str, ...] = ()) -> Fields:
        """The fields of an object that has all of `needed`, perhaps some of `also`, and no others."""
        here = cls(file, way, value if isinstance(value, dict) else {})
        if not isinstance(value, dict):
            raise here.refuse("", "is not an object")
        for key in value:
            if key not in needed and key not in also:
                raise here.refuse(key, "is not known here")
        for key in needed:
            if key not in value:
                raise here.refuse(key, "is missing")
        return here

    def refuse(self, key: str, why: str) -> RefusedError:
        """The refusal to raise for one field."""
        way = ".".join(part for part in (self.way, shown(key)) if part) or "the whole"
        return RefusedError("P-field", f"{self.file}: {way} {why}.")

    def text(self, key: str, most: int, least: int = 0) -> str:
        """A text of `least` to `most` letters that can all be seen."""
        value = self.values[key]
        if not isinstance(value, str):
            raise self.refuse(key, "is not a text")
        if not least <= len(value) <= most:
            raise self.refuse(key, f"does not have {least} to {most} letters")
        if not value.isascii() and any(unicodedata.category(sign) in _UNSEEN for sign in value):
            raise self.refuse(key, "holds a letter that cannot be seen")
        if any(ord(sign) < 32 or ord(sign) == 127 for sign in value):
            raise self.refuse(key, "holds a letter that cannot be seen")
        return value

    def matching(self, key: str, pattern: re.Pattern[str], what: str, most: int = 200) -> str:
        """A text that is wholly of a pattern."""
        value = self.text(key, most)
        if not pattern.fullmatch(value):
            raise self.refuse(key, f"is not {what}")
        return value

    def hash(self, key: str) -> str:
        """A SHA-256 in hexadecimal."""
        return self.matching(key, HASH, "a hash of 64 hexadecimal digits")

    def day(self, key: str) -> str:
        """A day as ISO 8601 writes it."""
        value = self.text(key, 10, 10)
        try:
            return date.fromisoformat(value).isoformat()
        except ValueError:
            raise self.refuse(key, "is not a day such as 2025-11-25") from None

    def one_of(self, key: str, allowed: tuple[str, ...]) -> str:
        """One of a few words."""
        value = self.values[key]
        if not isinstance(value, str) or value not in allowed:
            raise self.refuse(key, f"is not one of {', '.join(allowed)}")
        return value

    def whole(self, key: str, least: int, most: int) -> int:
        """A whole number of a range."""
        value = self.values[key]
        if not isinstance(value, int) or isinstance(value, bool) or not least <= value <= most:
            raise self.refuse(key, f"is not a whole number from {least} to {most}")
        return value

    def listed(self, key: str, most: int, read: Callable[[Fields], Value]) -> tuple[Value, ...]:
        """A list of at most `most` values; `read` gets each under the name "it"."""
        return tuple(read(each) for each in self._each(key, most))

    def _each(self, key: str, most: int) -> Iterator[Fields]:
        value = self.values[key]
        if not isinstance(value, list):
            raise self.refuse(key, "is not a list")
        if len(value) > most:
            raise self.refuse(key, f"has more than {most} entries")
        for number, entry in enumerate(value, start=1):
            way = ".".join(part for part in (self.way, f"{key}[{number}]") if part)
            yield Fields(self.file, way, {"it": entry})

    def inner(self, key: str, needed: tuple[str, ...], also: tuple[str, ...] = ()) -> Fields:
        """The object under a key."""
        way = self.way if key == "it" else ".".join(part for part in (self.way, key) if part)
        return Fields.of(self.values[key], self.file, way, needed, also)
