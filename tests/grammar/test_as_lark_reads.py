"""Lines are cut and read by Lark's tables as Lark itself would, with words that end at a border."""

from __future__ import annotations

import re
from functools import cache

from hypothesis import given
from hypothesis import strategies as st
from lark import Lark, Token, Tree, UnexpectedInput
from lark.lexer import PatternRE, TerminalDef

from grammar.from_rules import OPEN_TERMINALS
from grammar.language import (
    GRAMMAR_FILE,
    STARTS,
    parse_sentence,
    pieces_in,
    reserved_phrases,
    start_symbol,
)
from grammar.parse_tree import Child
from grammar.pieces import NoSentenceError, Piece
from library import game_paths, modifier_paths

BORDER = r"(?![\w'-])(?!’)"
ODD = ("foam", "ball", "lanterns", "don't", "3", "2.5", "5 m", "30s", "40 %", "north's", "size 4", "CC-BY-4.0",
       '"Mind."', ":", ",", "(", ")", "x_y", "half-", "3in", "at-most", "§", "  ", "A", "each’s")  # fmt: skip


def edited(terminal: TerminalDef) -> TerminalDef:
    """A word or phrase that ends at a border, the longer ones first."""
    pattern = terminal.pattern
    if terminal.name in ("LENGTH", "DURATION", "POSSESSIVE"):
        terminal.pattern = PatternRE(f"(?i:{pattern.value})")
    elif terminal.name not in OPEN_TERMINALS and any(letter.isalpha() for letter in pattern.value):
        value = pattern.value if isinstance(pattern, PatternRE) else re.escape(pattern.value)
        spaced = re.sub(r"(?:\\ | )", r"\\s+", value)
        terminal.pattern = PatternRE(rf"(?i:(?:{spaced}){BORDER})")
        terminal.priority = 1 + pattern.value.count(" ")
    return terminal


@cache
def lark() -> Lark:
    """Lark's own parser of the grammar."""
    return Lark(
        GRAMMAR_FILE.read_text(encoding="utf-8"),
        parser="lalr",
        lexer="basic",
        start=[start_symbol(section) for section in STARTS],
        maybe_placeholders=True,
        propagate_positions=True,
        edit_terminals=edited,
    )


def of_lark(tree: Tree[Token] | Token | None) -> object:
    if isinstance(tree, Tree):
        place = None if tree.meta.empty else (tree.meta.start_pos, tree.meta.end_pos)
        return str(tree.data), place, [of_lark(child) for child in tree.children]
    return None if tree is None else (tree.type, str(tree), tree.start_pos, tree.end_pos)


def ours(tree: Child) -> object:
    if tree is None or isinstance(tree, Piece):
        return tree and (tree.kind, tree.text, tree.start, tree.end)
    place = None if tree.start is None else (tree.start, tree.end)
    return tree.rule, place, [ours(child) for child in tree.children]


def agree(section: str, text: str) -> None:
    try:
        expected = of_lark(lark().parse(text, start=start_symbol(section)))
    except UnexpectedInput:
        expected = None
    try:
        found = ours(parse_sentence(section, text))
    except NoSentenceError:
        found = None
    assert found == expected


@cache
def lines() -> tuple[str, ...]:
    """Every line of the games and modifiers of the library."""
    paths = (*game_paths(), *modifier_paths())
    return tuple(sorted({line.strip() for path in paths for line in path.read_text(encoding="utf-8").splitlines()}))


def is_sentence(section: str, text: str) -> bool:
    try:
        parse_sentence(section, text)
    except NoSentenceError:
        return False
    return True


def test_sentences_of_the_library_are_read_as_lark_reads_them() -> None:
    for text in lines():
        for section in STARTS:
            if is_sentence(section, text):
                agree(section, text)


@given(text=st.sampled_from(lines()), section=st.sampled_from(STARTS), words=st.data())
def test_any_row_of_their_words_is_read_as_lark_reads_it(text: str, section: str, words: st.DataObject) -> None:
    agree(section, text)
    agree(section, " ".join(words.draw(st.permutations(text.split()[:4]))))


@given(words=st.lists(st.sampled_from((*reserved_phrases(), *ODD)), max_size=7), joint=st.sampled_from((" ", "  ", "")))
def test_pieces_are_cut_as_lark_cuts_them(words: list[str], joint: str) -> None:
    text = joint.join(words)
    expected, found = list[object](), list[object]()
    try:
        begun = lark().parse_interactive(text, start=start_symbol(STARTS[0]))
        for token in begun.lexer_thread.lex(begun.parser_state):  # type: ignore[no-untyped-call]
            expected.append(of_lark(token))
    except UnexpectedInput as error:
        expected.append(error.pos_in_stream)
    try:
        for piece in pieces_in(text):
            found.append(ours(piece))
    except NoSentenceError as error:
        found.append(*error.args)
    assert found == expected
