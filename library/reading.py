"""One table of a data file, read with a complaint that names the file and the key."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from grammar.frozen import frozen
from library.records import Figure, Source

HERE = Path(__file__).parent


class DataError(ValueError):
    """A data file of this project is wrong: a bug of ours, told with the file and the key."""


@frozen
class Entry:
    """A table of a data file, and the way to it."""

    file: str
    way: tuple[str, ...]
    values: Mapping[str, Any]

    def wrong(self, key: str, complaint: str) -> DataError:
        """The error to raise for one key of this table."""
        return DataError(f"{self.file}: {' > '.join((*self.way, key))}: {complaint}")

    def only(self, *allowed: str) -> None:
        """Raise DataError for a key that nobody reads, most often a slip of the pen."""
        for key in self.values:
            if key not in allowed:
                raise self.wrong(key, f"not a key here; the keys are {', '.join(allowed)}")

    def entries(self) -> Iterator[tuple[str, Entry]]:
        """The tables inside this one by their names, in the order of the file."""
        for key in self.values:
            yield key, self.entry(key)

    def entry(self, key: str) -> Entry:
        """The table under a key."""
        value = self.values.get(key)
        if not isinstance(value, dict):
            raise self.wrong(key, "must be a table")
        return Entry(self.file, (*self.way, key), value)

    def listed(self, key: str) -> tuple[Entry, ...]:
        """The list of tables under a key; none where the key is missing."""
        values = self.values.get(key, [])
        if not isinstance(values, list) or not all(isinstance(value, dict) for value in values):
            raise self.wrong(key, "must be a list of tables")
        ways = ((*self.way, f"{key} {place}") for place in range(1, len(values) + 1))
        return tuple(Entry(self.file, way, value) for way, value in zip(ways, values, strict=True))

    def text(self, key: str, default: str | None = None) -> str:
        """A text, or the default where the key is missing and there is one."""
        value = self.values.get(key, default)
        if not isinstance(value, str):
            raise self.wrong(key, "must be a text")
        return value

    def one_of(self, key: str, choices: tuple[str, ...], default: str | None = None) -> str:
        """A text that is one of the choices."""
        value = self.text(key, default)
        if value not in choices:
            raise self.wrong(key, f"`{value}` is none of {', '.join(choices)}")
        return value

    def words(self, key: str, choices: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """A list of texts (empty where missing), each one of the choices where they are given."""
        values = self.values.get(key, [])
        if not isinstance(values, list) or not all(isinstance(value, str) for value in values):
            raise self.wrong(key, "must be a list of texts")
        for value in values:
            if choices is not None and value not in choices:
                raise self.wrong(key, f"`{value}` is none of {', '.join(choices)}")
        return tuple(values)

    def flag(self, key: str) -> bool:
        """True or false; false where missing."""
        value = self.values.get(key, False)
        if not isinstance(value, bool):
            raise self.wrong(key, "must be true or false")
        return value

    def number(self, key: str, default: float | None = None) -> float:
        """A number of 0 or more."""
        value = self.values.get(key, default)
        if isinstance(value, bool) or not isinstance(value, (int, float)) or value < 0:
            raise self.wrong(key, "must be a number, not below 0")
        return float(value)

    def source(self, sources: Mapping[str, Source], default: str | None = None) -> Source:
        """The source named under `source`."""
        name = self.text("source", default)
        if name not in sources:
            raise self.wrong("source", f"`{name}` is not in sources.toml")
        return sources[name]

    def figure(self, sources: Mapping[str, Source], source: str | None = None, why: str = "") -> Figure:
        """This table as a figure; `source` and `why` stand in where the row has none of its own."""
        self.only("low", "usual", "high", "source", "why")
        usual = self.number("usual")
        low, high = self.number("low", usual), self.number("high", usual)
        if not low <= usual <= high:
            raise self.wrong("usual", "low <= usual <= high must hold")
        found = self.source(sources, source)
        reason = self.text("why", why)
        if found.read == "assumption" and not reason:
            raise self.wrong("why", "an assumption must say why")
        return Figure(low, usual, high, found, reason)

    def figure_under(self, key: str, sources: Mapping[str, Source]) -> Figure | None:
        """The figure under a key, None where the key is missing."""
        return self.entry(key).figure(sources) if key in self.values else None


def read_file(path: Path) -> Entry:
    """The whole of one TOML file as an entry; raises DataError where it is not TOML."""
    name = path.relative_to(HERE.parent).as_posix() if path.is_relative_to(HERE.parent) else path.name
    try:
        return Entry(name, (), tomllib.loads(path.read_text(encoding="utf-8")))
    except tomllib.TOMLDecodeError as error:
        raise DataError(f"{name}: not readable as TOML: {error}") from error
