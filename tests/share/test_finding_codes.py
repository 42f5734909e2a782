"""The page of codes: every code that the program can give and no other, each with an example that gives it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from told_examples import TOLD
from tried_examples import given, in_words

import compose
import grammar
import library
from compose.telling.wording import languages
from library.finding_codes import Explanation, explanations, page_path
from tests.terminal.running import typed

CODE = re.compile("[A-Z]-[a-z]+(?:-[a-z]+)*")
OTHERS = [language for language in languages() if not language.startswith("en")]


def codes_of_the_program() -> Iterator[str]:
    """Every text of the program that is a code and nothing else."""
    for package in (compose, grammar, library):
        for path in Path(package.__path__[0]).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Constant) and isinstance(node.value, str) and CODE.fullmatch(node.value):
                    yield node.value


def test_every_code_is_told_and_no_other() -> None:
    told = explanations()
    assert set(codes_of_the_program()) == set(told)
    headings = re.findall(r"^### (.+)$", page_path("en").read_text(encoding="utf-8"), re.MULTILINE)
    assert headings == list(told), "an entry is not written as the others are"


@pytest.mark.parametrize("language", OTHERS)
def test_every_code_is_told_in_every_language(language: str) -> None:
    told, english = explanations(language), explanations()
    assert list(told) == list(english)
    for code, each in told.items():
        assert each.means != english[code].means and each.to_do != english[code].to_do
        assert each.example == english[code].example or in_words(english[code].example)


def test_words_are_plain_and_short() -> None:
    for language in ("en", *OTHERS):
        for each in explanations(language).values():
            for text in (each.means, each.to_do):
                assert text.endswith(".") or text.endswith("`."), each.code
                assert text[0].isupper() and len(text) <= 170, each.code


def test_examples_in_words_are_made_by_the_tests() -> None:
    assert {code for code, each in explanations().items() if in_words(each.example)} == set(TOLD)


@pytest.mark.sample(40)
@pytest.mark.parametrize("told", explanations().values(), ids=lambda each: each.code)
def test_example_gives_its_code(told: Explanation, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("RULEWEAVE_SHELF", str(tmp_path / "shelf"))
    if in_words(told.example):
        found = {finding.code for finding in TOLD[told.code](tmp_path)}
    else:
        found = given(told.example, tmp_path)
    assert told.code in found


def test_the_command_tells_one_code_or_all() -> None:
    one = typed("means", "c-STALL").stdout
    assert one.startswith("C-stall: ") and "\n  To do: " in one and "\n  To see it: " in one
    every = typed("means").stdout
    assert all(f"\n{code}: " in f"\n{every}" for code in explanations())
    unknown = typed("means", "C-stal")
    assert unknown.exit_code == 2 and "`C-stall`" in unknown.output
