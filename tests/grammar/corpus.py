"""The broken files of tests/grammar/mistakes: each holds one mistake, or as many as its name says (-x5)."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from compose.terminal.typed.finding_games import meaning_of_others
from grammar.finding import Finding
from grammar.mistakes.proofread import proofread
from grammar.mistakes.shown import framed
from library import kit_categories

FOLDER = Path(__file__).with_name("mistakes")
FILES = tuple(sorted(FOLDER.glob("*.rules")))


@cache
def mistakes(path: Path) -> tuple[Finding, ...]:
    """Everything that is wrong with a file, games and modifiers."""
    return tuple(proofread(path.read_bytes(), path.name, kit_categories(), meaning_of_others))


def expected_number(path: Path) -> int:
    """How many mistakes the file was made to hold."""
    several = re.search(r"-x(\d+)$", path.stem)
    return int(several.group(1)) if several else 1


def message(findings: tuple[Finding, ...], path: Path) -> str:
    """The findings as the terminal frames them."""
    lines = path.read_bytes().decode("utf-8-sig", errors="replace").splitlines()

    def source_line(_: str, number: int) -> str | None:
        return lines[number - 1] if 0 < number <= len(lines) else None

    return "\n\n".join("\n".join(framed(finding, source_line)) for finding in findings) + "\n"
