"""The one value that all outputs speak from."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from compose.answer.staged import Staged
from compose.care.of_staging import care_of
from compose.check import Facts, StateSpace
from compose.net.match import Match
from compose.telling.wording import Wording
from grammar.finding import NOT_PROVED, Finding, Severity
from grammar.frozen import frozen

if TYPE_CHECKING:
    from compose.forecast.answers import Answers
    from compose.forecast.forecast import Forecast
    from compose.forecast.matches import GameOdds
    from compose.forecast.rounds.waits import Waits

CLASS, CARE, PROVED, FORECAST = "class", "care", "proved", "forecast"


@frozen(eq=False)
class Answer:
    """What is known of a game for a class: three sets of findings, and what they were got from.

    `of_class` holds what was found when the game was staged for the class.
    `proved` holds what was found in the sheet, in the net and by the check; `facts` says how much was looked at
    (None: the situations cannot even be numbered), `space` is what was looked at. `added` holds what only the
    forecast finds, None where it was not asked; `forecast` may be missing even then, and `added` says why.
    `facts`, `space` and `forecast` are those of the commonest kind of court, `others` the answers of the others.
    """

    staged: Staged
    proved: tuple[Finding, ...]
    facts: Facts | None
    space: StateSpace | None
    forecast: Forecast | None = None
    added: tuple[Finding, ...] | None = None
    others: tuple[Answer, ...] = ()

    @property
    def of_class(self) -> tuple[Finding, ...]:
        """What there is to say of pupils, courts, hall and kit."""
        return self.staged.staging.findings

    @property
    def care(self) -> tuple[Finding, ...]:
        """What can hurt: reminders, the gravest first. They are no findings to mend, and none of `findings`."""
        return care_of(self.staged.staging)

    @property
    def shows(self) -> tuple[str, ...]:
        """The names of the sets that it holds."""
        return (CLASS, CARE, PROVED) if self.added is None else (CLASS, CARE, PROVED, FORECAST)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All of its findings, those of the class first."""
        return (*self.of_class, *self.proved, *(self.added or ()))

    @property
    def whole(self) -> bool:
        """Whether every situation was looked at, so that what is not said is not there."""
        return self.facts is not None and self.facts.complete and all(each.whole for each in self.others)

    @property
    def match(self) -> Match:
        """What the sheet calls a game."""
        return self.staged.net.match

    @property
    def odds(self) -> GameOdds | None:
        """Who wins the game how often: all its rounds and both halves."""
        return self.forecast.game if self.forecast is not None else None

    @property
    def numbers(self) -> Answers | None:
        """The few numbers in which games are compared: length, odds, turns, time not playing; of the whole class."""
        if not self._forecasts:
            return None
        from compose.answer.whole_class import whole_class

        return whole_class([(game, told.band.usual) for game, told in self._forecasts])

    @property
    def active_in_round(self) -> float | None:
        """The share of a round in which a pupil of the class is active; None where it was not forecast."""
        if not self._forecasts:
            return None
        from compose.answer.whole_class import active_in_round

        return active_in_round(self._forecasts)

    @property
    def _forecasts(self) -> tuple[tuple[Staged, Forecast], ...]:
        """Each kind of court with its forecast; none where one is missing."""
        told = [(each.staged, each.forecast) for each in (self, *self.others)]
        known = tuple((game, forecast) for game, forecast in told if forecast is not None)
        return known if len(known) == len(told) else ()

    @property
    def waits(self) -> tuple[Waits, ...]:
        """How long pupils wait in each place in which they do not play; none before the forecast."""
        own = self.forecast.waits if self.forecast is not None else ()
        return (*own, *(wait for other in self.others for wait in other.waits))

    @property
    def round_minutes(self) -> float | None:
        """The mean length of a round; None where it was not forecast, or a round may never end."""
        mean = self.numbers.minutes.value if self.numbers is not None else math.inf
        return mean if mean < math.inf else None


def with_new(findings: Sequence[Finding], more: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings with those of others that say something new: of another code, or of another line."""
    known = {(each.code, each.place) for each in findings}
    return (*findings, *(each for each in more if (each.code, each.place) not in known))


def to_mend(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings that ask the teacher to act, the gravest first; notes are only to be known, and how far a look went
    asks nothing of the sheet."""
    asked = [each for each in findings if each.code not in NOT_PROVED]
    wrong = [each for each in asked if each.severity is Severity.ERROR]
    return (*wrong, *(each for each in asked if each.severity is Severity.WARNING))


def not_proved(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings that say that not all was looked at."""
    return tuple(each for each in findings if each.code in NOT_PROVED)


def more_to_know(findings: Sequence[Finding], wording: Wording) -> str:
    """How much there is to know besides what is to mend and how far a look went; "" where there is nothing."""
    more = len(findings) - len(to_mend(findings)) - len(not_proved(findings))
    things = wording.counted(more, "thing", "things")
    return wording.say("{things} more to know: see check and forecast.", things=things) if more else ""
