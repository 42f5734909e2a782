"""What is said beside a class goes before its sheet, and a command that an answer offers says all of it again."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from tests.terminal.running import run

SHEET = """class Fell Class
  class of 27
  ages 9 to 9
  the hall is 15 m by 12 m
"""


@pytest.fixture
def own(tmp_path: Path) -> str:
    sheet = tmp_path / "fell class.rules"
    sheet.write_text(SHEET, encoding="utf-8")
    return str(sheet)


@pytest.mark.parametrize("more", [(), ("--with", "roll instead"), ("--hall", "12 m by 8 m"), ("--language", "fr")])
def test_fit_offers_what_was_asked(own: str, more: tuple[str, ...]) -> None:
    told = run("fit", "lantern row", "--class", own, "--pupils", "26", "--quick", *more, code=1).output
    (line,) = re.findall(r"^ *(ruleweave .*)$", told, re.M)
    offered = shlex.split(line)[1:]
    assert offered[:2] == ["suggest", "lantern row"]
    for said in (own, "26", *more):
        assert said in offered
    again = run(*offered, "--tries", "1", "--states", "100").output
    assert "26" in again or "Rien" in again or "Nothing found" in again


def test_pupils_beside_a_class_go_before_its_sheet(own: str) -> None:
    told = run("suggest", "lantern row", "--class", own, "--pupils", "9", "--tries", "2", code=1).output
    assert "Fell Class" in told and " 27" not in told


def test_no_rounds_are_told_where_nobody_can_play(own: str) -> None:
    for pupils, there in (("9", False), ("26", True)):
        told = run("fit", "lantern row", "--class", own, "--pupils", pupils, "--quick", code=None).output
        assert ("Rounds (" in told) is there


def test_a_class_is_not_passed_on(own: str, tmp_path: Path) -> None:
    for words in (("pack", "make", own, "--out", str(tmp_path / "x.zip")), ("shelf", "keep", own)):
        told = run(*words, code=2).output
        assert "holds a class" in told and "stays with you" in told
