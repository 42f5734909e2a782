"""A skill, or a kind of place, that lacks a piece somewhere is told with its name and the file in which to add it."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from compose.draw.plan_court import PATTERNS
from compose.staging.floor.areas import USUAL_DEPTH_M
from compose.telling.attempts import DOING
from compose.telling.moves import THROWN
from compose.telling.wording import languages, wording_of
from grammar.core.declared import AreaKind
from grammar.core.skills import SKILL_WORDS, WITH_A_BALL, Skill
from grammar.examples import PAGE
from grammar.language import GRAMMAR_FILE
from library.lesson_words import skill_words
from library.load import kit_names
from library.norm_tables import norms

ON_THE_FLOOR = (Skill.ROLL,)  # of which no norm says how far up it goes
OF_SENTENCES = (Skill.TOUCH, Skill.TAKE)  # that have sentences of their own, and no row in the list of skills


def pieces_missing(skill: Skill) -> Iterator[str]:
    words = re.findall(r'"([^"]+)"', GRAMMAR_FILE.read_text(encoding="utf-8").split("\nSKILL:")[1].split("\n")[0])
    if skill.value not in words and skill not in OF_SENTENCES:
        yield "grammar/rules.lark: no word of SKILL"
    if skill not in SKILL_WORDS:
        yield "grammar/core/skills.py: no words"
        return
    for language in (each for each in languages() if not each.startswith("en")):
        said = [DOING[skill], *([THROWN[skill]] if skill in THROWN else [])]
        messages = wording_of(language).messages
        yield from (f"messages/{language}.po: no `{each}`" for each in said if ("", each) not in messages)
    if skill in WITH_A_BALL:
        tables = norms().tables
        asked = ("aim across", "pace aim", "pace act", *(() if skill in ON_THE_FLOOR else ("aim up",)))
        for table in asked:
            if skill.value not in tables[table].rows:
                yield "library/norms/{}.toml: no row of {}".format(*table.split())
        if not any(skill.value in item.may for item in kit_names().values()):
            yield "library/kit: no ball may be used so"
    if skill not in OF_SENTENCES and skill.value not in skill_words():
        yield "library/lessons/skills.toml: no words for a lesson"


@pytest.mark.parametrize("skill", Skill, ids=lambda skill: skill.value)
def test_a_skill_has_all_its_pieces(skill: Skill) -> None:
    assert not [f"{skill.value}: {piece}" for piece in pieces_missing(skill)]


@pytest.mark.parametrize("kind", AreaKind, ids=lambda kind: kind.value)
def test_a_kind_of_place_has_all_its_pieces(kind: AreaKind) -> None:
    pieces = {
        "compose/staging/floor/areas.py: no usual depth": kind in USUAL_DEPTH_M,
        "compose/draw/plan_court.py: no pattern": kind in PATTERNS,
        "grammar/LANGUAGE.md: not named": re.search(rf"says what it is: .*\b{kind.value}\b", PAGE.read_text("utf-8")),
    }
    assert not [f"{kind.value}: {piece}" for piece, there in pieces.items() if not there]
