"""What players can do, each skill with its words and what its ball does: whoever speaks of a skill reads it here."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType

from grammar.frozen import frozen


class Skill(Enum):
    """What players can do, as the language calls it."""

    OVERARM_THROW = "overarm throw"
    UNDERARM_THROW = "underarm throw"
    ROLL = "roll"
    KICK = "kick"
    STRIKE = "strike"
    PASS = "pass"
    CARRY = "carry"
    TOW = "tow"
    PUSH = "push"
    RUN = "run"
    TOUCH = "touch"
    TAKE = "take"


@frozen
class SkillWords:
    """The forms of a skill's verb, and who does it: "throws", "threw", "thrown" with `way` "overarm", "thrower".

    `with_a_ball`: it is done with a ball, which `flies` or else stays on the floor or is handed on.
    """

    does: str
    did: str
    done: str
    doer: str
    way: str = ""
    with_a_ball: bool = False
    flies: bool = False


SKILL_WORDS: Mapping[Skill, SkillWords] = MappingProxyType(
    {
        Skill.OVERARM_THROW: SkillWords("throws", "threw", "thrown", "thrower", " overarm", True, True),
        Skill.UNDERARM_THROW: SkillWords("throws", "threw", "thrown", "thrower", " underarm", True, True),
        Skill.ROLL: SkillWords("rolls", "rolled", "rolled", "roller", with_a_ball=True),
        Skill.KICK: SkillWords("kicks", "kicked", "kicked", "kicker", with_a_ball=True, flies=True),
        Skill.STRIKE: SkillWords("strikes", "struck", "struck", "striker", with_a_ball=True, flies=True),
        Skill.PASS: SkillWords("passes", "passed", "passed", "passer", with_a_ball=True),
        Skill.CARRY: SkillWords("carries", "carried", "carried", "carrier"),
        Skill.TOW: SkillWords("tows", "towed", "towed", "carrier"),
        Skill.PUSH: SkillWords("pushes", "pushed", "pushed", "pusher"),
        Skill.RUN: SkillWords("runs", "ran", "run", "runner"),
        Skill.TOUCH: SkillWords("touches", "touched", "touched", "tagger"),
        Skill.TAKE: SkillWords("takes", "took", "taken", "carrier"),
    }
)
WITH_A_BALL = tuple(skill for skill, words in SKILL_WORDS.items() if words.with_a_ball)
FLYING = frozenset(skill for skill, words in SKILL_WORDS.items() if words.flies)  # a rolled ball never bounces
BOUNCING = FLYING | {Skill.PASS}


def bare(skill: Skill) -> str:
    """The verb alone: "throw" of "overarm throw"."""
    return skill.value.removeprefix(SKILL_WORDS[skill].way.strip()).strip()
