"""Whole answers of the program, pinned in tests/golden/messages; written anew with --reset."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from running import ROOT, run

MISTAKES = ROOT / "tests" / "grammar" / "mistakes"
GOLDEN = ROOT / "tests" / "golden" / "messages"
ANSWERS = {
    "five-slips": ("check", "five-slips-x5.rules"),
    "five-of-meaning": ("check", "five-of-meaning-x5.rules"),
    "unknown-game": ("show", "lantern rwo"),
    "unknown-modifier": ("remix", "lantern row", "--with", "kick insted"),
    "clashing-modifiers": ("remix", "lantern row", "--with", "kick instead", "--with", "roll instead"),
    "value-outside-its-range": ("remix", "lantern row", "--with", "add balls, n 99"),
    "modifier-that-does-not-fit": ("remix", "lantern row", "--with", "nobody is out"),
    "modifier-without-effect": ("remix", "lantern row", "--with", "hold limit, time 10 s"),
    "too-few-pupils": ("check", "lantern row", "--pupils", "5"),
    "no-such-file": ("check", "no-such-file.rules"),
}


@pytest.mark.parametrize("name", sorted(ANSWERS))
def test_answer_is_the_pinned_one(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, pinned: Callable[[str, Path], None]
) -> None:
    for file in ("five-slips-x5.rules", "five-of-meaning-x5.rules"):
        shutil.copy(MISTAKES / file, tmp_path)
    monkeypatch.chdir(tmp_path)
    result = run(*ANSWERS[name])
    pinned(f"{result.output.rstrip()}\n\nexit code {result.exit_code}\n", GOLDEN / f"{name}.txt")
