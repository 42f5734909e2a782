"""Two readings of one game side by side: the states of the second reader, counted, and those of the net."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence

import numpy as np
from attrs import frozen

from compose.check import StateSpace, explore, markings
from compose.net.net import All, AnyOf, Comparison, Net, Not, Place
from grammar.core.values import At, Landmark, Posture, Presence, SideId
from grammar.core.values import Spot as CoreSpot
from grammar.game import Game
from tests.interpreter.board import DOWN, HANDS, IN, OUT, UP, Spot, State
from tests.interpreter.hours import WITH_THE_TEACHER, clock, moments, next_point
from tests.interpreter.rounds import DRAW, Round, Seen, reachable
from tests.interpreter.rows import key_of as row_key
from tests.interpreter.rows import rows_of
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import granted, net_in

Key = tuple[str, ...]
Counted = frozenset[tuple[Key, int]]


@frozen
class Reading:
    """What is known of a game: every counted state with its result, what is one move away, what the bell says."""

    results: dict[Counted, str | None]
    moves: dict[Counted, set[Counted]]
    bell: dict[Counted, str | None]

    def without_idle_things(self, other: Reading) -> Reading:
        """This reading without the things that the other does not count at all, which nothing may ever change."""
        counted = {key[1] for state in other.results for key, _ in state if key[0] == "target"}
        things = {each for state in self.results for each in state if each[0][0] == "target"}
        idle = {each for each in things if each[0][1] not in counted}
        assert all(idle <= state for state in self.results), "what is not counted changes"
        return Reading(
            {state - idle: result for state, result in self.results.items()},
            {state - idle: {each - idle for each in after} for state, after in self.moves.items()},
            {state - idle: result for state, result in self.bell.items()},
        )

    def differs(self, other: Reading) -> str:
        """What the two readings do not have in common, "" for nothing."""
        mine, its = set(self.results), set(other.results)
        said = [f"only here {_some(mine - its)}"] if mine - its else []
        said += [f"only there {_some(its - mine)}"] if its - mine else []
        for state in mine & its:
            if self.results[state] != other.results[state]:
                said.append(f"{self.results[state]} or {other.results[state]} in {sorted(state)}")
            elif self.moves.get(state) != other.moves.get(state):
                here, there = self.moves.get(state, set()), other.moves.get(state, set())
                said.append(
                    f"from {sorted(state)} only here to {_some(here - there)}, only there to {_some(there - here)}"
                )
            elif self.bell.get(state) != other.bell.get(state):
                said.append(f"the clock {self.bell.get(state)} or {other.bell.get(state)} in {sorted(state)}")
            if len(said) > 2:
                break
        return "\n".join(said)

    def within(self, other: Reading) -> bool:
        """Whether all that is known here is known there, too."""
        return all(
            state in other.results
            and other.results[state] == result
            and self.moves.get(state, set()) <= other.moves.get(state, set())
            for state, result in self.results.items()
        )

    @property
    def dead_ends(self) -> set[Counted]:
        return {state for state, result in self.results.items() if result is None and not self.moves.get(state)}


def _some(states: set[Counted]) -> str:
    return str([sorted(state) for state in sorted(states, key=sorted)[:2]])


def key_of(place: Place) -> Key:
    """What a place of a net counts, in words that both readings have."""
    owner = place.side or "-"
    if place.load is not None:
        way = (*_spot_words(place.load.start), *_spot_words(place.load.goal))
        return ("player", owner, place.kind or "-", IN, "with", place.load.kind.key, *way)
    left = () if place.lives is None else (str(place.lives),)
    match place.token, place.standing:
        case "player", At(spot=spot):
            return ("player", owner, place.kind or "-", *_spot_words(spot), *left)
        case "player", Presence() as presence:
            return ("player", owner, place.kind or "-", IN if presence is Presence.PLAYING else OUT, *left)
        case "ball" | "load", At(spot=spot):
            return ("ball", place.kind or "-", *_spot_words(spot))
        case "target", At(spot=spot):
            return ("target", place.kind or "-", owner, "brought", *_spot_words(spot))
        case "target", posture:
            return ("target", place.kind or "-", owner, DOWN if posture is Posture.DOWN else UP)
    token, *rest = place.name.split("/")
    return (token, *rest)


def _spot_words(spot: CoreSpot) -> Key:
    of = spot.of.value if isinstance(spot.of, Landmark) else spot.of.key
    owner = spot.owner.key if isinstance(spot.owner, SideId) else "-"
    part = spot.part.value if spot.role is None else f"of {spot.role.key}"
    return ("middle" if spot.of is Landmark.MIDDLE_LINE else of, part, owner)


def _words(spot: Spot) -> Key:
    return (spot.place, spot.part, spot.owner or "-")


def count(sheet: Sheet, state: State) -> Counted:
    """The counting map: from the state with names to how many there are of each."""
    found: Counter[Key] = Counter()
    for pupil in state.pupils:
        where = (pupil.where,) if isinstance(pupil.where, str) else _words(pupil.where)
        left = (str(max(pupil.lives, 0)),) if pupil.lives else ()
        load = pupil.load
        carried = ("with", load.kind, *_words(load.start), *_words(load.goal)) if load else ()
        found[("player", pupil.side, pupil.role or "-", *where, *left, *carried)] += 1
    for ball in state.balls:
        if ball.spot == HANDS:
            continue  # counted with who carries it
        if ball.spot == WITH_THE_TEACHER:
            found["store", ball.kind] += 1
        else:
            found["ball", ball.kind, *_words(ball.spot)] += 1
    for thing in state.things:
        owner = thing.owner or "-"
        if isinstance(thing.how, int):
            found["step", thing.kind, str(thing.how)] += 1
        elif thing.brought and thing.spot and thing.how != DOWN:
            found["target", thing.kind, owner, "brought", *_words(thing.spot)] += 1
        elif sheet.categories[thing.kind] in ("target", "body"):
            found["target", thing.kind, owner, str(thing.how)] += 1
    for side, points in zip(sheet.sides, state.points, strict=True):
        found["points", side] += points
    for side, runs in zip(sheet.sides, state.runs, strict=True):
        found["runs", side] += runs
    for line in state.taken:
        found["line", line] = 1
    found[("clock",)] = state.clock
    for (asking, side), number in zip(rows_of(sheet), state.rows, strict=True):
        found[("row", side, *row_key(sheet, asking))] = number
    if state.won:
        found[("result",)] = sheet.sides.index(state.won) + 1
    return frozenset((key, number) for key, number in found.items() if number)


def states_of_net(space: StateSpace) -> list[Counted]:
    """Every state of a space by what its places count, in its own order."""
    keys = [key_of(place) for place in space.net.places]
    table = markings(space, np.arange(space.states))
    found = []
    for row in table:
        counts: Counter[Key] = Counter()
        for key, number in zip(keys, row, strict=True):
            counts[key] += int(number) if key[0] != "carried" else 0
        found.append(frozenset((key, number) for key, number in counts.items() if number))
    return found


def read_by_net(space: StateSpace) -> Reading:
    """The space of a net; a move that changes nothing leads back to its own state."""
    states = states_of_net(space)
    ends = (None if end < 0 else space.net.ends[end].winner or DRAW for end in space.end_of)
    moves: dict[Counted, set[Counted]] = defaultdict(set)
    for source, target in zip(space.sources(), space.targets, strict=True):
        moves[states[source]].add(states[target])
    return Reading(dict(zip(states, ends, strict=True)), moves, _bells(space.net, space, states))


def _bells(net: Net, space: StateSpace, states: list[Counted]) -> dict[Counted, str | None]:
    if net.bell is None:
        return {}
    table = markings(space, np.arange(space.states))
    said: dict[Counted, str | None] = {}
    for state, row in zip(states, table, strict=True):
        if net.schedule is not None and row[net.schedule.place] < len(net.schedule.times_s):
            continue
        first = next((end for end in net.bell.results if holds(end.guard, row)), None)
        said[state] = (first.winner or DRAW) if first is not None else DRAW
    return said


def holds(condition: object, counts: Sequence[int]) -> bool:
    """Whether a condition of a net holds in a marking, read in plain Python."""
    match condition:
        case Comparison(terms=terms, relation=relation, bound=bound):
            total = sum(factor * int(counts[place]) for factor, place in terms)
            return {"<=": total <= bound, "==": total == bound, ">=": total >= bound}[relation]
        case All(parts=parts):
            return all(holds(part, counts) for part in parts)
        case AnyOf(parts=parts):
            return any(holds(part, counts) for part in parts)
        case Not(part=part):
            return not holds(part, counts)
    raise TypeError(condition)


def read_by_reader(sheet: Sheet, limit: int = 100_000, everyone: bool = False) -> Reading:
    """The states of the second reader, counted; states that count alike are one."""
    rounds = Round(sheet, everyone)
    found = reachable(rounds, limit)
    return counted_reading(rounds, found)


def read_by_both(game: Game, players: dict[str, int]) -> tuple[Reading, Reading]:
    """What the second reader and what the net reads in a game of so many players."""
    space = explore(net_in(game, players))
    assert isinstance(space, StateSpace)
    return read_by_reader(Sheet(game.sheet, granted(), players)), read_by_net(space)


def same(ours: Reading, theirs: Reading) -> None:
    """Every counted state is reached by both, with the same result, moves out of it and word of the clock."""
    ours = ours.without_idle_things(theirs)
    assert ours.results.keys() == theirs.results.keys()
    assert ours.results == theirs.results
    assert ours.moves == theirs.moves
    assert ours.bell == theirs.bell


def counted_reading(rounds: Round, found: dict[State, Seen]) -> Reading:
    """What the second reader found, counted."""
    results: dict[Counted, str | None] = {}
    moves: dict[Counted, set[Counted]] = defaultdict(set)
    bell: dict[Counted, str | None] = {}
    counts = {state: count(rounds.sheet, state) for state in found}
    rings = clock(rounds.sheet) is not None and not next_point(rounds.sheet)
    for state, seen in found.items():
        results[counts[state]] = seen.result
        if seen.result is None:
            moves[counts[state]].update(counts[each.state] for each in seen.moves)
        if rings and state.clock == len(moments(rounds.sheet)):
            bell[counts[state]] = rounds.at_the_bell(state)
    return Reading(results, {state: after for state, after in moves.items() if after}, bell)
