"""A sheet without a fault that is too large has nothing to mend: how far the check looked is told as such."""

from __future__ import annotations

import json

from running import run

TOO_MANY = ("heron and pike", "--states", "200")
WHOLE = ("lantern row",)


def test_how_far_it_looked_is_nothing_to_mend() -> None:
    told = run("check", *TOO_MANY)
    assert "not proved: " in told.stdout and "to mend:" not in told.stdout
    assert "Looked at in part: nothing to mend" in told.stdout and "Proved" not in told.stdout
    assert told.exit_code == 1
    said = json.loads(run("check", *TOO_MANY, "--json").stdout)
    assert said["to_mend"] == 0 and "C-budget" in [each["code"] for each in said["findings"]]


def test_where_all_was_looked_at_it_is_proved() -> None:
    told = run("check", *WHOLE)
    assert "Proved: nothing to mend" in told.stdout and "not proved" not in told.stdout and told.exit_code == 0


def test_what_is_to_mend_in_the_part_looked_at_is_counted_by_itself() -> None:
    told = run("check", "heron and pike", "--with", "nobody is out", "--states", "20")
    said = json.loads(run("check", "heron and pike", "--with", "nobody is out", "--states", "20", "--json").stdout)
    warnings = [each for each in said["findings"] if each["severity"] == "warning"]
    assert "not proved: " in told.stdout and said["to_mend"] == len(warnings) - 1


def test_a_card_does_not_say_that_it_was_checked() -> None:
    told = run("card", *TOO_MANY).stdout
    assert "Looked at in part, and forecast, for" in told and "Checked and forecast for" not in told
