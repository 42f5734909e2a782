"""A lesson of several games: the minutes add up, rounds are whole, kit is shared, and its sheet says how to play."""

from __future__ import annotations

import re
from io import BytesIO

import pytest
from attrs import evolve
from drawn_games import NAMES, game_of, lanterns, library_game
from hypothesis import given, settings
from hypothesis import strategies as st
from planned_games import TWO, planned, planned_game
from pypdf import PdfReader
from test_plan import covered
from test_remixed_cards import nothing_is_clipped
from typer import Exit

import library
from compose.draw.lesson.findings import lesson_findings
from compose.draw.lesson.minutes_bar import NAMES as NAMES_OF_SLOTS
from compose.draw.lesson.minutes_bar import time_bar
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.talk import warm_up_lines
from compose.draw.lesson.timetable import COOL_DOWN, PLAY, Planned, fitted, lesson_table
from compose.draw.lesson.to_pdf import lesson_pdf_of
from compose.draw.signs.lettering import width_em
from compose.draw.signs.shapes import Label
from compose.staging.resolved import resolved
from compose.staging.school_class import InCupboard, some_class
from compose.staging.staging import stage
from compose.telling.rules import rules_of
from compose.telling.wording import ENGLISH, wording_of
from compose.terminal.lessons import uses_of
from grammar.amounts import as_told
from grammar.span import nowhere
from library.lesson_words import skill_words

EIGHT = (*TWO, "quarry-row", "winter-store", "cairn-keepers", "heather-raid", "crag-row", "plover-nests")


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.sampled_from(NAMES), min_size=1, max_size=3),
    st.lists(st.one_of(st.none(), st.floats(0.5, 30)), min_size=3, max_size=3),
    st.floats(20, 120),
)
def test_the_minutes_add_up(names, rounds, minutes):
    games = [planned(name, length, minutes) for name, length in zip(names, rounds, strict=False)]
    table = lesson_table(games, library.norms())
    if table.short_min:
        assert not table.slots
        return
    assert table.slots[0].start == 0
    for before, after in zip(table.slots, table.slots[1:], strict=False):
        assert before.minutes >= 0
        assert after.start == pytest.approx(before.end)
    assert table.slots[-1].end == pytest.approx(minutes)
    for slot in table.slots:
        if slot.kind == PLAY and slot.rounds:
            one = games[slot.game]
            again, lasting = table.lesson.again, as_told(one.round_min)
            assert slot.minutes == pytest.approx(slot.rounds * lasting + (slot.rounds - 1) * again)
            talk = next(each.minutes for each in table.slots if each.kind == COOL_DOWN)
            assert talk < table.lesson.talk + again + lasting + 1e-6, "one more whole round would fit"


def test_rounds_that_fit():
    numbers = ((10.0, 3.0), (9.9, 3.0), (2.0, 3.0), (2.0, None))
    found = [fitted(share, round_min, 0.5) for share, round_min in numbers]
    assert [(rounds.number, minutes) for rounds, minutes in found] == [(3, 10.0), (2, 6.5), (0, 2.0), (0, 2.0)]


def test_a_lesson_too_short_says_by_how_much():
    table = lesson_table([planned(name, minutes=20) for name in TWO], library.norms())
    assert table.short_min > 0
    minutes = 20 + table.short_min
    longer = lesson_table(
        [planned(name, minutes=minutes) for name in ("lantern-row", "heron-and-pike")], library.norms()
    )
    assert longer.short_min == 0


@pytest.mark.parametrize("language", ["en", "fr"])
@pytest.mark.parametrize("names", [TWO[:1], (*TWO, "quarry-row"), EIGHT], ids=len)
def test_the_sheet_is_whole_on_as_few_pages_as_it_needs(language, names):
    table = lesson_table([planned(name, minutes=60 if len(names) < 4 else 120) for name in names], library.norms())
    card = lesson_card(table, "Monday", wording_of(language))
    assert card.plan.box.joined(covered(card.plan)) == card.plan.box
    outcome = lesson_pdf_of(card)
    reader = PdfReader(BytesIO(outcome.value))
    of_three = 2 if language == "en" else 4  # French is longer: what does not fit on two pages gets larger letters
    assert len(reader.pages) == {1: 1, 3: of_three}.get(len(names), len(reader.pages))
    page = re.sub(r"\s+", "", "".join(each.extract_text() for each in reader.pages))
    assert all(re.sub(r"\s+", "", line) in page for part in card.sections for line in part.lines)
    nothing_is_clipped(outcome.value, "A4")


