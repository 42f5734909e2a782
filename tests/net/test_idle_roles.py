"""A role that plays like all others of its side is told; one of which any line says something is not."""

from __future__ import annotations

import pytest

from compose.net.lower.idle_roles import idle_roles
from compose.staging.resolved import resolved
from grammar.finding import Severity
from library import game_paths
from tests.interpreter.sheets import game_in

SHEETS = {path.stem: path.read_text(encoding="utf-8") for path in game_paths()}
ROLE = "role lookout: 1 player of {side}"
ROW = SHEETS["lantern-row"]


def told(sheet: str) -> list[Severity]:
    return [finding.severity for finding in idle_roles(resolved(game_in(sheet)))]


def with_lines(sheet: str, role: str, **lines: str) -> str:
    """A sheet with a role, and with a line more in some of its sections."""
    for section, line in {"sides": role, **lines}.items():
        head, found, rest = sheet.partition(f"\n{section}\n")
        if section == "sides":  # the line of the sides comes first
            first, _, rest = rest.partition("\n")
            head, found = head + found + first, "\n"
        sheet = f"{head}{found}  {line}\n{rest}"
    return sheet


@pytest.mark.parametrize("name", SHEETS)
def test_a_role_of_which_no_line_speaks_is_told_in_any_game(name: str) -> None:
    assert told(SHEETS[name]) == []
    core = resolved(game_in(SHEETS[name]))
    if core.play.sides[0].least > 1:  # else nobody plays beside whoever has the role
        side = core.play.side_ids[0].key if core.play.sides[0].solo else "each side"
        assert told(with_lines(SHEETS[name], ROLE.format(side=side))) == [Severity.WARNING]


@pytest.mark.parametrize(
    ("role", "lines"),
    [
        ("", {"play": "lookouts do not act"}),
        (", nobody aims at them", {}),
        (", aims from 4 m", {}),
        ("", {"play": "lookouts fetch balls from the dim strip"}),
        ("", {"play": "lookouts roll a foam ball at the lanterns of the other side"}),
        ("", {"play": "at most 1 lookout may guard each lantern"}),
        ("", {"play": "lookouts block shots at the lanterns of their side with the hands"}),
        ("", {"when": "a lantern is knocked by a lookout: the thrower's side scores 1 point"}),
        ("", {"finish": "a side wins when the other side has all lookouts out"}),
        ("", {"when": "a lantern is knocked: the ball goes to the lookout of the other side"}),
        ("", {"play": "a missed ball goes to the lookout of the other side"}),
    ],
)
def test_one_of_which_a_line_speaks_is_not(role: str, lines: dict[str, str]) -> None:
    assert told(with_lines(ROW, ROLE.format(side="each side") + role, **lines)) == []


def test_to_change_who_has_it_makes_it_no_task() -> None:
    row = with_lines(ROW, ROLE.format(side="each side"), play="lookouts change every 60 s")
    (found,) = idle_roles(resolved(game_in(row)))
    assert [row.splitlines()[span.line - 1].strip() for span in found.others] == ["lookouts change every 60 s"]


def test_what_quotes_say_of_them_is_for_people() -> None:
    quoted = with_lines(ROW, ROLE.format(side="each side"), play='"The lookouts call out where balls lie."')
    assert told(quoted) == [Severity.NOTE]
    assert told(with_lines(ROW, ROLE.format(side="each side"), play='"Nobody shouts."')) == [Severity.WARNING]


def test_who_has_no_other_task_of_a_circle_just_now_is_no_thing_to_mend() -> None:
    """Where tasks move on, those between two others need a name; where none of the circle is a task, they do not."""
    line = "lookouts, runners and players move on every 60 s"
    circle = with_lines(ROW, "role runner: 2 players of each side", play=line)
    circle = with_lines(circle, ROLE.format(side="each side"))
    assert told(circle) == [Severity.WARNING, Severity.WARNING]
    assert told(with_lines(circle, "", play="lookouts do not act").replace("sides\n  \n", "sides\n")) == [Severity.NOTE]
