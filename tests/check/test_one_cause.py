"""One cause is one finding, and what is told with another is lost neither from the verdict nor from the words."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings

import library
from compose.check import check, explore
from compose.check.findings import AT_THE_START, FINDINGS
from compose.check.findings.unwinnable import unwinnable_sides
from compose.check.found import Found
from compose.check.needs_no_win import needs_no_win
from compose.check.space import USUAL, Budget, StateSpace
from compose.check.study import Study
from compose.net.from_game import net_of
from compose.net.net import Bell, Net
from compose.telling.english.findings import findings_told
from grammar.finding import Severity
from grammar.parse import parse
from grammar.resolve import resolve
from tests.check.build import Builder
from tests.check.random_nets import nets
from tests.interpreter.sheets import game_in, granted, net_in
from tests.wrong_games.test_wrong_games import every_pair, findings
from tests.wrong_games.wrong import Pair, players

SMALL = Budget(states=3000)
BESIDE = {  # what is rightly told besides: by leaving a thing undone a side gains what the slip alone does not give it
    "dropped": "C-stall",
    "coins-run-out": "C-stall",
    "idle-too-late": "C-endless",
}


def apart(study: Study) -> list[Found]:
    """Everything that each look finds, whatever comes of the same cause."""
    looks = AT_THE_START if study.ended[0] else FINDINGS
    return [found for entry in looks for found in entry.look(study)]


def to_mend(found: list[Found]) -> bool:
    return any(each.severity is not Severity.NOTE for each in found)


def studied(net: Net, budget: Budget) -> Study | None:
    """The study of a space within the budget, None of a larger one."""
    space = explore(net, budget)
    return Study(space) if isinstance(space, StateSpace) and space.complete else None


def agrees(net: Net, budget: Budget = SMALL) -> bool:
    """Whether the verdict was looked at: it is the same, and no defect that a plain look at the space shows is left
    without a word."""
    study = studied(net, budget)
    if study is None:
        return False
    told = list(check(net, budget).findings)
    assert to_mend(told) == to_mend(apart(study)), [each.code for each in apart(study)]
    assert all(each.title for each in told)
    if not study.ended[0]:
        assert to_mend(told) or not study.dead_ends.size
        open_ended = net.bell is not None and (net.open_ended or not net.ends)
        assert to_mend(told) or open_ended or study.ended.any()
        alone = study.contested and not net.match.halves
        lost = unwinnable_sides(study)
        assert to_mend(told) or not alone or all(
            study.won(side).any() or needs_no_win(net, side, lost) for side in net.sides
        )
    return True


@given(net=nets())
@settings(max_examples=200, deadline=None)
def test_the_verdict_on_a_random_net_is_that_of_all_looks_apart(net: Net) -> None:
    agrees(net)


@every_pair
def test_the_verdict_on_a_wrong_game_is_that_of_all_looks_apart(pair: Pair) -> None:
    game = pair.game("wrong")
    assert agrees(net_in(game, players(game)), USUAL)


@every_pair
def test_one_wrong_line_is_one_finding(pair: Pair) -> None:
    codes = [finding.code for finding in findings(pair, "wrong")]
    beside = [BESIDE[pair.stem]] if pair.stem in BESIDE else []
    assert sorted(codes) == sorted([pair.code, *beside])


def test_that_a_side_cannot_win_says_why_nothing_ends_the_round_where_only_its_wins_would() -> None:
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(side, 0, 4, "points", side)
        play.may(f"{side} scores", play.shift(side, 1, play.rule("points")), side=side)
    ahead = play.result("south leads", "south", play.more("south", "north"), play.rule("more points"))
    play.end("north wins", "north", play.at_least("north", 5), play.rule("the first to 5"))
    [finding] = check(play.net(Bell(360.0, (ahead,), play.rule("after 6 min")))).findings
    assert finding.code == "C-unwinnable"


GONE = """
game Gone
space
  court 16 m by 12 m, in one piece
  log base: 2 m deep, before each back line
sides
  badgers, 2 to 5 players
  moles, 2 to 20 players
kit
  4 roots, like a beanbag
set-up
  roots in the middle
play
  moles take a root from the middle to their log base
  badgers touch moles
when
  a mole is touched: that player is out
finish
  moles wins when there are no roots in the middle
"""
ALONE = "  badgers wins when the other side has no players in\n"


def test_what_one_end_for_who_is_left_alone_mends_is_one_finding() -> None:
    net = net_in(game_in(GONE), {"badgers": 2, "moles": 3})
    [finding] = findings_told(check(net).findings, net)
    assert finding.code == "C-dead-end" and ALONE.strip() in finding.hint
    assert "badgers can never win" in finding.hint and "moles can keep the round from ending" in finding.hint
    mended = check(net_in(game_in(GONE + ALONE), {"badgers": 2, "moles": 3}))
    assert not to_mend(list(mended.findings))


THAW = """
game Thaw
space
  court 18 m by 12 m, in one piece
sides
  foxes, 1 to 3 players
  hares, 3 to 24 players
kit
  2 foam balls
set-up
  2 foam balls in the middle
play
  foxes touch hares
when
  a hare is touched: that player freezes
  a pass is caught by a frozen player: that player is free
finish
  foxes wins when the other side has no players in
  after 4 min: hares wins
"""
PASS = "players pass a ball to a frozen team-mate"


def test_what_one_pass_to_who_froze_mends_is_one_finding() -> None:
    net = net_in(game_in(THAW), {"foxes": 2, "hares": 4})
    [finding] = [each for each in findings_told(check(net).findings, net) if each.severity is not Severity.NOTE]
    assert finding.code == "C-stranded" and PASS in finding.hint
    assert "use the foam balls" in finding.hint and "a pass is caught by a frozen player" in finding.hint
    mended = THAW.replace("foxes touch hares", f"foxes touch hares\n  {PASS}")
    assert not to_mend(list(check(net_in(game_in(mended), {"foxes": 2, "hares": 4})).findings))


def broken(text: str) -> Iterator[Net]:
    """The nets of a sheet without one of its lines, where it can still be read."""
    lines = text.splitlines()
    for number, line in enumerate(lines):
        rest = "\n".join(lines[:number] + lines[number + 1 :])
        sheet = parse(f"{rest}\n", "(test)").value if line.startswith("  ") else None
        game = resolve(sheet.games[0], library.kit_categories()).value if sheet and sheet.games else None
        net = net_of(game, granted(), {side.name: max(2, side.least) for side in game.sides}).value if game else None
        if net is not None:
            yield net


@pytest.mark.sample(6)
@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_the_verdict_on_a_game_without_one_of_its_lines_is_that_of_all_looks_apart(path: Path) -> None:
    for net in broken(path.read_text(encoding="utf-8")):
        agrees(net)
