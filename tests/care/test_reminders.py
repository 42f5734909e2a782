"""Reminders: each beside a sound game that is not reminded of it; none of them ever asks for an exit code."""

from __future__ import annotations

import pytest
from scenes import changed, codes, game_in, library_games, modifier_named, reminded

import library
from compose.care.reminders import GRAVEST_FIRST
from compose.care.scene import LAST_WORD, Scene
from compose.care.ways import running_stop_m, stopping_m
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.staging.laid_out import laid_out
from compose.staging.resolved import resolved
from grammar.core.values import Skill
from grammar.finding import Severity

AT_PINS = "at the pins of the other side\n"
AT_PEOPLE = ("at the pins of the other side\n", "at the pins or the players of the other side\n")
LOW = (AT_PINS, f"{AT_PEOPLE[1]}      players play kneeling\n")
HIT = ("it stays down\n", "it stays down\n      a player is hit: that player waits in the waiting queue\n")

PLACED = ("gangways on the far bench of their side", "mats behind the back line of their side")
NO_MATS = tuple((f"      {line}\n", "") for line in ("4 mats for each side", PLACED[1]))
THERE = "players run from their back line to the back line of the other side"


def line_of_play(words: str) -> tuple[str, str]:
    return AT_PINS, f"{AT_PINS}      {words}\n"


def test_sound_game_is_reminded_of_nothing() -> None:
    assert codes(reminded(changed())) == []
    assert codes(reminded(changed(), walls_m=3.0)) == []


@pytest.mark.parametrize(
    ("changes", "code", "said"),
    [
        ((AT_PEOPLE, HIT, ("ages 9 to 12", "ages 6 to 12")), "S-young", "overarm"),
        ((AT_PEOPLE, HIT, ("8 foam balls", "8 tennis balls"), ("foam", "tennis")), "S-hard-ball", "tennis balls"),
        ((AT_PEOPLE, HIT, ("overarm throw", "kick"), ("foam", "small foam")), "S-kick", "kicked at"),
        ((AT_PEOPLE, HIT, ("pins of the other side\n", "x")), "S-near", "m is usual"),
        ((LOW, HIT), "S-low", "kneeling"),
        ((line_of_play("the teacher stands up a pin, 1 times a minute"),), "S-in-fire", "The teacher stands up pins"),
        ((line_of_play("the teacher stands up a pin, 1 times a minute"),), "S-eyes", "stands up targets"),
        ((line_of_play("the teacher fetches balls from the gorse zone, 9 times a minute"),), "S-eyes", "9 tasks"),
        ((line_of_play("players fetch balls from behind their back line"),), "S-in-fire", "A player brings"),
        ((line_of_play("players run from wall to wall"),), "S-wall", "wall"),
        ((line_of_play(THERE),), "S-crossing", "ways may cross"),
        (
            (
                line_of_play("players pass a foam ball to a team-mate on the far bench of the other side"),
                (
                    "it stays down\n",
                    "it stays down\n      a pass is caught on the far bench of the other side: "
                    "the passer joins the far bench of the other side\n",
                ),
                (
                    "4 foam balls in each half",
                    "4 foam balls in each half\n      1 player of each side on the far bench of the other side",
                ),
            ),
            "S-crossing",
            "other side's floor",
        ),
        ((("it stays down", "it joins the thrower's side"),), "S-crossing", "other side's floor"),
        (NO_MATS, "S-bench", "no mats"),
        ((line_of_play("players tow a pin from their back line to the middle line"),), "S-tow", "neither sledges"),
    ],
)
def test_what_can_hurt_is_reminded_of(changes: tuple[tuple[str, str], ...], code: str, said: str) -> None:
    if code == "S-near":
        changes = (*changes[:2], ("18 m by 9 m", "3 m by 9 m"), ("2 m deep", "50 cm deep"))
    (finding, *more) = [each for each in reminded(changed(*changes)) if each.code == code]
    assert said in finding.title and not more and finding.place.line > 1


def test_reminders_never_ask_for_an_exit_code_and_say_who_decides() -> None:
    every = [each for game in library_games().values() for each in reminded(game, (6.0, 7.0), 0.9)]
    assert len(every) > 10
    for each in every:
        assert each.severity is Severity.NOTE and each.hint.endswith(LAST_WORD) and each.code in GRAVEST_FIRST


