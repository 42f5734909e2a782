"""Our parse trees are those of Lark, which made the tables; the words of a line are cut as the language page says."""

from __future__ import annotations

import random
from collections.abc import Iterator
from functools import cache

import lark
import pytest

from grammar.language import GRAMMAR_FILE, STARTS, parse_sentence, start_symbol, tokens
from grammar.parse_tree import Child, Tree
from grammar.tokens import NoSentenceError, Token
from library import game_paths, granted_path, modifier_paths

Shape = tuple[str, int, int, tuple[object, ...]] | tuple[str, str, int] | None


@cache
def theirs() -> lark.Lark:
    """Lark's own parser of the grammar."""
    starts = [start_symbol(section) for section in STARTS]
    text = GRAMMAR_FILE.read_text(encoding="utf-8")
    return lark.Lark(
        text, parser="lalr", lexer="basic", start=starts, maybe_placeholders=True, propagate_positions=True
    )


def parsed_by_lark(section: str, words: list[Token]) -> Shape:
    """The tree that Lark makes of words; raises lark.UnexpectedInput where they are no sentence."""
    parser = theirs().parse_interactive("", start=start_symbol(section))
    for word in words:
        place = {"start_pos": word.start, "line": 1, "column": word.start + 1, "end_line": 1}
        parser.feed_token(lark.Token(word.kind, word.text, end_column=word.end + 1, end_pos=word.end, **place))
    return shape_of_lark(parser.feed_eof())


def shape_of_lark(node: object) -> Shape:
    if isinstance(node, lark.Token):
        return node.type, str(node), node.start_pos or 0
    if isinstance(node, lark.Tree):
        place = (-1, -1) if node.meta.empty else (node.meta.column - 1, node.meta.end_column - 1)
        return str(node.data), *place, tuple(shape_of_lark(child) for child in node.children)
    return None


def shape(node: Child) -> Shape:
    if isinstance(node, Token):
        return node.kind, node.text, node.start
    if isinstance(node, Tree):
        return node.rule, node.start, node.end, tuple(shape(child) for child in node.children)
    return None


def lines() -> Iterator[str]:
    """Lines of the library, and each with a word too few and one too many."""
    chosen = random.Random(7)
    for path in (granted_path(), *game_paths()[::4], *modifier_paths()[::6]):
        for line in path.read_text(encoding="utf-8").split("\n"):
            words = line.split()
            if not words or line.startswith("#"):
                continue
            at = chosen.randrange(len(words))
            yield from (
                " ".join(each) for each in (words, words[:at] + words[at + 1 :], [*words[:at], "a", *words[at:]])
            )


def test_trees_are_those_of_lark() -> None:
    sentences = 0
    for line in dict.fromkeys(lines()):
        try:
            words = list(tokens(line))
        except NoSentenceError:
            continue
        for section in STARTS:
            try:
                expected = parsed_by_lark(section, words)
            except lark.UnexpectedInput:
                with pytest.raises(NoSentenceError):
                    parse_sentence(section, line)
            else:
                assert shape(parse_sentence(section, line)) == expected, line
                sentences += 1
    assert sentences > 300


@pytest.mark.parametrize(
    ("line", "cut"),
    [
        ("side lines", ["SIDE_LINE side lines"]),
        ("Side   LINES, 2 m", ["SIDE_LINE Side   LINES", "COMMA ,", "LENGTH 2 m"]),
        ("a side's point", ["DET a", "POSSESSIVE side's", "POINTS point"]),
        ("pointless step-stone", ["WORD pointless", "WORD step-stone"]),
        ("gets a life back", ["WIN_LIFE gets a life back"]),
        ("size 3 balls", ["SIZE size 3", "WORD balls"]),
        ("2.5 min 75 % 4", ["DURATION 2.5 min", "PERCENT 75 %", "NUMBER 4"]),
    ],
)
def test_the_longest_phrase_comes_first_and_ends_at_a_border(line: str, cut: list[str]) -> None:
    assert [f"{token.kind} {token.text}" for token in tokens(line)] == cut


def test_a_strange_letter_is_told_where_it_stands() -> None:
    with pytest.raises(NoSentenceError) as found:
        list(tokens("roll a ball § at"))
    assert found.value.at == 12
    with pytest.raises(NoSentenceError) as found:
        parse_sentence("play", "players roll a ball at at the pins")
    assert found.value.at == 23
