"""What each place of a round is worth: said of as many sides as there are, of rounds that are all played."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core
from grammar.core.relays import counts_runs
from grammar.finding import Finding, mistake
from grammar.said import quoting


def worth_of_places(core: Core) -> Iterator[Finding]:
    """Places come of rounds, better ones are worth more, and who is second is told by points."""
    match, sides = core.play.match, len(core.play.sides)
    if not match.places:
        return
    one = ", the next ".join(str(each) for each in match.places[:2])
    if not match.of_rounds or not match.by_points:
        title = "Places score points where those of several rounds are added."
        hint = "Add to finish: 3 rounds are played, more points over all wins"
        if match.of_rounds:
            hint = 'Write "more points over all wins" instead of "more rounds wins".'
    elif len(match.places) > sides:
        title = "{sides} sides play, and {places} places score points."
        hint = "Leave out the last of them, such as: the first side scores {one} points"
    elif list(match.places) != sorted(match.places, reverse=True) or len(set(match.places)) == 1:
        title, hint = "A better place is worth more.", "Write the largest number first."
    elif sides > 2 and len(match.places) > 1 and not core.play.gives_points and not counts_runs(core.play):
        title = "Who is second is told by the points of the round, and nobody scores any."
        hint = "Say what scores points, such as: a ball goes into a bucket: the thrower's side scores 1 point"
    else:
        return
    told = quoting(title, sides=sides, places=len(match.places))
    yield mistake("G-sense", told, core.lines[match.places_lines[0]].span, quoting(hint, one=one))
