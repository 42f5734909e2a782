"""What no call may do: an exit code of another kind, a traceback, control signs, half a file, a file replaced."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from pathlib import Path
from random import Random

from grammar.parse import parse_bytes
from tests.calls.drawn_calls import Call, drawn_calls
from tests.calls.world import make_world
from tests.terminal.running import typed

AT_A_TIME = 100  # after so many calls the folder is made anew


def judged_calls(seed: str, batch: int, folder: Path) -> Iterator[tuple[Call, int, list[str]]]:
    """A hundred calls in an empty folder, each with its exit code and what it did that no call may do.

    The process stands in that folder afterwards, with a shelf of its own there.
    """
    chance = Random(f"{seed} {batch}")
    make_world(folder, chance)
    os.chdir(folder)
    os.environ["XDG_DATA_HOME"] = str(folder / "shelf")
    typed("shelf", "keep", "small.rules", "--shelf", "shelf")
    for call in drawn_calls(AT_A_TIME, chance):
        yield (call, *wrong_with(call, folder))


def wrong_with(call: Call, folder: Path) -> tuple[int, list[str]]:
    """The exit code of a call, and what it did that no call may do; nothing where all is well."""
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file() and "shelf" not in path.parts}
    result = typed(*call.words, COLUMNS="60")
    told_at_the_door = isinstance(result.exception, OSError)  # as what cannot be read or written
    code = 2 if told_at_the_door else result.exit_code
    wrong = []
    if not (told_at_the_door or result.exception is None or isinstance(result.exception, SystemExit)):
        wrong.append(f"raised {result.exception!r}")
    if code not in (0, 1, 2):
        wrong.append(f"ended with {code}")
    if signs := _unseen(result.output):
        wrong.append(f"printed {signs[:3]!r}")
    if "--json" in call.words and code != 2 and not wrong:
        wrong += _wrong_json(result.stdout)
    after = {path for path in folder.rglob("*") if path.is_file() and "shelf" not in path.parts}
    if "--force" not in call.words:
        wrong += [
            f"changed {path.name}" for path, data in before.items() if not path.is_file() or path.read_bytes() != data
        ]
    wrong += [f"left {path.name}" for path in after if path.name.startswith(".")]
    for path in after - before.keys():
        if path.suffix == ".sqlite":  # the index of a shelf that was asked for under an odd name
            continue
        wrong += _unreadable(path, call.words[0])
    return code, wrong


def _unseen(text: str) -> list[str]:
    return [
        sign for sign in text if (ord(sign) < 32 and sign not in "\n") or 127 <= ord(sign) < 160 or sign == "\u202e"
    ]


def _no_number(name: str) -> None:
    raise ValueError(f"{name} is no number of JSON")


def _wrong_json(text: str) -> list[str]:
    try:
        json.loads(text, parse_constant=_no_number)
    except ValueError as error:
        return [f"JSON: {error}"]
    return []


def _unreadable(path: Path, command: str) -> list[str]:
    """Whether what was written is what its name says; a model for a model checker may be called anything."""
    data = path.read_bytes()
    if command in ("remix", "keep", "carry", "merge") and parse_bytes(data, path.name).value is None:
        return [f"wrote {path.name}, which cannot be read"]
    free = command in ("export", "remix", "keep", "carry", "merge")
    starts = {} if free else {".pdf": b"%PDF", ".svg": b"<", ".html": b"<!", ".zip": b"PK"}
    return [] if data.startswith(starts.get(path.suffix, b"")) and data else [f"wrote {path.name}, which is broken"]
