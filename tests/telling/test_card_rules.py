"""The rules on a card: in English as the author wrote them, in another language as they were understood."""

from __future__ import annotations

import re

import pytest
from told_sheets import core_in, row

from compose.telling.rules import Rules, rules_of
from compose.telling.sentences import sentence
from compose.telling.wording import ENGLISH, wording_of
from grammar.core.game import Core
from library.load import game_paths
from tests.interpreter.sheets import game_in, library_game

NAMES = tuple(path.stem for path in game_paths())
FRENCH = wording_of("fr")


def english(text: str) -> Rules:
    return rules_of(core_in(game_in(text)), ENGLISH)


def core(name: str) -> Core:
    return core_in(library_game(name))


def test_english_cards_print_the_lines_of_the_author() -> None:
    rules = english(row())
    assert rules.play == (
        "Players stay in their half.",
        "Players overarm throw a foam ball at the beacons of the other side.",
        "A ball is held at most 10 s.",
    )
    assert rules.when == ("A beacon is knocked: it stays down.",)
    assert rules.finish[0] == "A side wins when the other side has no beacons standing."
    assert rules.setup[0] == "Court 18 m by 9 m, halved across."


def test_kit_is_totalled_over_the_sides() -> None:
    assert english(row(kit="1 cone", set_up="cone in the middle")).kit[:3] == (
        "8 foam balls",
        "10 beacons (5 for each side, like a plastic pin)",
        "1 cone",
    )


def test_kit_for_each_player() -> None:
    rules = english(row(kit="1 cone for each player", set_up="cones in their half"))
    assert "1 cone (for each player)" in rules.kit


def test_how_many_play() -> None:
    assert english(row()).players == "2 sides of 6 to 14"
    assert rules_of(core("toll-stone"), ENGLISH).players == "1 against 1"
    assert rules_of(core("homestead"), ENGLISH).players == "16 to 32"
    assert english(row()).times == ("6 minutes",)


def test_what_the_check_does_not_read_says_so() -> None:
    text = row(play='"Whoever throws calls a colour."')
    assert "Whoever throws calls a colour. (not read by the check)" in english(text).play
    french = rules_of(core_in(game_in(text)), FRENCH)
    assert "Whoever throws calls a colour. (non lu par la vérification)" in french.play


def test_what_a_switch_changes_is_said_once_it_is_a_choice() -> None:
    text = row(
        head="switch hits count, usually off",
        play="with hits count, players roll a foam ball at the players of the other side",
    )
    rules = english(text)
    assert not [line for line in rules.play if "roll" in line]
    assert rules.choices == (
        "Hits count (usually off): The players of each side may roll a foam ball at the players of the other side.",
    )


@pytest.mark.parametrize("name", NAMES)
def test_every_line_is_a_sentence(name: str) -> None:
    for wording in (ENGLISH, FRENCH):
        rules = rules_of(core(name), wording)
        lines = [*rules.setup, *rules.play, *rules.when, *rules.finish, *rules.choices]
        assert lines
        for line in lines:
            assert re.fullmatch(r"[A-ZÀÉ0-9].*[.!?)]", line), line
            assert "  " not in line and "None" not in line


@pytest.mark.parametrize("name", NAMES)
def test_no_rule_is_lost_in_either_language(name: str) -> None:
    """Every line of the play, the when and the finish has a sentence, unless it only speaks to the forecast."""
    whole = core(name)
    off = {choice.id for choice in whole.play.choices if not choice.on}
    factors = {line for factor in whole.play.factors for line in factor.lines}
    held = [each for each in whole.lines if not each.granted and each.number not in factors]
    held = [each for each in held if each.switch is None or (each.switch in off) == each.without]
    for section in ("play", "when", "finish"):
        told = len([each for each in held if each.section == section])
        assert len(getattr(rules_of(whole, ENGLISH), section)) == told
        assert len(getattr(rules_of(whole, FRENCH), section)) >= told


def test_sentence() -> None:
    assert sentence("  aim   low ") == "Aim low."
    assert sentence("Ready?") == "Ready?"
    assert sentence("") == ""
