"""Mistakes of sheets in French: each has its words in the catalogue, and the catalogue has no others."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import grammar
import library
from compose.modifiers.apply import apply
from compose.modifiers.fit_for import BEING
from compose.modifiers.modifier import Use
from compose.modifiers.of_library import library_modifiers
from compose.telling.findings import finding_said, known
from compose.telling.wording import FOLDER, catalogue, with_sheets, wording_of
from grammar.finding import mistake
from grammar.mistakes.examples import examples
from grammar.mistakes.wishes import wishes
from grammar.said import Capital, listed, quoting, write
from grammar.span import nowhere
from library.finding_codes import explanations
from tests.grammar.corpus import FILES, mistakes
from tests.interpreter.sheets import library_game
from tests.telling.test_french_findings import ENGLISH_WORDS, texts
from tests.terminal.running import run

HOME = Path(grammar.__file__).parents[1]
FRENCH = with_sheets(wording_of("fr"))
# What makes mistakes of sheets, and the calls in which it says them.
MAKERS = (
    *sorted((HOME / "grammar").glob("*.py")),
    *sorted((HOME / "grammar/core/reading").rglob("*.py")),
    *sorted((HOME / "grammar/resolve").glob("*.py")),
    *sorted((HOME / "grammar/mistakes").glob("*.py")),
    *sorted((HOME / "compose/modifiers/changes").glob("*.py")),
    *(
        HOME / f"compose/modifiers/{name}.py"
        for name in ("apply", "carry_over", "fit_for", "from_sheet", "modifier", "needs", "recipe")
    ),
    HOME / "compose/staging/class_from_sheet.py",
    HOME / "library/own_halls.py",
)
SAYING = {"quoting", "mistake", "Senseless", "wrong", "_error", "refuse", "missing", "none_of_these"}
WORDS = {"title", "hint", "told", "pattern", "put", "such", "standing", "more", "own", "apart", "unknown", "said"}


def strings(path: Path) -> Iterator[str]:
    """Every text of a file."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value


def patterns(path: Path) -> Iterator[str]:
    """What a file says of mistakes: in the call, or by a name given before."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in SAYING:
            yield from (text for each in node.args for text in texts(each))
        if isinstance(node, ast.Yield | ast.Return) and node.value is not None:
            yield from (text for text in texts(node.value) if text[0].isupper())
        if isinstance(node, ast.Assign):
            named = {each.id for target in node.targets for each in ast.walk(target) if isinstance(each, ast.Name)}
            if named & WORDS:
                yield from (text for text in texts(node.value) if text[0].isupper() or text[0] == "`")


@pytest.mark.parametrize("path", MAKERS, ids=lambda path: path.stem)
def test_every_pattern_has_its_french(path: Path) -> None:
    plain = {text for text in patterns(path) if text[0] != " " and ("", text) not in FRENCH.messages}
    assert sorted(text for text in plain if text[0].isupper() or "{" in text) == []


@pytest.mark.parametrize("path", MAKERS, ids=lambda path: path.stem)
def test_no_mistake_is_put_together_from_words_of_english(path: Path) -> None:
    """A text with names in it is a pattern and its fields, or nobody can say it in another language."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in SAYING:
            assert not [each.lineno for each in node.args if isinstance(each, ast.JoinedStr)], path
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.JoinedStr):
            named = {each.id for target in node.targets for each in ast.walk(target) if isinstance(each, ast.Name)}
            assert not named & {"title", "hint"}, f"{path}, line {node.lineno}"


def test_every_row_of_the_page_and_every_wish_has_its_french() -> None:
    rows = {row.says for section in examples().values() for row in section}
    asked = {wish.wish for wish in wishes() if not wish.rows}
    assert sorted(text for text in rows | asked if ("", text) not in FRENCH.messages) == []


def test_the_catalogue_says_nothing_else() -> None:
    said = {text for path in MAKERS for text in strings(path)}
    said |= {text for path in (HOME / "grammar/core").glob("*.py") for text in strings(path)}
    said |= {row.says for section in examples().values() for row in section} | {wish.wish for wish in wishes()}
    said |= set(BEING.values())
    assert sorted(id for _, id in catalogue(FOLDER / "sheets", "fr")[0] if id not in said) == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_broken_sheet_is_told_in_french(path: Path) -> None:
    for found in mistakes(path):
        assert found.said is not None, found.title
        assert all(known(each, FRENCH) for each in found.said), found.said
        assert finding_said(found, wording_of("fr")).title != found.title


@pytest.mark.parametrize(("game", "modifier"), [("tarn-gates", "first hit wins"), ("kiln-row", "change tasks")])
def test_why_a_modifier_does_not_fit_is_told_in_french_to_the_end(game: str, modifier: str) -> None:
    use = next(Use(each) for each in library_modifiers() if each.name == modifier)
    outcome = apply(library_game(game), use, library.kit_names())
    assert outcome.value is None
    told = [finding_said(each, wording_of("fr")).title for each in outcome.findings]
    assert told and not set(" ".join(told).lower().split()) & ENGLISH_WORDS, told


def test_lines_of_a_sheet_stand_as_they_are() -> None:
    """French sets a mark apart and elides; no line that is to be written may change by that."""
    line = "de ale base: the ball of a ox goes le on; what now?"
    found = mistake("G-sense", Capital(listed([line, line])), nowhere(), write(line))
    told = finding_said(found, wording_of("fr"))
    assert told.title.lower() == f"{line} et {line}"
    assert told.hint == f"Écrire\u00a0: {line}"
    unsaid = mistake("G-sense", quoting("nobody says this"), nowhere())
    assert finding_said(unsaid, wording_of("fr")).title == explanations("fr")["G-sense"].means


def test_a_terminal_in_french_tells_mistakes_in_french(tmp_path: Path) -> None:
    sheet = (library.game_paths()[0]).read_text(encoding="utf-8").replace("\nplay\n", "\nplay\n  plaiers rool a bal\n")
    (tmp_path / "broken.rules").write_text(sheet, encoding="utf-8")
    told = run("check", tmp_path / "broken.rules", "--language", "fr", code=2)
    assert "faute" in told.stderr and "Cette ligne" in told.stderr
    said = re.sub(r"`[^`]*`|\"[^\"]*\"|│[^│]*│ *\^*|\s+", " ", told.stderr)
    assert not set(said.lower().split()) & ENGLISH_WORDS, said
