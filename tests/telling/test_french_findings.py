"""Findings in French: what is said in values has its pattern in the catalogue, and nothing of a frame is English."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import attrs
import pytest

import compose
import library
from compose.forecast.matches import GROUPS
from compose.staging.school_class import InCupboard, some_class
from compose.staging.staging import stage
from compose.telling.findings import finding_said, told_in
from compose.telling.french import side_name
from compose.telling.wording import ENGLISH, wording_of
from grammar.finding import Severity, spoken
from grammar.mistakes.shown import framed
from grammar.parse import parse_bytes
from grammar.resolve import resolve
from grammar.said import Chain, Figure, Listed, Many, Named, Percent, Players, Side, Time, english, said
from grammar.span import nowhere
from tests.terminal.running import run

HOME = Path(compose.__file__).parent
FRENCH = wording_of("fr")
MAKERS = (
    *HOME.glob("staging/*_findings.py"),
    HOME / "staging/floor/floor.py",
    *HOME.glob("forecast/findings/*.py"),
    HOME / "net/lower/setup.py",
    HOME / "draw/lesson/findings.py",
    HOME / "fit/time_findings.py",
    HOME / "modifiers/needs.py",
)
ENGLISH_WORDS = {"the", "is", "are", "of", "with", "there", "line", "needs", "to", "pupils"}
SAYING = ("said", "warning", "note", "refused", "spoken", "found", "one_of")


def texts(node: ast.AST) -> Iterator[str]:
    """The texts that an expression may stand for, but for those by which norms and numbers are looked up."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str) and " " in node.value:
        yield node.value
    elif isinstance(node, ast.IfExp):
        yield from (*texts(node.body), *texts(node.orelse))
    elif isinstance(node, ast.Tuple):
        yield from (text for each in node.elts for text in texts(each))


def patterns(path: Path) -> Iterator[str]:
    """What a file says in findings: in the call, by a name given before, or one of the ways that it yields."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in SAYING:
            yield from (text for each in node.args for text in texts(each))
        if isinstance(node, ast.Assign | ast.AnnAssign | ast.Yield) and node.value is not None:
            yield from texts(node.value)


@pytest.mark.parametrize("path", MAKERS, ids=lambda path: path.stem)
def test_every_pattern_has_its_french(path: Path) -> None:
    assert sorted({text for text in patterns(path) if ("", text) not in FRENCH.messages}) == []


def test_values_are_told_in_both_languages() -> None:
    value = said(
        "{more} win {high} of the {games}, {less} {low}",
        more=Side("herons"),
        high=Percent(0.45),
        games="rounds",
        less=Side("north"),
        low=Percent(0.002),
    )
    assert english(value) == "the herons win 45 % of the rounds, north under 1 %"
    assert told_in(value, FRENCH) == "les hérons gagnent 45\u00a0% des manches, le Nord moins de 1\u00a0%"


@pytest.mark.parametrize(
    ("value", "in_english", "in_french"),
    [
        (Many(1, "pupil", "pupils"), "1 pupil", "1 élève"),
        (Figure(6.666, ".3g"), "6.67", "6,67"),
        (Figure(3.0, ".1f"), "3.0", "3,0"),
        (Time(4.5), "4.5 min", "4,5\u00a0min"),
        (Named("lantern"), "lantern", "lanterne"),
        (
            Listed((Players(14, "north"), Players(11, "herons"))),
            "14 north and 11 herons",
            "14 joueurs du Nord et 11 hérons",
        ),
        (Chain(("fewer waiting", "more balls"), ", "), "fewer waiting, more balls", "moins d’attente, plus de ballons"),
        (3, "3", "3"),
    ],
)
def test_each_kind_of_value(value: object, in_english: str, in_french: str) -> None:
    assert (english(value), told_in(value, FRENCH)) == (in_english, in_french)  # type: ignore[arg-type]


def test_a_title_without_values_is_told_by_its_code() -> None:
    found = spoken("C-idle", Severity.WARNING, "x never takes effect.", nowhere(), "Leave it out.")
    told = finding_said(attrs.evolve(found, said=None), FRENCH)
    assert told.title == "Une règle n’a jamais d’effet."
    assert told.hint and "Leave" not in told.hint
    assert finding_said(found, ENGLISH) is found


@pytest.mark.parametrize("pupils", [9, 27, 60])
def test_frames_hold_no_english_but_lines_of_the_sheet(pupils: int) -> None:
    hall = next(iter(library.halls().values()))
    cupboard = (InCupboard("cone", 3, "cone", nowhere()),)
    group = attrs.evolve(some_class(pupils), hall=hall, ages_years=(5.0, 6.0), cupboard=cupboard)
    rules = parse_bytes((HOME.parent / "library/games/lantern-row.rules").read_bytes(), "lantern-row").value
    assert rules is not None
    game = resolve(rules.games[0], library.kit_categories()).value
    assert game is not None
    found = stage(game, library.norms(), library.kit_names(), group).findings
    assert found
    for finding in found:
        told = framed(finding_said(finding, FRENCH), lambda _file, _line: None, say=FRENCH.say)
        assert not set(" ".join(told).lower().split()) & ENGLISH_WORDS


@pytest.mark.parametrize("name", ["idle", "stall-by-passing", "dead-end", "unwinnable", "endless", "two-winners"])
def test_what_the_check_finds_is_told_in_french(name: str) -> None:
    """But for lines of the sheet, which stand between marks of quotation, and names that nobody translated."""
    path = HOME.parent / f"tests/wrong_games/games/{name}.wrong.rules"
    said = " ".join(run("check", path, "--language", "fr", code=1).stdout.split())
    told = re.sub(r"«[^»]*»|\"[^\"]*\"|│[^│]*│ *\^+", "", said)
    assert not ENGLISH_WORDS & set(told.lower().split()), told
    assert re.search(r"\[C-[a-z-]+, prouvé\]", told)


@pytest.mark.parametrize("group", GROUPS)
def test_a_group_that_is_now_one_side_now_the_other_has_a_french_name(group: str) -> None:
    assert side_name(FRENCH, group).startswith("la ")
