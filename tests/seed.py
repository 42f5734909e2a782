"""What draws the cases that a usual run of the tests tries: others each day on which something is committed."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path


def _day_of_the_last_commit() -> str:
    """So that one commit has one sample, whenever and wherever it is tried."""
    day = ["git", "log", "-1", "--format=%cd", "--date=format:%Y%m%d"]
    try:
        told = subprocess.run(day, cwd=Path(__file__).parent, capture_output=True, text=True, check=False)
    except FileNotFoundError:
        return "0"
    return told.stdout.strip() or "0"


SEED = os.environ.get("RULEWEAVE_SEED") or _day_of_the_last_commit()
