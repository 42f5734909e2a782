"""The code of a finding is one constant: what is given in several places is named in one, and asked for there."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator

from sources import modules, tree

CODE = re.compile(r"[A-Z]-[a-z][a-z-]*")


def constants() -> Iterator[str]:
    """The codes that a module gives a name of its own."""
    for path in modules():
        for node in tree(path).body:
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant):
                value = node.value.value
                if isinstance(value, str) and CODE.fullmatch(value):
                    yield value


def test_a_code_is_one_constant() -> None:
    found = Counter(constants())
    assert "C-idle" in found and "C-stall" in found
    assert [code for code, times in found.items() if times > 1] == []
