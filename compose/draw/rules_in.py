"""The rules of a game as the lines of a card, in the language asked for."""

from __future__ import annotations

from attrs import frozen

from compose.draw.phrases import Phrases
from compose.draw.phrases_choices import choices_in
from compose.draw.phrases_finish import finish_in
from compose.draw.phrases_play import play_in
from compose.draw.phrases_setup import kit_in, players_in, setup_in
from compose.draw.phrases_when import when_in
from compose.draw.speak import amount
from compose.draw.speak_play import choice_lines, finish_lines, play_lines, when_lines
from compose.draw.speak_setup import kit_words, players_words, setup_lines
from compose.telling.french import joined
from compose.telling.wording import Wording
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
    if not wording.english:
        return _translated(Phrases(game, wording))
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


def _translated(phrases: Phrases) -> Rules:
    return Rules(
        kit=tuple(joined(line) for line in kit_in(phrases)),
        setup=tuple(setup_in(phrases)),
        play=tuple(play_in(phrases)),
        when=tuple(when_in(phrases)),
        finish=tuple(finish_in(phrases)),
        choices=tuple(choices_in(phrases)),
        players=joined(players_in(phrases)),
        times=tuple(phrases.amount(clock.time) for clock in phrases.game.all_of("finish", After)),
    )