def test_gravest_come_first() -> None:
    for game in library_games().values():
        found = [GRAVEST_FIRST.index(code) for code in codes(reminded(game, (6.0, 7.0), 0.9))]
        assert found == sorted(found)


def test_a_game_for_the_youngest_with_overarm_throws_at_people_says_so() -> None:
    made = remix(library_games()["heron-and-pike"], [Use(modifier_named("for the youngest"), {})], library.kit_names())
    assert made.value is not None
    assert "S-young" not in codes(reminded(made.value.base))
    assert "S-young" in codes(reminded(made.value.game))


def test_age_that_is_usual_is_not_reminded_of() -> None:
    """From 9 years on is our norm for overarm throws: 9 is not too young, 8.9 is."""
    game = changed(AT_PEOPLE, HIT)
    assert "S-young" not in codes(reminded(game, (9.0, 10.0)))
    assert "S-young" in codes(reminded(game, (8.9, 10.0)))


def test_way_to_stop_by_hand() -> None:
    """At 10 to 11 years: 4.6 m/s, 0.245 s, 3.5 m/s2: 4.6 x 0.245 + 4.6^2 / 7 = 4.15 m; the mean over the two years
    lies within a tenth of it. With a sledge 0.4 of the speed: 1.84 x 0.245 + 1.84^2 / 7 = 0.93 m."""
    game = changed()
    floor = laid_out(game, {"larks": 4, "owls": 4})
    scene = Scene(resolved(game), floor, (10.0, 11.0), library.kit_names(), library.norms())
    assert stopping_m(scene, Skill.RUN) == pytest.approx(4.15, abs=0.1)
    assert stopping_m(scene, Skill.TOW) == pytest.approx(0.93, abs=0.05)
    assert running_stop_m(scene) == pytest.approx(2.2 * 0.245 + 2.2**2 / 7, abs=0.05)


@pytest.mark.parametrize(("walls", "there"), [(0.5, False), (0.9, True), (1.0, True), (1.3, False), (3.0, False)])
def test_targets_close_to_a_wall(walls: float, there: bool) -> None:
    """Pins 15 cm inside: less than 1 m to the wall is told by the room, and within 1.3 m one can stop."""
    bench = ("far bench: behind each back line", "2 gangways for each side, like a bench")
    game = changed(*((f"      {line}\n", "") for line in (*bench, *PLACED, "4 mats for each side")))
    assert ("S-wall-thing" in codes(reminded(game, walls_m=walls))) is there


def test_run_up_to_a_line_near_a_wall() -> None:
    game = changed(line_of_play("larks run from their back line to the back line of the other side"))
    assert "S-stop" in codes(reminded(game, walls_m=1.5))
    assert "S-stop" not in codes(reminded(game, walls_m=4.5))


def test_who_waits_on_a_bench_sits() -> None:
    waiting = (
        ("it stays down\n", "it stays down\n      a player is hit: that player waits on the far bench\n"
         "      a ball is caught: the first on the catcher's far bench returns\n"),
    )  # fmt: skip
    assert "S-bench" in codes(reminded(changed(*NO_MATS, AT_PEOPLE)))
    assert "S-bench" not in codes(reminded(changed(*NO_MATS, AT_PEOPLE, *waiting)))


def test_who_changes_sides_crosses_no_balls_where_there_are_none() -> None:
    text = """
        game Fish
          ages 8 to 11
          about "Invented."
        space
          court 18 m by 9 m, in one piece
        sides
          fishers, 3 players
          fish, 12 players
        play
          fish run from wall to wall
          fishers touch fish
        when
          a fish is touched: that player joins the fishers
        finish
          the round ends when fish have no players in, nobody wins
          after 4 min: nobody wins
        """
    assert "S-crossing" not in codes(reminded(game_in(text)))


def test_who_runs_in_a_lane_of_their_own_crosses_nobody() -> None:
    text = next(each for each in library.game_paths() if each.stem == "fell-couriers").read_text(encoding="utf-8")
    assert "S-crossing" not in codes(reminded(game_in(text)))
    loose = text.replace(", only 1 player at a time", "")
    assert loose != text and "S-crossing" in codes(reminded(game_in(loose)))
