"""Kit and courts of the library against the rulebooks, written down here on their own.

Each line names title, issuer, year and section, and says where the value was not read in the issuer's own
words: "second-hand" (a page that restates it) or "from memory". Circumferences become diameters here.
"""

from __future__ import annotations

from math import pi

import pytest

import library

TOLERANCE_CM = 0.06  # the library rounds a diameter to the millimetre

COURTS = {
    # Official Basketball Rules, FIBA, in force 2023-2025, art. 2.1 (second-hand)
    "basketball court": (28.0, 15.0),
    # Official Volleyball Rules, FIVB, rule 1.1
    "volleyball court": (18.0, 9.0),
    # Laws of Badminton, BWF, law 1 (second-hand)
    "badminton court": (13.40, 6.10),
    # Rules of the Game, IHF, 2005, rule 1:1
    "handball court": (40.0, 20.0),
    # Floorball, rules in short for The World Games, IFF, 2017
    "floorball rink": (40.0, 20.0),
}

RUN_OFF = {
    # FIBA, art. 2.2: 2 m free of obstructions on every side
    "basketball court": (2.0, 2.0),
    # FIVB, rule 1.1: free zone of 3 m on every side
    "volleyball court": (3.0, 3.0),
    # IHF, rule 1:1: 1 m beside the court, 2 m behind the goal lines
    "handball court": (1.0, 2.0),
}

BALLS_BY_CIRCUMFERENCE_CM_AND_MASS_G = {
    # Basketball Equipment, FIBA, 2020, section 2 (second-hand)
    "basketball size 5": (68.5, 70.0, 465, 495),
    "basketball size 6": (71.5, 73.0, 510, 550),
    "basketball size 7": (75.0, 77.0, 580, 620),
    # Official Volleyball Rules, FIVB, rule 3.1 (second-hand)
    "volleyball": (65.0, 67.0, 260, 280),
    # Rules of the Game, IHF, 2005, rule 3:2
    "handball size 1": (50.0, 52.0, 290, 330),
    "handball size 2": (54.0, 56.0, 325, 375),
    "handball size 3": (58.0, 60.0, 425, 475),
    # Laws of the Game 2023-24, IFAB, law 2
    "football size 5": (68.0, 70.0, 410, 450),
    # Futsal Laws of the Game, FIFA, law 2
    "futsal ball": (62.0, 64.0, 400, 440),
}


@pytest.mark.parametrize("name", COURTS)
def test_courts_have_their_rulebook_size(name: str) -> None:
    court = library.courts()[name]
    assert (court.length_m.usual, court.width_m.usual) == COURTS[name]


@pytest.mark.parametrize("name", RUN_OFF)
def test_courts_have_their_clear_strip(name: str) -> None:
    court = library.courts()[name]
    assert court.run_off_side_m is not None and court.run_off_end_m is not None
    assert (court.run_off_side_m.usual, court.run_off_end_m.usual) == RUN_OFF[name]


def test_clear_height_over_the_courts() -> None:
    """FIBA art. 2.1 (second-hand) and FIVB rule 1.1: at least 7 m."""
    for name in ("basketball court", "volleyball court"):
        height = library.courts()[name].clear_height_m
        assert height is not None and height.usual == 7.0


def test_badminton_run_off_is_that_of_recreational_play() -> None:
    """Comparative Sizes of Sports Pitches and Courts, Sport England, 2011: 17.4 m by 9.1 m overall."""
    court = library.courts()["badminton court"]
    assert court.run_off_side_m is not None and court.run_off_end_m is not None
    assert court.length_m.usual + 2 * court.run_off_end_m.usual == pytest.approx(17.4)
    assert court.width_m.usual + 2 * court.run_off_side_m.usual == pytest.approx(9.1)


@pytest.mark.parametrize("name", BALLS_BY_CIRCUMFERENCE_CM_AND_MASS_G)
def test_balls_have_their_rulebook_size_and_mass(name: str) -> None:
    least, most, light, heavy = BALLS_BY_CIRCUMFERENCE_CM_AND_MASS_G[name]
    ball = library.kit_catalogue()[name]
    assert ball.diameter_cm is not None and ball.mass_g is not None
    assert ball.diameter_cm.low == pytest.approx(least / pi, abs=TOLERANCE_CM)
    assert ball.diameter_cm.high == pytest.approx(most / pi, abs=TOLERANCE_CM)
    assert (ball.mass_g.low, ball.mass_g.high) == (light, heavy)


