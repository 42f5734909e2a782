"""Whoever has a task to do comes back by themselves when it is done: several at once, each in their own time."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder, at_least
from compose.net.lower.say import player_words
from compose.net.lower.spots import named_sides
from compose.net.lower.tokens import IN, player_place, roles_of
from compose.net.net import Attempt, Move, Rate, Transition
from grammar.meanings import PlaceMeaning
from grammar.sentences import play


def lower_coming_back(builder: Builder) -> None:
    """All transitions of the sentences "whoever waits in ... comes back after ..."."""
    for sentence in builder.game.all_of("play", play.ComesBack):
        for side in named_sides(builder, sentence.where):
            builder.transitions.extend(_comings(builder, sentence, side))


def _comings(builder: Builder, sentence: play.ComesBack, side: str) -> Iterator[Transition]:
    """One for every role. The time is the mean of each player's own; who waits is counted, not in which order."""
    queue = builder.game.meaning(sentence.where.name)
    assert isinstance(queue, PlaceMeaning)
    rule = builder.rule(sentence)
    per_minute = 60.0 / max(sentence.time.seconds, 1.0)
    act = Attempt(sentence.words(), "free", None, "none", said_per_minute=per_minute, age_years=builder.game.ages_years)
    for role in roles_of(builder, side):
        waiting = player_place(builder, side, role, queue.place)
        home = player_place(builder, side, role, IN)
        yield Transition(
            f"{player_words(side, role)} comes back from the {queue.place}",
            None,
            True,
            act,
            "always",
            Rate(((waiting,),)),
            at_least((waiting,)),
            (Move(waiting, home, 1, rule),),
            (rule,),
        )
