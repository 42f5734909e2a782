"""The fit of a game to a class: hall, run-off, kit, ages, time; every limit with who says so."""

from __future__ import annotations

import pytest
from attrs import evolve
from class_sheets import BECK, sheet_of
from playing_games import game_in, library_games
from test_teams import PAIRS

import library
from compose.care.of_staging import care_of
from compose.fit.fit import Fit, fit
from compose.modifiers.apply import remix
from compose.staging.cupboard import kit_rows
from compose.staging.floor.values import Floor
from compose.staging.laid_out import laid_out
from compose.staging.room import most_courts, room_for
from compose.terminal.typed.finding_games import use
from grammar.finding import Severity
from grammar.format import format_game
from grammar.game import Game
from library import Hall


def fitted(game: Game | str, text: str = BECK, round_min: float | None = 4.5) -> Fit:
    playing = library_games()[game] if isinstance(game, str) else game
    return fit(playing, sheet_of(text), library.norms(), library.kit_names(), round_min)


def codes(found: Fit, severity: Severity = Severity.WARNING) -> set[str]:
    return {each.code for each in found.findings if each.severity is severity}


def test_game_that_fits_says_so() -> None:
    found = fitted("lantern-row")
    assert found.fits and codes(found, Severity.NOTE) == {"F-odd"}
    assert found.staging.teams.words() == "14 north and 13 south"
    assert found.staging.room is not None and (found.staging.room.beside, found.staging.room.behind) == (2.5, 4.0)


def court(length: float, width: float) -> Floor:
    text = PAIRS.format(players="1 player each", more="up to 14 duels side by side")
    game = game_in(text.replace("court 6 m by 2 m", f"court {length:g} m by {width:g} m"))
    floor = laid_out(game, {"west": 1, "east": 1})
    assert (floor.extent.length, floor.extent.width) == (length, width)
    return floor


def bare(name: str) -> Hall:
    """A hall of the library without what stands in it."""
    return evolve(library.halls()[name], obstacles=())


@pytest.mark.parametrize(
    ("length", "width", "turned", "beside", "behind"),
    [(6, 2, False, 3.75, 6.0), (6, 12, True, 3.0, 1.75), (10, 9.5, False, 0.0, 4.0), (10, 11, True, 3.5, -0.25)],
)
def test_court_lies_the_way_that_leaves_more_room(
    length: float, width: float, turned: bool, beside: float, behind: float
) -> None:
    """In a hall of 18 m by 9.5 m without what stands in it, by hand."""
    room = room_for(court(length, width), bare("Tarn Head school hall"), 1, 1.0, 2.0)
    assert (room.turned, room.beside, room.behind) == (turned, pytest.approx(beside), pytest.approx(behind))
    assert room.fits is (behind >= 0)


@pytest.mark.parametrize(("strip", "courts"), [(0.0, 5), (1.0, 4), (1.75, 4), (2.0, 2), (4.0, 0)])
def test_as_many_courts_as_leave_the_strip(strip: float, courts: int) -> None:
    """18 m by 9.5 m and courts of 6 m by 2 m with 2 m between them, by hand: two and two along the hall leave 2 m
    and 1.75 m, five in a row across it leave none at the ends."""
    assert most_courts(court(6, 2), bare("Tarn Head school hall"), strip, 2.0, 14) == courts


def test_court_larger_than_the_hall_is_told_in_metres() -> None:
    text = BECK.replace("Fellgate school sports hall", "gymnastics room 20 by 10")
    found = fitted("four-becks", text)
    (finding,) = (each for each in found.findings if each.code == "F-hall")
    assert "6.0 m too small" in finding.title and dict(finding.numbers)["short_m"] == 6.0, "with 1 m all round"


def test_fixed_things_in_the_way_are_named() -> None:
    found = fitted("lantern-row", BECK.replace("Fellgate school sports hall", "Tarn Head school hall"))
    titles = [each.title for each in found.findings if each.code == "F-fixed"]
    assert any("stage" in title for title in titles)
    assert "F-run-off" in codes(found)


