"""Nothing stands in for a use that the kit itself excludes: over all games of the library and all kit."""

from __future__ import annotations

import re

import pytest
from playing_games import game_in, library_games, modifier_named

import library
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.net.lower.doubts import doubts
from compose.staging.cupboard import KitRow, kit_rows
from compose.staging.resolved import resolved
from compose.staging.school_class import InCupboard
from grammar.core.play import AtPlayers, AtThing, Through
from grammar.core.skills import BOUNCING, FLYING, WITH_A_BALL
from grammar.core.values import KindId
from grammar.format import format_game
from grammar.game import Game
from grammar.span import nowhere
from library import KitItem

NOT_AT_PEOPLE = re.compile(r"\b(?:not|never|too hard)\b[^.;:]*\bat people", re.I)
NO_BOUNCE = re.compile(r"does not bounce|stays where it lands", re.I)
GAMES = sorted(library_games())


def rows_with(game: Game, item: KitItem) -> tuple[KitRow, ...]:
    """The kit of the game where plenty of one thing lies in the cupboard, and nothing else."""
    players = [{side.name: side.least for side in game.sides}]
    return kit_rows(game, players, (InCupboard(item.name, 999, item.name, nowhere()),), library.kit_names())


def stood_in_by(game: Game, item: KitItem) -> set[str]:
    return {row.line.name for row in rows_with(game, item) if row.stand_ins}


@pytest.mark.parametrize("stem", GAMES)
def test_nothing_stands_in_for_what_the_kit_says_it_is_not_for(stem: str) -> None:
    """Read anew from the kit's own words: its skills, its caution, what it says of bounces, mouths and falling."""
    game = library_games()[stem]
    core = resolved(game)
    bounce = "AFTER_BOUNCE" in repr(core.play.valid) or "bounce once" in " ".join(core.told.cues)
    for item in library.kit_catalogue().values():
        for name in stood_in_by(game, item):
            kind = KindId(name)
            for each in core.play.attempts:
                if each.ball == kind and each.skill in WITH_A_BALL:
                    assert each.skill.value in item.may, (item.name, name)
                    over = each.skill in FLYING and isinstance(each.aim, Through | AtThing) and len(game.sides) > 1
                    at_others = isinstance(each.aim, AtPlayers) or over
                    assert not (at_others and NOT_AT_PEOPLE.search(item.caution)), (item.name, name)
                    assert not (bounce and each.skill in BOUNCING and NO_BOUNCE.search(item.about)), (item.name, name)
                if isinstance(each.aim, Through | AtThing) and each.aim.thing.kind == kind:
                    wanted = library.kit_names()[core.play.kind(kind).like.key]
                    assert item.fixed is wanted.fixed, (item.name, name)
                    assert not (isinstance(each.aim, Through) and each.aim.into and item.opens != wanted.opens)


def test_the_words_of_the_kit_say_what_its_cautions_say() -> None:
    """A caution for people or a ball that lies still contradicts no word of what a thing serves for."""
    for item in library.kit_catalogue().values():
        assert not (NOT_AT_PEOPLE.search(item.caution) and "at people" in item.serves), item.name
        assert not (NO_BOUNCE.search(item.about) and "bounce" in item.serves), item.name
        assert not ("at people" in item.serves and not item.soft), item.name


@pytest.mark.parametrize(
    ("stem", "item", "stands_in"),
    [
        *[
            (stem, "beanbag", set())
            for stem in ("rime-harbour", "burr-toss", "fen-bounce", "otter-pebbles", "tide-whistle")
        ],
        ("heron-and-pike", "beanbag", set()),  # who is not aimed at stands behind what is
        ("heather-raid", "beanbag", set()),
        ("fell-post", "beanbag", set()),  # "Let it bounce once"
        ("fell-post", "cone", set()),  # a cone catches nothing
        ("fell-post", "box", {"pail"}),
        ("fell-post", "foam ball", {"tennis ball"}),
        ("lantern-row", "cone", {"lantern"}),
        ("lantern-row", "beanbag", set()),  # it flies over the half of the others
        ("heron-fives", "beanbag", {"foam ball"}),  # it is passed to a mate
        *[(stem, "beanbag", {what}) for stem, what in (("winter-store", "nut"), ("plover-nests", "egg"))],
        ("marten-larders", "beanbag", {"acorn"}),
        ("winter-store", "yarn ball", set()),  # it rolls away
        ("ferry-bench", "bib", set()),
        ("sledge-road", "scarf", set()),
        ("otter-pebbles", "yarn ball", {"foam ball"}),
        ("rime-harbour", "foam ball", set()),  # "Only yarn balls"
    ],
)
def test_what_a_teacher_would_take(stem: str, item: str, stands_in: set[str]) -> None:
    assert stood_in_by(library_games()[stem], library.kit_catalogue()[item]) == stands_in


def test_what_is_only_carried_may_be_of_another_sort_until_it_is_aimed_at() -> None:
    sheet = format_game(library_games()["winter-store"].sheet)
    game = game_in(sheet)
    assert stood_in_by(game, library.kit_catalogue()["block"]) == set(), "four times as high"
    assert stood_in_by(game, library.kit_catalogue()["plastic cup"]) == {"nut"}


def test_a_modifier_that_has_balls_bounce_has_stand_ins_bounce() -> None:
    made = remix(library_games()["lantern-row"], [Use(modifier_named("bounce first"))], library.kit_names()).value
    assert made is not None
    cloth, big = (library.kit_catalogue()[name] for name in ("cloth ball", "large foam ball"))
    assert "foam ball" in stood_in_by(made.base, cloth) and "foam ball" not in stood_in_by(made.game, cloth)
    assert "foam ball" in stood_in_by(made.game, big)


def test_a_sheet_that_sends_a_heavy_bag_at_people_is_told_so() -> None:
    sheet = format_game(library_games()["rime-harbour"].sheet)
    told = [each.title for each in doubts(resolved(game_in(sheet.replace("yarn ball", "beanbag"))))]
    assert any("not fit to be sent at people" in title for title in told), told
    sheet = format_game(library_games()["fen-bounce"].sheet)
    cloth = sheet.replace("foam ball", "cloth ball")
    told = [each.title for each in doubts(resolved(game_in(cloth)))]
    assert told == ["A cloth ball does not bounce, and here it has to."]
    assert not doubts(resolved(game_in(sheet)))
    sheet = format_game(library_games()["rime-harbour"].sheet)
    assert not doubts(resolved(game_in(sheet)))
