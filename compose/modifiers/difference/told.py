"""How two games differ in what their head tells people: what is practised, switches, cues, outcomes, cautions."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import zip_longest

from grammar.game import Game
from grammar.sentences.head import Skills, Switch, Told

NO_PART_OF_THE_GAME = ("about", "credit")


def told_differences(one: Game, other: Game) -> Iterator[str]:
    """What is told anew, no longer, or in the place of something else."""
    ours, theirs = (tuple(_told(game)) for game in (one, other))
    for topic in dict.fromkeys(topic for topic, _ in (*ours, *theirs)):
        gone = [words for about, words in ours if about == topic and (about, words) not in theirs]
        come = [words for about, words in theirs if about == topic and (about, words) not in ours]
        for old, new in zip_longest(gone, come):
            if old and new:
                yield f"now: {new}; before: {old}"
            else:
                yield f"new: {new}" if new else f"gone: {old}"


def _told(game: Game) -> Iterator[tuple[str, str]]:
    for line in game.all_of("head", Skills):
        yield from (("skills", f"practises {practice.text}") for practice in line.practised)
    for switch in game.all_of("head", Switch):
        yield f"switch {switch.name.text}", switch.words()
    for told in game.all_of("head", Told):
        if told.topic not in NO_PART_OF_THE_GAME:
            yield told.topic, told.words()
