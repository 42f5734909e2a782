"""How much a hall is too small by: with the strips along its walls and what stands in it, and the same everywhere."""

from __future__ import annotations

import random

import pytest
from class_sheets import sheet_of
from playing_games import game_in, granted_rules, library_games

import library
from compose.fit.choosing import choices
from compose.fit.fit import fit
from compose.fit.suggest.class_wishes import fits
from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import in_words
from compose.modifiers.apply import remix
from compose.staging.floor.values import Rectangle
from compose.staging.staging import stage
from compose.telling.for_class import class_lines
from compose.telling.wording import ENGLISH
from compose.terminal.typed.finding_games import use
from grammar.finding import Finding, Severity
from grammar.format import format_game

OF_HALL = ("F-hall", "F-fixed", "F-run-off")
STAGE = """
    class Stage
      class of 27
      ages 9 to 10
      the hall is 15 m by 12 m
      stage along the {wall} wall, 6 m by 2 m, 4 m from its {end} end
      lesson of 40 min
      5 foam balls
      6 cones
    """
BARE = """
    class Bare
      class of 24
      the hall is {length:g} m by {width:g} m
    """


def to_mend(text: str, length_m: float, width_m: float) -> list[Finding]:
    """What of the hall is to be mended for a court of that size in the hall of a class."""
    sheet = format_game(library_games()["lantern-row"].sheet)
    game = game_in(sheet.replace("court 18 m by 9 m", f"court {length_m:g} m by {width_m:g} m"))
    found = fit(game, sheet_of(text), library.norms(), library.kit_names()).findings
    return [each for each in found if each.code in OF_HALL and each.severity is Severity.WARNING]


def test_strips_and_stage_are_reckoned_in_by_hand() -> None:
    """18 m by 9 m with 1 m all round is 20 m by 11 m; a stage of 2 m leaves 15 m by 10 m of 15 m by 12 m."""
    (found,) = to_mend(STAGE.format(wall="north", end="west"), 18, 9)
    assert found.code == "F-hall" and dict(found.numbers)["short_m"] == 5.0
    assert "needs 20 m by 11 m" in found.title and "15 m by 10 m is clear" in found.title


FIXED = (
    "stage along the north wall, 6 m by 2 m, 4 m from its west end",
    "stage along the east wall, 5 m by 1.5 m, 2 m from its south end",
    "wall bars along the south wall, 6 m by 20 cm, 1 m from its west end",
    "piano, 1.5 m by 0.7 m, 20 cm from the west wall and 30 cm from the south wall",
    "post, 30 cm by 30 cm, 3 m from the west wall and 8 m from the south wall",
)


def short_m(finding: Finding) -> float:
    return dict(finding.numbers)["short_m"]


@pytest.mark.parametrize("seed", range(40))
def test_what_is_said_is_what_has_to_go(seed: int) -> None:
    """A court smaller by so much in both directions has nothing of the hall to mend, one by 15 cm less has: with
    whatever stands in the hall, for the court lies where its floor is clear."""
    chance = random.Random(seed)
    length, width = chance.randint(13, 16), chance.randint(10, 12)
    fixed = chance.sample(FIXED, chance.randint(0, 3))
    text = BARE.format(length=length, width=width) + "".join(f"      {line}\n" for line in fixed)
    court = length + chance.choice((-1.5, 0.5, 1, 2.5)), width - chance.choice((0.5, 1, 2))
    found = [each for each in to_mend(text, *court) if each.code != "F-run-off"]
    assert len({short_m(each) for each in found}) < 2, "one court in one hall"
    for each in found[:1]:
        assert not to_mend(text, court[0] - short_m(each), court[1] - short_m(each))
        assert to_mend(text, court[0] - short_m(each) + 0.15, court[1] - short_m(each) + 0.15)


@pytest.mark.parametrize("part", [85.0, 95.0, 50.0])
def test_nothing_lies_beside_a_court_that_is_only_written_in_centimetres(part: float) -> None:
    """A court of 12 m by 7.65 m was told to be 12 m by 7.7 m with what lies beside it."""
    uses = [use(f"narrower court, part {part:g} %"), use("shorter court")]
    made = remix(library_games()["kiln-row"], uses, library.kit_names()).value
    assert made is not None
    staging = stage(made.game, library.norms(), library.kit_names(), sheet_of(BARE.format(length=15, width=12)))
    assert not any("with what lies beside it" in line for line in class_lines(staging))


@pytest.mark.parametrize("wall", ["north", "south", "east", "west"])
def test_a_court_lies_where_the_floor_is_clear(wall: str) -> None:
    """By hand: a stage of 2 m along any wall of 15 m by 12 m leaves 13 m by 12 m or 15 m by 10 m, and a court of 11 m
    by 8 m with 1 m all round goes into both."""
    assert not to_mend(STAGE.format(wall=wall, end="west" if wall in ("north", "south") else "south"), 11, 8)


def test_a_court_lies_in_the_middle_where_nothing_is_near() -> None:
    """Wall bars of 20 cm do not draw it to the other side of a hall that has the usual strip all round."""
    text = BARE.format(length=26, width=14) + f"      {FIXED[2]}\n"
    room = stage(library_games()["lantern-row"], library.norms(), library.kit_names(), sheet_of(text)).room
    assert room is not None and room.box == Rectangle(4.0, 2.5, 22.0, 11.5)


@pytest.mark.parametrize(("wall", "end"), [("north", "west"), ("east", "south")])
def test_a_list_of_games_lacks_what_the_fit_counts(wall: str, end: str) -> None:
    """Of every game of the library, whatever stands in the hall."""
    group = sheet_of(STAGE.format(wall=wall, end=end))
    looker = Looker(granted_rules(), library.kit_names(), library.norms(), group=group)
    for each in choices(library_games().values(), lambda game: fits(group, game), looker):
        lacking = {in_words(told, ENGLISH) for miss in each.lacks for told in miss.told}
        found = fit(each.game, group, library.norms(), library.kit_names()).findings
        counted = {one.title.rstrip(".") for one in found if one.severity is not Severity.NOTE}
        assert {one for one in lacking if not one.startswith("One side would")} == counted, each.game.title
