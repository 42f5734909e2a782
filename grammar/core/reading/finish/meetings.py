"""More groups than play at a time: what cannot be said of them."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.ends import Match, Meeting
from grammar.core.game import Core
from grammar.finding import Finding, mistake
from grammar.said import Value, quoting, write


def meeting_of_whom(core: Core) -> Iterator[Finding]:
    """Groups are of two sides that play at a time, for so many rounds, and nothing else is made of the rounds."""
    match = core.play.match
    if match.meeting is None:
        return
    for title, hint in _mistakes(match, len(core.play.sides)):
        yield mistake("G-sense", title, core.lines[match.lines[0]].span, hint)


def _mistakes(match: Match, sides: int) -> Iterator[tuple[Value, Value]]:
    if sides != 2:
        yield (
            "Where a side rests, two others play.",
            (
                'Declare the two sides that play at a time, such as "north and south, 7 players each, mirrored": '
                "the class makes a third group of itself."
            ),
        )
    if match.halves or len(match.lines) > 1:
        yield "Two lines say what the rounds are for.", "Keep one of them."
    if (match.meeting is Meeting.WINNERS_MEET) != (match.courts > 1) and match.meeting is not Meeting.ALL_MEET_ALL:
        both = "The winners of two courts can meet, and on one court the winner can stay on."
        yield both, write("four sides on two courts, winners meet winners, 4 rounds")
    elif match.meeting is Meeting.ALL_MEET_ALL and (match.rounds < 1 or match.rounds % match.till_all_met):
        once = match.till_all_met
        title = quoting(
            "How many rounds are played is not clear: {groups} sides have all met after {once}.",
            groups=match.groups,
            once=once,
        )
        yield title, quoting("Write {once} rounds, or {twice}, or leave the number out.", once=once, twice=2 * once)
    elif match.meeting is not Meeting.ALL_MEET_ALL and match.rounds < 2:
        how = "winners meet winners" if match.courts > 1 else "the winner stays on"
        hint = quoting("Write behind it: {how}, 6 rounds, or: all meet all", how=how)
        yield "How many rounds are played is not clear.", hint
