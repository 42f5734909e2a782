"""Lines about hits or touches of players in a game in which nobody tries to hit or to touch any."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.core.game import Play
from grammar.core.rules import ON_A_PLAYER, Happening, Result, Rule
from grammar.core.success import success_of


def unaimed(play: Play) -> Mapping[int, Result]:
    """What is never tried, by the number of the line that is about it and about nothing else."""
    tried = {success_of(attempt.skill, attempt.aim) for _, attempt in play.tries}
    about: dict[int, set[Result | None]] = {}
    for rule in play.rules:
        about.setdefault(rule.lines[0], set()).add(_asked(rule))
    return {
        number: result
        for number, asked in about.items()
        for result in asked
        if len(asked) == 1 and result is not None and result not in tried
    }


def _asked(rule: Rule) -> Result | None:
    """What somebody has to try for it: a ball that hits too high was meant to hit, too."""
    if not isinstance(rule.trigger, Happening) or rule.trigger.result not in ON_A_PLAYER:
        return None
    return Result.HIT if rule.trigger.result is Result.HIGH else rule.trigger.result
