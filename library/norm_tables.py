"""The norms: what pupils can do, how long things take, how much room they need; each file is read when it is asked."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import pairwise
from types import MappingProxyType

from library.load import sources
from library.reading import HERE, Entry, read_file
from library.records import Norms, Row, Table

AGES = re.compile(r"(\d+)-(\d+)")


@cache
def norms() -> Norms:
    """What pupils can do, how long things take, how much room they need."""
    return Norms(Tables())


class Tables(Mapping[str, Table]):
    """The tables of all norms by file and name; a file is read when one of its tables is asked for first."""

    def __getitem__(self, title: str) -> Table:
        return tables_of(title.split(" ", 1)[0])[title]

    def __iter__(self) -> Iterator[str]:
        for path in sorted((HERE / "norms").glob("*.toml")):
            yield from tables_of(path.stem)

    def __len__(self) -> int:
        return sum(1 for _ in self)


@cache
def tables_of(stem: str) -> Mapping[str, Table]:
    """The tables of one file of norms; none where there is no such file."""
    path = HERE / "norms" / f"{stem}.toml"
    found = read_file(path).entries() if path.is_file() else ()
    return MappingProxyType({f"{stem} {name}": table_from(f"{stem} {name}", entry) for name, entry in found})


def table_from(title: str, entry: Entry) -> Table:
    """A norm: a few words about it, then one group of rows for each name."""
    better = entry.one_of("better", ("higher", "lower", "neither"))
    told = ("about", "unit", "better")
    groups = {key: rows_from(entry.entry(key)) for key in entry.values if key not in told}
    return Table(title, entry.text("about"), entry.text("unit"), better, MappingProxyType(groups))


def rows_from(group: Entry) -> tuple[Row, ...]:
    """The rows of one name: `all = {...}` alone, or one row for each age band, without overlap."""
    source, why = group.text("source", ""), group.text("why", "")
    rows: list[Row] = []
    for key in group.values:
        if key in ("source", "why"):
            continue
        figure = group.entry(key).figure(sources(), source or None, why)
        if key == "all":
            rows.append(Row(None, figure))
        elif found := AGES.fullmatch(key):
            rows.append(Row((int(found[1]), int(found[2])), figure))
        else:
            raise group.wrong(key, "must be `all` or ages such as 8-9")
    return in_order(group, rows)


def in_order(group: Entry, rows: list[Row]) -> tuple[Row, ...]:
    """The rows youngest first; raises DataError for none, for `all` beside others, for ages that overlap."""
    if not rows or (len(rows) > 1 and any(row.ages is None for row in rows)):
        raise group.wrong("all", "a norm needs `all` alone or rows by age")
    ordered = sorted(rows, key=lambda row: row.ages or (0, 0))
    for younger, older in pairwise(ordered):
        if younger.ages and older.ages and younger.ages[1] >= older.ages[0]:
            raise group.wrong(f"{older.ages[0]}-{older.ages[1]}", "overlaps the band before it")
    return tuple(ordered)
