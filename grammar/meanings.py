"""What a name in a rule sheet can mean."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Union

from grammar.core.area_kind import AreaKind
from grammar.core.skills import SKILL_WORDS, WITH_A_BALL, Skill
from grammar.frozen import frozen
from grammar.words import plural


@frozen
class KitMeaning:
    """A line of the kit list, by its singular name; category is "ball", "target", "ring", "body" or "furniture"."""

    key: str
    category: str


@frozen
class CategoryMeaning:
    """All kit of one category: "the balls", "every target"; with `skills` the ball of such attempts: "a roll". Only the
    sheet of what is taken for granted tells what is `fixed` from what falls."""

    category: str
    skills: tuple[str, ...] = ()
    fixed: bool = False


@frozen
class PlayerMeaning:
    """Players: of one side or of any, in one role or in any."""

    side: str | None = None
    role: str | None = None


@frozen
class FrozenMeaning:
    """Players who froze where they are: of one side or of any, in one role or in any."""

    side: str | None = None
    role: str | None = None


@frozen
class SideMeaning:
    """A side by its name."""

    side: str


@frozen
class AgentMeaning:
    """Who took part in an event: "actor" (the thrower, the roller ...), "catcher" or "owner" (the keeper)."""

    part: str


@frozen
class MateMeaning:
    """A team-mate of whoever acts."""


@frozen
class TeacherMeaning:
    """The teacher, who is nobody's side."""


@frozen
class NothingMeaning:
    """What somebody carries whose hands are empty."""


@frozen
class LoadMeaning:
    """Whatever players take from place to place: "a thing", "things"."""

    category: str = "thing"


@frozen
class PlaceMeaning:
    """A place: an area of the sheet by its name, or one of the built-in places."""

    place: str
    built_in: bool = False


Meaning = Union[
    KitMeaning,
    CategoryMeaning,
    PlayerMeaning,
    FrozenMeaning,
    SideMeaning,
    AgentMeaning,
    MateMeaning,
    TeacherMeaning,
    NothingMeaning,
    LoadMeaning,
    PlaceMeaning,
]


def side_named(meaning: Meaning | None) -> str | None:
    """The side that a name stands for: a side called north, or the players called carriers."""
    if isinstance(meaning, SideMeaning):
        return meaning.side
    return meaning.side if isinstance(meaning, PlayerMeaning) and meaning.role is None else None


BUILT_IN_PLACES = (
    "half",
    "back line",
    "side line",
    "middle line",
    "middle",
    "court",
    "wall",
    "corner",
)
BALL_ACTORS = (*dict.fromkeys(SKILL_WORDS[skill].doer for skill in WITH_A_BALL), "shooter", "hitter")
ACTORS = tuple(dict.fromkeys((*BALL_ACTORS, *(words.doer for words in SKILL_WORDS.values()))))
AREA_KINDS = tuple(kind.value for kind in AreaKind)
EVERYBODY = ("everybody", "everyone")  # who wins or loses where there is one side alone
TEAM_MATES = ("team-mate", "team-mates")
CATEGORY_WORDS = {"ball": "ball", "target": "target", "ring": "ring"}
_SHOTS = tuple(skill.value for skill in WITH_A_BALL if skill is not Skill.PASS)
SHOT_WORDS = {
    "throw": (Skill.OVERARM_THROW.value, Skill.UNDERARM_THROW.value),
    "shot": _SHOTS,
    **{skill.value: (skill.value,) for skill in WITH_A_BALL},
}


FIXED = CategoryMeaning("target", fixed=True)
GRANTED_WORDS: Mapping[str, Meaning] = {"fixed target": FIXED, "fixed targets": FIXED}


def built_in() -> dict[str, Meaning]:
    """The names that every sheet knows."""
    found: dict[str, Meaning] = {}
    for word, category in CATEGORY_WORDS.items():
        found[word] = found[plural(word)] = CategoryMeaning(category)
    for word, skills in SHOT_WORDS.items():
        found[word] = found[plural(word)] = CategoryMeaning("ball", skills)
    for place in BUILT_IN_PLACES:
        many = "halves" if place == "half" else plural(place)
        found[place] = found[many] = PlaceMeaning(place, built_in=True)
    for actor in ACTORS:
        found[actor] = AgentMeaning("actor")
    found["catcher"] = AgentMeaning("catcher")
    found["keeper"] = AgentMeaning("owner")
    found["player"] = found["players"] = PlayerMeaning()
    found |= dict.fromkeys(TEAM_MATES, MateMeaning())
    found["teacher"], found["nothing"] = TeacherMeaning(), NothingMeaning()
    found["thing"] = found["things"] = LoadMeaning()
    return found
