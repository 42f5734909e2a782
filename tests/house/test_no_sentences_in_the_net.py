"""The net and its lowering hold values; only telling makes sentences of them."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest
from sources import dotted, modules, tree

WORDS = re.compile(r"[A-Za-z,.;:]\s|\s[A-Za-z]")


def refuses(node: ast.AST) -> bool:
    """Whether a function gives findings: it says to people why something cannot be played or read."""
    given = node.returns if isinstance(node, ast.FunctionDef) else None
    return given is not None and "Finding" in ast.unparse(given)


def explains(node: ast.AST) -> Iterator[ast.AST]:
    """The docstring of a module, class or function."""
    if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef) and ast.get_docstring(node, clean=False):
        yield from ast.walk(node.body[0])


def sentences(module: ast.Module) -> Iterator[str]:
    """Pieces of sentences: texts with words or marks beside a blank, but for docstrings, enums and refusals."""
    every = list(ast.walk(module))
    left_out = {id(each) for node in every for each in explains(node)}
    for node in every:
        if refuses(node) or isinstance(node, ast.Raise | ast.Assert) or is_enum(node):
            left_out |= {id(each) for each in ast.walk(node)}
    for node in every:
        text = node.value if isinstance(node, ast.Constant) and id(node) not in left_out else None
        if isinstance(text, str) and WORDS.search(text):
            yield text


def is_enum(node: ast.AST) -> bool:
    """Whether a class only names values."""
    return isinstance(node, ast.ClassDef) and any(ast.unparse(base) == "Enum" for base in node.bases)


def test_the_net_holds_no_english() -> None:
    net = [path for path in modules() if dotted(path).startswith("compose.net")]
    assert len(net) > 30
    assert not [f"{dotted(path)}: {text}" for path in net for text in sentences(tree(path))]


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ('"""A docstring of words."""\nNAME = "ball"', []),
        ('def told(side): return f"{side} wins by a rule"', [" wins by a rule"]),
        ('def told(side): return f"{side}: {side}; {side}"', [": ", "; "]),
        ('def doubt() -> Finding: return Finding("N-x", "It cannot be read.")', []),
        ('class Cause(Enum):\n    RULE = "a rule of the game"', []),
    ],
)
def test_the_rule_sees_sentences(source: str, found: list[str]) -> None:
    assert list(sentences(ast.parse(source))) == found

