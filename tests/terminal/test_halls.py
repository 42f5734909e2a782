"""Halls by what a teacher types: a size, a file, a name of the library, of the folder, or beside the class."""

from __future__ import annotations

from pathlib import Path

import pytest
import typer

from compose.terminal.main import app
from compose.terminal.typed.classes import school_class
from compose.terminal.typed.halls import hall_named

HALL = "hall Beck Hall\n  the hall is 15 m by 12 m\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "ours.rules").write_text(HALL, encoding="utf-8")
    (tmp_path / "broken.rules").write_text("hall Bad Hall\n  it is large\n", encoding="utf-8")
    (tmp_path / "mine.rules").write_text('class Mine\n  class of 9\n  in the hall "Beck Hall"\n', encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(
    ("said", "area"),
    [("15 m by 12 m", 180), ("15 x 12", 180), ("beck hall", 180), ("ours.rules", 180), ("Gym 24 by 12", 288)],
)
def test_hall_is_found(folder: Path, said: str, area: float) -> None:
    hall = hall_named(said, False)
    assert hall is not None and hall.area_m2 == area


@pytest.mark.parametrize("said", ["Bck Hall", "15 m", "15 by", "bad hall", "mine.rules", "1 m by 1 m"])
def test_what_is_no_hall_is_refused(folder: Path, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit) as ended:
        hall_named(said, False)
    assert ended.value.exit_code == 2 and capsys.readouterr().err


def test_hall_lies_beside_its_class(folder: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    monkeypatch.chdir(tmp_path / "elsewhere")
    hall = school_class("../mine.rules").hall
    assert hall is not None and hall.name == "Beck Hall"


def test_option_takes_the_place_of_the_class_hall(folder: Path) -> None:
    hall = school_class("mine.rules", hall="20 m by 10 m").hall
    assert hall is not None and hall.area_m2 == 200


OPTIONS = {
    name: {option for each in command.params for option in each.opts}
    for name, command in vars(typer.main.get_command(app))["commands"].items()
    if not hasattr(command, "commands")
}
CHOOSE = ("games", "suggest", "mix")  # they look for what fits the class in its hall, not in another one


@pytest.mark.parametrize("command", OPTIONS)
def test_whatever_takes_pupils_takes_a_class_and_another_hall(command: str) -> None:
    options = OPTIONS[command]
    assert "--pupils" not in options or "--class" in options
    assert "--class" not in options or command in CHOOSE or "--hall" in options
