"""Every rule of rules.lark is needed by some file of the library."""

from __future__ import annotations

import re
from functools import cache

from lark import Tree

from grammar.language import GRAMMAR_FILE, SHEETS, STARTS, parse_sentence
from grammar.layout import parts
from grammar.parameters import filled_in
from grammar.parse import parse
from grammar.sentences.modifier import Block
from grammar.tree import Line
from library import granted_path

# Sentences that no game of the library says, only a modifier that puts one in or takes one out.
ONLY_IN_MODIFIERS = frozenset(
    (
        *("all_but", "all_move_on", "both_at_once", "bounce_share", "counted_lives", "frozen_back", "gone"),
        *("hit_not_bounced", "low_down", "more_of", "nobody_fetches", "not_bounced", "rest_back"),
        *("begins_points", "half_of", "next_knocked_wins", "stand_again", "stays_inside", "times_as_many"),
    )
)


def rules_of_the_grammar(only_games: bool = False) -> frozenset[str]:
    """The rules that make a node of the parse tree, and the names that alternatives give it."""
    text = GRAMMAR_FILE.read_text(encoding="utf-8")
    if only_games:
        before, _, rest = text.partition("// ---- modifiers:")
        text = before + rest[rest.index("// ---- shared pieces") :]
    text = re.sub(r"//.*", "", text)
    names: set[str] = set()
    for rule in re.finditer(r"^([?!]*)([a-z_]+):((?:.*\n(?:\s+\|.*\n)*))", text + "\n", re.MULTILINE):
        alternatives = re.split(r"(?m)^\s+\|", rule.group(3))
        aliases = [re.search(r"->\s*([a-z_]+)", alternative) for alternative in rule.group(3).splitlines()]
        named = {alias.group(1) for alias in aliases if alias}
        names |= named
        if "?" not in rule.group(1) and len(named) < len(alternatives):
            names.add(rule.group(2))
    return frozenset(names)


@cache
def used_rules(folder: str = ".") -> frozenset[str]:
    """The rules that the files of the library, or of one folder of it, are read with."""
    used: set[str] = set()
    for path in sorted((granted_path().parent / folder).rglob("*.rules")):
        text = path.read_text(encoding="utf-8")
        rules = parse(text, path.name).value
        assert rules is not None, path.name
        for game in rules.games:
            for section in ("head", *(part.name for part in game.sections)):
                for line in game.lines(section):
                    used |= rules_in(section, line.sentence.words())
        for kind, sheets in (("modifier", rules.modifiers), ("remix", rules.remixes), ("class", rules.classes)):
            for sheet in sheets:
                used |= rules_of_sheet(kind, sheet.lines)
    return frozenset(used)


def rules_of_sheet(kind: str, lines: tuple[Line, ...]) -> set[str]:
    values: dict[str, str] = {}
    used: set[str] = set()
    for line in lines:
        said = line.sentence.words()
        takes = re.match(r"takes (\w+): .*, usually (.+)", said)
        if takes:
            values[takes.group(1)] = takes.group(2)
        used |= rules_in(kind, filled_in(said, values).text)
        if isinstance(line.sentence, Block):
            for inner in line.block:
                used |= rules_in(line.sentence.section, filled_in(inner.sentence.words(), values).text)
    return used


def rules_in(section: str, text: str) -> set[str]:
    tree = parse_sentence(section, text)
    return {str(each.data) for each in tree.iter_subtrees()} if isinstance(tree, Tree) else set()


def test_every_rule_is_used_by_the_library() -> None:
    missing = rules_of_the_grammar() - used_rules()
    assert not missing, f"No game or modifier of the library needs {', '.join(sorted(missing))}"


def test_every_rule_of_a_game_is_used_by_a_game() -> None:
    assert rules_of_the_grammar(only_games=True) - used_rules("games") == ONLY_IN_MODIFIERS


def test_every_section_has_sentences() -> None:
    for section in STARTS:
        assert f"{section.replace('-', '')}_line" in GRAMMAR_FILE.read_text(encoding="utf-8")
    assert parts("game A\n", "a.rules")[0][0].kind == "game"
    assert set(SHEETS) < set(STARTS)
