"""The reminders of a game as it is staged for a class."""

from __future__ import annotations

import library
from compose.care.reminders import reminders
from compose.care.scene import Scene
from compose.staging.resolved import resolved
from compose.staging.staging import Staging
from grammar.finding import Finding


def care_of(staging: Staging) -> tuple[Finding, ...]:
    """What can hurt on the commonest court, by the ages of the class; nothing where there is no court."""
    if not staging.courts:
        return ()
    room = staging.room if staging.room is not None and staging.room.fits else None
    strips = (room.beside, room.behind) if room is not None else (None, None)
    core, kit, norms = resolved(staging.game), library.kit_names(), library.norms()
    return reminders(Scene(core, staging.court.floor, staging.ages_years, kit, norms, *strips))
