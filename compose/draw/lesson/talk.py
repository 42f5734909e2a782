"""What the warm-up and the talk of a lesson are about: the skills that its games practise, and their cues."""

from __future__ import annotations

from collections.abc import Sequence

import library
from compose.draw.lesson.timetable import Planned
from compose.staging.resolved import resolved
from compose.staging.staging import Staging
from compose.telling.sentences import sentence
from compose.telling.wording import Wording
from grammar.core.game import Core
from library.lesson_words import SkillWords, skill_words

WARM_UPS, QUESTIONS = 2, 2  # our choice: what five minutes have room for, and what a tired class answers


def warm_up_lines(games: Sequence[Planned], wording: Wording) -> tuple[str, ...]:
    """For the skills that most games practise, the first ones before the others; with balls only what there are
    enough of for everybody at once."""
    pupils, balls = games[0].staging.pupils, max(_balls(one.staging) for one in games)
    skills = _of_skills([resolved(one.game) for one in games])
    done = [each for each in skills if not each.share_a_ball or balls * each.share_a_ball >= pupils]
    told = [wording.author(each.warm_up) for each in done[:WARM_UPS]]
    if not told:
        told = [wording.say("Run about without a ball; on the call do as if you had one, as in the game.")]
    return tuple(sentence(each) for each in told)


def _balls(staging: Staging) -> int:
    """How many balls there are: those of the cupboard, or where nobody says what lies in it those of the game."""
    if not staging.school_class.lists_kit:
        return sum(row.needed for row in staging.kit if row.line.category == "ball")
    sorts = library.kit_categories()
    return sum(each.count for each in staging.school_class.cupboard if sorts.get(each.like) == "ball")


def talk_lines(games: Sequence[Core], before: frozenset[str], wording: Wording) -> tuple[str, ...]:
    """A question for the same skills, and the first cue of each game once more; none that was said of games `before`
    they were changed."""
    asked = dict.fromkeys(each.ask for each in _of_skills(games))
    questions = [wording.author(each) for each in list(asked)[:QUESTIONS]]
    first = (next((each for each in game.told.cues if each not in before), "") for game in games)
    cues = dict.fromkeys(wording.author(cue) for cue in first if cue)
    return (*questions, *(wording.say("Once more: {cue}", cue=sentence(cue)) for cue in cues))


def _of_skills(games: Sequence[Core]) -> list[SkillWords]:
    known, skills = skill_words(), [skill for game in games for skill in game.facts.skills]
    ordered = sorted(dict.fromkeys(skills), key=lambda skill: -skills.count(skill))
    return [known[skill] for skill in ordered if skill in known]