def test_kit_is_counted_over_all_courts_and_change_overs():
    """Twelve duels need a ball for each pupil and a stone for each pair, before and after a game of the whole class."""
    group = some_class(24)
    games = [library_game(name) for name in ("toll-stone", "lantern-row", "toll-stone")]
    staged = [stage(game, library.norms(), library.kit_names(), group) for game in games]
    table = lesson_table([Planned(game, each, 2.0) for game, each in zip(games, staged, strict=True)], library.norms())
    kit = {each.line.like: each.by_game for each in table.kit}
    assert kit["soft tennis ball"] == (24, 0, 24)
    lines = lesson_card(table, "Monday").section("3. Toll Stone").lines
    assert any("24 soft tennis balls" in line for line in lines if line.startswith("Bring out"))
    assert any("12 courts" in line for line in lines if line.startswith("Mark the floor anew"))


def test_little_play_and_little_movement_are_said():
    long = lesson_table([planned_game(library_game("lantern-row"), 5.0, 60, active=0.9)], library.norms())
    assert not list(lesson_findings(long, library.norms()))
    names = ("lantern-row", "heron-and-pike", "quarry-row")
    short = lesson_table([planned(name, 3.0, 38) for name in names], library.norms())
    assert short.played_min < 38 / 3
    assert [each.code for each in lesson_findings(short, library.norms())] == ["F-time", "F-little-play"], "two halves"
    still = lesson_table([planned_game(library_game("lantern-row"), 5.0, 60, active=0.2)], library.norms())
    assert [each.code for each in lesson_findings(still, library.norms())] == ["F-lesson-active"]


def test_modifiers_are_for_all_games_or_for_one():
    written = ("roll instead", "2: add balls, n 3", " 1 : bigger targets")
    assert uses_of(1, written, 2, False) == ("roll instead", "bigger targets")
    assert uses_of(2, written, 2, False) == ("roll instead", "add balls, n 3")
    with pytest.raises(Exit):
        uses_of(1, ("3: roll instead",), 2, False)


def test_warm_up_and_talk_are_about_what_the_games_practise():
    card = lesson_card(lesson_table([planned(name, minutes=60) for name in TWO], library.norms()), "Monday")
    words = skill_words()
    assert card.section("Warm-up").lines[0].startswith(words["overarm throw"].warm_up)
    talk = card.section("Talk").lines
    assert words["overarm throw"].ask in talk
    assert "Licence: CC-BY-4.0." in card.footer and sum("Licence" in line for line in card.footer) == 1
    cue = resolved(library_game("heron-and-pike")).told.cues[0]
    assert any(cue.rstrip(".") in line for line in talk)


@pytest.mark.parametrize("name", NAMES)
def test_every_skill_of_a_game_has_words_in_both_languages(name):
    french = wording_of("fr")
    for skill in resolved(library_game(name)).facts.skills:
        words = skill_words()[skill]
        assert all(french.author(text) != text for text in (words.ask, *(way.text for way in words.ways)))


BALLS = [name for name, item in library.kit_catalogue().items() if item.category == "ball"]

SAID = [skill for skill in skill_words() if skill != "free"]  # that needs an object in a sheet


def of_class(game, pupils, round_min=3.0, balls=None):
    """The game in a usual lesson of a class that has so many foam balls, if that is said."""
    cupboard = () if balls is None else (InCupboard("foam ball", balls, "foam ball", nowhere()),)
    group = evolve(some_class(pupils), cupboard=cupboard)
    return Planned(game, stage(game, library.norms(), library.kit_names(), group), round_min)


@pytest.mark.parametrize("name", NAMES)
def test_every_game_says_how_it_is_played(name):
    """A lesson is given from its sheet alone: whatever the card says of play, of what follows and of winning."""
    card = lesson_card(lesson_table([planned(name, 2.0, 60)], library.norms()), "Monday")
    rules = rules_of(resolved(library_game(name)), ENGLISH)
    told = next(part.lines for part in card.sections if part.heading.startswith("1. "))
    assert {*rules.play, *rules.when, *rules.finish} <= {*told}


@given(st.integers(25, 90), st.floats(1.0, 9.0), st.sampled_from([(), ("lantern-row",)]))
@settings(max_examples=30)
def test_a_game_that_gets_fewer_rounds_than_it_asks_for_is_told_so(minutes, round_min, others):
    """With all of three sides meeting all three rounds are a game; so are up to three in best of three. The sheet and
    the finding say the same."""
    for line in ("one side rests, all meet all", "best of 3 rounds"):
        sheet = next(path for path in library.game_paths() if path.stem == "heron-and-pike").read_text(encoding="utf-8")
        game = game_of(sheet.replace("\nfinish\n", f"\nfinish\n  {line}\n"))
        planning = [planned_game(game, round_min, minutes), *(planned(name, 4.0, minutes) for name in others)]
        table = lesson_table(planning, library.norms())
        if table.short_min:
            return
        told = [each for each in lesson_findings(table, library.norms()) if each.code == "F-time"]
        assert bool(told) == (table.rounds_of(0) < 3)
        lines = lesson_card(table, "Monday").section("1. Heron and Pike").lines
        assert any(line.startswith("The game asks for 3 rounds") for line in lines) == bool(told)


