"""Check and forecast of games that once filled the memory, each in a process that may have only so much of it."""

from __future__ import annotations

import json
import os
import resource
import subprocess
import sys
from pathlib import Path

import pytest

MOST_BYTES = 3_000_000_000
THAW = """
game Slow Thaw
space
  court 18 m by 9 m, halved across
  frost queue: beside each half
sides
  frost and ember, 6 to 14 players each, mirrored
kit
  8 foam balls
set-up
  4 foam balls in each half
play
  players stay in their half
  players underarm throw a foam ball at the players of the other side
  {back}
  a ball is held at most 10 s
when
  a player is hit: that player waits in the frost queue
  a ball is caught: play goes on
finish
  a side wins when the other side has no players in
"""
SOON_BACK = (
    "the teacher frees the first in each queue, 40 times a minute",
    "whoever waits in the frost queue comes back after 10 s",
    "whoever waits in the frost queue comes back after 1 s",
)


def limited() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))


def answer(*words: str) -> tuple[int, dict[str, object]]:
    """The exit code and the answer of the program, run with no more memory than allowed."""
    done = subprocess.run(
        [sys.executable, "-m", "compose.terminal.main", *words, "--json"],
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=limited,
        env={**os.environ, "OPENBLAS_NUM_THREADS": "1"},  # each of its threads would reserve memory
    )
    assert "Traceback" not in done.stderr, done.stderr
    return done.returncode, json.loads(done.stdout)


@pytest.mark.sample(1)
@pytest.mark.skipif(sys.platform != "linux", reason="the limit of the address space is that of Linux")
@pytest.mark.parametrize("back", SOON_BACK)
def test_a_round_that_no_lesson_holds(back: str, tmp_path: Path) -> None:
    """Whoever is hit is back at once, so that hardly ever a whole side waits: check has nothing against it."""
    sheet = tmp_path / "slow-thaw.rules"
    sheet.write_text(THAW.format(back=back), encoding="utf-8")
    code, said = answer("check", str(sheet))
    assert code in (0, 1) and said["findings"] is not None
    code, said = answer("forecast", str(sheet))
    findings = said["findings"]
    assert isinstance(findings, list) and code == 1
    assert "F-long-round" in {finding["code"] for finding in findings}
