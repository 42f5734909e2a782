"""Turns of phrase for hits that do not count; they come among those of turns.py."""

from __future__ import annotations

from grammar.heard.saying import WHAT, saying

_ANY = rf"(?:an? |the |any |each |every )?{WHAT}"

HIT_TURNS = (
    saying(
        r"^(?:a hit|hits|a ball|balls) (?:in the face|(?:on|at|in) the head) (?:do|does) not count$",
        "a hit above the shoulder does not count",
        "play",
    ),
    saying(
        r"^(?:an? |any |the )?players? hit above the (shoulder|hip|knee) (?:do|does) not count$",
        r"a hit above the \1 does not count",
        "play",
    ),
    saying(
        rf"^(?:a hit|hits) (?:on|of|at) ({_ANY}) (after a bounce|off the wall) (do|does) not count$",
        r"\1 hit \2 \3 not count",
        "play",
    ),
)
