"""The common shelf: given to and taken from like a stranger's, in a plain folder or a git repository."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest
from shared_games import FELL_GATE, TOLL_BRIDGE, everything, game_item, kicked_gate, modifier_item
from shelves import contents, files, given, opened, refusal
from site_shelf import keep

from compose.share.pack.item import Item
from compose.share.pack.taking_in import State, take_in
from compose.share.shelf.files import Note
from compose.share.together.folder import common_shelf, give, packed_from
from compose.share.together.git import commit, in_git

WIDER = FELL_GATE.replace("14 m by 7 m", "14 m by 8 m")
DAY = "2025-11-25"


def names(folder: Path) -> list[str]:
    return [item.name for item in given(common_shelf(folder)).items]


def given_states(folder: Path, *items: Item) -> dict[str, State]:
    return {each.item.name: each.state for each in given(give(folder, items))}


def test_what_is_given_can_be_taken_elsewhere(tmp_path: Path) -> None:
    common, there = tmp_path / "common", tmp_path / "there"
    common.mkdir()
    assert set(given_states(common, *everything()).values()) == {State.NEW}
    with opened(there) as shelf:
        pack = given(packed_from(common, ()))
        given(take_in(shelf, pack, {}, None, DAY))
        assert contents(shelf) == {item.name: item.content for item in everything()}
    assert [item.name for item in given(packed_from(common, ("toll bridge",))).items] == ["Toll Bridge"]


def test_notes_rounds_and_origins_stay_at_home(tmp_path: Path) -> None:
    common = tmp_path / "common"
    common.mkdir()
    with opened(tmp_path / "own") as shelf:
        given(shelf.put(game_item()))
        stored = given(shelf.note("Fell Gate", Note(DAY, "Zebrafish were seen.")))
    given(give(common, [stored.item]))
    assert not any(b"Zebrafish" in data for data in files(common).values())
    assert sorted(files(common)) == [
        "games/fell-gate.json",
        "games/fell-gate.rules",
        f"past/{game_item().content}.rules",
    ]


def test_a_newer_state_takes_the_place_of_the_older_and_a_clash_does_not(tmp_path: Path) -> None:
    given_states(tmp_path, game_item())
    assert given_states(tmp_path, game_item()) == {"Fell Gate": State.SAME}
    newer = game_item(WIDER, (game_item().content,))
    assert given_states(tmp_path, newer) == {"Fell Gate": State.NEWER}
    assert given(common_shelf(tmp_path)).items[0].history == (game_item().content,)
    before = files(tmp_path)
    longer = game_item(FELL_GATE.replace("14 m", "15 m"), (game_item().content,))
    for wrong, words in ((game_item(), "older than theirs"), (longer, "merge the two first")):
        code, title = refusal(give(tmp_path, [game_item(TOLL_BRIDGE), wrong]))
        assert code == "C-clash" and words in title and "Toll" not in title
    assert files(tmp_path) == before


def test_a_file_called_otherwise_is_written_in_its_own_place(tmp_path: Path) -> None:
    (tmp_path / "games").mkdir()
    (tmp_path / "games/our bridge.rules").write_text(TOLL_BRIDGE)
    newer = game_item(TOLL_BRIDGE.replace("18 m", "19 m"), (game_item(TOLL_BRIDGE).content,))
    assert given_states(tmp_path, newer) == {"Toll Bridge": State.NEWER}
    assert names(tmp_path) == ["Toll Bridge"]
    assert not (tmp_path / "games/toll-bridge.rules").exists()


def test_what_is_wrong_there_is_told_and_the_rest_is_read(tmp_path: Path) -> None:
    keep(tmp_path, *everything())
    (tmp_path / "games/broken.rules").write_text("game Broken\nplay\n  players juggle\n")
    (tmp_path / "games/linked.rules").symlink_to("/etc/hostname")
    (tmp_path / "games/huge.rules").write_bytes(b"note: x\n" * 10_000)
    (tmp_path / "games/wrong.rules").write_text(kicked_gate().text)
    common = given(common_shelf(tmp_path))
    assert len(common.items) == 5
    assert [trouble.code for trouble in common.troubles] == ["P-content", "S-size", "S-link", "S-folder"]


def test_folders_that_are_links_are_not_entered(tmp_path: Path) -> None:
    keep(tmp_path / "elsewhere", game_item())
    (tmp_path / "common").mkdir()
    (tmp_path / "common/games").symlink_to(tmp_path / "elsewhere/games")
    assert refusal(common_shelf(tmp_path / "common"))[0] == "S-link"
    assert refusal(give(tmp_path / "common", [modifier_item()]))[0] == "S-link"
    assert refusal(common_shelf(tmp_path / "nowhere"))[0] == "C-folder"


def test_a_name_that_is_not_there_gets_the_nearest(tmp_path: Path) -> None:
    keep(tmp_path, *everything())
    outcome = packed_from(tmp_path, ("Tol Bridge",))
    assert refusal(outcome)[0] == "C-unknown" and outcome.findings[0].hint == "Did you mean `Toll Bridge`?"


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    for who in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{who}_NAME", "Tarn Head school (invented)")
        monkeypatch.setenv(f"GIT_{who}_EMAIL", "office@tarnhead.invalid")
    subprocess.run(["git", "init", "--quiet", str(tmp_path)], check=True)
    return tmp_path


def git(folder: Path, *order: str) -> str:
    return subprocess.run(["git", *order], cwd=folder, check=True, capture_output=True, text=True).stdout


def test_in_a_git_repository_what_was_given_is_one_commit(repository: Path) -> None:
    assert in_git(repository)
    (repository / "letter.txt").write_text("not ours")
    hook = repository / ".git/hooks/pre-commit"
    hook.write_text("#!/bin/sh\ntouch was-run\n")
    hook.chmod(0o755)
    [giving] = given(give(repository, [game_item()]))
    name = given(commit(repository, giving.files, "Give Fell Gate"))
    assert git(repository, "log", "--format=%h %s").splitlines() == [f"{name} Give Fell Gate"]
    assert git(repository, "show", "--format=", "--name-only").split() == sorted(giving.files)
    assert not (repository / "was-run").exists()
    assert git(repository, "status", "--porcelain").split() == ["??", "letter.txt"]


def test_settings_of_a_repository_run_no_program(repository: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    run = tmp_path_factory.mktemp("ran")
    for setting in (
        *("filter.spy.clean", "filter.spy.smudge", "filter.spy.process", "core.fsmonitor", "core.pager", "core.editor"),
        *("gpg.program", "core.sshCommand", "core.askPass", "credential.helper", "diff.spy.textconv", "diff.external"),
        *("core.alternateRefsCommand", "uploadpack.packObjectsHook", "merge.spy.driver", "sequence.editor"),
    ):
        git(repository, "config", setting, f"sh -c 'cat; touch {run}/{setting}'")
    git(repository, "config", "commit.gpgSign", "true")
    git(repository, "config", "user.signingKey", "x")
    (repository / ".gitattributes").write_text("* filter=spy diff=spy merge=spy\n")
    for hook in ("pre-commit", "post-commit", "commit-msg", "reference-transaction", "post-index-change"):
        path = repository / ".git/hooks" / hook
        path.write_text(f"#!/bin/sh\ntouch {run}/{hook}\n")
        path.chmod(0o755)
    [giving] = given(give(repository, [game_item()]))
    given(commit(repository, giving.files, "Give Fell Gate"))
    assert not list(run.iterdir())


def test_what_was_staged_by_hand_stays_staged(repository: Path) -> None:
    (repository / "letter.txt").write_text("not ours")
    git(repository, "add", "letter.txt")
    [giving] = given(give(repository, [game_item()]))
    given(commit(repository, giving.files, "Give Fell Gate"))
    assert git(repository, "status", "--porcelain").split() == ["A", "letter.txt"]


def test_after_a_commit_that_failed_nothing_is_staged(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    [giving] = given(give(repository, [game_item()]))
    monkeypatch.setenv("GIT_AUTHOR_NAME", "")
    monkeypatch.setenv("GIT_AUTHOR_EMAIL", "")
    outcome = commit(repository, giving.files, "Give Fell Gate")
    assert refusal(outcome)[0] == "C-git" and "none of them is staged" in outcome.findings[0].hint
    assert not git(repository, "diff", "--cached", "--name-only")


def test_git_that_will_not_is_told_in_one_line(repository: Path) -> None:
    [giving] = given(give(repository, [game_item()]))
    (repository / ".git/index.lock").write_text("")
    code, title = refusal(commit(repository, giving.files, "Give Fell Gate"))
    assert code == "C-git" and title.startswith("git would not update-index:")


def test_a_plain_folder_has_no_commit(tmp_path: Path) -> None:
    assert refusal(commit(tmp_path, ("x",), "x"))[0] == "C-git"
