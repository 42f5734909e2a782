"""Sentences of the card read as English."""

from __future__ import annotations

import re

import pytest
from drawn_games import NAMES, laid_out, lanterns, library_game

from compose.draw.card import card_of
from compose.draw.speak import sentence
from compose.draw.speak_play import choice_lines, finish_lines, play_lines, when_lines
from compose.draw.speak_setup import kit_words, players_words, setup_lines


def test_set_up():
    assert list(setup_lines(lanterns(set_up="1 player of each side behind the back line of their side"))) == [
        "Mark a court 18 m by 9 m and halve it across.",
        "Each side's lanterns stand on its back line, evenly spaced.",
        "4 foam balls lie in each half.",
        "1 player of each side starts behind the back line of their side.",
    ]


def test_kit_is_totalled_over_the_sides():
    assert list(kit_words(lanterns(kit="1 cone", set_up="cone in the middle")))[:3] == [
        "8 foam balls",
        "10 lanterns (5 for each side, like a skittle)",
        "1 cone",
    ]


def test_kit_for_each_player():
    game = lanterns(kit="1 cone for each player", set_up="cones in their half")
    assert "1 cone (for each player)" in list(kit_words(game))
    assert len(laid_out(game).items_of("cone", "north")) == len(laid_out(game).players_of("north"))


def test_play():
    game = lanterns(
        play="a ball is held at most 10 s\nplayers roll a foam ball past the back line of the other side, "
        "from 4 m away, 1 in 4 of the attempts, only when it has at least 1 lanterns standing"
    )
    assert list(play_lines(game)) == [
        "Players stay in their half.",
        "Players throw a foam ball overarm at the lanterns of the other side.",
        "A ball is held for at most 10 seconds.",
        "Players roll a foam ball past the back line of the other side, from 4 m away, "
        "but only when it has at least 1 lantern standing.",
    ]


def test_when():
    game = lanterns(
        space="queue: beside each half",
        play="players overarm throw a foam ball at the players of the other side",
        when="a player is hit: that player waits in the queue\n"
        "a throw is caught: the first in the catcher's queue returns and the thrower is out",
    )
    assert list(when_lines(game)) == [
        "When a lantern is knocked, it stays down.",
        "When a player is hit, that player waits in the queue.",
        "When a throw is caught, the first in the catcher's queue returns to play and the thrower is out "
        "for the rest of the round.",
    ]


def test_it_is_named_again_where_it_could_be_something_else():
    game = lanterns()
    told = game.whens[0]
    assert "it stays down" in told.words()
    scored = library_game("millrace-roll")
    assert "and the cone stands up again." in " ".join(when_lines(scored))


def test_finish():
    game = lanterns(
        finish="a side wins when the other side has no players in\n"
        "after 6 min: more lanterns standing wins, else more players in wins, else a draw",
        play="players overarm throw a foam ball at the players of the other side",
        when="a player is hit: that player is out",
    )
    assert list(finish_lines(game)) == [
        "A side wins when the other side has no lanterns standing.",
        "A side wins when the other side has no players left in play.",
        "After 6 minutes, the side with more lanterns standing wins; if that is level, "
        "the side with more players in play wins; if that is level too, it is a draw.",
    ]


def test_things_called_by_their_kind_stand_in_the_right_number():
    game = lanterns(
        when="a side has no targets standing: play goes on",
        finish="a side loses when it has at most 1 targets standing\nafter 6 min: more targets standing wins",
        play="whoever waits in the rest queue comes back after 30 s",
        space="rest queue: beside each half, at most 2 north players there",
    )
    assert list(when_lines(game))[1:] == ["When a side has no targets standing, play goes on."]
    assert list(finish_lines(game))[1:] == [
        "A side loses when it has at most 1 target standing.",
        "After 6 minutes, the side with more targets standing wins.",
    ]
    assert list(play_lines(game))[2:] == ["Whoever waits in the rest queue comes back after 30 seconds."]
    assert list(setup_lines(game))[1] == "Rest queue: beside each half; at most 2 north players there."


def test_players():
    assert players_words(lanterns()) == "2 sides of 6 to 14"


@pytest.mark.parametrize("name", NAMES)
def test_every_line_is_a_sentence(name):
    game = library_game(name)
    lines = [*setup_lines(game), *play_lines(game), *when_lines(game), *finish_lines(game), *choice_lines(game)]
    assert lines
    for line in (line for line in lines if line):
        assert re.fullmatch(r"[A-Z0-9].*[.!?]", line), line
        assert "  " not in line
        assert not re.search(r"\b1 (?:players|points|steps|balls|minutes|seconds)\b", line), line
        assert not re.search(r"\bNone\b|overarm throw a|underarm throw a", line), line


@pytest.mark.parametrize("name", NAMES)
def test_no_rule_is_lost(name):
    """Every rule of the play, the when and the finish has its line, unless it only speaks to the forecast."""
    game = library_game(name)
    card = card_of(game, laid_out(game))
    for heading, section in (("What happens when", "when"), ("How to play", "play")):
        part = card.section(heading)
        told = [line for line in game.sentences(section) if type(line).__name__ not in ("SucceedAsOften", "TakeAsLong")]
        assert len(part.lines if part else ()) == len({line.words() for line in told})


def test_sentence():
    assert sentence("  aim   low ") == "Aim low."
    assert sentence("Ready?") == "Ready?"
    assert sentence("") == ""
