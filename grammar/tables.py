"""Parsing tables kept between runs, beside Python's own compiled files and as trusted as they are.

Making them from rules.lark takes a quarter of a second, reading them back a few milliseconds.
"""

from __future__ import annotations

import os
import pickle
import sys
from hashlib import sha256
from pathlib import Path

import lark
from lark import Lark

FOLDER = Path(__file__).with_name("__pycache__")


def tables_file(text: str) -> Path:
    """Where the tables for this grammar, this Lark and this Python are kept."""
    made_from = "\0".join((text, Path(__file__).with_name("language.py").read_text(encoding="utf-8")))
    key = sha256(f"{made_from}{lark.__version__}{sys.version}".encode()).hexdigest()[:16]
    return FOLDER / f"rules.{key}.tables"


def kept_tables(text: str) -> Lark | None:
    """The parser from an earlier run, or None where there is none that can be read."""
    try:
        with tables_file(text).open("rb") as file:
            return Lark.load(file)
    except (OSError, EOFError, pickle.UnpicklingError, AttributeError, KeyError, TypeError):
        return None


def keep_tables(text: str, parser: Lark) -> Lark:
    """Keep a parser for the next run; where nothing may be written, the next run makes it again."""
    if sys.dont_write_bytecode:
        return parser
    import tempfile

    name = ""
    try:
        FOLDER.mkdir(exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=".tables.", dir=FOLDER)
        with os.fdopen(handle, "wb") as file:
            parser.save(file)
        os.replace(name, tables_file(text))
    except OSError:
        if name and os.path.exists(name):
            os.unlink(name)
    return parser