def test_tennis_ball() -> None:
    """Rules of Tennis, ITF, appendix I, type 2: 6.54 to 6.86 cm, 56.0 to 59.4 g."""
    ball = library.kit_catalogue()["tennis ball"]
    assert ball.diameter_cm is not None and ball.mass_g is not None
    assert (ball.diameter_cm.low, ball.diameter_cm.high) == (6.54, 6.86)
    assert (ball.mass_g.low, ball.mass_g.high) == (56.0, 59.4)


def test_bowling_pin() -> None:
    """Equipment Specifications, USBC: 15 in high, widest about 4.766 in (the third decimal from memory)."""
    pin = library.kit_catalogue()["bowling pin"]
    assert pin.diameter_cm is not None and pin.height_cm is not None
    assert pin.height_cm.usual == pytest.approx(15 * 2.54, abs=0.05)
    assert pin.diameter_cm.usual == pytest.approx(4.766 * 2.54, abs=0.05)


def test_hoop() -> None:
    """Apparatus Norms, FIG, 2016, rhythmic gymnastics (second-hand): 70 to 90 cm inside, at least 300 g."""
    hoop = library.kit_catalogue()["hoop"]
    assert hoop.diameter_cm is not None and hoop.mass_g is not None
    assert (hoop.diameter_cm.low, hoop.diameter_cm.high) == (70, 90)
    assert hoop.mass_g.low == 300


def test_basketball_ring() -> None:
    """Basketball Equipment, FIBA, section 1.2 (from memory): 450 to 459 mm inside, 3.05 m above the floor."""
    ring = library.kit_catalogue()["basketball ring"]
    assert ring.diameter_cm is not None and ring.stands_above_floor_cm is not None
    assert (ring.diameter_cm.low, ring.diameter_cm.high) == (45.0, 45.9)
    assert ring.stands_above_floor_cm.high == 305


def test_handball_goal() -> None:
    """Rules of the Game, IHF, 2005, rule 1:2: 2 m high and 3 m wide inside."""
    assert library.kit_catalogue()["handball goal"].size_m == (3.0, 2.0)


def test_floorball_ball_and_goal() -> None:
    """IFF: ball 72 mm, at most 23 g; goal 160 by 115 cm (second-hand)."""
    ball = library.kit_catalogue()["floorball ball"]
    assert ball.diameter_cm is not None and ball.mass_g is not None
    assert (ball.diameter_cm.usual, ball.mass_g.high) == (7.2, 23)
    assert library.kit_catalogue()["small goal"].size_m == (1.6, 1.15)


HALLS = {
    # DIN 18032-1, DIN, 2024, table 1 (second-hand): length, width, height
    "gymnastics room 20 by 10": (20, 10, 4),
    "gym 24 by 12": (24, 12, 4),
    "single hall 27 by 15": (27, 15, 5.5),
    "double hall 45 by 22": (45, 22, 7),
    "triple hall 45 by 27": (45, 27, 7),
    # Sports Halls: Sizes and Layouts, Sport England, four-court hall
    "four-court hall 33 by 18": (33, 18, 7.6),
    # Design note 2: sports hall, sportscotland (second-hand)
    "four-court hall 34 by 19": (34, 19, 7.6),
}


@pytest.mark.parametrize("name", HALLS)
def test_halls_have_their_published_size(name: str) -> None:
    hall = library.halls()[name]
    assert (hall.length_m.usual, hall.width_m.usual, hall.height_m.usual) == HALLS[name]


def test_the_whole_basketball_floor_needs_more_than_a_four_court_hall() -> None:
    """28 m by 15 m with 2 m all round is 32 m by 19 m: the old hall of 33 m by 18 m is too narrow."""
    court, hall = library.courts()["basketball court"], library.halls()["four-court hall 33 by 18"]
    assert court.run_off_side_m is not None and court.run_off_end_m is not None
    assert court.length_m.usual + 2 * court.run_off_end_m.usual == 32
    assert court.width_m.usual + 2 * court.run_off_side_m.usual == 19 > hall.width_m.usual
