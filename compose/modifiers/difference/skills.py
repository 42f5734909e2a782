"""How two games differ in what players do, and for whom they are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.core.skills import SKILL_WORDS, bare
from grammar.game import Game
from grammar.sentences.attempting import Attempt
from grammar.words import listing

_PAST = {skill.value: f"{words.did}{words.way}" for skill, words in SKILL_WORDS.items()}
_PRESENT = {skill.value: f"{bare(skill)}{words.way}" for skill, words in SKILL_WORDS.items()}


def skill_differences(one: Game, other: Game) -> Iterator[str]:
    """Skills that come, go or take each other's place; ages."""
    ours, theirs = _tried(one), _tried(other)
    gone = [skill for skill in ours if skill not in theirs]
    come = [skill for skill in theirs if skill not in ours]
    if gone and come:
        yield f"players {_now(come)} where they {listing([_PAST[skill] for skill in gone], 'or')}"
    elif come:
        yield f"players {_now(come)}, too"
    elif gone:
        yield f"players no longer {_now(gone)}"
    (least, most), (youngest, oldest) = one.ages_years, other.ages_years
    if (least, most) != (youngest, oldest):
        yield f"for ages {youngest:g} to {oldest:g}, not {least:g} to {most:g}"


def _tried(game: Game) -> tuple[str, ...]:
    return tuple(dict.fromkeys(skill for attempt in game.all_of("play", Attempt) for skill in attempt.skills))


def _now(skills: Sequence[str]) -> str:
    return listing([_PRESENT[skill] for skill in skills], "or")
