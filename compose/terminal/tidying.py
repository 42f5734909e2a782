"""Tidy text of rule files: printed, looked at, or written back."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence
from pathlib import Path

from compose.terminal.answer import FINE, TO_MEND, say, say_json
from compose.terminal.typed.finding_games import read
from compose.terminal.writing import write
from grammar.format import format_file

MANY = 30


def _shown_progress(files: Sequence[Path]) -> Iterable[Path]:
    """The files with a bar on the terminal where there are so many that it takes a while."""
    if len(files) < MANY or not sys.stderr.isatty():
        return files
    from rich.console import Console
    from rich.progress import track

    return track(files, "Reading", console=Console(stderr=True), transient=True)


def tidy_files(files: Sequence[Path], write_back: bool, only_look: bool, as_json: bool) -> int:
    """Tidy each file; the exit code. All are read before any is written."""
    texts = {path: format_file(read(path, as_json)) for path in _shown_progress(files)}
    untidy = [path for path, text in texts.items() if path.read_bytes() != text.encode()]
    if write_back and not only_look:
        for path in untidy:
            write(path, texts[path].encode(), force=True, as_json=as_json)
    if as_json:
        say_json({"files": [{"file": str(p), "tidy": p not in untidy, "text": t} for p, t in texts.items()]})
    elif only_look or write_back:
        for path in files:
            state = "is tidy" if path not in untidy else ("was tidied" if not only_look else "is not tidy")
            say(f"{path} {state}")
    else:
        say("\n".join(texts.values()).rstrip())
    return TO_MEND if only_look and untidy else FINE
