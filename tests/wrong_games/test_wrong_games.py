"""Each wrong game is caught, with the right code at the right line; its sound version has nothing to say."""

from __future__ import annotations

import difflib
import re

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from grammar.finding import Basis, Finding
from tests.interpreter.sheets import net_in
from tests.wrong_games.wrong import FOLDER, PAIRS, Pair, players

every_pair = pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: pair.stem)


def findings(pair: Pair, which: str) -> tuple[Finding, ...]:
    """What the check says of one version."""
    game = pair.game(which)
    net = net_in(game, players(game))
    result = check(net)
    assert result.space is not None and result.space.complete
    told = findings_told(result.findings, net)
    if net.mirrored:
        apart = [(each.code, _of_no_side(each.title, net.mirrored)) for each in told]
        assert len(set(apart)) == len(apart), "what holds for both of two sides alike is said once"
    return told


def _of_no_side(text: str, sides: tuple[str, ...]) -> str:
    return re.sub("|".join(sides), "a side", text, flags=re.IGNORECASE)


@every_pair
def test_the_wrong_game_is_caught_at_its_line(pair: Pair) -> None:
    found = [finding for finding in findings(pair, "wrong") if finding.code == pair.code]
    lines = pair.path("wrong").read_text(encoding="utf-8").splitlines()
    assert pair.at in [lines[finding.place.line - 1].strip() for finding in found]
    for finding in found:
        assert finding.basis is Basis.PROVED and finding.hint
        assert bool(finding.witness) == pair.shown


@every_pair
def test_the_sound_game_has_nothing_to_mend(pair: Pair) -> None:
    assert [(finding.code, finding.title) for finding in findings(pair, "sound")] == []


@every_pair
def test_one_line_makes_the_difference(pair: Pair) -> None:
    wrong, sound = (pair.path(which).read_text(encoding="utf-8").splitlines() for which in ("wrong", "sound"))
    changed = [line for line in difflib.ndiff(wrong, sound) if line[0] in "+-"]
    assert 1 <= len(changed) <= 2 and len({line[0] for line in changed}) == len(changed)


def test_a_loop_comes_back_to_where_it_began() -> None:
    pair = next(pair for pair in PAIRS if pair.code == "C-endless")
    (found,) = [finding for finding in findings(pair, "wrong") if finding.code == pair.code]
    assert found.loop and all(step.transition >= 0 for step in found.loop)


def test_kit_that_nobody_uses_is_named() -> None:
    pair = next(pair for pair in PAIRS if pair.stem == "idle-kit")
    [found] = findings(pair, "wrong")
    assert "Nobody ever uses the 1 red ball" in found.hint


def test_of_those_who_always_stay_in_it_is_said_why_and_by_which_line() -> None:
    pair = next(pair for pair in PAIRS if pair.stem == "no-end-spared")
    (found,) = [finding for finding in findings(pair, "wrong") if finding.code == pair.code]
    assert "always some south runners in, for nobody may aim at them" in found.hint
    lines = pair.path("wrong").read_text(encoding="utf-8").splitlines()
    assert any("nobody aims at them" in lines[span.line - 1] for span in found.others)


def test_every_game_of_the_folder_is_used() -> None:
    assert {path.name for path in FOLDER.glob("*.rules")} == {
        pair.path(which).name for pair in PAIRS for which in ("wrong", "sound")
    }
