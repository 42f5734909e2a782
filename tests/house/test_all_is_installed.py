"""What stands beside the code and is read while the program runs is installed with it.

The tests run from a checkout, where every file lies at hand; who installs the program has those alone that
pyproject.toml names.
"""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PICTURES_OF_THE_README = {Path("library/pictures/lantern-row.svg"), Path("library/pictures/page.png")}


@pytest.mark.parametrize("package", ["compose", "grammar", "library"])
def test_every_file_of_a_package_is_installed(package: str) -> None:
    setup = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["setuptools"]
    named = {path for pattern in setup["package-data"][package] for path in (ROOT / package).glob(pattern)}
    there = {path for path in (ROOT / package).rglob("*") if path.is_file() and "__pycache__" not in path.parts}
    left = {path.relative_to(ROOT) for path in there - named if path.suffix not in {".py", ".pyc"}}
    assert not left - PICTURES_OF_THE_README
