"""Where the shelf is unless the teacher names another place."""

from __future__ import annotations

import os
from pathlib import Path

SETTING = "RULEWEAVE_SHELF"


def usual_folder() -> Path:
    """What the setting says, or else the platform's folder for a user's data."""
    named = os.environ.get(SETTING)
    if named:
        return Path(named)
    from platformdirs import user_data_path

    return user_data_path("ruleweave", appauthor=False) / "shelf"
