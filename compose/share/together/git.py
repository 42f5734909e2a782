"""A common shelf that is a git repository: what was given becomes one commit. Nothing is fetched or sent."""

from __future__ import annotations

import os
import subprocess
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

from compose.share.refusal import RefusedError, shown
from compose.share.told import outcome_of
from grammar.finding import Outcome
from grammar.words import listing

SECONDS = 60
# A repository may carry settings that run programs of its owner's choice: hooks, watchers, and programs that fetch what
# is missing. Filters and signing are not asked for: the commit is made of objects, past the work tree.
_QUIET = ("-c", "core.hooksPath=/dev/null", "-c", "core.fsmonitor=false", "-c", "protocol.allow=never", "--no-pager")
_ALONE = {"GIT_NO_LAZY_FETCH": "1", "GIT_TERMINAL_PROMPT": "0", "GIT_OPTIONAL_LOCKS": "0"}


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
    prefix = _git(folder, "rev-parse", "--show-prefix").strip()
    before = _git(folder, "rev-parse", "--verify", "--quiet", "HEAD^{commit}", may_fail=True).strip()
    kept = {each: _git(folder, "hash-object", "-w", "--no-filters", "--", each).strip() for each in files}
    staged = [f"100644,{name},{prefix}{each}" for each, name in kept.items()]
    with tempfile.TemporaryDirectory() as made:
        apart = {"GIT_INDEX_FILE": f"{made}/index"}  # what somebody has staged by hand stays out of this commit
        if before:
            _git(folder, "read-tree", before, variables=apart)
        _stage(folder, staged, apart)
        tree = _git(folder, "write-tree", variables=apart).strip()
    new = _git(folder, "commit-tree", tree, *(("-p", before) if before else ()), "-m", words).strip()
    try:
        _stage(folder, staged, None)
        _git(folder, "update-ref", "-m", "commit: games given", "HEAD", new, before or "0" * len(new))
    except RefusedError as error:
        raise RefusedError(error.code, error.title, _left(folder, files)) from None
    return _git(folder, "rev-parse", "--short", new).strip()


def _left(folder: Path, files: Sequence[str]) -> str:
    """What stands ready for a commit by hand after one that did not come about."""
    there = set(_git(folder, "diff", "--cached", "--name-only", "--relative", may_fail=True).splitlines())
    ready = [each for each in files if each in there]
    told = f"{listing(ready)} {'is' if len(ready) == 1 else 'are'} staged" if ready else "none of them is staged"
    return f"The files were given, {told}; commit them by hand."


def _stage(folder: Path, staged: Sequence[str], variables: Mapping[str, str] | None) -> None:
    for each in staged:
        _git(folder, "update-index", "--add", "--cacheinfo", each, variables=variables)


def _git(folder: Path, *order: str, variables: Mapping[str, str] | None = None, may_fail: bool = False) -> str:
    try:
        done = subprocess.run(
            ["git", *_QUIET, *order],
            cwd=folder,
            env={**os.environ, **_ALONE, **(variables or {})},
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
    if done.returncode and not may_fail:
        why = (done.stderr or done.stdout).strip().splitlines() or ["it did not say why"]
        title = f"git would not {order[0]}: {shown(why[0], 150)}."
        raise RefusedError("C-git", title, "The files were given, none of them is staged; commit them by hand.")
    return done.stdout
