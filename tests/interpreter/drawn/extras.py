"""Draws what stands beside the rules: switches, lines that the check does not play, and where nobody fetches."""

from __future__ import annotations

from tests.interpreter.drawn.records import Draft

OF_EACH_SIDE = tuple(
    f"{who} balls from behind {whose} back line"
    for who in ("players fetch", "players of each side fetch", "the teacher fetches")
    for whose in ("their", "the", "each")
)


def draw_extras(draft: Draft) -> None:
    """A rule that hangs on a switch, a line in quotes, a place from where nobody fetches."""
    if draft.lines["when"] and draft.in_one_of(8):
        if draft.in_one_of(2):
            draft.say("head", "switch hard play, usually on")
            number = draft.dice.randrange(len(draft.lines["when"]))
            draft.lines["when"][number] = f"with hard play, {draft.lines['when'][number]}"
        else:
            draft.say("head", "switch hard play, usually off")
            draft.say("when", "with hard play, a ball is missed: the thrower is out")
    if draft.in_one_of(6):
        draft.say("play", '"A guard walks beside a carrier."')
    fetched = any("back line" in line for line in draft.lines["play"] if "fetch" in line)
    wide = any(line.split(",")[0] in OF_EACH_SIDE for line in draft.lines["play"])
    if draft.halved and not draft.solo and wide and draft.in_one_of(3):
        draft.say("play", f"nobody fetches balls from behind the back line of {draft.sides[0]}")
    if draft.halved and not draft.solo and not fetched and draft.in_one_of(8):
        draft.say("play", "nobody fetches balls from behind the back line")
        draft.lies |= {f"behind back line of {side}" for side in draft.sides}
