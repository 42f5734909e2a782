"""The hall screen as one document: it holds its look, its script and its games, and loads nothing further."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import Any

from attrs import asdict

from compose.page.answers.hall_values import HallGame
from compose.telling.wording import Wording

STATIC = Path(__file__).parent / "static"
SCRIPTS = ("hall-kept.js", "hall-bell.js", "hall-groups.js", "hall.js")  # one after the other in one scope


@cache
def look_and_script() -> tuple[str, str]:
    """What the document holds instead of loading it."""
    look, *scripts = ((STATIC / name).read_text(encoding="utf-8") for name in ("hall.css", *SCRIPTS))
    return look, "\n".join(('"use strict";', "(() => {", *scripts, "})();"))


def policy(forms: str = "'none'") -> str:
    """The policy of the document: its own look and script by their hashes, nothing from anywhere else."""
    look, script = (f"'sha256-{_hash(each)}'" for each in look_and_script())
    return (
        f"default-src 'none'; style-src {look}; script-src {script}; connect-src 'self'; img-src data:; "
        f"base-uri 'none'; form-action {forms}; frame-ancestors 'none'"
    )


def _hash(text: str) -> str:
    return base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def values_of(
    games: Sequence[HallGame], first: int, wording: Wording, to: str = "", token: str = "", code: str = ""
) -> dict[str, Any]:
    """The values of the template. `to` is where rounds are sent; nowhere from a file that was carried away."""
    data = {
        "games": [asdict(each) for each in games],
        "first": first,
        "to": to,
        "token": token,
        "code": code,
        "full": bool(to),
        "words": _words(wording),
    }
    look, script = look_and_script()
    told = json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return {"games": games, "first": first, "look": look, "script": script, "data": told}


def _words(wording: Wording) -> dict[str, str]:
    say = wording.say
    return {
        "start": say("Start"),
        "stop": say("Stop"),
        "bell": say("The bell! The round is over."),
        "round": say("Round {number} of up to {most} in this game", number="{number}", most="{most}"),
        "one_round": say("Round {number}", number="{number}"),
        "group": say("group {number}", number="{number}"),
        "on": say("On now: {first}; {second}.", first="{first}", second="{second}"),
        "on_court": say("Court {number}: {first}; {second}.", number="{number}", first="{first}", second="{second}"),
        "who": say("Round over: who won?"),
        "who_on": say("Court {number}: who won?", number="{number}"),
        "resting": say("Resting: {groups}.", groups="{groups}"),
        "won": say("Most rounds so far: {groups} ({number}).", groups="{groups}", number="{number}"),
        "next": say("Next: {game}", game="{game}"),
        "earlier": say("Back to {game}", game="{game}"),
        "not_timed": say("This round is not kept: its clock did not run."),
        "less": say("one less"),
        "more": say("one more"),
        "draw": say("A draw"),
        "by_counts": say("By the counts: {winner}.", winner="{winner}"),
        "nobody": say("Nobody"),
        "kept": say("{number} rounds are kept here and not sent yet.", number="{number}"),
        "one_kept": say("One round is kept here and not sent yet."),
        "sent": say("The rounds are on the shelf."),
        "not_sent": say("They could not be sent. They stay here and are sent later."),
        "old": say("This screen has grown old: open it anew from the page, or save the rounds as a file."),
        "full": say("This browser keeps nothing: save the rounds as a file before you close it."),
        "awake": say("The screen is kept awake."),
        "not_awake": say("This browser cannot keep the screen awake: set the phone so that it stays on."),
    }
