"""DEVELOPERS.md follows one sentence through the house; each room must really make of it what stands there."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

import library
from compose.check import explore
from compose.check.space import StateSpace
from compose.draw.card.card import card_of
from compose.draw.plan.plan import plan_on_card
from compose.draw.signs.to_svg import svg_of
from compose.forecast.chances.chances import explain_chances
from compose.net.from_game import net_of
from compose.net.net import Net
from compose.staging.floor.throws import throws
from compose.staging.laid_out import laid_out
from compose.staging.resolved import resolved
from compose.telling.read_back import read_back
from compose.telling.wording import ENGLISH, wording_of
from grammar.language import parse_sentence
from grammar.parse import parse
from grammar.resolve import resolve
from library.granted import granted_sheet

ROOT = Path(__file__).parents[2]
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
WAY = TEXT.split("## One sentence on its way")[1].split("\n## ")[0]
ROWS = re.findall(r"^\| `([^`]+)` \| .* \| `(.+)` \|$", WAY, re.MULTILINE)
SHEET = (ROOT / "library/games/lantern-row.rules").read_text(encoding="utf-8")
LINE = ROWS[0][1]


def _space(net: Net) -> StateSpace:
    space = explore(net)
    assert isinstance(space, StateSpace)
    return space


def _made() -> Mapping[str, Callable[[], object]]:
    rules = parse(SHEET).value
    assert rules is not None
    [said] = [line.sentence for line in rules.games[0].lines("play") if line.sentence.words() == LINE]
    game = resolve(rules.games[0], library.kit_categories()).value
    assert game is not None
    core, floor = resolved(game), laid_out(game, {"north": 10, "south": 10})
    net = net_of(game, granted_sheet(), {"north": 10, "south": 10}).value
    assert net is not None
    moves = [each.attempt for each in net.transitions if each.outcome == "success"]
    plan = plan_on_card(game, floor)
    return {
        "library/games/lantern-row.rules": lambda: SHEET,
        "grammar/rules.lark": lambda: parse_sentence("play", LINE).data,
        "grammar/sentences/attempting.py": lambda: repr(said),
        "grammar/core/play.py": lambda: next(each for each in core.play.offers if "foam ball" in str(each)),
        "compose/staging/floor/throws.py": lambda: throws(core, floor)[0].reach,
        "compose/net/lower/attempts.py": lambda: [(str(each.name), each.distance_m) for each in moves],
        "compose/check/explore.py": lambda: len(_space(net).end_of),
        "compose/forecast/chances/chances.py": lambda: explain_chances(net, library.norms(), library.kit_names())[
            moves[0]
        ],
        "compose/telling/attempts.py": lambda: read_back(core, ENGLISH),
        "compose/telling/messages/fr.po": lambda: read_back(core, wording_of("fr")),
        "compose/draw/card/card.py": lambda: card_of(core, plan),
        "compose/draw/plan/throws.py": lambda: svg_of(plan),
    }


@pytest.fixture(scope="module")
def made() -> Mapping[str, Callable[[], object]]:
    return _made()


def test_the_way_names_every_room() -> None:
    assert [file for file, _ in ROWS] == list(_made())


@pytest.mark.parametrize(("file", "what"), ROWS, ids=[file for file, _ in ROWS])
def test_the_sentence_becomes_what_stands_there(file: str, what: str, made: Mapping[str, Callable[[], object]]) -> None:
    assert (ROOT / file).is_file()
    assert what in str(made[file]()), str(made[file]())
