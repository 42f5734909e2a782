"""Where the net still reads a sheet otherwise than the second reader: each with the reason; the list only shrinks."""

from __future__ import annotations

import pytest

FERRY = "a pass flies to where the mate stands: to one's own half where one's own bench lies"
FALLS = "what a rule gives for a target that is knocked lets it fall all the same"
QUEUE = "a queue without an owner is that of whoever acted; its queue is that of the side spoken of"
REFUSED = 'the sheet is refused for "their" of whom nobody has spoken, and waits for a mended line'
DISAGREE = {
    "stranded-balls": REFUSED,
    "a strip before each back line-fetched": FALLS,
    "a strip before each back line-lie": FALLS,
    "a zone across the middle-fetched": FALLS,
    "a zone across the middle-lie": FALLS,
    "behind the back line-balls": FALLS,
    "behind the back line-soft balls": FALLS,
    "both-fetched": FALLS,
    "both-lie": FALLS,
    "cairn-keepers": FALLS,
    "first-hit-wins": FALLS,
    "swaps with the queue": FALLS,
    "the ditch strip-balls": FALLS,
    "the ditch strip-soft balls": FALLS,
    "the middle-balls": FALLS,
    "the middle-soft balls": FALLS,
    "while lines": FALLS,
    "test_a_random_game": FALLS,
    "wins at once": FALLS,
    "add-balls": FERRY,
    "bench-too-small": FERRY,
    "best-of-rounds": FERRY,
    "big-light-balls": FERRY,
    "change-ends": FERRY,
    "change-tasks": FERRY,
    "court-of-this-size": FERRY,
    "draw-at-once": FERRY,
    "ferry-bench": FERRY,
    "ferry-bench fewer-balls": FERRY,
    "fetchers": FERRY,
    "few-wait": FERRY,
    "fewer-balls": FERRY,
    "hits-count": FERRY,
    "hold-limit": FERRY,
    "light-cue": FERRY,
    "longer-court": FERRY,
    "narrower-court": FERRY,
    "no-end": FERRY,
    "no-guard-strip": FERRY,
    "odd-pupil-changes": FERRY,
    "odd-pupil-keeps-the-score": FERRY,
    "open-fetching": FERRY,
    "pass-first": FERRY,
    "plain-rules": FERRY,
    "seated-play": FERRY,
    "shorter-court": FERRY,
    "small-balls": FERRY,
    "softer-balls": FERRY,
    "sound-cue": FERRY,
    "time-limit-without-a-winner": FERRY,
    "two-games-side-by-side": FERRY,
    "uneven-sides": FERRY,
    "until-the-clock": FERRY,
    "walking-play": FERRY,
    "weaker-hand": FERRY,
    "who-is-hit-waits": FERRY,
    "wider-court": FERRY,
    "changing places": QUEUE,
    "then one returns": QUEUE,
    "when a count becomes true": QUEUE,
}


@pytest.fixture(autouse=True)
def known(request: pytest.FixtureRequest) -> None:
    """Marks the cases on which both are known to disagree; a module of tests imports it."""
    case = getattr(getattr(request.node, "callspec", None), "id", request.node.name)
    if case in DISAGREE:
        request.applymarker(pytest.mark.xfail(reason=DISAGREE[case], strict=False))
