"""The tables that sentences are read by, kept between runs beside Python's own compiled files and as trusted as they
are.

Lark makes them from rules.lark in about a second; reading them back takes a few milliseconds, and no Lark.
"""

from __future__ import annotations

import marshal
import os
import sys
from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

from attrs import astuple

from grammar.frozen import frozen

HERE = Path(__file__).parent
FOLDER = HERE / "__pycache__"
_SUM_BYTES = 32
END = "$END"
Part = tuple[int, bool, int]


@frozen
class Tables:
    """An LALR(1) parser (Aho, Sethi and Ullman, 1986, section 4.7) in numbers and words.

    `phrases`: the kind of each word or phrase of the language. `open_kinds`: kinds of words that are no fixed ones,
    with their patterns, in the order in which they are tried. `rules`: for each its name, of how many parts it is,
    the name of the node that it makes, the parts that are children of the node (see `Part`), how many children are
    missing behind them, and whether an only child stands for the node. `states`: what to do at a kind or a name:
    go on to that state, or below zero, make a node by rule -1 - number. `starts`: the first and the last state for
    each kind of sentence.

    A part is its number, whether its own children are taken in its place, and how many children are missing before.
    """

    phrases: Mapping[str, str]
    open_kinds: tuple[tuple[str, str], ...]
    rules: tuple[tuple[str, int, str, tuple[Part, ...], int, bool], ...]
    states: tuple[Mapping[str, int], ...]
    starts: Mapping[str, tuple[int, int]]


def tables(text: str, starts: tuple[str, ...]) -> Tables:
    """The tables of a grammar, as kept or made anew."""
    kept = kept_tables(text)
    if kept is not None:
        return kept
    from grammar.tables_by_lark import made_tables

    made = made_tables(text, starts)
    keep_tables(text, made)
    return made


def tables_file(text: str) -> Path:
    """Where the tables for this grammar and this Python are kept."""
    makers = [(HERE / name).read_text(encoding="utf-8") for name in ("language.py", "tables_by_lark.py")]
    key = sha256("\0".join((text, *makers, sys.version)).encode()).hexdigest()[:16]
    return FOLDER / f"rules.{key}.tables"


def kept_tables(text: str) -> Tables | None:
    """The tables from an earlier run, or None where there are none as they were written."""
    try:
        kept = tables_file(text).read_bytes()
    except OSError:
        return None
    return Tables(*marshal.loads(kept[_SUM_BYTES:])) if kept[:_SUM_BYTES] == _sum(kept[_SUM_BYTES:]) else None


def keep_tables(text: str, made: Tables) -> None:
    """Keep tables for the next run; where nothing may be written, the next run makes them again."""
    import tempfile

    name = ""
    data = marshal.dumps(astuple(made, recurse=False))
    try:
        FOLDER.mkdir(exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=".tables.", dir=FOLDER)
        with os.fdopen(handle, "wb") as file:
            file.write(_sum(data) + data)
        os.replace(name, tables_file(text))
    except OSError:
        if name and os.path.exists(name):
            os.unlink(name)


def _sum(data: bytes) -> bytes:
    return sha256(data).digest()
