"""The project's own files, as the house rules look at them."""

from __future__ import annotations

import ast
import subprocess
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGES = ("grammar", "library", "compose")


@cache
def tracked() -> tuple[Path, ...]:
    """The files under version control; without it, all files that are not made by a tool."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=False)
    if listed.returncode == 0 and listed.stdout:
        names = listed.stdout.decode().split("\0")
        return tuple(ROOT / name for name in names if name and (ROOT / name).is_file())
    made = ("__pycache__", ".git", ".venv", "build", "dist")
    found = (path for path in sorted(ROOT.rglob("*")) if path.is_file())
    return tuple(path for path in found if not any(part in made or part.endswith("_cache") for part in path.parts))


@cache
def modules() -> tuple[Path, ...]:
    """The Python files of the three packages, the newest too."""
    return tuple(sorted(path for package in PACKAGES for path in (ROOT / package).rglob("*.py")))


@cache
def modules_of_tests() -> tuple[Path, ...]:
    """The Python files of the tests."""
    return tuple(sorted((ROOT / "tests").rglob("*.py")))


@cache
def tree(path: Path) -> ast.Module:
    """The syntax tree of a Python file."""
    return ast.parse(path.read_text(encoding="utf-8"), str(path))


@cache
def nodes(path: Path) -> tuple[ast.AST, ...]:
    """Every node of a Python file's syntax tree."""
    return tuple(ast.walk(tree(path)))


def dotted(path: Path) -> str:
    """Such as "compose.staging.floor.floor" for compose/staging/floor/floor.py."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(part for part in parts if part != "__init__")


def imported(node: ast.AST) -> Iterator[str]:
    """The modules that an import statement names."""
    if isinstance(node, ast.Import):
        yield from (alias.name for alias in node.names)
    elif isinstance(node, ast.ImportFrom) and node.module:
        yield node.module
        yield from (f"{node.module}.{alias.name}" for alias in node.names)


def for_types_only(node: ast.AST) -> bool:
    """Whether a statement is "if TYPE_CHECKING:"."""
    return isinstance(node, ast.If) and isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING"


def at_the_top(module: ast.Module) -> Iterator[ast.AST]:
    """The statements that run when a module is loaded."""
    pending: list[ast.AST] = list(module.body)
    while pending:
        node = pending.pop()
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) or for_types_only(node):
            continue
        yield node
        pending.extend(ast.iter_child_nodes(node))
