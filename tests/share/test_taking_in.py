"""A pack onto the shelf: told before, all or nothing, nothing renamed or replaced unasked, undone on request."""

from __future__ import annotations

from pathlib import Path

import pytest
from shared_games import (
    FELL_GATE,
    KICK_ON,
    KICKED_GATE,
    TOLL_BRIDGE,
    everything,
    game_item,
    kicked_gate,
    modifier_item,
    pack_of,
)
from shelves import contents, files, given, index_is_true, opened, pack, refusal

from compose.share.pack.taking_in import Arrival, Choice, State, arrivals, take_in
from compose.share.shelf.files import Note

WIDER = FELL_GATE.replace("14 m by 7 m", "14 m by 8 m")
LONGER = FELL_GATE.replace("14 m", "15 m")
DAY = "2025-11-25"


def states(folder: Path, data: bytes) -> dict[str, State]:
    with opened(folder) as shelf:
        return {each.item.name: each.state for each in given(arrivals(shelf, pack(data).items))}


def test_everything_is_new_on_an_empty_shelf(tmp_path: Path) -> None:
    data = pack_of(*everything())
    assert set(states(tmp_path, data).values()) == {State.NEW}
    with opened(tmp_path) as shelf:
        taken = given(take_in(shelf, pack(data), {}, None, DAY))
        assert [name for _, name in taken.kept] == [each.name for each in pack(data).items]
        stored = given(shelf.stored())
        assert {each.item for each in stored} == set(everything())
        assert {each.origin.words() for each in stored if each.origin} == {
            "from Tarn Head school (invented) in the pack Tarn Valley games, taken in on 2025-11-25"
        }
    assert set(states(tmp_path, data).values()) == {State.SAME}


def test_taking_in_twice_changes_nothing(tmp_path: Path) -> None:
    data = pack_of(*everything())
    with opened(tmp_path) as shelf:
        given(take_in(shelf, pack(data), {}, None, DAY))
        before = files(tmp_path)
        again = given(take_in(shelf, pack(data), {}, None, "2025-11-26"))
        assert again.change is None and {name for _, name in again.kept} == {""}
        assert files(tmp_path) == before


def test_only_other_notes_are_no_change(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item(FELL_GATE.replace("note: An", "note: Played in May. An"))))
    assert states(tmp_path, pack_of(game_item())) == {"Fell Gate": State.SAME}


def test_newer_older_and_clashing_are_told_apart_by_their_history(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
    assert states(tmp_path, pack_of(game_item(WIDER, (game_item().content,)))) == {"Fell Gate": State.NEWER}
    assert states(tmp_path, pack_of(game_item(WIDER))) == {"Fell Gate": State.CLASHING}
    with opened(tmp_path) as shelf:
        given(shelf.replace(game_item(LONGER)))
    assert states(tmp_path, pack_of(game_item())) == {"Fell Gate": State.OLDER}
    assert states(tmp_path, pack_of(game_item(WIDER, (game_item().content,)))) == {"Fell Gate": State.CLASHING}


def test_without_a_choice_nothing_at_all_is_taken(tmp_path: Path) -> None:
    data = pack_of(game_item(WIDER), game_item(TOLL_BRIDGE))
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        before = files(tmp_path)
        code, title = refusal(take_in(shelf, pack(data), {}, None, DAY))
        assert code == "S-choose" and "Fell Gate" in title and "Toll Bridge" not in title
        assert files(tmp_path) == before


def test_ours_stays_and_the_rest_comes(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(take_in(shelf, pack(pack_of(game_item(WIDER), game_item(TOLL_BRIDGE))), {}, Choice.OURS, DAY))
        assert contents(shelf) == {
            "Fell Gate": game_item().content,
            "Toll Bridge": game_item(TOLL_BRIDGE).content,
        }


def test_theirs_takes_the_place_and_ours_stays_in_the_past(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(shelf.note("Fell Gate", Note(DAY, "Loved by all.")))
        choices = {game_item().key: Choice.THEIRS}
        given(take_in(shelf, pack(pack_of(game_item(WIDER, ("1" * 64,)))), choices, None, DAY))
        kept = given(shelf.named("Fell Gate"))
        assert kept.item.content == game_item(WIDER).content
        assert kept.item.history == (game_item().content, "1" * 64)
        assert [note.text for note in kept.notes] == ["Loved by all."]
        assert given(shelf.past(game_item().content)).decode() == FELL_GATE


def test_both_are_kept_and_it_is_said_under_which_name(tmp_path: Path) -> None:
    data = pack_of(game_item(WIDER))
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        taken = given(take_in(shelf, pack(data), {}, Choice.BOTH, DAY))
        assert [name for _, name in taken.kept] == ["Fell Gate 2"]
        second = given(shelf.named("Fell Gate 2"))
        assert second.item.text.count("game Fell Gate 2\n") == 1
        assert second.item.history == (game_item(WIDER).content,)
        assert contents(shelf)["Fell Gate"] == game_item().content
        assert given(take_in(shelf, pack(data), {}, Choice.BOTH, DAY)).kept[0][1] == "Fell Gate 3"


def test_taking_in_is_undone_as_one(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        before = files(tmp_path)
        data = pack_of(game_item(WIDER), game_item(TOLL_BRIDGE), modifier_item())
        given(take_in(shelf, pack(data), {}, Choice.THEIRS, DAY))
        assert len(contents(shelf)) == 3
        assert given(shelf.undo()).label == "undoing taking in Tarn Valley games"
        assert files(tmp_path) == before
        assert index_is_true(shelf)


def test_a_remix_of_the_name_of_our_game_is_a_clash(tmp_path: Path) -> None:
    remix = kicked_gate(KICKED_GATE.replace("Kicked", "").replace('"Fell Gate"', '"Toll Bridge"'))
    assert remix.path == "remixes/fell-gate.rules"
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        assert given(arrivals(shelf, pack(pack_of(remix)).items))[0].state is State.CLASHING
        given(take_in(shelf, pack(pack_of(remix)), {}, Choice.THEIRS, DAY))
        assert given(shelf.named("Fell Gate")).path == "remixes/fell-gate.rules"
        assert not (tmp_path / "games/fell-gate.rules").exists()


def test_a_modifier_and_a_game_of_one_name_do_not_clash(tmp_path: Path) -> None:
    modifier = modifier_item(KICK_ON.replace("modifier kick on", "modifier Fell Gate"))
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(take_in(shelf, pack(pack_of(modifier)), {}, None, DAY))
        assert len(given(shelf.stored())) == 2


def test_a_file_that_lies_in_the_way_is_not_written_over(tmp_path: Path) -> None:
    (tmp_path / "games").mkdir()
    (tmp_path / "games/fell-gate.rules").write_text("a draft of mine")
    with opened(tmp_path) as shelf:
        data = pack_of(game_item(), game_item(TOLL_BRIDGE))
        assert refusal(take_in(shelf, pack(data), {}, None, DAY))[0] == "S-taken"
        assert files(tmp_path) == {"games/fell-gate.rules": b"a draft of mine"}


@pytest.mark.parametrize("state", list(State))
def test_every_state_has_a_sentence(state: State) -> None:
    words = Arrival(game_item(), state).words()
    assert words.startswith("Fell Gate ") and words.endswith(".")
