"""That nobody waits is said only where everybody plays all the time."""

from __future__ import annotations

from pathlib import Path

import pytest

import library
from compose.page.answers.remixing import odds
from compose.page.answers.values import Asked

GROUP = "class My class\n  class of 24\n  ages 9 to 10\n  lesson of 40 min\n"


@pytest.mark.sample(8)
@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_nobody_waits_beside_nobody_who_does_not_play(path: Path) -> None:
    text = " ".join(odds(Asked((path.read_text(encoding="utf-8"),), (), GROUP, "en")).lines)
    assert not ("Nobody waits" in text and "not playing" in text), text


@pytest.mark.parametrize(("slug", "said"), [("lantern-row", True), ("fell-couriers", False)])
def test_it_is_still_said_where_it_is_so(slug: str, said: bool) -> None:
    path = next(path for path in library.game_paths() if path.stem == slug)
    text = " ".join(odds(Asked((path.read_text(encoding="utf-8"),), (), GROUP, "en")).lines)
    assert ("Nobody waits." in text) is said
