"""A common shelf that is a git repository: what was given becomes one commit. Nothing is fetched or sent."""

from __future__ import annotations

import subprocess
from collections.abc import Sequence
from pathlib import Path

from compose.share.refusal import RefusedError, shown
from compose.share.told import outcome_of
from grammar.finding import Outcome

SECONDS = 60
# A repository may carry settings that run programs of its owner's choice; these are kept from running.
_QUIET = ("-c", "core.hooksPath=/dev/null", "-c", "core.fsmonitor=false", "-c", "commit.gpgSign=false", "--no-pager")


def in_git(folder: Path) -> bool:
    """Whether a folder lies in a git repository."""
    return any((parent / ".git").exists() for parent in (folder.resolve(), *folder.resolve().parents))


def repository(folder: Path) -> Outcome[Path]:
    """The folder, if it lies in a git repository."""
    return outcome_of(folder, lambda: _repository(folder))


def _repository(folder: Path) -> Path:
    if not in_git(folder):
        raise RefusedError("C-git", f"`{folder}` is not in a git repository.", "Leave --commit out.")
    return folder


def commit(folder: Path, files: Sequence[str], words: str) -> Outcome[str]:
    """One commit of these files and no others; its short name."""
    return outcome_of(folder, lambda: _commit(folder, files, words))


def _commit(folder: Path, files: Sequence[str], words: str) -> str:
    _repository(folder)
    _git(folder, "add", "--", *files)
    _git(folder, "commit", "--quiet", "--no-verify", "-m", words, "--", *files)
    return _git(folder, "rev-parse", "--short", "HEAD").strip()


def _git(folder: Path, *order: str) -> str:
    try:
        done = subprocess.run(
            ["git", *_QUIET, *order],
            cwd=folder,
            capture_output=True,
            text=True,
            errors="replace",
            timeout=SECONDS,
            check=False,
        )
    except FileNotFoundError:
        raise RefusedError("C-git", "There is no git on this machine.", "Install it, or leave --commit out.") from None
    except subprocess.TimeoutExpired:
        raise RefusedError("C-git", f"git did not answer within {SECONDS} s.", "Look at the repository.") from None
    if done.returncode:
        why = (done.stderr or done.stdout).strip().splitlines() or ["it did not say why"]
        title = f"git would not {order[0]}: {shown(why[0], 150)}."
        raise RefusedError("C-git", title, "The files were given; commit them by hand.")
    return done.stdout
