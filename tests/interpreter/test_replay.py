"""Every play that the check prints is played again by the interpreter, move by move, to the state it claims."""

from __future__ import annotations

import pytest

from compose.check import StateSpace, check, state_in_words
from compose.check.witness import counts_of
from grammar.finding import Finding, Step
from tests.interpreter.board import State
from tests.interpreter.compare import states_of_net
from tests.interpreter.rounds import Seen, reachable, start, successors
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
    seen = reachable(sheet)
    for finding in result.findings:
        if finding.witness:
            follow(sheet, result.space, finding, seen)


def follow(sheet: Sheet, space: StateSpace, finding: Finding, seen: dict[State, Seen]) -> None:
    """Replay the witness and its loop; the witness is as short as can be and its last counts are told in full."""
    assert finding.witness[0].transition < 0
    number, here = replay(sheet, space, finding.witness[1:], 0, start(sheet))
    assert seen[here].distance == len(finding.witness) - 1
    assert finding.witness[-1].after == state_in_words(space.net, counts_of(space, number))
    if finding.loop:
        assert replay(sheet, space, finding.loop, number, here)[1] == here


@pytest.mark.parametrize("name", ["lantern-row", "heron-and-pike", "toll-stone"])
def test_plays_of_library_games(name: str) -> None:
    game = library_game(name)
    numbers = {side.name: min(2, side.most) for side in game.sides}
    result = check(net_in(game, numbers))
    assert result.space is not None
    sheet = Sheet(game, granted(), numbers)
    seen = reachable(sheet)
    for finding in result.findings:
        if finding.witness:
            follow(sheet, result.space, finding, seen)
    assert result.facts is not None
    assert result.facts.shortest == min(each.distance for each in seen.values() if each.result is not None)


def test_the_dead_end_is_the_nearest() -> None:
    """No dead end is nearer and none is left out, as the interpreter finds them for itself."""
    pair = next(pair for pair in PAIRS if pair.code == "C-dead-end")
    game = pair.game("wrong")
    seen = reachable(Sheet(game, granted(), players(game)))
    stuck = [each.distance for each in seen.values() if each.result is None and not each.moves]
    (found,) = [finding for finding in check(net_in(game, players(game))).findings if finding.code == pair.code]
    assert len(found.witness) - 1 == min(stuck)
    assert dict(found.numbers)["dead ends"] == len(stuck)
