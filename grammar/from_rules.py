"""rules.lark → the parser's tables. Lark makes them; reading a line then needs nothing of it.

Lark's own keyword handling is tightened in two ways. Every word of the grammar ends at a word border,
so `outt` is never read as `out` and `t`. No reserved word may be part of a name, so a slip is reported
where it stands and not at the end of the line. Of several phrases that could stand, that of the kind with
the most spaces in its phrases is taken.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from lark import Lark
from lark.grammar import Rule as LarkRule
from lark.lexer import PatternStr, TerminalDef
from lark.parse_tree_builder import maybe_create_child_filter
from lark.parsers.lalr_analysis import Shift

from grammar.tables import Phrases, Rule, Tables

OPEN_TERMINALS = frozenset(
    ("WORD", "POSSESSIVE", "STRING", "LENGTH", "DURATION", "PERCENT", "NUMBER", "LICENCE", "SIZE")
)
_IN_ANY_CASE = ("LENGTH", "DURATION", "POSSESSIVE")


def tables_from(text: str, starts: Sequence[str]) -> Tables:
    """The tables of a grammar for these start symbols."""
    lark = Lark(text, parser="lalr", lexer="basic", start=list(starts), maybe_placeholders=True)
    table = lark.parser.parser._parse_table
    numbers = {rule: number for number, rule in enumerate(lark.rules)}
    rows = tuple(
        {str(kind): to if action is Shift else ~numbers[to] for kind, (action, to) in table.states[state].items()}
        for state in range(len(table.states))
    )
    ends = {start: (table.start_states[start], table.end_states[start]) for start in starts}
    terminals = sorted(lark.terminals, key=_first_tried)
    said = [each for each in terminals if not _is_open(each)]
    opened = "|".join(f"(?P<{each.name}>{_pattern(each)})" for each in terminals if _is_open(each))
    return Tables(rows, tuple(map(_rule, lark.rules)), ends, _phrases(said), opened)


def _rule(rule: LarkRule) -> Rule:
    """What a rule makes of its parts, as Lark's own trees have it."""
    name, size, options = str(rule.origin.name), len(rule.expansion), rule.options
    unsaid = list(options.empty_indices) or [False] * size
    kept = maybe_create_child_filter(rule.expansion, options.keep_all_tokens, False, unsaid)
    parts, after = kept.args if kept else ((), 0)
    return name, size, str(rule.alias or name), bool(options.expand1 and not rule.alias), tuple(parts), after


def _is_open(terminal: TerminalDef) -> bool:
    return terminal.name in OPEN_TERMINALS or not any(letter.isalpha() for letter in terminal.pattern.value)


def _first_tried(terminal: TerminalDef) -> tuple[int, int, int, str]:
    pattern = terminal.pattern
    priority = terminal.priority if _is_open(terminal) else 1 + pattern.value.count(" ")
    return -priority, -pattern.max_width, -len(pattern.value), terminal.name


def _pattern(terminal: TerminalDef) -> str:
    pattern = terminal.pattern.to_regexp()
    return f"(?i:{pattern})" if terminal.name in _IN_ANY_CASE else pattern


def _phrases(terminals: Iterable[TerminalDef]) -> Phrases:
    found: dict[str, list[tuple[str, tuple[str, ...]]]] = {}
    for terminal in terminals:
        value = terminal.pattern.value
        alone = isinstance(terminal.pattern, PatternStr)
        for phrase in [value] if alone else re.sub(r"^\(\?:|\)$|\\", "", value).split("|"):
            assert re.fullmatch(r"[\w'-]+(?: [\w'-]+)*", phrase), phrase
            first, *others = phrase.lower().split(" ")
            found.setdefault(first, []).append((str(terminal.name), tuple(others)))
    return {first: tuple(ways) for first, ways in found.items()}
