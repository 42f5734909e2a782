"""The game with each of its switches turned over: what is to mend there is told of the sheet, which offers it so."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import library
from compose.answer.staged import Staged
from compose.check import Budget, check
from compose.modifiers.turned_switch import Turned, each_turned, lines_of_switches
from compose.net.from_game import net_of
from compose.net.net import Net
from compose.telling.english.findings import findings_told
from grammar.finding import IDLE, Finding, Outcome, Severity, spoken
from grammar.frozen import evolve
from grammar.resolve import resolve
from grammar.said import Written, english, quoting
from library.granted import granted_sheet

CODE, TOO_LARGE = "C-switch", "C-budget"
MOST_STATES = 200_000  # our choice: a tenth of the usual budget, for each switch is a game of its own
TO_MEND = (Severity.ERROR, Severity.WARNING)
ON = "With `{switch}` turned on there is something to mend: {what}"
OFF = "With `{switch}` turned off there is something to mend: {what}"


def switched(game: Staged, known: Sequence[Finding], budget: Budget) -> Iterator[Finding]:
    """A note for each switch with which something is to mend that is not to mend as the switch usually stands.

    `known` is what the check says of the game as it stands; a switch that makes the game too large says nothing.
    """
    told = {(each.code, each.place) for each in known}
    hung = lines_of_switches(game.game.sheet)
    for turned in each_turned(game.game.sheet):
        new = [each for each in _found(game, turned, budget) if (each.code, each.place) not in told]
        new = [each for each in new if each.code != IDLE or each.place.line in hung]  # others may be what it replaces
        if new:
            yield _note(turned, new[0])


def _note(turned: Turned, worst: Finding) -> Finding:
    pattern = ON if turned.on else OFF
    hint = quoting("Write `{line}` to see all that is told then.", line=turned.line)
    in_values = quoting(pattern, switch=turned.name, what=worst.said[0] if worst.said else Written(worst.title))
    found = spoken(CODE, Severity.NOTE, in_values, turned.place, hint, others=(worst.place,))
    # What the check finds holds values of the net, of which only its title has the words.
    title = english(quoting(pattern, switch=turned.name, what=Written(worst.title)))
    return evolve(found, title=title)


def _found(game: Staged, turned: Turned, budget: Budget) -> list[Finding]:
    """What is to mend with one switch turned over, the gravest first: mistakes of lines, else what the check says."""
    outcome = _net_of(game, turned)
    if outcome.value is None:
        told = outcome.findings
    else:
        found = check(outcome.value, evolve(budget, states=min(budget.states, MOST_STATES)), None).findings
        told = findings_told([each for each in found if each.code != TOO_LARGE], outcome.value)
    return sorted((each for each in told if each.severity in TO_MEND), key=lambda each: TO_MEND.index(each.severity))


def _net_of(game: Staged, turned: Turned) -> Outcome[Net]:
    other = resolve(turned.sheet, library.kit_categories())
    if other.value is None:
        return Outcome(None, other.findings)
    return net_of(other.value, granted_sheet(), game.players, game.staging.school_class.ages_years)
