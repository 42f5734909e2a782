"""Every play that the check prints is played again by the second reader, move by move, to the state it claims."""

from __future__ import annotations

import pytest

from compose.check import StateSpace, check
from compose.check.witness import counts_of
from compose.telling.english.findings import findings_told
from compose.telling.english.states import state_in_words
from grammar.finding import Finding, Step
from grammar.game import Game
from tests.interpreter.board import State
from tests.interpreter.compare import Counted, count, counted_reading, read_by_net, same, states_of_net
from tests.interpreter.rounds import Round, reachable
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


def replay(
    rounds: Round, space: StateSpace, steps: tuple[Step, ...], begin: int, here: set[State]
) -> tuple[int, set[State]]:
    """Play the steps on; each must be a move of somebody with a name, told in the words of what was done.

    `here` holds every state with names that the play so far may have led to.
    """
    by_number = states_of_net(space)
    for step, number in zip(steps, claimed(space, begin, steps)[1:], strict=True):
        moves = [move for state in here for move in rounds.successors(state)]
        there = [move for move in moves if count(rounds.sheet, move.state) == by_number[number]]
        here = {move.state for move in there if all(word in step.words for word in move.told)}
        assert here, step.words
        begin = number
    return begin, here


def follow(rounds: Round, space: StateSpace, finding: Finding, nearest: dict[Counted, int]) -> None:
    """Replay the witness and its loop; the witness is as short as can be and its last counts are told in full."""
    assert finding.witness[0].transition < 0
    number, here = replay(rounds, space, finding.witness[1:], 0, {rounds.begin})
    assert {nearest[count(rounds.sheet, state)] for state in here} == {len(finding.witness) - 1}
    assert finding.witness[-1].after == state_in_words(space.net, counts_of(space, number))
    if finding.loop:
        again, there = replay(rounds, space, finding.loop, number, here)
        assert {count(rounds.sheet, state) for state in here} == {count(rounds.sheet, state) for state in there}
        assert again == number


def replayed(game: Game, numbers: dict[str, int]) -> None:
    """Every line of play that the check of a game prints, and the shortest round that it tells; both read it alike."""
    result = check(net_in(game, numbers))
    assert result.space is not None
    rounds = Round(Sheet(game.sheet, granted(), numbers))
    seen = reachable(rounds)
    same(counted_reading(rounds, seen), read_by_net(result.space))
    nearest: dict[Counted, int] = {}
    for state, each in seen.items():
        nearest.setdefault(count(rounds.sheet, state), each.distance)
    by_name = Round(rounds.sheet, everyone=True)
    for finding in findings_told(result.findings, result.space.net):
        if finding.witness:
            follow(by_name, result.space, finding, nearest)
    ends = [each.distance for each in seen.values() if each.result is not None]
    assert result.facts is None or result.facts.shortest is None or result.facts.shortest == min(ends)


@pytest.mark.sample(10)
@pytest.mark.whole("stranded-balls")
@pytest.mark.parametrize("pair", SHOWN, ids=lambda pair: pair.stem)
def test_every_play_leads_to_the_state_it_claims(pair: Pair) -> None:
    game = pair.game("wrong")
    replayed(game, players(game))


@pytest.mark.parametrize("name", ["lantern-row", "heron-and-pike", "toll-stone"])
def test_plays_of_library_games(name: str) -> None:
    game = library_game(name)
    replayed(game, {side.name: min(2, side.most) for side in game.sides})


def test_the_dead_end_is_the_nearest() -> None:
    """No dead end is nearer and none is left out, as the second reader finds them for itself."""
    pair = next(pair for pair in PAIRS if pair.code == "C-dead-end")
    game = pair.game("wrong")
    rounds = Round(Sheet(game.sheet, granted(), players(game)))
    seen = reachable(rounds)
    stuck = {
        count(rounds.sheet, state): each.distance
        for state, each in seen.items()
        if each.result is None and not each.moves
    }
    (found,) = [finding for finding in check(net_in(game, players(game))).findings if finding.code == pair.code]
    assert len(found.witness) - 1 == min(stuck.values())
    assert dict(found.numbers)["dead ends"] == len(stuck)
