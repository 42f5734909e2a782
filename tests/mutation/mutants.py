"""Mutants of the rooms: one small change of one place each, drawn by a seed, every place as likely as any other.

The changes are the operators of cosmic-ray. Left out is what would be noticed by whatever touches it (a sum made a
shift), or by nothing, for no promise is broken (a cache taken away, two equal values asked whether they are one).
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import attrs
from cosmic_ray.ast import get_ast
from cosmic_ray.mutating import mutate_code
from cosmic_ray.operators.provider import OperatorProvider

ROOT = Path(__file__).parents[2]
SEED = "20261126"
ROOMS = {
    "lowering": ("compose/net",),
    "check": ("compose/check",),
    "forecast": ("compose/forecast",),
    "modifiers": ("compose/modifiers",),
    "resolve": ("grammar/resolve", "grammar/core"),
    "share": ("compose/share",),
}
UNWANTED = ("Pow", "Shift", "_Mod", "BitXor", "_Is", "VariableReplacer", "VariableInserter")
WANTED_ALL_THE_SAME = ("_Is_IsNot", "_IsNot_Is")
ARITHMETIC = ("Add", "Sub", "Mul", "Div", "FloorDiv")
MUTABLE = frozenset((
    "operator", "comparison", "number", "keyword", "if_stmt", "while_stmt", "assert_stmt", "for_stmt", "test",
    "decorator", "atom", "except_clause", "factor", "not_test", "break_stmt", "continue_stmt",
))  # fmt: skip


@attrs.frozen
class Mutant:
    """One change: the occurrence of an operator in a file; the line is where it was when it was drawn."""

    room: str
    path: str
    operator: str
    occurrence: int
    line: int

    @property
    def name(self) -> str:
        return f"{self.path}:{self.line} {self.operator} {self.occurrence}"

    def source(self) -> str:
        changed: str = mutate_code(source_of(self.path), operators()[self.operator](), self.occurrence)
        return changed


@cache
def source_of(path: str) -> str:
    return (ROOT / path).read_text(encoding="utf-8")


@cache
def operators() -> dict[str, Any]:
    provider = OperatorProvider()
    return {name: provider[name] for name in provider if _wanted(name)}


def _wanted(name: str) -> bool:
    if name.endswith(WANTED_ALL_THE_SAME):
        return True
    if any(word in name for word in UNWANTED):
        return False
    *_, before, after = ("", *name.split("_"))
    return "BinaryOperator" not in name or (before in ARITHMETIC) == (after in ARITHMETIC)


def drawn(room: str, seed: str, number: int) -> list[Mutant]:
    """The first mutants of a room by a seed; a larger number adds to them."""
    places = [(path, index) for path in files(room) for index in range(len(mutable_nodes(path)))]
    chance = Random(f"{seed} {room}")
    chance.shuffle(places)
    found: list[Mutant] = []
    for path, index in places:
        if len(found) == number:
            break
        node = mutable_nodes(path)[index]
        choices = [name for name, each in operators().items() for _ in each().mutation_positions(node)]
        if not choices or _is_cache(node):
            continue
        name = chance.choice(choices)
        earlier = _occurrences(path, name, index)
        mutant = Mutant(room, path, name, earlier + chance.randrange(choices.count(name)), node.start_pos[0])
        if changes_the_program(mutant):
            found.append(mutant)
    return found


def files(room: str) -> list[str]:
    return sorted(
        path.relative_to(ROOT).as_posix() for folder in ROOMS[room] for path in (ROOT / folder).rglob("*.py")
    )


@cache
def mutable_nodes(path: str) -> list[Any]:
    return [node for node in _nodes(get_ast(source_of(path))) if node.type in MUTABLE]


def _nodes(node: Any) -> Iterator[Any]:
    yield node
    for child in getattr(node, "children", ()):
        yield from _nodes(child)


def _occurrences(path: str, operator: str, until: int) -> int:
    one = operators()[operator]()
    return sum(len(list(one.mutation_positions(node))) for node in mutable_nodes(path)[:until])


def _is_cache(node: Any) -> bool:
    return node.type == "decorator" and "cache" in node.get_code()


def changes_the_program(mutant: Mutant) -> bool:
    """Whether the change is more than one of an annotation, which nothing reads as the program runs."""
    try:
        return _meaning(mutant.source()) != _meaning(source_of(mutant.path))
    except (SyntaxError, AttributeError):  # the operator for exceptions cannot change one with a dot in its name
        return False


def _meaning(source: str) -> str:
    return ast.dump(_WithoutAnnotations().visit(ast.parse(source)))


class _WithoutAnnotations(ast.NodeTransformer):
    def visit_arg(self, node: ast.arg) -> ast.arg:
        node.annotation = None
        return node

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        node.returns = None
        return self.generic_visit(node)

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST:
        node.annotation = ast.Constant(None)
        return self.generic_visit(node)

    def visit_If(self, node: ast.If) -> ast.AST:
        return ast.Pass() if ast.unparse(node.test).endswith("TYPE_CHECKING") else self.generic_visit(node)
