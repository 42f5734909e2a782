"""The own shelf: what is put there stays there, plain files are the truth, everything can be undone."""

from __future__ import annotations

from pathlib import Path

import pytest
from shared_games import FELL_GATE, TOLL_BRIDGE, everything, game_item, kicked_gate, modifier_item
from shelves import contents, files, given, index_is_true, opened, refusal

from compose.share.shelf.files import Note, Origin
from compose.share.shelf.usual_folder import SETTING, usual_folder

ORIGIN = Origin("Fellgate school (invented)", "Winter games", "0" * 64, "2025-11-25")


def test_what_is_put_on_a_shelf_is_there_when_it_is_opened_again(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        for item in everything():
            given(shelf.put(item, ORIGIN))
    with opened(tmp_path) as shelf:
        stored = {each.item.name: each for each in given(shelf.stored())}
        assert {each.item for each in stored.values()} == set(everything())
        assert stored["Fell Gate"].origin == ORIGIN
        assert stored["Fell Gate Kicked"].item.lineage == kicked_gate().lineage
        assert index_is_true(shelf)
    assert (tmp_path / "games/fell-gate.rules").read_text() == FELL_GATE


def test_the_index_can_be_thrown_away(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        for item in everything():
            given(shelf.put(item, ORIGIN))
        given(shelf.note("fell gate", Note("2025-11-25", "Went well with 5a.")))
        before = given(shelf.stored())
    for leftover in tmp_path.glob("shelf.sqlite*"):
        leftover.unlink()
    with opened(tmp_path) as shelf:
        assert given(shelf.stored()) == before
        assert given(shelf.rebuild()) == 5
        assert given(shelf.stored()) == before and index_is_true(shelf)


def test_a_damaged_index_is_made_again(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
    (tmp_path / "shelf.sqlite").write_bytes(b"not an index at all" * 500)
    with opened(tmp_path) as shelf:
        assert contents(shelf) == {"Fell Gate": game_item().content}


def test_what_is_written_by_hand_is_seen(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        sheet = tmp_path / "games/fell-gate.rules"
        sheet.write_text(FELL_GATE.replace("14 m", "15 m"))
        (tmp_path / "games/my bridge.rules").write_text(TOLL_BRIDGE)
        (tmp_path / "games/draft.rules").write_text("game Draft\nplay\n  players juggle\n")
        edited = game_item(FELL_GATE.replace("14 m", "15 m"))
        assert contents(shelf) == {"Fell Gate": edited.content, "Toll Bridge": game_item(TOLL_BRIDGE).content}
        assert given(shelf.named("Fell Gate")).item.history == (game_item().content,)
        [trouble] = shelf.troubles()
        assert trouble.title.startswith("games/draft.rules, line 3:")
        sheet.unlink()
        assert contents(shelf) == {"Toll Bridge": game_item(TOLL_BRIDGE).content}
        assert index_is_true(shelf)


def test_another_game_of_the_same_name_is_not_put_over_the_first(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        given(shelf.put(game_item()))
        before = files(tmp_path)
        code, title = refusal(shelf.put(game_item(FELL_GATE.replace("14 m", "15 m"))))
        assert (code, title) == ("S-taken", "The shelf has Fell Gate already, and it is not the same.")
        (tmp_path / "games/toll-bridge.rules").write_text("a draft")
        assert refusal(shelf.put(game_item(TOLL_BRIDGE)))[0] == "S-taken"
        (tmp_path / "games/toll-bridge.rules").unlink()
        assert files(tmp_path) == before


def test_a_newer_state_keeps_the_older_for_merging(tmp_path: Path) -> None:
    newer = game_item(FELL_GATE.replace("14 m", "15 m"))
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item(), ORIGIN))
        given(shelf.replace(newer))
        kept = given(shelf.named("Fell Gate"))
        assert (kept.item.content, kept.item.history) == (newer.content, (game_item().content,))
        assert kept.origin == ORIGIN
        assert given(shelf.past(game_item().content)).decode() == FELL_GATE
        assert given(shelf.past("0" * 64)) == b""


def test_changes_are_undone_one_by_one(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        states = [files(tmp_path)]
        given(shelf.put(modifier_item()))
        states.append(files(tmp_path))
        given(shelf.replace(game_item(FELL_GATE.replace("14 m", "15 m"))))
        states.append(files(tmp_path))
        given(shelf.take_off("kick on"))
        assert given(shelf.undo()).label == "undoing taking kick on off the shelf"
        assert files(tmp_path) == states[2]
        given(shelf.undo())
        assert files(tmp_path) == states[1]
        given(shelf.undo())
        assert files(tmp_path) == states[0]
        given(shelf.undo())
        assert files(tmp_path) == {} and contents(shelf) == {}
        assert refusal(shelf.undo()) == ("S-undo", "There is nothing to undo.")


def test_what_was_changed_since_is_not_undone(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        (tmp_path / "games/fell-gate.rules").write_text(FELL_GATE.replace("14 m", "15 m"))
        before = files(tmp_path)
        code, title = refusal(shelf.undo())
        assert code == "S-undo" and title.startswith("games/fell-gate.rules was changed since")
        assert files(tmp_path) == before


def test_a_name_that_is_not_there_gets_the_nearest(tmp_path: Path) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        outcome = shelf.named("Fel Gat")
        assert outcome.findings[0].hint == "Did you mean `Fell Gate`?"


@pytest.mark.parametrize("text", ["", "   ", "two\nlines", "x" * 1001, "bell\x07"])
def test_a_note_is_one_line_that_can_be_read(tmp_path: Path, text: str) -> None:
    with opened(tmp_path) as shelf:
        given(shelf.put(game_item()))
        assert refusal(shelf.note("Fell Gate", Note("2025-11-25", text)))[0] == "S-note"


def test_links_on_the_shelf_are_not_followed(tmp_path: Path) -> None:
    secret = tmp_path / "secret.rules"
    secret.write_text(FELL_GATE)
    folder = tmp_path / "shelf"
    (folder / "games").mkdir(parents=True)
    (folder / "games/fell-gate.rules").symlink_to(secret)
    with opened(folder) as shelf:
        assert contents(shelf) == {}
        assert [each.code for each in shelf.troubles()] == ["S-link"]


def test_the_teacher_may_name_the_folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv(SETTING, str(tmp_path / "mine"))
    assert usual_folder() == tmp_path / "mine"
    monkeypatch.delenv(SETTING)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert usual_folder().name == "shelf" and "ruleweave" in str(usual_folder())
