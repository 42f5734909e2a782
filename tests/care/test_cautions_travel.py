"""What to mind goes with the game: into the sheet of the remix, and from there onto every output."""

from __future__ import annotations

import pytest
from scenes import library_games, modifier_named

import library
from compose.draw.card.of_remix import card_of_remix
from compose.draw.card.text import text_of
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from compose.staging.cautions import Caution
from compose.staging.resolved import resolved
from compose.staging.staging import stage
from grammar.format import format_game
from grammar.parse import parse


def made(game: str, name: str) -> Remix:
    modifier = modifier_named(name)
    values = {each.parameter: each.usually for each in modifier.takes}
    outcome = remix(library_games()[game], [Use(modifier, values)], library.kit_names())
    assert outcome.value is not None
    return outcome.value


@pytest.mark.parametrize(
    ("game", "name"),
    [("lantern-row", "kick instead"), ("lantern-row", "two games side by side"), ("heron-and-pike", "mats as cover")],
)
def test_caution_of_a_modifier_is_in_the_sheet_and_on_what_is_made_of_it(game: str, name: str) -> None:
    found, (caution,) = made(game, name), modifier_named(name).cautions
    written = parse(format_game(found.game.sheet)).value
    assert written is not None and caution in [each.sentence.text for each in written.games[0].lines("care")]  # type: ignore[attr-defined]
    assert caution in resolved(found.game).told.care
    staging = stage(found.game, library.norms(), library.kit_names())
    assert Caution(caution) in staging.cautions
    assert " ".join(caution.split()) in " ".join(text_of(card_of_remix(found, staging)).split())


def test_benches_that_are_stood_on_bring_their_caution_along() -> None:
    staging = stage(library_games()["ferry-bench"], library.norms(), library.kit_names())
    bench = library.kit_names()["bench"].caution
    assert [each.things for each in staging.cautions if each.text == bench] == [("gangways", "benches")]
