"""Parsing tables kept between runs, beside Python's own compiled files and as trusted as they are.

Making them from rules.lark takes a quarter of a second, reading them back a few milliseconds.
"""

from __future__ import annotations

import os
import sys
from hashlib import sha256
from io import BytesIO
from pathlib import Path

import lark
from lark import Lark

FOLDER = Path(__file__).with_name("__pycache__")
_SUM_BYTES = 32


def tables_file(text: str) -> Path:
    """Where the tables for this grammar, this Lark and this Python are kept."""
    made_from = "\0".join((text, Path(__file__).with_name("language.py").read_text(encoding="utf-8")))
    key = sha256(f"{made_from}{lark.__version__}{sys.version}".encode()).hexdigest()[:16]
    return FOLDER / f"rules.{key}.tables"


def kept_tables(text: str) -> Lark | None:
    """The parser from an earlier run, or None where there is none as it was written."""
    try:
        kept = tables_file(text).read_bytes()
    except OSError:
        return None
    # Lark's own cache looks at no sum: of damaged tables most raise, and some would read sentences wrongly.
    return Lark.load(BytesIO(kept[_SUM_BYTES:])) if kept[:_SUM_BYTES] == _sum(kept[_SUM_BYTES:]) else None


def keep_tables(text: str, parser: Lark) -> Lark:
    """Keep a parser for the next run; where nothing may be written, the next run makes it again."""
    if sys.dont_write_bytecode:
        return parser
    import tempfile

    name = ""
    saved = BytesIO()
    parser.save(saved)
    try:
        FOLDER.mkdir(exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=".tables.", dir=FOLDER)
        with os.fdopen(handle, "wb") as file:
            file.write(_sum(saved.getvalue()) + saved.getvalue())
        os.replace(name, tables_file(text))
    except OSError:
        if name and os.path.exists(name):
            os.unlink(name)
    return parser


def _sum(data: bytes) -> bytes:
    return sha256(data).digest()
