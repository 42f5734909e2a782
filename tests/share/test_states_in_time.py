"""States of one thing in their order: which is the newer, what both came from, and that no state of ours is lost."""

from __future__ import annotations

from pathlib import Path

import pytest
from shared_games import FELL_GATE, game_item, pack_of
from shelves import files, given, opened, pack, refusal

from compose.modifiers.content_hash import content_hash
from compose.share.merge.merge import common_base
from compose.share.pack.item import Item
from compose.share.pack.taking_in import Choice, State, arrivals, take_in
from compose.share.shelf.shelf import Shelf
from compose.share.together.folder import give

DAY = "2025-11-25"
TEXTS = tuple(FELL_GATE.replace("14 m", f"{length} m") for length in (14, 15, 16, 17, 18))
HASHES = tuple(game_item(text).content for text in TEXTS)


def at(*steps: int) -> Item:
    """Fell Gate after these states, the last being the one it is in; a state may come back."""
    return game_item(TEXTS[steps[-1]], tuple(HASHES[step] for step in steps[:-1]))


def put_through(shelf: Shelf, *steps: int) -> Item:
    """Fell Gate on a shelf that took it through these states."""
    given(shelf.put(at(steps[0])))
    for step in steps[1:]:
        given(shelf.replace(at(step)))
    return given(shelf.named("Fell Gate")).item


CASES = [
    ((0,), (0,), State.SAME),
    ((0,), (0, 1), State.NEWER),
    ((0, 1), (0, 1, 2, 3), State.NEWER),
    ((0, 1), (0,), State.OLDER),
    ((0, 1, 2, 3), (0, 1), State.OLDER),
    ((0, 1), (2,), State.CLASHING),
    ((0, 1, 2), (0, 1, 3), State.CLASHING),
    ((1, 0), (0, 1), State.CLASHING),  # each was once what the other is now
    ((0, 1, 0), (0, 1), State.CLASHING),
    ((0, 1), (1, 0), State.CLASHING),
    ((0, 1, 2), (0, 2, 1), State.CLASHING),
]


@pytest.mark.parametrize(("ours", "theirs", "state"), CASES)
def test_only_what_came_of_ours_and_never_was_ours_is_newer(
    tmp_path: Path, ours: tuple[int, ...], theirs: tuple[int, ...], state: State
) -> None:
    with opened(tmp_path) as shelf:
        put_through(shelf, *ours)
        assert [each.state for each in given(arrivals(shelf, [at(*theirs)]))] == [state]
        if state is State.OLDER:
            before = files(tmp_path)
            given(take_in(shelf, pack(pack_of(at(*theirs))), {}, Choice.THEIRS, DAY))
            assert files(tmp_path) == before


@pytest.mark.parametrize(("there", "item", "state"), CASES)
def test_only_what_is_newer_takes_the_place_of_what_the_schools_share(
    tmp_path: Path, there: tuple[int, ...], item: tuple[int, ...], state: State
) -> None:
    with opened(tmp_path) as shelf:
        put_through(shelf, *there)
    before = files(tmp_path)
    if state in (State.SAME, State.NEWER):
        assert [each.state for each in given(give(tmp_path, [at(*item)]))] == [state]
    else:
        code, title = refusal(give(tmp_path, [at(*item)]))
        assert code == "C-clash" and ("older than theirs" in title) == (state is State.OLDER)
    assert (files(tmp_path) == before) == (state is not State.NEWER)


@pytest.mark.parametrize(
    ("ours", "theirs", "base"),
    [((0, 1, 2), (0, 1, 3), 1), ((0, 1, 2), (0, 3), 0), ((0, 1, 2, 3), (0, 1, 2, 4), 2), ((0, 1), (0, 1, 2), 1)],
)
def test_two_are_merged_from_the_last_state_that_both_had(
    tmp_path: Path, ours: tuple[int, ...], theirs: tuple[int, ...], base: int
) -> None:
    with opened(tmp_path) as shelf:
        mine = put_through(shelf, *ours)
        assert content_hash(given(common_base(shelf, mine, at(*theirs)))) == HASHES[base]


@pytest.mark.parametrize("comes", ["from a pack", "from ourselves"])
def test_what_we_edited_by_hand_is_kept_when_another_takes_its_place(tmp_path: Path, comes: str) -> None:
    """The file alone holds such an edit: it must be there to merge from afterwards."""
    with opened(tmp_path) as shelf:
        put_through(shelf, 0)
        (tmp_path / "games/fell-gate.rules").write_text(TEXTS[1])
        if comes == "from a pack":
            given(take_in(shelf, pack(pack_of(at(0, 2))), {}, Choice.THEIRS, DAY))
        else:
            given(shelf.replace(at(2)))
        kept = given(shelf.named("Fell Gate")).item
        assert kept.content == HASHES[2] and set(kept.history) == {HASHES[0], HASHES[1]}
        for step in (0, 1, 2):
            assert given(shelf.past(HASHES[step])).decode() == TEXTS[step]
