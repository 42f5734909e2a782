"""Names that hold words of the language: read by what stands around them, or in quotes."""

from __future__ import annotations

import pytest

from compose.modifiers.content_hash import content_hash
from grammar.format import format_file
from grammar.layout import parts
from grammar.own_names import declared_names, is_plain
from grammar.parse import parse, parse_line, read
from grammar.resolve import resolve
from grammar.tree import RuleFile
from library import kit_categories

SHEET = """\
game Odd Names
space
  court 18 m by 9 m, halved across
  {zone}: 2 m deep, before each back line, nobody guards there
sides
  {first} and south, 6 to 14 players each
  role {role}: 1 to 2 players of each side
kit
  8 foam balls
  5 {things} for each side, like a plastic pin
set-up
  {things} on the back line of their side, evenly spaced
  4 foam balls in each half
play
  players stay in their half
  players overarm throw a foam ball at the {things} of the other side
  {role}s roll a ball at the {things}
  nobody fetches balls from the {zone}
when
  a {thing} of {first} is knocked: {possessive} side scores 1 point
finish
  a side wins when the other side has no {things} standing
  {first} wins when it has 2 points
"""
USUAL = {"zone": "dim strip", "first": "north", "role": "near aimer", "things": "lanterns", "thing": "lantern",
         "possessive": "the north's"}  # fmt: skip
ODD = [
    {"things": "steps", "thing": "step"},
    {"things": "running steps", "thing": "running step"},
    {"things": "mice", "thing": "mouse"},
    {"first": "run", "possessive": "the run's"},
    {"first": "side step", "possessive": "the side step's"},
    {"role": "on"},
    {"role": "carry helper"},
    {"role": "fetcher"},
    {"zone": "no run zone"},
    {"zone": "kick off strip", "role": "push runner", "things": "missed balls", "thing": "missed ball"},
]


def rules(**names: str) -> RuleFile:
    outcome = parse(SHEET.format(**USUAL | names))
    assert outcome.value is not None, [each.title for each in outcome.findings]
    return outcome.value


@pytest.mark.parametrize("names", ODD, ids=lambda names: next(iter(names.values())))
def test_any_name_reads_and_means_what_a_usual_one_does(names: dict[str, str]) -> None:
    found = rules(**names)
    outcome = resolve(found.games[0], kit_categories())
    assert outcome.value is not None, [each.title for each in outcome.findings]
    assert parse(format_file(found)).value == found
    plain = rules().games[0]
    assert [type(line.sentence) for line in found.games[0].lines("play")] == [
        type(line.sentence) for line in plain.lines("play")
    ]


@pytest.mark.parametrize("first", ["first", "second", "third", "last", "one", "two", "next", "half"])
def test_a_name_before_a_colon_is_one_even_where_no_other_line_speaks_of_it(first: str) -> None:
    text = SHEET.replace("  nobody fetches balls from the {zone}\n", "")
    text = text.replace("  {role}s roll a ball at the {things}\n", "")
    outcome = parse(text.format(**USUAL | {"zone": f"{first} base", "role": f"{first} runner"}))
    assert outcome.value is not None, [each.title for each in outcome.findings]
    assert resolve(outcome.value.games[0], kit_categories()).value is not None
    assert parse(format_file(outcome.value)).value == outcome.value


@pytest.mark.parametrize("names", ODD, ids=lambda names: next(iter(names.values())))
def test_quotes_are_no_part_of_what_a_sheet_says(names: dict[str, str]) -> None:
    found = rules(**names)
    assert content_hash(parse(format_file(found)).value.games[0]) == content_hash(found.games[0])  # type: ignore[union-attr]


def test_quotes_make_a_name_of_any_words_even_of_small_ones() -> None:
    text = SHEET.format(**USUAL | {"things": '"boxes for the fetch"', "thing": '"box for the fetch"'})
    with_singular = text.replace('5 "boxes for the fetch" for', '5 "boxes for the fetch" (one "box for the fetch") for')
    outcome = parse(with_singular)
    assert outcome.value is not None, [each.title for each in outcome.findings]
    assert resolve(outcome.value.games[0], kit_categories()).value is not None


def test_a_line_that_can_be_read_in_two_ways_is_refused_with_both() -> None:
    text = SHEET.format(**USUAL | {"things": "points", "thing": "point"}).replace("no points standing", "no points")
    titles = [each.title for each in read(text).findings]
    assert titles == 2 * ["This line can be read in two ways: a name in it is a word of the language, too."]
    mended = text.replace("has no points", 'has no "points"').replace("has 2 points", 'has 2 "points"')
    assert parse(mended).value is not None


@pytest.mark.parametrize("name", ["far bench", "ball on cone", "football size 5", "side line zone"])
def test_plain_names_need_no_quotes(name: str) -> None:
    assert is_plain(name)


@pytest.mark.parametrize("line", ['a "step" is knocked: it stays down', 'a "roll" of "no" is knocked: it stays down'])
def test_a_line_by_itself_has_its_names_in_quotes(line: str) -> None:
    outcome = parse_line("when", line)
    assert outcome.value is not None and outcome.value.words() == line


def test_a_thing_of_one_side_is_a_name_of_the_sheet() -> None:
    """Otherwise nothing said of it in other words is heard: the line would hold a name that means nothing."""
    text = 'game Nests\nkit\n  8 eggs for hens, like a beanbag\n  4 "nests for all" for hens\n'
    (part,), _ = parts(text, "nests.rules")
    assert {"egg", "eggs", "nests for all"} <= set(declared_names(part).every)


@pytest.mark.parametrize("sides", ["home and away", "down and out"])
def test_two_sides_are_names_even_where_no_other_line_speaks_of_them(sides: str) -> None:
    text = SHEET.format(**{**USUAL, "first": "north"})
    kept = [line for line in text.splitlines() if "north" not in line or "players each" in line]
    said = "\n".join(kept).replace("north and south, 6", f"{sides}, 6")
    sheet = parse(f"{said}\n  after 5 min: a draw\n", "(test)").value
    assert sheet is not None
    game = resolve(sheet.games[0], kit_categories()).value
    assert game is not None
    assert [side.name for side in game.sides] == sides.split(" and ")
