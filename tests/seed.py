"""What draws the cases and games that a usual run of the tests tries: others each day, so that all get their turn."""

from __future__ import annotations

import os
from datetime import UTC, datetime

SEED = os.environ.get("RULEWEAVE_SEED", datetime.now(UTC).strftime("%Y%m%d"))
