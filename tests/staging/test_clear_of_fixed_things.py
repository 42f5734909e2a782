"""What is fixed in the hall counts against the clear strip around a court, not only where it stands in one."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.terminal.running import run

CLASS = """class Stage
  class of 24
  ages 9 to 9
  hall 15 m by 12 m
  stage along the east wall, 6 m by {deep} m, 1.5 m from its south end
  stage along the west wall, 6 m by {deep} m, 1.5 m from its south end
  8 foam balls
  10 plastic pins
  lesson of 40 min
"""


@pytest.mark.parametrize(
    ("deep", "apart"), [("2.9", "0.1 m (2 usual, too little)"), ("1", "1.1 m (2 usual, less"), ("0.05", None)]
)
def test_stages_near_the_court_are_told(tmp_path: Path, deep: str, apart: str | None) -> None:
    sheet = tmp_path / "stage.rules"
    sheet.write_text(CLASS.format(deep=deep), encoding="utf-8")
    words = "fit", "lantern row", "--with", "shorter court, part 60 %", "--class", str(sheet)
    told = run(*words, code=None).output
    assert ("stands fixed in the hall" in told) == (apart is not None)
    assert apart is None or f"Clear strip to what stands fixed in the hall: {apart}" in told