def test_what_is_of_the_court_points_at_its_line_and_at_what_lies_beside_it() -> None:
    for hall, code in (("gymnastics room 20 by 10", "F-hall"), ("Tarn Head school hall", "F-run-off")):
        stem = "ferry-bench" if code == "F-hall" else "lantern-row"
        found = fitted(stem, BECK.replace("Fellgate school sports hall", hall))
        lines = next(path for path in library.game_paths() if path.stem == stem).read_text("utf-8").splitlines()
        (finding, *_) = (each for each in found.findings if each.code == code)
        assert lines[finding.place.line - 1].strip().startswith("court "), finding.place
        assert all("behind" in lines[place.line - 1] or "beside" in lines[place.line - 1] for place in finding.others)
        assert bool(finding.others) == (stem == "ferry-bench")


def test_every_limit_names_its_source() -> None:
    found = fitted("lantern-row", BECK.replace("Fellgate school sports hall", "Tarn Head school hall"))
    assert len(found.staging.limits) == 4
    for each in found.staging.limits:
        assert each.sources and each.said_by()
        assert not any(source.read == "assumption" for source in each.sources) or each.why
    area = found.staging.limits[0]
    assert area.there == pytest.approx((18 * 9.5 - 1.8 * 6.5 - 6 * 0.2 - 0.7 * 1.5) / 27)  # stage, bars, piano
    assert area.broken and "F-area" in codes(found, Severity.NOTE)
    assert "F-area" not in codes(found), "no game changes the hall, and the court has room"


def test_kit_that_is_there_is_enough() -> None:
    assert not {"F-kit", "F-stand-in"} & {each.code for each in fitted("lantern-row").findings}


def test_stand_ins_are_of_the_sort_and_fit_for_the_skill() -> None:
    cupboard = "5 foam balls\n      2 soft volleyballs\n      9 soft footballs\n      3 tennis balls"
    text = BECK.replace("8 foam balls", cupboard)
    (row,) = (row for row in fitted("lantern-row", text).staging.kit if row.line.name == "foam ball")
    assert (row.needed, row.there, row.short) == (8, 5, 1)
    assert [(each.name, each.count) for each in row.stand_ins] == [("soft volleyballs", 2)]


def test_a_thing_that_nobody_knows_says_how_others_stand_in() -> None:
    """ "4 soft balls" beside five foam balls: nothing says that they are alike."""
    sheet = format_game(library_games()["lantern-row"].sheet)
    for like, hinted in (("", ", like a foam ball"), (", like a foam ball", "")):
        text = sheet.replace("foam ball", "soft ball").replace("8 soft balls", f"8 soft balls{like}")
        found = fitted(game_in(text), BECK.replace("8 foam balls", "5 foam balls"))
        (short,) = (each for each in found.findings if each.code == "F-kit")
        (row,) = (row for row in found.staging.kit if row.line.name == "soft ball")
        assert (f"`{hinted}`" if hinted else "borrow") in short.hint
        assert (row.there, row.short) == ((5, 3) if like else (0, 8))


def test_thing_is_not_given_out_twice() -> None:
    game = library_games()["heron-and-pike"]
    cupboard = sheet_of("class A\n  class of 20\n  1 soft volleyball\n  5 foam balls").cupboard
    rows = {row.line.name: row for row in kit_rows(game, [{"herons": 10, "pikes": 10}], cupboard, library.kit_names())}
    assert rows["red ball"].there == 1 and not rows["red ball"].stand_ins
    assert rows["foam ball"].there == 5 and rows["foam ball"].short == 1


def test_games_side_by_side_need_kit_each() -> None:
    text = BECK.replace("8 foam balls", "40 soft tennis balls").replace("plastic pins", "buckets")
    found = fitted("toll-stone", text)
    assert len(found.staging.teams.games) == 9
    assert [(row.line.name, row.needed) for row in found.staging.kit] == [("soft tennis ball", 18), ("stone", 9)]


def test_hard_ball_at_players_is_a_reminder() -> None:
    game = game_in(
        PAIRS.format(players="2 to 4 players each", more="")
        .replace("soft tennis balls", "tennis balls")
        .replace("soft tennis ball", "tennis ball")
        .replace("at the stones of the other side", "at the stones or the players of the other side")
    )
    found = fitted(game)
    assert "S-hard-ball" in {each.code for each in care_of(found.staging)}


