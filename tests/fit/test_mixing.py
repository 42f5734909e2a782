"""The table of games and modifiers."""

from __future__ import annotations

import pytest
from class_sheets import BECK, sheet_of
from playing_games import every_modifier, granted_rules, library_games, looker, modifier_named

import library
from compose.answer.answer import to_mend
from compose.check.space import always
from compose.fit.fit import fit
from compose.fit.mixing import (
    CELL_STATES,
    FINDS,
    FITS,
    REFUSED,
    UNSURE,
    VERDICTS,
    Cell,
    cell,
    fewest_players,
    mixing_table,
)
from compose.fit.suggest.look import Looker
from compose.modifiers.apply import apply
from compose.modifiers.modifier import Use


def one(stem: str, name: str, states: int = CELL_STATES, only_sheet: bool = False) -> Cell:
    return cell(library_games()[stem], modifier_named(name), looker(fewest_players, states), only_sheet)


@pytest.mark.parametrize(
    ("stem", "name", "verdict", "why"),
    [
        ("lantern-row", "add balls", FITS, ""),
        ("lantern-row", "overarm instead", FITS, "It changes nothing here."),
        ("homestead", "draw at once", REFUSED, "`draw at once` does not fit: Homestead has only one side."),
        ("cairn-keepers", "kick instead", REFUSED, "no ball fit for kick"),
        ("heron-and-pike", "nobody is out", FINDS, "never take"),
        ("sledge-road", "first to points", FITS, ""),  # who cannot win a half may win over both
    ],
)
def test_each_verdict(stem: str, name: str, verdict: str, why: str) -> None:
    found = one(stem, name)
    assert found.verdict == verdict and why in found.why
    assert bool(found.codes) is (verdict == FINDS)


def test_too_large_a_game_is_not_called_fitting() -> None:
    found = one("heron-and-pike", "fetchers", states=500)
    assert found.verdict == UNSURE and "too large" in found.why
    assert one("lantern-row", "add balls", only_sheet=True).verdict == UNSURE


def test_whole_row_has_a_verdict_and_one_sentence_each() -> None:
    steps: list[tuple[int, int]] = []
    games = [library_games()["ferry-bench"], library_games()["toll-stone"]]
    eyes = looker(fewest_players, CELL_STATES)
    cells = list(mixing_table(games, every_modifier(), eyes, always, lambda done, of: steps.append((done, of))))
    assert len(cells) == 2 * len(every_modifier())
    assert steps[-1] == (len(cells), len(cells))
    for each in cells:
        assert each.verdict in VERDICTS
        assert (each.verdict == FITS) or (each.why.endswith(".") and "\n" not in each.why)
        assert each.verdict != REFUSED or each.lines == 0
    assert eyes.checked < len(cells)


def test_table_is_stopped_when_told_to() -> None:
    cells = list(
        mixing_table(
            [library_games()["lantern-row"]], every_modifier(), looker(fewest_players), lambda what, done, of: False
        )
    )
    assert {each.verdict for each in cells} <= {REFUSED, UNSURE, FITS}
    assert all(each.why for each in cells if each.verdict == FITS)


@pytest.mark.parametrize("stem", ["lantern-row", "toll-stone"])
def test_for_a_class_a_pair_fits_only_where_the_class_has_nothing_to_mend(stem: str) -> None:
    """Beside the fit of each remix to the class, made by itself."""
    group, game, told = sheet_of(BECK), library_games()[stem], set[str]()
    eyes = Looker(granted_rules(), library.kit_names(), library.norms(), fewest_players, CELL_STATES, group)
    for name in ("add balls", "longer court", "shorter court", "more targets", "two games side by side"):
        found = cell(game, modifier_named(name), eyes)
        made = apply(game, Use(modifier_named(name)), library.kit_names()).value
        if made is not None and made[1] and found.verdict != REFUSED:
            of_class = to_mend(fit(made[0], group, library.norms(), library.kit_names()).findings)
            assert {each.code for each in of_class} <= set(found.codes), name
            assert not of_class or found.verdict == FINDS, name
            told.add(found.verdict)
    assert FINDS in told
