"""Every command under generated calls: its exit code, its words, and what it leaves behind."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.calls.judged import AT_A_TIME, judged_calls
from tests.seed import SEED

CALLS = int(os.environ.get("RULEWEAVE_CALLS", "1000"))


@pytest.mark.parametrize("batch", range(-(-CALLS // AT_A_TIME)))
def test_no_call_does_what_no_call_may(batch: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", "")
    judged = list(judged_calls(SEED, batch, tmp_path))
    told = "\n".join(f"{' '.join(call.words)!r}: {', '.join(wrong)}" for call, _, wrong in judged if wrong)
    assert not told, f"seed {SEED}, batch {batch}:\n{told}"
    assert sum(code != 2 for _, code, _ in judged) > AT_A_TIME * 0.4, "too few calls get as far as an answer"