@pytest.mark.parametrize(("ages", "code"), [("9 to 10", None), ("6 to 8", "F-age"), ("12 to 14", "F-age")])
def test_ages_are_compared(ages: str, code: str | None) -> None:
    found = fitted("lantern-row", BECK.replace("9 to 10", ages))
    assert ("F-age" in codes(found)) is (code is not None)


@pytest.mark.parametrize(("pupils", "code"), [(27, None), (11, "F-too-few"), (29, "F-too-many"), (28, None)])
def test_pupils_are_compared(pupils: int, code: str | None) -> None:
    found = fitted("lantern-row", BECK.replace("class of 27", f"class of {pupils}"))
    assert codes(found, Severity.ERROR) == ({code} if code else set())
    assert bool(found.staging.refused) is (code is not None)


@pytest.mark.parametrize(("round_min", "rounds", "code"), [(4.5, 6, None), (33.0, 1, None), (40.0, 0, "F-time")])
def test_rounds_that_fit_in_the_lesson(round_min: float, rounds: int, code: str | None) -> None:
    """45 min less 5, 3, 2 and 2 are 33; between rounds 0.7 min: (33 + 0.7) / (4.5 + 0.7) = 6.48."""
    found = fitted("lantern-row", round_min=round_min)
    assert found.lesson.lesson.play == pytest.approx(33.0)
    assert found.lesson.rounds == rounds
    assert ("F-time" in codes(found)) is (code is not None)


@pytest.mark.parametrize(("with_it", "advised"), [((), "end a round sooner"), (("next point wins",), "else a draw")])
def test_a_round_too_long_is_advised_what_would_end_it(with_it: tuple[str, ...], advised: str) -> None:
    """Where a level score is played on there is a clock already: the draw is what ends the round with it."""
    made = remix(library_games()["millrace-roll"], [use(each) for each in with_it], library.kit_names()).value
    assert made is not None
    (found,) = (each for each in fitted(made.game, round_min=40.0).findings if each.code == "F-time")
    assert advised in found.hint


def test_best_of_rounds_needs_them() -> None:
    found = fitted("quarry-row", BECK.replace("45 min", "30 min"), round_min=7.0)
    assert (found.lesson.rounds, found.lesson.wanted) == (2, 3)
    assert "F-time" in codes(found)


def test_own_times_of_the_class_are_taken() -> None:
    found = fitted("lantern-row", BECK + "      setting up takes 10 min\n")
    assert found.lesson.lesson.play == pytest.approx(26.0)


def test_clock_stands_in_for_a_forecast() -> None:
    found = fitted("lantern-row", round_min=None)
    assert (found.lesson.round_min, found.lesson.known_by) == (6.0, "the game's clock")
    assert "F-time" in codes(fitted("millrace-roll", round_min=None), Severity.NOTE)


def test_cautions_of_the_game_and_its_kit_are_told() -> None:
    found = fitted("lantern-row")
    assert found.staging.cautions[0].text.startswith("Aim at the lanterns")
    assert len(found.staging.cautions) == len(set(found.staging.cautions)) >= 2


def test_floor_for_each_player_is_that_of_the_court_without_what_nobody_enters() -> None:
    """8 m by 4 m and a strip of 1 m before each back line that nobody enters: 24 m2 for 27 players."""
    text = PAIRS.format(players="4 to 14 players each", more="").replace("court 6 m by 2 m", "court 8 m by 4 m")
    game = game_in(
        text.replace(
            "halved across\n", "halved across\n      sand strip: 1 m deep, before each back line, nobody enters there\n"
        )
    )
    found = fitted(game)
    (space,) = (each for each in found.staging.limits if each.what == "court floor for each player")
    assert space.there == pytest.approx(24 / 27) and space.broken and space.sources
    (finding,) = (each for each in found.findings if each.code == "F-area" and "court" in each.title)
    assert finding.severity is Severity.WARNING and "3 m2 the least" in finding.title


def test_library_games_leave_their_players_room() -> None:
    """The usual room; in those for a small hall, where a whole class has no more, what is the least."""
    for stem in library_games():
        lack = [each for each in fitted(stem).findings if each.code == "F-area" and "court" in each.title]
        small = "for a small hall" in library.game_paths()[0].with_name(f"{stem}.rules").read_text("utf-8")
        assert not lack or (small and {each.severity for each in lack} == {Severity.NOTE}), stem
