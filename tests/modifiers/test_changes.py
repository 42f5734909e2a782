"""Each sentence that changes a game, on one game: what it changes and what it leaves alone."""

from __future__ import annotations

import pytest
from mixtures import ROW, game_of, library_games, made, mixed, modifier_in, row, said, use

from compose.modifiers.fit_for import unfit
from library import kit_names


def test_strips_and_zones_become_deeper() -> None:
    assert said(made(row(), use("deeper strips", size=200)), "space")[1].startswith("dim strip: 4 m deep, ")
    assert made(row(), use("shallower strips", size=50)).areas[0].depth_m == 1.0


def test_strip_may_not_reach_over_its_half() -> None:
    outcome = mixed(row(), use("deeper strips", size=300), use("deeper strips", size=200))
    assert outcome.value is None
    assert "deeper than a half" in outcome.findings[0].title


def test_targets_stand_elsewhere_and_stay_as_many() -> None:
    nearer = made(row(), use("nearer targets"))
    assert said(nearer, "set-up")[0] == "lanterns before the back line of their side, evenly spaced"
    assert nearer.kit == row().kit
    assert said(made(nearer, use("farther targets")), "set-up")[0].startswith("lanterns behind the back line")


def test_attempts_at_targets_are_made_from_a_line() -> None:
    once = made(row(), use("aiming line", distance=4))
    assert said(once, "play")[1].endswith(", from 4 m away")
    twice = made(once, use("aiming line", distance=6))
    assert said(twice, "play")[1].count("from") == 1 and "from 6 m away" in said(twice, "play")[1]


def test_only_aims_at_targets_are_put_in_order() -> None:
    play = said(made(row(), use("targets in order")), "play")
    assert "at the lanterns in order or the players of the other side" in play[1]


def test_last_side_becomes_smaller() -> None:
    game = made(row(), use("uneven sides", n=2))
    assert said(game, "sides") == ["north, 6 to 14 players", "south, 4 to 12 players"]
    assert not any(side.mirrored for side in game.sides)


def test_last_side_keeps_a_player() -> None:
    small = game_of(ROW.replace("6 to 14 players each", "1 to 4 players each"))
    assert mixed(small, use("uneven sides")).findings[0].title.endswith("nobody would be left of the south.")


def test_factors_are_multiplied_into_one_line() -> None:
    game = made(row(), use("weaker hand", part=50), use("moving targets", part=80))
    assert [line for line in said(game, "play") if "as often" in line] == ["attempts succeed 40 % as often"]
    other = made(row(), use("moving targets", part=80), use("weaker hand", part=50))
    assert [line for line in said(other, "play") if "as often" in line] == ["attempts succeed 40 % as often"]


def test_factors_of_time_are_multiplied_too() -> None:
    game = made(row(), use("sound cue"), use("seated play"))
    assert [line for line in said(game, "play") if "as long" in line] == ["attempts take 156 % as long"]


def test_equal_factors_both_count() -> None:
    game = made(row(), use("weaker hand", part=50), use("moving targets", part=50))
    assert [line for line in said(game, "play") if "as often" in line] == ["attempts succeed 25 % as often"]


def test_emptied_section_is_filled_anew() -> None:
    game = made(row(), use("points for targets", n=7))
    assert said(game, "finish") == ["the first side to 7 points wins", "after 8 min: more points wins, else a draw"]


@pytest.mark.parametrize(
    ("number", "lies"),
    [(2, "5 foam balls in each half"), (1, "foam balls in each half"), (4, "6 foam balls in each half")],
)
def test_more_balls_are_shared_between_the_halves(number: int, lies: str) -> None:
    game = made(row(), use("add balls", n=number))
    assert said(game, "kit")[0] == f"{8 + number} foam balls"
    assert lies in said(game, "set-up")


@pytest.mark.parametrize(("fewer", "left"), [(6, "1 foam ball in each half"), (4, "2 foam balls in each half")])
def test_one_ball_that_is_left_is_a_ball(fewer: int, left: str) -> None:
    assert left in said(made(row(), use("fewer balls", n=fewer)), "set-up")


def test_more_balls_lie_where_the_first_were_counted() -> None:
    text = ROW.replace("4 foam balls in each half", "6 foam balls in the middle\n      1 foam ball in each half")
    assert said(made(game_of(text), use("add balls", n=2)), "set-up")[1:] == [
        "8 foam balls in the middle",
        "1 foam ball in each half",
    ]


def test_no_ball_is_left_where_too_many_are_taken() -> None:
    assert mixed(row(), use("fewer balls", n=8)).findings[0].title.endswith("nothing would be left of the foam balls.")


def test_ball_must_be_fit_for_what_is_done_with_it() -> None:
    outcome = mixed(row(), use("kick instead"), modifier_in("make every ball like a cloth ball"))
    assert outcome.value is None
    assert outcome.findings[0].title == "`trial` does not fit: a cloth ball is not fit to be kicked."
    assert not list(unfit(row(), kit_names()))


