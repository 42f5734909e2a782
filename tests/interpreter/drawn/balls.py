"""Draws where balls come to rest and who fetches them, and writes the lines that say it."""

from __future__ import annotations

from attrs import frozen

from tests.interpreter.drawn.records import Draft


@frozen
class Resting:
    """Where balls come to rest: the phrases that say it, and the line by which each side fetches from there."""

    phrases: tuple[str, ...]
    fetched: tuple[str, ...] = ()
    by_teacher: tuple[str, ...] = ()
    halved: bool = False
    spots: tuple[str, ...] = ()


def restings(draft: Draft, agent: str) -> list[Resting]:
    """All places where a ball may come to rest, with their phrases."""
    behind = tuple(f"behind back line of {side}" for side in draft.sides)
    found = [
        Resting(
            ("behind the back line", "behind the back line of the other side", "behind the other back line"),
            ("players fetch balls from behind their back line", "players fetch balls from behind the back line"),
            (
                "the teacher fetches balls from behind each back line",
                "the teacher fetches balls from behind the back line",
            ),
            spots=behind,
        ),
        Resting(
            (f"behind the {agent}'s back line",),
            ("players of each side fetch balls from behind their back line",),
            spots=behind,
        ),
        Resting(
            ("in the middle", "on the middle line"),
            ("players fetch balls from the middle",),
            ("the teacher fetches balls from the middle",),
            spots=("middle",),
        ),
        *_beside(draft),
        *_of_one(draft, agent),
    ]
    if draft.strip:
        found.append(
            Resting(
                ("in the ditch strip", "in the ditch strip of the other side"),
                ("players fetch balls from the ditch strip", "players fetch balls from their ditch strip"),
                ("the teacher fetches balls from the ditch strip",),
                spots=tuple(f"ditch strip of {side}" for side in draft.sides),
            )
        )
    return [each for each in found if draft.halved or not each.halved]


def _beside(draft: Draft) -> list[Resting]:
    """Places at the edge of the court."""
    return [
        Resting(
            ("in the corner", "in the corner of the other side"),
            ("players fetch balls from the corner", "players fetch balls from their corner"),
            ("the teacher fetches balls from the corner", "the teacher fetches balls from each corner"),
            spots=tuple(f"corner of {side}" for side in draft.sides),
        ),
        Resting(
            ("beside the side line",),
            ("players fetch balls from beside the side line", "players fetch balls from beside their side line"),
            spots=tuple(f"beside side line of {side}" for side in draft.sides),
        ),
    ]


def _of_one(draft: Draft, agent: str) -> list[Resting]:
    """Places of one side alone: in a half, or behind a line that is named."""
    behind = f"behind back line of {draft.sides[-1]}"
    return [
        Resting(
            ("in the half it came from", f"in the {agent}'s half"),
            halved=True,
        ),
        Resting(
            ("in the half it was sent to", "in the half of the other side"),
            halved=True,
        ),
        Resting(
            (f"in the half of {draft.sides[0]}",),
            halved=True,
        ),
        Resting(
            (f"behind the back line of {draft.sides[-1]}",),
            (
                f"players of {draft.sides[-1]} fetch balls from behind their back line",
                f"players of {draft.sides[0]} fetch balls from behind the back line of {draft.sides[-1]}",
            ),
            spots=(behind,),
        ),
    ]


def draw_balls(draft: Draft, agent: str) -> None:
    """Up to two lines of resting balls, mostly with somebody who fetches them."""
    states = draft.dice.sample(["missed", "scored", "caught", ""], draft.dice.choice((0, 0, 1, 1, 2)))
    passed = any(offer.aim == "mate" for offer in draft.offers)
    fetched: set[tuple[str, ...]] = set()
    for state in states:
        resting = draft.dice.choice(restings(draft, agent))
        if (draft.solo and resting.spots != ("middle",)) or (state == "caught" and draft.catcher_unclear):
            continue
        if passed and (state == "" or any("the other" in each for each in resting.phrases)):
            continue
        if state == "caught":
            draft.caught = True
        kind = draft.dice.choice(sorted(draft.balls)) if len(draft.balls) > 1 and draft.in_one_of(2) else "ball"
        draft.say("play", f"a {state + ' ' if state else ''}{kind} rests {draft.dice.choice(resting.phrases)}")
        draft.lies |= set(resting.spots)
        if resting.spots and resting.spots not in fetched and not draft.in_one_of(5):
            fetched.add(resting.spots)
            lines = resting.by_teacher if resting.by_teacher and draft.in_one_of(4) else resting.fetched
            line = draft.dice.choice(lines)
            pace = ", 6 times a minute" if draft.in_one_of(5) else ""
            if not (draft.shut and resting.spots == ("middle",)):
                draft.say("play", line + pace)
