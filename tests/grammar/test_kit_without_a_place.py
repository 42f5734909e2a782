"""What the kit may list without a place in the set-up: what no rule speaks of, and the furniture of a place."""

from __future__ import annotations

import pytest

from compose.staging.resolved import resolved
from compose.telling.rules import kit_told
from compose.telling.voice import Voice
from compose.telling.wording import ENGLISH
from grammar.finding import Outcome
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories

SHEET = """\
game Pail Row
space
  court 18 m by 9 m, halved across
  far bench: behind each back line
sides
  north and south, 6 to 14 players each, mirrored
kit
  8 foam balls
  {kit}
set-up
  4 foam balls in each half
play
  players stay in their half
  players underarm throw a foam ball at the players of the other side
  {play}
when
  a player is hit: that player goes to the bench of the other side
finish
  after 5 min: more players in wins
"""


def outcome(kit: str, play: str = "nobody runs with the ball") -> Outcome[Game]:
    parsed = parse(SHEET.format(kit=kit, play=play))
    assert parsed.value is not None, [each.title for each in parsed.findings]
    return resolve(parsed.value.games[0], kit_categories())


@pytest.mark.parametrize("kit", ["1 bucket", "5 hoops", "2 pole goals", "3 pins", "1 yoke, like a box"])
def test_what_no_rule_speaks_of_needs_no_place(kit: str) -> None:
    assert outcome(kit).value is not None, [each.title for each in outcome(kit).findings]


@pytest.mark.parametrize(
    ("kit", "play"),
    [
        ("1 bucket", "players underarm throw a ball into the buckets"),
        ("5 hoops", "players underarm throw a ball through the hoops"),
        ("5 hoops", "players underarm throw a ball through the rings"),
        ("3 pins", "players roll a ball at the targets"),
    ],
)
def test_what_a_rule_speaks_of_is_asked_for_in_the_same_words(kit: str, play: str) -> None:
    (told,) = outcome(kit, play).findings
    things = kit.split()[1] if kit != "1 bucket" else "buckets"
    assert (told.code, told.title) == ("G-no-place", f"The set-up does not say where the {things} stand.")


@pytest.mark.parametrize("kit", ["2 benches", "2 gym benches", "1 bench"])
def test_benches_of_the_kit_make_the_bench_of_the_rules(kit: str) -> None:
    game = outcome(kit).value
    assert game is not None
    told = [each for each in kit_told(Voice(resolved(game), ENGLISH)) if "bench" in each]
    assert len(told) == 1, told  # they are not counted once more for the place
    rule = next(iter(resolved(game).play.rules))
    assert "far bench" in str(rule), rule
