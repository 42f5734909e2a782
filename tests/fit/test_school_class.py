"""Classes: read from their sheets, tidy, and told what is wrong with them."""

from __future__ import annotations

from pathlib import Path
from textwrap import dedent

import pytest
from class_sheets import BECK, sheet_of, wrong_class

import library
from grammar.format import format_file
from grammar.parse import parse, parse_bytes


def test_sheet_is_read() -> None:
    found = sheet_of(BECK)
    assert (found.name, found.pupils, found.ages_years, found.lesson_min) == ("Beck Class", 27, (9.0, 10.0), 45.0)
    assert found.hall is not None and found.hall.name == "Fellgate school sports hall"
    assert [(each.name, each.count, each.like) for each in found.cupboard] == [
        ("foam balls", 8, "foam ball"),
        ("plastic pins", 12, "plastic pin"),
    ]


def test_most_lines_may_be_left_out() -> None:
    found = sheet_of("class Small\n  class of 8")
    assert (found.pupils, found.ages_years, found.hall, found.lesson_min) == (8, None, None, None)
    assert not found.lists_kit


def test_own_times_are_kept() -> None:
    found = sheet_of("class Slow\n  class of 8\n  setting up takes 6 min\n  explaining takes 90 s")
    assert found.ready_min == {"setting up": 6.0, "explaining": 1.5}


def test_kit_may_be_called_otherwise() -> None:
    found = sheet_of("class Odd\n  class of 8\n  5 stumps, like a plastic pin\n  3 blue balls")
    assert [each.like for each in found.cupboard] == ["plastic pin", "foam ball"]


@pytest.mark.parametrize(
    ("line", "word", "hint"),
    [
        ("class of 27", "how many pupils", "class of 27"),
        ('in the hall "Felgate school sports hall"', "no hall", "Fellgate school sports hall"),
        ("class of 2.5", "cannot have 2.5", "whole number"),
        ("lesson of 900 min", "cannot take 900 min", "240"),
        ("4 zzyzx", "not known", "plastic pin"),
        ("2 posts", "not known", "m from the west wall"),
        ("1 stage", "not known", "stage along the east wall"),
    ],
)
def test_mistakes_have_a_place_and_a_hint(line: str, word: str, hint: str) -> None:
    left_out = word == "how many pupils"
    lines = ["ages 8 to 9"] if left_out else [line] if line.startswith("class of") else ["class of 27", line]
    (finding,) = wrong_class("class Beck\n" + "".join(f"  {each}\n" for each in lines))
    assert finding.code == "F-class" and word in finding.title and hint in finding.hint
    assert finding.place.line > 0


@pytest.mark.parametrize("path", library.class_paths(), ids=lambda path: path.stem)
def test_lines_need_not_stand_further_in(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    flat = "\n".join(line.lstrip() for line in text.splitlines())
    assert sheet_of(flat) == sheet_of(text)


@pytest.mark.parametrize("first", ["class of 27", "27 pupils", "27 nine-year-olds", "hall 15 x 12"])
def test_class_without_its_first_line_is_told_so(first: str) -> None:
    outcome = parse(f"{first}\nages 9 to 10\n")
    [finding] = outcome.findings
    assert outcome.value is None and finding.code == "L-first-line" and "class Beck Class" in finding.hint


def test_a_class_may_be_said_as_teachers_say_it() -> None:
    said = "class Beck\n27 pupils\nages 8-9\nhall 15 x 12\n40 minutes\nfive foam balls, six cones\n"
    meant = """
        class Beck
          class of 27
          ages 8 to 9
          the hall is 15 m by 12 m
          lesson of 40 min
          5 foam balls
          6 cones
        """
    assert sheet_of(said) == sheet_of(dedent(meant).lstrip())


def test_unknown_thing_is_blamed_for_itself() -> None:
    line = "  5 eggs, like a nothing"
    (finding,) = wrong_class(f"class Beck\n  class of 27\n{line}\n")
    assert "`nothing`" in finding.title
    assert line[finding.place.column - 1 : finding.place.end - 1] == "nothing"


def test_lines_of_a_game_are_no_lines_of_a_class() -> None:
    outcome = parse("class Beck\n  class of 27\n  court 18 m by 9 m\n")
    assert outcome.value is None and len(outcome.findings) == 1


@pytest.mark.parametrize("path", library.class_paths(), ids=lambda path: path.stem)
def test_library_classes_are_whole_and_tidy(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    rules = parse_bytes(text.encode(), path.name).value
    assert rules is not None and format_file(rules) == text
    assert "nvented" in sheet_of(text).about
    assert sheet_of(text).hall is not None


def test_format_reads_back() -> None:
    rules = parse(dedent(BECK).lstrip("\n")).value
    assert rules is not None
    again = parse(format_file(rules)).value
    assert again is not None and again.classes == rules.classes


def test_class_may_say_its_hall_itself() -> None:
    found = sheet_of(
        "class Own\n  class of 8\n  the hall is 15 m by 12 m\n  door in the south wall, 2 m from its west end"
    )
    assert found.hall is not None and (found.hall.area_m2, len(found.hall.doors)) == (180, 1)


@pytest.mark.parametrize(
    ("line", "word"),
    [
        ('the hall is 15 m by 12 m\n  in the hall "gym 24 by 12"', "names a hall and describes one"),
        ("door in the south wall, 2 m from its west end", "how large"),
        ("class of 9", "twice"),
        ("ages 8 to 9\n  ages 9 to 10", "twice"),
    ],
)
def test_what_a_class_says_of_its_hall_agrees(line: str, word: str) -> None:
    (finding,) = wrong_class(f"class Own\n  class of 8\n  {line}\n")
    assert word in finding.title and finding.place.line > 0


def test_ages_are_those_of_pupils() -> None:
    (finding,) = wrong_class("class Beck\n  class of 27\n  ages 90 to 3\n")
    assert finding.code == "G-range" and finding.place.line == 3
