"""rules.lark → tables, by Lark: loaded only where no tables are kept."""

from __future__ import annotations

import re
from collections.abc import Iterator

from lark import Lark
from lark.grammar import Rule, Terminal
from lark.lexer import PatternStr, TerminalDef
from lark.parsers.lalr_analysis import Shift

from grammar.tables import Part, Tables

_PHRASE = re.compile(r"[^\W\d_][\w'-]*(?: [\w'-]+)*")


def made_tables(text: str, starts: tuple[str, ...]) -> Tables:
    """The tables of a grammar for sentences of these kinds."""
    parser = Lark(text, parser="lalr", lexer="basic", start=list(starts), maybe_placeholders=True)
    confs = {start: parser.parse_interactive("", start=start).parser_state.parse_conf for start in starts}
    numbers = {rule: number for number, rule in enumerate(parser.rules)}
    steps = next(iter(confs.values())).states
    assert sorted(steps) == list(range(len(steps)))
    terminals = sorted(parser.terminals, key=lambda terminal: -terminal.priority)
    return Tables(
        phrases={phrase: terminal.name for terminal in terminals for phrase in _phrases(terminal)},
        open_kinds=tuple((each.name, each.pattern.to_regexp()) for each in terminals if not list(_phrases(each))),
        rules=tuple(_rule(rule) for rule in parser.rules),
        states=tuple(
            {kind: found if step is Shift else -1 - numbers[found] for kind, (step, found) in steps[state].items()}
            for state in range(len(steps))
        ),
        starts={start: (conf.start_state, conf.end_state) for start, conf in confs.items()},
    )


def _phrases(terminal: TerminalDef) -> Iterator[str]:
    """The words and phrases that a terminal stands for; none for names, numbers, signs and the like."""
    pattern = terminal.pattern
    if isinstance(pattern, PatternStr):
        said = [pattern.value]
    else:
        said = [
            re.sub(r"\\(.)", r"\1", each) for each in pattern.value.removeprefix("(?:").removesuffix(")").split("|")
        ]
    if all(_PHRASE.fullmatch(each) for each in said):
        yield from said


def _rule(rule: Rule) -> tuple[str, int, str, tuple[Part, ...], int, bool]:
    options = rule.options
    missing = _missing(options.empty_indices, len(rule.expansion))
    parts: list[Part] = []
    before = 0
    for number, symbol in enumerate(rule.expansion):
        before += missing[number]
        if options.keep_all_tokens or not (isinstance(symbol, Terminal) and symbol.filter_out):
            parts.append((number, not symbol.is_term and symbol.name.startswith("_"), before))
            before = 0
    name = rule.alias or rule.origin.name
    single = bool(options.expand1 and not rule.alias)
    return str(rule.origin.name), len(rule.expansion), str(name), tuple(parts), before + missing[-1], single


def _missing(empty: tuple[bool, ...], parts: int) -> list[int]:
    """How many optional parts are left out before each part of a rule, and behind the last."""
    found = [0]
    for left_out in empty or (False,) * parts:
        if left_out:
            found[-1] += 1
        else:
            found.append(0)
    return found
