"""Examples that the page of codes tells in words: each is made here, in an empty folder, with what is said of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from shared_games import FELL_GATE
from shelves import given
from told_on_shelves import ON_SHELVES

import library
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.check import check
from compose.check.space import Budget
from compose.draw.card.large import large_pdf_of
from compose.draw.card.of_remix import card_of_remix
from compose.draw.card.pdf import pdf_of
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.rounds.simulate import Play
from compose.modifiers.apply import remix
from compose.modifiers.carry_over import carried_over
from compose.modifiers.from_recipe import made
from compose.modifiers.of_library import library_modifiers
from compose.modifiers.recipe import recipe_of
from compose.net.from_game import net_of
from compose.staging.staging import stage
from grammar.finding import Finding
from grammar.game import Game
from grammar.mistakes.proofread import proofread
from grammar.parse import parse
from grammar.resolve import resolve
from tests.check.build import Builder
from tests.forecast.test_findings import race, told
from tests.wrong_games.wrong import PAIRS, players

Said = Iterable[Finding]
ROW = (library.game_paths()[0].parent / "lantern-row.rules").read_text(encoding="utf-8")
DOWN = "a lantern is knocked: it stays down"
BASED = '  based on "Lantern Row", whose content is "CONTENT"\n'
STRIP = "  dim strip: 2 m deep, before each back line, nobody guards there\n"
REMIX = """\
remix Stony Row
  based on "Lantern Row", whose content is "CONTENT"
  with "deeper strips"
  about "Lanterns that stand up again."
  credit "Beckside (invented)"
  licence CC-BY-4.0
  replace in when
    a lantern is knocked: it stands up again
"""


def read(text: str | bytes) -> Said:
    """What is said of a file."""
    data = text.encode() if isinstance(text, str) else text
    return proofread(data, "changed.rules", library.kit_categories())


def game(text: str = ROW) -> Game:
    return given(resolve(given(parse(text)).games[0], library.kit_categories()))


def of_remix(base: str, content: str = "0" * 64) -> Said:
    """What is said of a remix of Lantern Row on another base."""
    modifiers = {each.name: each for each in library_modifiers()}
    recipe = given(recipe_of(given(parse(REMIX.replace("CONTENT", content))).remixes[0], modifiers))
    carried = carried_over(recipe, game(base), library.kit_names(), game())
    said = made(recipe, game(base), library.kit_names()).findings
    return (*said, *(carried.value.conflicts if carried.value else ()))


def cautious(number: int) -> str:
    """Lantern Row with so many more cautions."""
    return ROW + "".join(f'  "Rule {each}: mind the people beside you and behind you."\n' for each in range(number))


def card(text: str, large: bool = False) -> Said:
    """What is said of printing the card of a game."""
    remixed = given(remix(game(text), (), library.kit_names()))
    printed = card_of_remix(remixed, stage(remixed.game, library.norms(), library.kit_names()))
    return (large_pdf_of if large else pdf_of)(printed).findings


def wrong_game(stem: str) -> Said:
    [pair] = [each for each in PAIRS if each.stem == stem]
    return checked(pair.game("wrong"), players(pair.game("wrong")))


def checked(played: Game, numbers: dict[str, int]) -> Said:
    return check(given(net_of(played, library.granted_sheet(), numbers))).findings


def tangled() -> str:
    """Everybody may do everything with each of twelve kinds of balls."""
    kinds = "abcdefghijkl"
    kit = "".join(f"  5 b{each} balls, like a foam ball\n" for each in kinds)
    lying = "".join(f"  b{each} balls in the middle\n" for each in kinds)
    skills, aims = "roll, kick, strike or underarm throw", "at the cones or the players of the other side"
    tries = "".join(f"  players {skills} a b{each} ball {aims}\n" for each in kinds)
    text = FELL_GATE.replace("kit\n", f"kit\n{kit}").replace("set-up\n", f"set-up\n{lying}")
    text = text.replace("  players roll", f"{tries}  players roll").replace("ewes and", "ewes, kids, calves and")
    return text.replace("2 foam balls", "4 foam balls")


def both_hold() -> Said:
    sides = "mirrored\n  role king: 1 player of each side\n  each king has 3 lives"
    when = "\n  a king is hit: that king loses a life\n  a player is hit: that player freezes"
    aims = ROW.replace("at the lanterns of the other side", "at the lanterns or the players of the other side")
    played = game(aims.replace("mirrored", sides).replace("it stays down", "it stays down" + when))
    return net_of(played, library.granted_sheet(), {side.name: 8 for side in played.sides}).findings


def too_wide() -> Said:
    played = game(tangled())
    return net_of(played, library.granted_sheet(), {side.name: 4 for side in played.sides}).findings


def too_large() -> Said:
    many = Builder()
    rule = many.rule("points")
    for number in range(8):
        many.place(f"points {number}", 0, 999)
        many.may("a point", many.shift(f"points {number}", 1, rule))
    return check(many.net()).findings


def stopped() -> Said:
    pupils = given(net_of(game(), library.granted_sheet(), {"north": 14, "south": 14}))
    return check(pupils, Budget(keep_going=lambda what, done, of: False)).findings


def stopped_forecast() -> Said:
    staging = stage(game(), library.norms(), library.kit_names())
    answer = proved(given(staged(staging, library.granted_sheet())), Budget(states=100))
    never = Budget(states=100, keep_going=lambda what, done, of: False)
    return foreseen(answer, library.norms(), library.kit_names(), play=Play(events=1), budget=never).added or ()


TOLD: dict[str, Callable[[Path], Said]] = {
    "L-empty": lambda _: read("note: Nothing yet.\n"),
    "L-later": lambda _: read(ROW.replace("play\n", "play\n" + "  players rol a ball\n" * 30)),
    "L-line": lambda _: read(ROW.replace("players stay", "players\u200b stay")),
    "L-long": lambda _: read(ROW + '  "Mind the wall."\n' * 1000),
    "L-many": lambda _: parse(ROW.replace("play\n", "play\n" + "  # blah\n" * 150)).findings,
    "L-not-text": lambda _: read(b"\x89PNG\r\n\x1a\n\0\0"),
    "L-two-ways": lambda _: read(
        ROW.replace("lanterns", "points").replace("lantern ", "point ").replace("no points standing", "no points")
    ),
    "M-base": lambda _: recipe_of(given(parse(REMIX.replace(BASED, ""))).remixes[0], {}).findings,
    "M-base-changed": lambda _: of_remix(ROW.replace("18 m by 9 m", "16 m by 9 m")),
    "M-both-changed": lambda _: of_remix(ROW.replace(DOWN, "a lantern is knocked: play goes on")),
    "M-left-out": lambda _: of_remix(ROW.replace(STRIP, "")),
    "M-licence": lambda _: of_remix(ROW.replace("CC-BY-4.0", "CC-BY-SA-4.0")),
    "N-both": lambda _: both_hold(),
    "N-too-wide": lambda _: too_wide(),
    "C-endless": lambda _: wrong_game("endless"),
    "C-too-large": lambda _: too_large(),
    "C-unfinished": lambda _: stopped(),
    "F-lopsided": lambda _: forecast_findings(told(race({"north": 3.0, "south": 2.0}, 5)), library.norms()),
    "F-unknown": lambda _: stopped_forecast(),
    "D-card-full": lambda _: card(cautious(150)),
    "D-letters": lambda _: card(ROW.replace('about "Two', 'about "\u6295 Two')),
    "D-not-large": lambda _: card(cautious(40), True),
    **ON_SHELVES,
}
