"""What is to mend with a switch of the sheet turned over is told of the sheet as it stands."""

from __future__ import annotations

from pathlib import Path

import pytest

import library
from compose.answer.answer import Answer
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.staging.staging import stage
from grammar.finding import Severity
from library.granted import granted_sheet
from tests.interpreter.sheets import game_at, game_in

ROW = Path("library/games/lantern-row.rules").read_text(encoding="utf-8").partition("\n")[2]
NEVER = "finish", "a side loses when it has at most 2 players in"  # nobody leaves
TOO_MANY = "finish", "a side wins when it has 9 lanterns standing"
SOUND = "play", "players roll a foam ball at the lanterns of the other side"


def row(usually: str, *lines: tuple[str, str]) -> str:
    """The row with a switch and lines of its sections that hang on it, or would."""
    head = "  skills overarm throw, aim"
    text = ROW.replace(head, f"{head}\n  switch short game, usually {usually}")
    for section, line in lines:
        text = text.replace(f"\n{section}\n", f"\n{section}\n  {line}\n")
    return text


def hung(line: tuple[str, str]) -> tuple[str, str]:
    """The line, as long as the switch is on."""
    return line[0], f"with short game, {line[1]}"


def answer(text: str) -> Answer:
    game = game_in(text)
    made = staged(stage(game, library.norms(), library.kit_names()), granted_sheet()).value
    assert made is not None
    return proved(made)


def notes(told: Answer) -> list[str]:
    return [each.title for each in told.findings if each.code == "C-switch"]


@pytest.mark.parametrize("line", [NEVER, TOO_MANY])
def test_a_line_that_can_never_hold_is_told_though_it_is_off(line: tuple[str, str]) -> None:
    (note,) = notes(answer(row("off", hung(line))))
    assert note.startswith("With `short game` turned on there is something to mend: ")


def test_a_line_that_can_hold_is_not() -> None:
    assert not notes(answer(row("off", hung(SOUND))))


def test_what_is_to_mend_either_way_is_told_once() -> None:
    told = answer(row("off", hung(SOUND), NEVER))
    assert not notes(told) and any(each.severity is Severity.WARNING for each in told.findings)


def test_what_is_to_mend_as_it_stands_is_a_finding_of_its_own() -> None:
    told = answer(row("on", hung(NEVER)))
    assert not notes(told) and any(each.severity is Severity.WARNING for each in told.findings)


@pytest.mark.sample(5)
@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_no_switch_of_the_library_leads_to_a_defect(path: Path) -> None:
    game = game_at(path)
    made = staged(stage(game, library.norms(), library.kit_names()), granted_sheet()).value
    assert made is not None and not notes(proved(made))


ENDS = "finish", "a side loses when it has at most 2 lanterns standing"  # and so never none


def test_a_line_of_a_switch_may_take_the_place_of_another() -> None:
    assert not notes(answer(row("off", hung(ENDS))))


def test_what_is_to_mend_is_told_in_words_alone() -> None:
    (note,) = notes(answer(row("off", hung(("when", "a player is hit: that player is out")))))
    assert "(" not in note and "never takes effect" in note
