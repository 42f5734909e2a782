"""Everything that the page says can be said in French, and the catalogue says nothing else."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
from babel.messages.pofile import read_po
from desks import browser, desk_in

import compose.page
import library
from compose.answer.staged import staged
from compose.forecast.assumptions import assumptions
from compose.page.answers.at_hand import game_of
from compose.page.answers.band import NORM
from compose.page.wording import FOLDER, page_wording
from compose.staging.staging import stage
from compose.telling.wording import wording_of

PAGE = Path(compose.page.__file__).parent
FIELD = re.compile(r"\{(\w*)[^}]*\}")


def said() -> set[str]:
    """Every pattern that a template or a file of the page says."""
    found = set()
    for path in PAGE.rglob("*.html"):
        text = path.read_text(encoding="utf-8")
        for pattern in re.findall(r"""\bsay\(\s*(?:"([^"]*)"|'([^']*)')""", text):
            found.add(pattern[0] or pattern[1])
    for path in PAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name | ast.Attribute):
                name = node.func.id if isinstance(node.func, ast.Name) else node.func.attr
                if name == "say" and node.args and isinstance(node.args[0], ast.Constant):
                    found.add(str(node.args[0].value))
    return found


def counted() -> set[str]:
    """The singulars that are counted."""
    text = "".join(path.read_text(encoding="utf-8") for path in (*PAGE.rglob("*.py"), *PAGE.rglob("*.html")))
    return set(re.findall(r'counted\([^"]*?"(\w[^"]*)", "', text))


def catalogue() -> dict[str, str]:
    with (FOLDER / "fr.po").open("rb") as file:
        read = read_po(file, locale="fr")
    return {(each.id if isinstance(each.id, str) else each.id[0]): each.string for each in read if each.id}


def test_everything_is_translated() -> None:
    french = page_wording("fr")
    assert not sorted(pattern for pattern in said() if ("", pattern) not in french.messages)
    assert not sorted(one for one in counted() if one not in french.several)


def test_nothing_else_is_in_the_catalogue() -> None:
    with (FOLDER / "fr.po").open("rb") as file:
        read = [each for each in read_po(file, locale="fr") if each.id and each.context not in ("finding", "norm")]
    own = {each.id if isinstance(each.id, str) else each.id[0] for each in read}
    assert not sorted(own - said() - counted())


def test_whatever_a_forecast_hangs_on_is_translated() -> None:
    """Over the library: every norm with a band that its forecasts read."""
    read = set()
    for path in library.game_paths():
        game = game_of((path.read_text(encoding="utf-8"),)).value
        assert game is not None
        made = staged(stage(game, library.norms(), library.kit_names()), library.granted_sheet()).value
        assert made is not None
        known = assumptions(made.net, library.norms(), library.kit_names())
        read |= {each.about for each in known if each.low < each.high}
    assert len(read) > 5
    assert not sorted(about for about in read if page_wording("fr").known(NORM, about) is None)


def test_translations_keep_their_fields() -> None:
    for pattern, french in catalogue().items():
        if isinstance(french, str):
            assert set(FIELD.findall(pattern)) == set(FIELD.findall(french)), pattern


@pytest.mark.parametrize(
    "path", ["/class", "/games?whole=yes", "/remix/lantern-row?whole=yes", "/write/new", "/share", "/lesson"]
)
def test_a_french_page_has_no_english_sentence_of_the_page(tmp_path: Path, path: str) -> None:
    text = browser(desk_in(tmp_path), **{"accept-language": "fr-FR,fr;q=0.9"}).get(path).text
    assert '<html lang="fr">' in text
    long = [each for each in said() if len(each) > 14 and "{" not in each and page_wording("fr").say(each) != each]
    assert not [each for each in long if each in text]


def test_a_new_sheet_is_begun_in_french_and_can_be_read(tmp_path: Path) -> None:
    text = browser(desk_in(tmp_path), **{"accept-language": "fr"}).get("/write/new").text
    assert "game Mon jeu" in text and "note: Deux" in text
    assert page_wording("fr").say("It can be read.") in text


def test_the_catalogue_of_all_outputs_still_holds() -> None:
    assert page_wording("fr").say("Take care") == wording_of("fr").say("Take care")
