"""The large case by hand: two sides of players, lanterns and shared balls, with returns by catching.

Every throw sends the ball to the other half, whatever its outcome. With 14 against 14, 6 lanterns
each and 8 balls play reaches 90,384 markings, 26,880 of them ends.
"""

from __future__ import annotations

from compose.net.attempt import Attempt
from compose.net.net import Bell, Comparison, Effect, End, Move, Net, Place, Rate, Rule, Transition
from grammar.core.values import AreaId, At, KindId, Landmark, Posture, Presence, SideId, Spot
from grammar.span import nowhere
from tests.check.worded import worded

SIDES = ("north", "south")
ALWAYS = Comparison((), "<=", 0)
IN, QUEUE, STANDING, DOWN, BALLS = range(5)


def lantern_row(players: int, lanterns: int, balls: int, bell_s: float | None = None) -> Net:
    """The net with so many players and lanterns on each side and so many balls in all."""
    told = [Rule(text, nowhere("lantern row (invented)")) for text in ("throw", "fall", "queue", "catch", "win")]
    places = [place for number, side in enumerate(SIDES) for place in _places(side, players, lanterns, balls, number)]
    transitions = [t for number in (0, 1) for t in _throws(number, told)]
    ends = tuple(
        End(
            worded(f"{SIDES[1 - loser]} wins: {SIDES[loser]} has {what}"),
            SIDES[1 - loser],
            _none(loser, place),
            told[4],
        )
        for loser in (0, 1)
        for place, what in ((STANDING, "no lanterns standing"), (IN, "no players in"))
    )
    bell = Bell(bell_s, (*_leads(told[4]), End(worded("a draw"), None, _level(), told[4])), told[4]) if bell_s else None
    return Net(
        "Lantern Row (invented)",
        SIDES,
        tuple(places),
        tuple(transitions),
        (),
        ends,
        bell,
        tuple(told),
        False,
        SIDES,
        plurals=((KindId("ball"), "balls"), (KindId("lantern"), "lanterns")),
    )


def _places(side: str, players: int, lanterns: int, balls: int, number: int) -> list[Place]:
    stands: dict[str, Presence | Posture | At] = {
        "in": Presence.PLAYING,
        "queue": At(Spot(AreaId("queue"), SideId(side))),
        "up": Posture.UP,
        "down": Posture.DOWN,
        "balls": At(Spot(Landmark.HALF, SideId(side))),
    }

    def place(name: str, token: str, most: int, start: int, *, kind: str | None = None, final: bool = False) -> Place:
        return Place(f"{side} {name}", token, most, start, side, kind, final, stands[name])

    in_half = (balls + 1 - number) // 2
    return [
        place("in", "player", players, players),
        place("queue", "player", players, 0),
        place("up", "target", lanterns, lanterns, kind="lantern"),
        place("down", "target", lanterns, 0, kind="lantern", final=True),
        place("balls", "ball", balls, in_half, kind="ball"),
    ]


def _throws(side: int, told: list[Rule]) -> list[Transition]:
    mine, other = 5 * side, 5 * (1 - side)
    ball = Move(mine + BALLS, other + BALLS, 1, told[0])
    returns = Move(other + QUEUE, other + IN, 1, told[3])
    aims: list[tuple[str, Effect]] = [
        ("target", Move(other + STANDING, other + DOWN, 1, told[1])),
        ("player", Move(other + IN, other + QUEUE, 1, told[2])),
    ]
    result = []
    for aim, success in aims:
        attempt = Attempt(f"throw at {aim}", "overarm throw", "foam ball", aim, share=0.5, catchable=True)
        rate = Rate(((mine + IN,), (mine + BALLS,)))
        for outcome, effects in (
            ("success", (ball, success)),
            ("caught", (ball, returns)),
            ("missed", (ball,)),
        ):
            words = f"a {SIDES[side]} player throws at a {SIDES[1 - side]} {aim}: {outcome}"
            rules = tuple(dict.fromkeys(effect.rule for effect in effects))
            result.append(Transition(worded(words), SIDES[side], False, attempt, outcome, rate, ALWAYS, effects, rules))
    return result


def _none(side: int, place: int) -> Comparison:
    return Comparison(((1, 5 * side + place),), "<=", 0)


def _leads(rule: Rule) -> tuple[End, ...]:
    return tuple(
        End(
            worded(f"{SIDES[side]} has more lanterns standing"),
            SIDES[side],
            Comparison(((1, 5 * side + STANDING), (-1, 5 * (1 - side) + STANDING)), ">=", 1),
            rule,
        )
        for side in (0, 1)
    )


def _level() -> Comparison:
    return Comparison(((1, STANDING), (-1, 5 + STANDING)), "==", 0)
