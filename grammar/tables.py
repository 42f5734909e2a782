"""What the parser goes by, made of rules.lark by Lark (from_rules.py) and kept between runs.

It is kept beside Python's own compiled files and as trusted as they are: making it takes a second and
Lark, reading it back some milliseconds and nothing of Lark.
"""

from __future__ import annotations

import marshal
import os
import sys
from hashlib import sha256
from importlib.util import find_spec
from pathlib import Path

from grammar.frozen import frozen

FOLDER = Path(__file__).with_name("__pycache__")
_SUM_BYTES = 32
Row = dict[str, int]
Rule = tuple[str, int, str, bool, tuple[tuple[int, bool, int], ...], int]
Phrases = dict[str, tuple[tuple[str, tuple[str, ...]], ...]]


@frozen
class Tables:
    """An LALR parser in plain values.

    `rows` hold, for each state, where a kind of piece or a rule that was made leads: to a state, or where it is
    negative, to the rule `~step`, which is whole. A rule is: its name, how many parts it has, how its branch is called,
    whether one child stands for it, what it keeps of its parts (which part, whether only what is in it, how many
    children that were not said come before), and how many come after. `starts` hold the first and the last state.

    `phrases` are the words of the language by their first word: the kind of piece and its other words, in the order
    in which they are tried; `open_pieces` is a pattern of names, numbers and signs, each kind a group.
    """

    rows: tuple[Row, ...]
    rules: tuple[Rule, ...]
    starts: dict[str, tuple[int, int]]
    phrases: Phrases
    open_pieces: str


def tables_file(text: str) -> Path:
    """Where the tables for this grammar, this Lark and this Python are kept."""
    lark = find_spec("lark")
    assert lark is not None and lark.origin is not None
    makers = (Path(__file__).with_name("from_rules.py"), Path(__file__), Path(lark.origin))
    made_from = "\0".join((text, sys.version, *(maker.read_text(encoding="utf-8") for maker in makers)))
    return FOLDER / f"rules.{sha256(made_from.encode()).hexdigest()[:16]}.tables"


def kept_tables(text: str) -> Tables | None:
    """The tables of an earlier run, or None where there are none as they were written."""
    try:
        kept = tables_file(text).read_bytes()
    except OSError:
        return None
    return Tables(*marshal.loads(kept[_SUM_BYTES:])) if kept[:_SUM_BYTES] == _sum(kept[_SUM_BYTES:]) else None


def keep_tables(text: str, tables: Tables) -> Tables:
    """Keep tables for the next run; where nothing may be written, the next run makes them again."""
    if sys.dont_write_bytecode:
        return tables
    import tempfile

    name = ""
    saved = marshal.dumps((tables.rows, tables.rules, tables.starts, tables.phrases, tables.open_pieces))
    try:
        FOLDER.mkdir(exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=".tables.", dir=FOLDER)
        with os.fdopen(handle, "wb") as file:
            file.write(_sum(saved) + saved)
        os.replace(name, tables_file(text))
    except OSError:
        if name and os.path.exists(name):
            os.unlink(name)
    return tables


def _sum(data: bytes) -> bytes:
    return sha256(data).digest()
