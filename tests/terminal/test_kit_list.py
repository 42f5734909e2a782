"""The kit in words: everything that the library has, with sizes and the skills it is fit for."""

from __future__ import annotations

import pytest
from running import run, run_json

import library
from library.records import BALL_SKILLS


def test_everything_is_told_in_words_and_in_json() -> None:
    said = run("kit", code=0).stdout
    told = {each["name"]: each for each in run_json("kit", code=0)["kit"]}
    assert set(told) == set(library.kit_catalogue())
    for item in library.kit_catalogue().values():
        assert f"  {item.name}  (" in said
        assert all(name in " ".join(said.split()) for name in (*item.also, item.plural))
        assert told[item.name]["fit_for"] == list(item.may)
        assert told[item.name]["about"] == item.about


def test_sizes_are_those_of_the_catalogue() -> None:
    ball = library.kit_catalogue()["foam ball"]
    told = next(each for each in run_json("kit", code=0)["kit"] if each["name"] == "foam ball")
    assert ball.diameter_cm and ball.mass_g
    assert told["diameter_cm"] == {
        "low": ball.diameter_cm.low, "usual": ball.diameter_cm.usual, "high": ball.diameter_cm.high,
    }  # fmt: skip
    said = run("kit", code=0).stdout
    assert f"{ball.diameter_cm.low:g} to {ball.diameter_cm.high:g} cm across" in said
    assert f"usually {ball.mass_g.usual:g}" in said


@pytest.mark.parametrize("skill", BALL_SKILLS)
def test_balls_fit_for_a_skill(skill: str) -> None:
    names = {each["name"] for each in run_json("kit", "--skill", skill, code=0)["kit"]}
    assert names == {item.name for item in library.kit_catalogue().values() if skill in item.may}
    assert names


def test_skill_that_no_ball_is_fit_for() -> None:
    assert "`kik`" in run("kit", "--skill", "kik", code=2).output
    assert "`kick`" in run("kit", "--skill", "kik", code=2).output
