"""Every play that the check prints is played again by the interpreter, move by move, to the state it claims."""

from __future__ import annotations

import pytest

from compose.check import StateSpace, check, state_in_words
from compose.check.witness import counts_of
from grammar.finding import Finding, Step
from tests.interpreter.board import State
from tests.interpreter.compare import states_of_net
from tests.interpreter.rounds import reachable, start, successors
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import granted, library_game, net_in
from tests.wrong_games.wrong import PAIRS, Pair, players

SHOWN = [pair for pair in PAIRS if pair.shown and pair.code != "C-chase"]


def claimed(space: StateSpace, begin: int, steps: tuple[Step, ...]) -> list[int]:
    """The numbers of the states that a line of play goes through, by the transitions that it names."""
    states = [begin]
    for step in steps:
        out = space.edges_from(states[-1])
        (edge,) = [edge for edge in out if space.transitions[edge] == step.transition]
        states.append(int(space.targets[edge]))
    return states


def replay(sheet: Sheet, space: StateSpace, steps: tuple[Step, ...], begin: int, here: State) -> tuple[int, State]:
    """Play the steps from a state; each must be a move of the interpreter's with the words of the telling."""
    by_number = states_of_net(space)
    for step, number in zip(steps, claimed(space, begin, steps)[1:], strict=True):
        goal = by_number[number]
        moves = [after for after in successors(sheet, here) if after.state == goal]
        assert any(all(word in step.words for word in after.told) for after in moves), step.words
        here, begin = goal, number
    return begin, here


@pytest.mark.parametrize("pair", SHOWN, ids=lambda pair: pair.stem)
def test_every_play_leads_to_the_state_it_claims(pair: Pair) -> None:
    game = pair.game("wrong")
    result = check(net_in(game, players(game)))
    assert result.space is not None
    sheet = Sheet(game, granted(), players(game))
    distance = distances(sheet)
    for finding in result.findings:
        if finding.witness:
            follow(sheet, result.space, finding, distance)


def follow(sheet: Sheet, space: StateSpace, finding: Finding, distance: dict[State, int]) -> None:
    """Replay the witness and its loop; the witness is as short as can be and its last counts are told in full."""
    assert finding.witness[0].transition < 0
    number, here = replay(sheet, space, finding.witness[1:], 0, start(sheet))
    assert distance[here] == len(finding.witness) - 1
    assert finding.witness[-1].after == state_in_words(space.net, counts_of(space, number))
    if finding.loop:
        assert replay(sheet, space, finding.loop, number, here)[1] == here


def distances(sheet: Sheet) -> dict[State, int]:
    """How many moves the interpreter needs to come to each state."""
    found, frontier = {start(sheet): 0}, [start(sheet)]
    results = reachable(sheet)
    for state in frontier:
        if results[state] is None:
            for after in successors(sheet, state):
                if after.state not in found:
                    found[after.state] = found[state] + 1
                    frontier.append(after.state)
    return found


@pytest.mark.parametrize("name", ["lantern-row", "heron-and-pike", "toll-stone"])
def test_plays_of_library_games(name: str) -> None:
    game = library_game(name)
    numbers = {side.name: min(2, side.most) for side in game.sides}
    result = check(net_in(game, numbers))
    assert result.space is not None
    sheet = Sheet(game, granted(), numbers)
    distance = distances(sheet)
    for finding in result.findings:
        if finding.witness:
            follow(sheet, result.space, finding, distance)
    assert result.facts is not None
    nearest = min(distance[state] for state, winner in reachable(sheet).items() if winner is not None)
    assert result.facts.shortest == nearest


@pytest.mark.parametrize("pair", SHOWN, ids=lambda pair: pair.stem)
def test_stuck_or_torn_states_are_the_nearest(pair: Pair) -> None:
    """No state with the same trouble is nearer, as the interpreter finds them for itself."""
    game = pair.game("wrong")
    sheet = Sheet(game, granted(), players(game))
    distance, results = distances(sheet), reachable(sheet)
    found = [f for f in check(net_in(game, players(game))).findings if f.code == pair.code]
    if pair.code == "C-dead-end":
        stuck = [s for s, winner in results.items() if winner is None and not any(True for _ in successors(sheet, s))]
        assert len(found[0].witness) - 1 == min(distance[state] for state in stuck)
        assert dict(found[0].numbers)["dead ends"] == len(stuck)
    else:
        assert all(len(finding.witness) - 1 <= max(distance.values()) for finding in found)
