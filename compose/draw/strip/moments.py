"""A line of play → the few moments of it that are worth a picture, each with one sentence and the counts."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from compose.net.net import Net
from compose.telling.english.states import state_in_words
from compose.telling.wording import ENGLISH, Wording
from grammar.frozen import frozen
from grammar.words import capital

Counts = Callable[[Net, tuple[int, ...]], str]
LEAST, MOST = 4, 8  # pictures of a strip


@frozen
class Told:
    """One move of a line of play: what happens, the counts after it, and when (None where nobody timed it)."""

    words: str
    marking: tuple[int, ...]
    minutes: float | None = None


@frozen
class Moment:
    """A picture of the strip: its sentence, its counts in words, its marking; `passed` moves were left out before."""

    sentence: str
    counts: str
    marking: tuple[int, ...]
    stamp: str = ""
    passed: int = 0


def moments_of(
    net: Net,
    moves: Sequence[Told],
    end: str,
    most: int = MOST,
    wording: Wording = ENGLISH,
    counts: Counts | None = None,
) -> tuple[Moment, ...]:
    """The set-up, the moves that change more than where balls lie, and how it ends; at most `most` of them.

    Where there are more such moves, they are chosen evenly over the round, the last always among them. Moves and
    end are told in the language already; `counts` tells those of a moment, in English where it is not given.
    """
    chosen, say = _chosen(net, moves, most - 1), counts or state_in_words
    begin = "0:00" if moves and moves[0].minutes is not None else ""
    found = [Moment(wording.say("The round starts."), say(net, net.start()), net.start(), begin)]
    before = -1
    for number in chosen:
        move = moves[number]
        words = capital(move.words)
        last = number == chosen[-1]
        if last and end:
            words = f"{words}. {capital(end)}"
        told = say(net, move.marking)
        found.append(Moment(f"{words}.", told, move.marking, stamp(move.minutes), number - before - 1))
        before = number
    return tuple(found)


def stamp(minutes: float | None) -> str:
    """ "1:05" for a minute and five seconds; nothing for no time."""
    if minutes is None:
        return ""
    seconds = int(minutes * 60)
    return f"{seconds // 60}:{seconds % 60:02}"


def _chosen(net: Net, moves: Sequence[Told], most: int) -> list[int]:
    telling, before = [], net.start()
    for number, move in enumerate(moves):
        changed = [place for place, now in enumerate(move.marking) if now != before[place]]
        if any(net.places[place].token not in ("ball", "result") for place in changed):
            telling.append(number)
        before = move.marking
    if len(telling) < LEAST - 1:
        telling = list(range(len(moves)))
    if moves and telling[-1] != len(moves) - 1:
        telling.append(len(moves) - 1)
    if len(telling) <= most:
        return telling
    # Evenly from the first to the last of them.
    return sorted({telling[round(step * (len(telling) - 1) / (most - 1))] for step in range(most)})
