"""How teachers say that tasks pass from group to group: "every minute batters become fielders, fielders become ..."."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from grammar.heard.saying import WHAT, Saying, saying

_TIME = r"(?:(?:every|each) |after (?:every|each) )(?P<time>minute|round|point|goal|\d+ (?:min|s))"
_WHO = r"(?:all|everybody|everyone|they|(?:all )?(?:the )?(?:players|jobs|roles|tasks|groups))"
_MOVE = (
    r"(?:moves? on|moves? round|rotates?|changes? round|moves? up|"
    r"(?:changes?|swaps?|rotates?)(?: their)? (?:jobs|roles|tasks))"
)
_STEP = rf"(?:(?:the |all )?{WHAT} become (?:the )?{WHAT})"
_STEPS = rf"(?P<steps>{_STEP}(?:(?:, and |, | and ){_STEP})+)"
_LEAD = rf"(?:{_WHO} (?:{_MOVE}|changes?|swaps?)[:,;]? )?"


def _every(match: re.Match[str]) -> str:
    time = match["time"].lower()
    return f"every {'point' if time == 'goal' else time}"


def _all(match: re.Match[str]) -> str:
    return f"all move on {_every(match)}"


def _in_order(match: re.Match[str]) -> str:
    """Who becomes what, put in a row: what the last ones become must be what the first ones are, or go unsaid."""
    steps = list(_of_steps(match["steps"]))
    follow = all(other == one for (_, other), (one, _) in pairwise(steps))
    jobs = [one for one, _ in steps]
    if not follow or (steps[-1][1] != jobs[0] and steps[-1][1] in jobs):
        return match[0]
    jobs += [] if steps[-1][1] == jobs[0] else [steps[-1][1]]
    return f"{', '.join(jobs[:-1])} and {jobs[-1]} move on {_every(match)}"


def _of_steps(text: str) -> Iterator[tuple[str, str]]:
    for step in re.split(r", and |, | and ", text):
        one, _, other = re.sub(r"\b(?:the|all) ", "", step).partition(" become ")
        yield one, other


MOVING_ON: tuple[Saying, ...] = (
    saying(rf"^{_TIME},? {_LEAD}{_STEPS}$", _in_order, "play"),
    saying(rf"^{_LEAD}{_STEPS},? {_TIME}$", _in_order, "play"),
    saying(rf"^{_TIME},? {_WHO} {_MOVE}$", _all, "play"),
    saying(rf"^{_WHO} {_MOVE},? {_TIME}$", _all, "play"),
    saying(rf"^(?P<first>{WHAT}(?:, {WHAT})*,? and players) {_MOVE} {_TIME}$",
           lambda m: f"{m['first']} move on {_every(m)}", "play"),
    saying(rf"^(?P<one>{WHAT}) (?:changes?|swaps?|rotates?)(?: places| jobs| roles| tasks)? with (?:the )?"
           rf"(?P<other>{WHAT}),? {_TIME}$", lambda m: f"{m['one']} and {m['other']} move on {_every(m)}", "play"),
)  # fmt: skip
