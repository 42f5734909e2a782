"""A sentence, skill or kind of place that lacks a piece is told with its name and the file in which to add it."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import attrs
from test_rules_are_used import rules_of_the_grammar

import grammar.core.reading as reading
from compose.draw.plan.court import PATTERNS
from compose.staging.floor.areas import USUAL_DEPTH_M
from compose.telling.attempts import DOING
from compose.telling.moves import THROWN
from compose.telling.wording import languages, wording_of
from grammar.core.area_kind import AreaKind
from grammar.core.skills import SKILL_WORDS, WITH_A_BALL, Skill
from grammar.language import GRAMMAR_FILE
from grammar.mistakes.examples import PAGE
from grammar.resolve.expected import EXPECTED
from grammar.resolve.names import FREE
from grammar.sentences import (
    attempting,
    ball,
    blocking,
    claims,
    events,
    finish,
    head,
    limits,
    lives,
    play,
    points,
    queues,
    resting,
    runs,
    sets,
    sides,
    space,
    then,
    time,
    when,
)
from grammar.sentences.base import Node
from grammar.sentences.kinds import kind_of
from library.lesson_words import skill_words
from library.load import kit_names
from library.norm_tables import norms

ON_THE_FLOOR = (Skill.ROLL,)  # of which no norm says how far up it goes
OF_SENTENCES = (Skill.TOUCH, Skill.TAKE)  # that have sentences of their own, and no row in the list of skills
OF_GAMES = (
    head,
    space,
    sides,
    attempting,
    resting,
    queues,
    play,
    events,
    then,
    when,
    claims,
    finish,
    ball,
    blocking,
    limits,
    lives,
    points,
    runs,
    sets,
    time,
)
SENTENCES = [
    kind
    for module in OF_GAMES
    for name, kind in vars(module).items()
    if inspect.isclass(kind) and issubclass(kind, Node) and name == kind.__name__ and kind.__module__ == module.__name__
]
# Rules that the making of nodes takes apart by itself (grammar/from_lark.py).
WITHOUT_CLASS = ("also", "ball_state", "next_worth", "preposition", "shot", "skill_name", "stays_inside", "stays_with",
                 "within")  # fmt: skip
# What is no play: facts for the card, the language of the sheet, and what only holds others together.
READ_ELSEWHERE = (
    *(head.Ages, head.Practice, head.NeedsLanguage, claims.AnyWay, claims.BothWays, time.SpanAfter),
    play.SeveralKinds,
)


def has_no_class(rule: str) -> bool:
    try:
        kind_of(rule)
    except KeyError:
        return rule not in WITHOUT_CLASS
    return False


def test_every_rule_has_its_class() -> None:
    missing = [rule.title().replace("_", "") for rule in rules_of_the_grammar() if has_no_class(rule)]
    assert not [f"grammar/sentences: no class {name}" for name in missing]


@cache
def named_by_the_reading() -> frozenset[str]:
    """Every name in the code that takes sentences apart."""
    nodes = [node for path in Path(reading.__path__[0]).rglob("*.py") for node in ast.walk(ast.parse(path.read_text()))]
    attributes = {node.attr for node in nodes if isinstance(node, ast.Attribute)}
    return frozenset(attributes | {node.id for node in nodes if isinstance(node, ast.Name)})


def parts_missing(kind: type[Node]) -> Iterator[str]:
    if kind.__name__ not in named_by_the_reading() and kind not in READ_ELSEWHERE:
        yield "grammar/core/reading: nothing reads it"
    for field in attrs.fields(kind):
        is_name = re.search(r"\b(Np|Name|SideNamed)\b", str(field.type)) is not None
        known = (kind, field.name) in EXPECTED or (kind, field.name) in FREE or field.metadata.get("sorts")
        if is_name and not known:
            yield f"nothing says what `{field.name}` may be: its metadata, or grammar/resolve/expected.py"


def test_every_sentence_is_read_and_its_names_are_looked_up() -> None:
    assert not [f"{kind.__name__}: {part}" for kind in SENTENCES for part in parts_missing(kind)]


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


def test_every_skill_has_all_its_pieces() -> None:
    assert not [f"{skill.value}: {piece}" for skill in Skill for piece in pieces_missing(skill)]


def test_every_kind_of_place_has_all_its_pieces() -> None:
    page = PAGE.read_text("utf-8")
    pieces = {
        "compose/staging/floor/areas.py: no usual depth": USUAL_DEPTH_M,
        "compose/draw/plan/court.py: no pattern": PATTERNS,
        "grammar/LANGUAGE.md: not named": [
            kind for kind in AreaKind if re.search(rf"says what it is: .*\b{kind.value}\b", page)
        ],
    }
    assert not [f"{kind.value}: {piece}" for kind in AreaKind for piece, there in pieces.items() if kind not in there]
