"""Every command under generated calls: its exit code, its words, and what it leaves behind."""

from __future__ import annotations

import json
import os
from pathlib import Path
from random import Random

import pytest
from drawn_calls import Call, drawn_calls
from world import make_world

from grammar.parse import parse_bytes
from tests.seed import SEED
from tests.terminal.running import typed

CALLS = int(os.environ.get("RULEWEAVE_CALLS", "300"))
AT_A_TIME = 100  # after so many calls the folder is made anew


def _unseen(text: str) -> list[str]:
    return [
        sign for sign in text if (ord(sign) < 32 and sign not in "\n") or 127 <= ord(sign) < 160 or sign == "\u202e"
    ]


def wrong_with(call: Call, folder: Path) -> tuple[int, list[str]]:
    """The exit code of a call, and what it did that no call may do; nothing where all is well."""
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file() and "shelf" not in path.parts}
    result = typed(*call.words, COLUMNS="60")
    wrong = []
    if not (result.exception is None or isinstance(result.exception, SystemExit)):
        wrong.append(f"raised {result.exception!r}")
    if result.exit_code not in (0, 1, 2):
        wrong.append(f"ended with {result.exit_code}")
    if signs := _unseen(result.output):
        wrong.append(f"printed {signs[:3]!r}")
    if "--json" in call.words and result.exit_code != 2 and not wrong:
        wrong += _wrong_json(result.stdout)
    after = {path for path in folder.rglob("*") if path.is_file() and "shelf" not in path.parts}
    if "--force" not in call.words:
        wrong += [
            f"changed {path.name}" for path, data in before.items() if not path.is_file() or path.read_bytes() != data
        ]
    wrong += [f"left {path.name}" for path in after if path.name.startswith(".")]
    for path in after - before.keys():
        wrong += _unreadable(path, call.words[0])
    return result.exit_code, wrong


def _wrong_json(text: str) -> list[str]:
    try:
        json.loads(text, parse_constant=lambda name: pytest.fail(f"{name} in JSON"))
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


@pytest.mark.parametrize("batch", range(-(-CALLS // AT_A_TIME)))
def test_no_call_does_what_no_call_may(batch: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    chance = Random(f"{SEED} {batch}")
    make_world(tmp_path, chance)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "shelf"))
    typed("shelf", "keep", "small.rules", "--shelf", "shelf")
    wrong, answered = {}, 0
    for call in drawn_calls(AT_A_TIME, chance):
        code, found = wrong_with(call, tmp_path)
        answered += code != 2
        if found:
            wrong[" ".join(call.words)] = found
    told = "\n".join(f"{words!r}: {', '.join(found)}" for words, found in wrong.items())
    assert not wrong, f"seed {SEED}, batch {batch}:\n{told}"
    assert answered > AT_A_TIME / 2, "too few calls get as far as an answer"
