"""What the warm-up and the talk of a lesson are about: the skills that its games practise, and their cues."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import library
from compose.draw.lesson.timetable import Planned
from compose.staging.resolved import resolved
from compose.staging.staging import Staging
from compose.telling.sentences import sentence
from compose.telling.wording import Wording
from grammar.core.game import Core
from library.lesson_words import SkillWords, WarmUp, skill_words

WARM_UPS, QUESTIONS = 2, 2  # our choice: what five minutes have room for, and what a tired class answers


def warm_up_lines(games: Sequence[Planned], wording: Wording) -> tuple[str, ...]:
    """For the skills that most games practise, each in the best way for which there are enough soft balls for
    everybody at once."""
    pupils, stagings = games[0].staging.pupils, [one.staging for one in games]
    told = list[str]()
    for each in _of_skills([resolved(one.game) for one in games])[:WARM_UPS]:
        way = next(way for way in each.ways if way.balls(pupils) <= _balls(stagings, way.ball_for))
        told.append(" ".join(_way_told(way, pupils, wording)))
    if not told:
        told = [wording.say("Run about without a ball; on the call do as if you had one, as in the game.")]
    return tuple(dict.fromkeys(sentence(each) for each in told))


def _way_told(way: WarmUp, pupils: int, wording: Wording) -> Iterator[str]:
    """What to do, with whom where a pair is left without one, and how many balls that takes."""
    yield sentence(wording.author(way.text))
    if way.pairs and pupils % 2 and pupils > 1:
        yield wording.say("One pair is of three.")
    if way.share:
        yield wording.say("It takes {balls}.", balls=wording.counted(way.balls(pupils), "ball", "balls"))


def _balls(stagings: Sequence[Staging], skill: str) -> int:
    """How many balls there are that are soft enough to be sent to each other by all at once, and fit for a skill: those
    of the cupboard, or where nobody says what lies in it those of the game that has most."""
    first = stagings[0].school_class
    if first.lists_kit:
        return sum(each.count for each in first.cupboard if _serves(each.like, skill))
    return max(sum(row.needed for row in one.kit if _serves(row.line.like, skill)) for one in stagings)


def _serves(like: str, skill: str) -> bool:
    item = library.kit_names().get(like)
    return item is not None and "at people" in item.serves and (not skill or skill in item.may)


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