@pytest.mark.parametrize(("balls", "way"), [(None, 1), (5, 2), (7, 1), (11, 1), (12, 0)])
def test_a_warm_up_asks_for_no_more_balls_than_there_are(balls, way):
    """In pairs of which one is of three 25 pupils need 12 balls, in groups of at most four 7."""
    sheet = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")
    kicked = of_class(game_of(sheet.replace("skills overarm throw, aim", "skills kick, run")), 25, balls=balls)
    lines = lesson_card(lesson_table([kicked], library.norms()), "Monday").section("Warm-up").lines
    words = skill_words()
    assert lines[0].startswith(words["kick"].ways[way].text)
    assert ("It takes" in lines[0]) == (way < 2) and ("One pair is of three." in lines[0]) == (way == 0)
    assert words["run"].warm_up in lines


@given(
    st.sampled_from(SAID),
    st.integers(1, 36),
    st.dictionaries(st.sampled_from(BALLS), st.integers(1, 30)),
)
def test_every_class_can_do_its_warm_up_with_what_it_has(skill, pupils, cupboard):
    """Whatever a class owns: as many balls as are asked for are there, soft and fit for what is done with them, and
    nobody is left without a partner."""
    things = tuple(InCupboard(name, count, name, nowhere()) for name, count in cupboard.items())
    sheet = next(path for path in library.game_paths() if path.stem == "lantern-row").read_text(encoding="utf-8")
    game = game_of(sheet.replace("skills overarm throw, aim", f"skills {skill}"))
    group = evolve(some_class(pupils), cupboard=things or (InCupboard("cone", 1, "cone", nowhere()),))
    (line,) = warm_up_lines([Planned(game, stage(game, library.norms(), library.kit_names(), group), 3.0)], ENGLISH)
    asked = re.search(r"It takes (\d+) ball", line)
    there = sum(count for name, count in cupboard.items() if "at people" in library.kit_catalogue()[name].serves)
    assert (int(asked[1]) if asked else 0) <= there
    assert ("beanbag" in cupboard and len(cupboard) == 1) <= (asked is None), "nobody throws bags at each other"
    paired = line.lower().startswith("in pairs")
    assert ("of three." in line) == (paired and pupils % 2 == 1 and pupils > 1)


@pytest.mark.parametrize(("round_min", "rounds"), [(3.0, 3), (30.0, 0)])
def test_who_is_over_changes_in_where_there_is_one_round(round_min, rounds):
    table = lesson_table([of_class(library_game("toll-stone"), 25, round_min)], library.norms())
    assert sum(slot.rounds for slot in table.slots) >= rounds
    told = lesson_card(table, "Monday").section("1. Toll Stone").lines
    assert any("change whoever does not play in" in line for line in told) == (rounds == 0)


@pytest.mark.parametrize("language", ["en", "fr"])
def test_every_band_of_the_bar_is_explained_beside_it(language):
    """Within the bar, one beside the other; and how its play goes with that of a card is told."""
    wording = wording_of(language)
    table = lesson_table([planned(name) for name in TWO], library.norms())
    drawn = time_bar(table, wording)
    labels = [shape for shape in drawn.shapes if isinstance(shape, Label)]
    told = " / ".join(label.text for label in labels)
    assert all(wording.say(NAMES_OF_SLOTS[slot.kind]) in told for slot in table.slots if slot.kind != PLAY)
    assert all(label.x + width_em(label.text) * label.size_m <= drawn.box.right for label in labels[-4:])
    sheet = lesson_card(table, "A lesson", wording)
    both = (wording.figure(round(minutes, 1)) for minutes in (table.lesson.play, table.lesson.warm_play))
    assert all(any(said in line for line in sheet.sections[-1].lines) for said in both)


def test_a_lesson_of_games_that_name_no_skill_says_nothing_of_what_it_practises():
    skills = {"": False, "skills aim, overarm throw": True}
    for head, told in skills.items():
        card = lesson_card(lesson_table([planned_game(lanterns(head=head))], library.norms()), "Monday")
        assert ("Practises" in dict(card.facts)) == told
