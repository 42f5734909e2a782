"""Tasks that pass from pupil to pupil: each has one as long as any other, once all have had a turn."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.duties import Duty
from compose.net.net import Net


def never_passed_on(net: Net, usual_minutes: float) -> Iterator[Duty]:
    """The tasks that stay with the same pupils in at least half of all rounds, since these are over before."""
    for duty in net.duties:
        if isinstance(duty.every, float) and duty.every / 60 > usual_minutes:
            yield duty
