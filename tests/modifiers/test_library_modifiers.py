"""The library's modifiers: enough of them, whole, tidy, and each with every game."""

from __future__ import annotations

import pytest
from mixtures import granted_sheet, library_games, mixed, modifiers_by_name, use

import library
from compose.net.from_game import net_of
from grammar.format import format_plain
from grammar.parse import parse_bytes

ASKED_FOR = {
    "add or remove balls": ("add balls", "fewer balls"),
    "special ball": ("special ball",),
    "swap skill": (
        "overarm instead",
        "underarm instead",
        "roll instead",
        "kick instead",
        "strike instead",
        "pass instead",
    ),
    "weaker hand": ("weaker hand",),
    "other targets": (
        "bigger targets",
        "smaller targets",
        "nearer targets",
        "farther targets",
        "moving targets",
        "aiming line",
    ),
    "more or fewer targets": ("more targets", "fewer targets"),
    "ordered targets": ("targets in order",),
    "zones": ("wider zones", "narrower zones", "deeper strips", "shallower strips"),
    "no-guard strip": ("no-guard strip",),
    "smaller court": ("shorter court", "narrower court"),
    "uneven sides": ("uneven sides",),
    "extra roles": ("guards", "fetchers", "freers"),
    "out to a task at the side": ("out to a task",),
    "return on catch": ("catch brings back", "catch brings back the last", "catch brings back all"),
    "swap places instead of out": ("swap with who waits", "hit changes sides"),
    "nobody is ever out": ("nobody is out",),
    "limits": ("hold limit", "time limit", "time limit on points", "time limit on players"),
    "pass before aiming": ("pass first",),
    "points": ("points for targets", "points for hits", "first to points", "best of rounds"),
    "sides swap": ("change tasks", "change ends"),
    "two games on one hall": ("two games side by side",),
    "seated or walking play": ("seated play", "walking play"),
    "sound or light cue": ("sound cue", "light cue"),
    "safe zone": ("safe zone", "safe islands"),
    "softer ball": ("softer balls",),
    "below the shoulder": ("below the shoulder",),
    "room for so many": ("few wait",),
    "a round at once": ("first hit wins", "clear and start again"),
    "targets change owner": ("captured targets",),
    "a miss costs": ("a miss costs",),
    "fewer to the end": ("few left lose",),
    "a court by its measures": ("court of this size",),
    "a bounce before the target": ("bounce first",),
    "what the cupboard has": ("cones as pins", "mats as cover"),
    "more than two sides": ("more sides",),
    "together against the clock": ("beat the class record",),
    "harder to catch": ("one-hand catch",),
    "one who counts for all": ("captain",),
}


def test_there_are_enough_and_all_that_was_asked_for() -> None:
    known = modifiers_by_name()
    assert len(known) >= 40
    missing = {what: name for what, names in ASKED_FOR.items() for name in names if name not in known}
    assert not missing


@pytest.mark.parametrize("path", library.modifier_paths(), ids=lambda path: path.stem)
def test_each_is_whole_and_tidy(path: object) -> None:
    from pathlib import Path

    assert isinstance(path, Path)
    text = path.read_text(encoding="utf-8")
    rules = parse_bytes(text.encode(), path.name).value
    assert rules is not None and len(rules.modifiers) == 1
    sheet = rules.modifiers[0]
    assert format_plain(sheet) == text
    modifier = modifiers_by_name()[sheet.title.lower()]
    assert path.stem == modifier.name.replace(" ", "-")
    assert modifier.about.endswith((".", ")."))
    assert modifier.credit == ("Tarn Valley schools (invented)",)
    assert modifier.licence == "CC-BY-4.0"
    assert all(name in modifiers_by_name() for name in modifier.clashes)


def test_every_heading_has_modifiers() -> None:
    assert {each.step for each in modifiers_by_name().values()} == {"space", "task", "equipment", "people"}


def test_factors_say_that_they_are_assumed() -> None:
    for modifier in modifiers_by_name().values():
        words = [inner.sentence.words() for line in modifier.changes for inner in line.block]
        if any(said.startswith(("attempts succeed", "attempts take")) for said in words):
            assert "(assumption" in modifier.about, modifier.name


@pytest.mark.sample(2)
@pytest.mark.parametrize("stem", library_games(), ids=str)
def test_every_modifier_with_every_game_compiles_or_says_why_not(stem: str) -> None:
    """With the least players of each range and with the middle number; reasons are one sentence."""
    game = library_games()[stem]
    for name in modifiers_by_name():
        outcome = mixed(game, use(name))
        if outcome.value is None:
            assert len(outcome.findings) >= 1
            title = outcome.findings[0].title
            assert title.startswith(f"`{name}` does not fit: ") and title.endswith("."), title
            assert ". " not in title.removesuffix("."), title
            continue
        remixed = outcome.value.game
        for players in ({side.name: side.least for side in remixed.sides}, None):
            net = net_of(remixed, granted_sheet(), players)
            assert net.value is not None, (name, [each.title for each in net.findings])


@pytest.mark.parametrize("which", ["least", "most"])
def test_ends_of_every_range_are_possible_values(which: str) -> None:
    """Values are looked at before any game is: one game is enough for all."""
    game = library_games()["lantern-row"]
    for modifier in modifiers_by_name().values():
        values = {each.parameter: getattr(each, which).value for each in modifier.takes}
        outcome = mixed(game, use(modifier.name, **values))
        assert not any(each.code == "M-value" for each in outcome.findings)
