"""A place that no line declares: the line is read, in whatever words, and the name is the mistake."""

from __future__ import annotations

import pytest
from proofreading import judge_of

from library import game_paths

LANTERN_ROW = next(path for path in game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")
WAYS = (
    "a ball is caught: the thrower goes to the {name}",
    "a ball is caught: the thrower sits on the {name}",
    "a ball is caught: the thrower sits down on the {name}",
    "a ball is caught: the thrower waits on the {name}",
    "a ball is caught: the thrower joins the {name}",
)


def _told(line: str, area: str = "") -> list[str]:
    """What is said of the sheet with a line in when, and another area if need be: title and advice."""
    text = LANTERN_ROW.replace("when\n", f"when\n  {line}\n").replace(
        "sides\n", f"  {area}\nsides\n" if area else "sides\n", 1
    )
    return [f"{each.title} {each.hint}" for each in judge_of("lantern-row.rules")(text)]


@pytest.mark.parametrize("way", WAYS)
def test_the_name_is_the_mistake_and_a_line_declares_it(way: str) -> None:
    (told,) = _told(way.format(name="far bench"))
    assert "Nothing here is called `far bench`" in told
    assert '"far bench: beside each half"' in told
    assert "The sides are" not in told


@pytest.mark.parametrize("way", WAYS)
def test_the_same_line_is_read_once_the_place_is_declared(way: str) -> None:
    told = _told(way.format(name="far bench"), "far bench: behind each back line")
    assert not any("Nothing here is called" in each or "This line" in each for each in told), told


@pytest.mark.parametrize("way", WAYS)
def test_places_of_the_kind_are_named_and_none_in_two_numbers(way: str) -> None:
    (told,) = _told(way.format(name="reserve bench"), "spare bench: behind each back line")
    assert "The sheet has `spare bench`." in told
    assert "benches" not in told


@pytest.mark.parametrize("way", WAYS)
def test_slip_of_a_known_place_is_put_right(way: str) -> None:
    (told,) = _told(way.format(name="spare bensh"), "spare bench: behind each back line")
    assert "spare bench" in told
    assert "benches" not in told


def test_example_is_right_for_the_kind_of_place() -> None:
    for name, where in (("goal zone", "2 m deep, before each back line"), ("ring circle", "2 m deep, in the middle")):
        (told,) = _told(f"a ball is caught: the thrower goes to the {name}")
        assert f'"{name}: {where}"' in told


def test_what_may_be_a_place_or_a_side_is_told_both_ways() -> None:
    (told,) = _told("a ball is caught: the thrower goes to the jail")
    assert '"jail bench: beside each half"' in told and "The sides are north and south." in told


@pytest.mark.parametrize(
    ("written", "better"),
    [
        ("jail: behind each back line", "jail bench: behind each back line"),
        ("safe area: behind each back line", "safe area bench: behind each back line"),
    ],
)
def test_place_that_does_not_say_what_it_is_is_offered_with_its_kind(written: str, better: str) -> None:
    name = written.partition(":")[0].removesuffix("s")
    line = f"a ball is caught: the thrower goes to the {name}"
    (told,) = _told(line, written)
    assert f"Write: {better}" in told
    assert not any("Nothing here is called" in each for each in _told(line, better))


@pytest.mark.parametrize(
    "written",
    (
        "safe mat: in a corner",
        "safe mats: in each corner, nobody is hit there",
        "island: 2 m deep, in 4 places on the court",
        "danger area: 3 m deep, before each back line",
    ),
)
def test_place_that_can_be_one_thing_alone_need_not_say_what_it_is(written: str) -> None:
    name = written.partition(":")[0].removesuffix("s")
    assert _told(f"a ball is caught: the thrower goes to the {name}", written) == []
