"""The moves of a line of play in the words of a language, and the moments that they lead through."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from compose.check.walk import walk
from compose.draw.strip.moments import Counts, Moment, Told
from compose.net.net import Net
from compose.staging.resolved import resolved
from compose.telling.counts import counts_told
from compose.telling.english.moves import step_words
from compose.telling.english.states import state_in_words
from compose.telling.moves import Happenings
from compose.telling.voice import Voice
from compose.telling.wording import Wording
from grammar.finding import Finding
from grammar.game import Game
from grammar.words import capital

Step = tuple[int, tuple[int, ...], float | None]  # a transition, the counts after it, when


def steps_behind(net: Net, finding: Finding) -> list[Step]:
    """The line of play behind a finding, with once round where it goes round and round."""
    numbers = [step.transition for step in (*finding.witness, *finding.loop) if step.transition >= 0]
    return [(number, after, None) for number, after in zip(numbers, walk(net, numbers)[1:], strict=True)]


def told_moves(game: Game, net: Net, steps: Sequence[Step], wording: Wording) -> list[Told]:
    """The moves of a line of play, each in the language."""
    before, found = net.start(), list[Told]()
    happenings = Happenings(Voice(resolved(game), wording), net)
    for number, after, minutes in steps:
        move = net.transitions[number]
        words = step_words(net, before, number) if wording.english else happenings.told(move, before, after)
        found.append(Told(words, after, minutes))
        before = after
    return found


def counts_in(game: Game, wording: Wording) -> Counts | None:
    """How the counts of a moment are told; in English as in a line of play of the check."""
    return None if wording.english else partial(counts_told, Voice(resolved(game), wording))


def every_moment(game: Game, net: Net, finding: Finding, wording: Wording) -> tuple[Moment, ...]:
    """The set-up and every move of the line of play behind a finding."""
    say = counts_in(game, wording) or state_in_words
    moves = told_moves(game, net, steps_behind(net, finding), wording)
    begin = Moment(wording.say("The round starts."), say(net, net.start()), net.start())
    return (begin, *(Moment(f"{capital(each.words)}.", say(net, each.marking), each.marking) for each in moves))
