"""Tries an example of the page of codes: commands are called, sheets are changed as it says and checked."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from library.load import beginning_paths, class_paths, game_paths, modifier_paths, remix_paths
from tests.terminal.running import typed

_COMMANDS = re.compile(r"`ruleweave (.+?)`")
_CHANGED = re.compile(r"([^:`]+): ((?:`[^`]*` → (?:`[^`]*`(?: / )?)+(?:, )?)+)(?:; `ruleweave (.+)`)?")
_CHANGE = re.compile(r"`([^`]*)` → ((?:`[^`]*`(?: / )?)+)")
CALLS = {
    "class": 'fit "lantern row" --class changed.rules --quick',
    "modifier": 'remix "lantern row" --with changed.rules',
}
CHECK = "check changed.rules --states 500"


def in_words(example: str) -> bool:
    """Whether an example only tells what gives its code."""
    return not _COMMANDS.search(example) and not _CHANGED.fullmatch(example)


def given(example: str, folder: Path) -> set[str]:
    """The codes that an example gives, tried in an empty folder which is the working one."""
    changed = _CHANGED.fullmatch(example)
    if changed is None:
        calls = _COMMANDS.findall(example)
    else:
        title, changes, call = changed.groups()
        sheet = _sheet(title)
        for old, new in _CHANGE.findall(changes):
            assert sheet.count(old) >= 1, f"{title} does not say: {old}"
            sheet = sheet.replace(old, "\n".join(re.findall(r"`([^`]*)`", new)))
        (folder / "changed.rules").write_text(sheet, encoding="utf-8")
        kind = next((kind for kind in CALLS if re.search(rf"^{kind} ", _sheet(title), re.MULTILINE)), "")
        calls = [call or CALLS.get(kind, CHECK)]
    here = str(folder / "changed.rules")  # a name of its own: what was read of a file is kept by its name
    return {code for words in calls for code in called(shlex.split(words.replace("changed.rules", here)))}


def _sheet(title: str) -> str:
    paths = (*game_paths(), *modifier_paths(), *remix_paths(), *class_paths(), *beginning_paths())
    [path] = [path for path in paths if path.stem == title.lower().replace(" ", "-")]
    return path.read_text(encoding="utf-8")


def called(words: list[str]) -> Iterator[str]:
    """The codes in the answer of a command."""
    result = typed(*words, "--json")
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    yield from _codes(json.loads(result.stdout))


def _codes(answer: Any) -> Iterator[str]:
    if isinstance(answer, dict):
        if "severity" in answer:
            yield answer["code"]
        answer = list(answer.values())
    if isinstance(answer, list):
        for each in answer:
            yield from _codes(each)
