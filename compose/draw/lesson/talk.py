"""What the warm-up and the talk of a lesson are about: the skills that its games practise, and their cues."""

from __future__ import annotations

from collections.abc import Sequence

from compose.telling.sentences import sentence
from compose.telling.wording import Wording
from grammar.core.game import Core
from library.lesson_words import SkillWords, skill_words

WARM_UPS, QUESTIONS = 2, 2  # our choice: what five minutes have room for, and what a tired class answers


def warm_up_lines(games: Sequence[Core], wording: Wording) -> tuple[str, ...]:
    """For the skills that most games practise, the first ones before the others."""
    return tuple(sentence(wording.author(each.warm_up)) for each in _of_skills(games)[:WARM_UPS])


def talk_lines(games: Sequence[Core], wording: Wording) -> tuple[str, ...]:
    """A question for the same skills, and the first cue of each game once more."""
    asked = dict.fromkeys(each.ask for each in _of_skills(games))
    questions = [wording.author(each) for each in list(asked)[:QUESTIONS]]
    cues = dict.fromkeys(wording.author(game.told.cues[0]) for game in games if game.told.cues)
    return (*questions, *(wording.say("Once more: {cue}", cue=sentence(cue)) for cue in cues))


def _of_skills(games: Sequence[Core]) -> list[SkillWords]:
    known, skills = skill_words(), [skill for game in games for skill in game.facts.skills]
    ordered = sorted(dict.fromkeys(skills), key=lambda skill: -skills.count(skill))
    return [known[skill] for skill in ordered if skill in known]