def test_thing_that_the_kit_does_not_have_is_blamed_in_the_modifier() -> None:
    modifier = modifier_in("make every target like a nothing")
    [finding] = mixed(row(), modifier).findings
    assert "has no `nothing`" in finding.title
    assert finding.place.line == modifier.modifier.changes[0].span.line


def test_size_comes_back_to_itself_without_a_trace() -> None:
    game = made(row(), use("bigger targets", size=200), use("smaller targets", size=50))
    assert said(game, "kit") == said(row(), "kit")


def test_parameters_stand_in_blocks_too() -> None:
    game = made(row(), use("out to a task", time=45))
    assert "whoever waits in the task queue comes back after 45 s" in said(game, "play")


def test_modifier_for_any_target_meets_the_game_s_own_word() -> None:
    game = made(row(), modifier_in('needs a rule for when a target is knocked\nput in care\n  "Mind."'))
    assert '"Mind."' in said(game, "care")
    replaced = made(row(), modifier_in("replace in when\n  a target is knocked: it stands up again"))
    assert "a target is knocked: it stands up again" in said(replaced, "when")
    assert not any(line.startswith("a lantern is knocked") for line in said(replaced, "when"))


def test_need_of_points_and_of_two_sides_is_checked() -> None:
    assert mixed(row(), use("first to points")).findings[0].title.endswith("Row has no points.")
    alone = game_of(
        ROW.replace("north and south, 6 to 14 players each, mirrored", "keepers, 6 to 14 players, each for themselves")
        .replace(", halved across", ", in one piece")
        .replace("      long queue: beside each half\n", "")
        .replace("      dim strip: 2 m deep, before each back line, nobody guards there\n", "")
        .replace("lanterns on the back line of their side, evenly spaced", "lanterns on the court")
        .replace("4 foam balls in each half", "foam balls on the court")
        .replace("      players stay in their half\n", "")
        .replace("      a player is hit: that player waits in the long queue\n", "")
        .replace("      a ball is caught: the first in the catcher's long queue returns\n", "")
        .replace("a side wins when the other side has no lanterns standing", "play goes on until the clock stops")
        .replace("after 6 min: more lanterns standing wins, else a draw", "after 6 min: nobody wins")
    )
    assert mixed(alone, use("draw at once")).findings[0].title.endswith("Row has only one side.")


def test_what_a_modifier_warns_of_stands_in_the_care_of_what_it_makes() -> None:
    warning = 'caution "Mind the wall."'
    made_once = mixed(row(), modifier_in(f"{warning}\nadd 2 balls")).value
    assert made_once is not None
    assert [line.sentence.words() for line in made_once.game.sheet.lines("care")][-1] == '"Mind the wall."'
    again = mixed(made_once.game, modifier_in(f"{warning}\nadd 2 balls")).value
    assert again is not None and again.game.sheet.lines("care") == made_once.game.sheet.lines("care")
    idle = mixed(row(), modifier_in(f"{warning}\nchange kick to roll"))
    assert idle.value is not None and not idle.value.edits


def test_what_lies_in_each_half_is_dealt_out() -> None:
    """Eight balls among two halves, then among four: as many as there are, wherever that does not come out even."""
    dealt = made(row(), modifier_in("deal out every ball"))
    assert said(dealt, "set-up")[1] == "foam balls in each half"
    assert dealt.kit == row().kit
    four = made(row(), use("more sides"))
    assert [side.name for side in four.sides] == ["alder", "birch", "cedar", "dogwood"]
    assert said(four, "set-up")[1] == "foam balls in each half" and four.kit == row().kit


def test_balls_that_come_in_later_are_not_dealt_out() -> None:
    later = made(row(), use("second ball after a while"))
    before = [line for line in said(later, "set-up") if "balls in each half" in line]
    fewer = [line for line in said(made(later, use("fewer balls", n=2)), "set-up") if "balls in each half" in line]
    counts = [int(lines[0].split()[0]) for lines in (before, fewer)]
    assert counts[0] - counts[1] == 1


def test_where_no_target_stands_none_can_stand_elsewhere() -> None:
    trial = modifier_in("make every target stand before the back line of their side")
    without = [game for game in library_games().values() if all(line.category != "target" for line in game.kit)]
    assert without and mixed(row(), trial).value is not None
    for game in without[:2]:
        assert any("no target stands" in each.title for each in mixed(game, trial).findings), game.title


@pytest.mark.parametrize("change", ["in order", "from 4 m away"])
def test_where_nobody_aims_at_the_targets_it_is_said(change: str) -> None:
    trial = modifier_in(f"make attempts at the lanterns {change}")
    assert mixed(row(), trial).value is not None
    assert mixed(made(row(), trial), trial).value is not None, "it is so already"
    [told] = mixed(game_of(ROW.replace("the lanterns or the players", "the players")), trial).findings
    assert "nobody aims at a lantern" in told.title
