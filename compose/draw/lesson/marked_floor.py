"""Whether the lines on the floor do for the next game of a lesson, or it has to be marked anew."""

from __future__ import annotations

from collections.abc import Iterator

import library
from compose.staging.norms import Ability
from compose.staging.staging import Staging
from compose.telling.for_class import courts_said
from compose.telling.wording import Wording


def floor_lines(before: Staging, now: Staging, wording: Wording) -> Iterator[str]:
    """What to do to the floor before the next game: nothing where its courts are as those before."""
    courts = courts_said(now, wording)
    if courts == courts_said(before, wording):
        return
    if within_m(before, now) <= _same_m(now) + 1e-9:
        yield wording.say("The lines stay: {courts} is near enough.", courts=courts_said(before, wording))
    else:
        yield wording.say("Mark the floor anew: {courts}.", courts=courts)


def within_m(before: Staging, now: Staging) -> float:
    """By how much the courts differ at most, along or across, in m; infinite where there are more or fewer, or they
    lie the other way round."""
    if len(before.courts) != len(now.courts) or before.court.turned != now.court.turned:
        return float("inf")
    return max(abs(one - other) for one, other in zip(before.game.court_m, now.game.court_m, strict=True))


def _same_m(staging: Staging) -> float:
    return Ability(library.norms()).read("space lines", "same", staging.ages_years).value
