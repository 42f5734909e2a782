"""Puts a changed module into a program that runs already, where only bodies of functions are changed.

Every function that lives is found by its file, name and line, wherever it is kept: in a frozen class with slots, behind
a property or a cache, in a table. What is computed when a module is loaded cannot be changed so.
"""

from __future__ import annotations

import functools
import gc
import importlib
import inspect
from collections import defaultdict
from collections.abc import Iterable, Iterator
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

UPSTREAM = ("grammar", "library")  # import nothing of compose: what they keep holds whatever is changed there


class Living:
    """The functions and caches that live at one moment; to look them up later, in a fork, would copy its memory."""

    def __init__(self) -> None:
        self.functions = defaultdict[str, list[FunctionType]](list)
        self.caches: list[Any] = []
        for each in gc.get_objects():
            if isinstance(each, FunctionType):
                self.functions[each.__code__.co_filename].append(each)
            elif isinstance(each, functools._lru_cache_wrapper):
                self.caches.append(each)

    def swap(self, path: Path, changed: str) -> bool:
        """Change the functions of a file that differ, and forget what was kept; False where that would not be all."""
        changes = differing(compile(path.read_text(encoding="utf-8"), str(path), "exec"),
                            compile(changed, str(path), "exec"))  # fmt: skip
        if changes is None:
            return False
        by_key = defaultdict(list)
        for function in self.functions[str(path)]:
            by_key[_key(function.__code__)].append(function)
        for before, after in changes:
            functions = by_key[_key(before)]
            if len({function.__code__ for function in functions}) != 1 or before.co_freevars != after.co_freevars:
                return False
            for function in functions:
                function.__code__ = after
        downstream = "compose" in path.parts
        for kept in self.caches:
            if not (downstream and str(kept.__module__).split(".")[0] in UPSTREAM):
                kept.cache_clear()
        return True


def load(paths: Iterable[str]) -> None:
    """Import these files, so that their functions live."""
    for path in paths:
        importlib.import_module(path.removesuffix(".py").removesuffix("/__init__").replace("/", "."))


def _key(code: CodeType) -> tuple[str, int]:
    return code.co_qualname, code.co_firstlineno


def differing(before: CodeType, after: CodeType) -> list[tuple[CodeType, CodeType]] | None:
    """The outermost functions whose code differs, both ways; None where code that runs on loading does."""
    if not _same_but_inside(before, after):
        return None
    found = []
    for one, other in zip(_inside(before), _inside(after), strict=True):
        if one == other:
            continue
        if _is_function(one):
            found.append((one, other))
        elif (deeper := differing(one, other)) is None:
            return None
        else:
            found += deeper
    return found


def _inside(code: CodeType) -> Iterator[CodeType]:
    return (each for each in code.co_consts if isinstance(each, CodeType))


def _same_but_inside(before: CodeType, after: CodeType) -> bool:
    def bare(code: CodeType) -> CodeType:
        return code.replace(co_consts=tuple(None if isinstance(each, CodeType) else each for each in code.co_consts))

    return bare(before) == bare(after)


def _is_function(code: CodeType) -> bool:
    """A function, not the body of a class nor what a comprehension does."""
    of_function = inspect.CO_OPTIMIZED | inspect.CO_NEWLOCALS
    comprehension = code.co_name in ("<listcomp>", "<genexpr>", "<dictcomp>", "<setcomp>")
    return code.co_flags & of_function == of_function and not comprehension
