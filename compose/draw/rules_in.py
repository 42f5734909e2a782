"""The rules of a game as the lines of a card, in the language asked for."""

from __future__ import annotations

from attrs import frozen

from compose.draw.speak import amount
from compose.draw.speak_play import choice_lines, finish_lines, play_lines, when_lines
from compose.draw.speak_setup import kit_words, players_words, setup_lines
from compose.draw.wording import Wording
from grammar.game import Game
from grammar.sentences.finish import After


@frozen
class Rules:
    """Each rule as a sentence; `times` are the clocks, `players` says how many play."""

    kit: tuple[str, ...]
    setup: tuple[str, ...]
    play: tuple[str, ...]
    when: tuple[str, ...]
    finish: tuple[str, ...]
    choices: tuple[str, ...]
    players: str
    times: tuple[str, ...]


def rules_in(game: Game, wording: Wording) -> Rules:
    """English has sentences of its own; any other language has them from its catalogue."""
    return Rules(
        kit=tuple(kit_words(game)),
        setup=tuple(setup_lines(game)),
        play=tuple(play_lines(game)),
        when=tuple(when_lines(game)),
        finish=tuple(finish_lines(game)),
        choices=tuple(choice_lines(game)),
        players=players_words(game),
        times=tuple(amount(clock.time) for clock in game.all_of("finish", After)),
    )
