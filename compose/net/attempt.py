"""What somebody tries, as the forecast needs to know it."""

from __future__ import annotations

from grammar.frozen import frozen


@frozen
class Attempt:
    """What somebody tries: all that the forecast needs to say how often and with what chance.

    `aim` is one of "target", "player", "ring", "line", "mate", "none"; `distance_m` comes from the
    floor plan; `share` is the part of this player's attempts that go to this aim (0 to 1).
    `said_chance` (0 to 1) and `said_per_minute` are the text's own figures and win over the norms.
    The text may make every success rarer (`chance_factor`) and every attempt longer (`pace_factor`).
    `width_m` and `height_m` are the target's (0 where it has none). Nobody holds the ball longer than
    `hold_limit_s`; `guards_most` guard what is aimed at; `in_order` only one of a row counts.
    `blockers` stand before each, and stop balls with `block_with`. What flies counts only `after_bounce`,
    what hits a player only `below` a part of the body; what comes by the "floor" or a "wall" does not
    count where that is `ruled_out`, or `catches_ruled_out`; `said_bounced` come by the floor. Nobody goes more than
    `steps_most` steps with the ball. They run `in_turn`: whoever is back sends the next.
    """

    name: str
    skill: str
    ball: str | None
    aim: str
    target: str | None = None
    distance_m: float = 0.0
    width_m: float = 0.0
    height_m: float = 0.0
    share: float = 1.0
    said_chance: float | None = None
    said_per_minute: float | None = None
    said_catch: float | None = None
    catchable: bool = False
    age_years: tuple[float, float] = (8.0, 12.0)
    chance_factor: float = 1.0
    pace_factor: float = 1.0
    hold_limit_s: float | None = None
    guards_most: float | None = None
    in_order: bool = False
    blockers: float = 0.0
    block_with: str | None = None
    after_bounce: bool = False
    below: str | None = None
    steps_most: int | None = None
    said_bounced: float | None = None
    ruled_out: tuple[str, ...] = ()
    catches_ruled_out: tuple[str, ...] = ()
    in_turn: bool = False
