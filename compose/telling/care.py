"""The gravest reminders in a few lines, for what is printed; the rest is told by the commands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from compose.care.reminders import AT_PEOPLE
from compose.telling.findings import finding_said
from compose.telling.wording import Wording
from grammar.finding import Finding

MOST_TOLD = 3  # our choice: a card has room for so many


def care_lines(found: Sequence[Finding], wording: Wording) -> Iterator[str]:
    """The three gravest, each as the reminder that it is, and where the others are told."""
    told = dict.fromkeys(finding_said(each, wording).title for each in found)
    for title in list(told)[:MOST_TOLD]:
        yield f"{wording.say('Reminder: {what}', what=title).rstrip('.')}."
    if len(told) > MOST_TOLD:
        number = wording.counted(len(told) - MOST_TOLD, "reminder", "reminders")
        yield wording.say("{number} more: the command check tells all of them.", number=number)


def with_cautions(found: Sequence[Finding], cautions: Iterable[str], wording: Wording) -> tuple[str, ...]:
    """What to take care of, the gravest first: the reminders of what strikes people at their age, the cautions of the
    game and its kit, the other reminders. Each once."""
    lines = tuple(care_lines(found, wording))
    first = dict.fromkeys(finding_said(each, wording).title for each in found if each.code in AT_PEOPLE)
    grave = min(len(first), MOST_TOLD)
    return tuple(dict.fromkeys((*lines[:grave], *cautions, *lines[grave:])))
