"""The common shelf on the terminal: list it, take from it, give to it, and make its page."""

from __future__ import annotations

import sys
import textwrap
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from compose.share.pack.taking_in import State
from compose.share.site.build import build_site
from compose.share.together.folder import common_shelf, give, packed_from
from compose.share.together.git import commit, repository
from compose.terminal.answer import FINE, TO_MEND, finding_json, say, say_findings, say_json
from compose.terminal.sharing.packing import chosen, taken_in
from compose.terminal.sharing.shelf_door import given, thing
from grammar.words import count, listing


def show_common(folder: Path, as_json: bool) -> int:
    """List a common shelf; the exit code."""
    common = given(common_shelf(folder), as_json)
    if as_json:
        things = [{"kind": item.kind, "name": item.name, "content": item.content} for item in common.items]
        say_json({"things": things, "findings": [finding_json(finding) for finding in common.troubles]})
        return TO_MEND if common.troubles else FINE
    say(f"{folder} has {count(len(common.items), 'thing')}.")
    for item in common.items:
        say(f"{item.name}  ({item.kind}, {item.licence or 'no licence named'})")
        for line in textwrap.wrap(item.about, 76, initial_indent="  ", subsequent_indent="  "):
            say(line)
    say_findings(common.troubles)
    return TO_MEND if common.troubles else FINE


def take_common(
    folder: Path,
    names: Sequence[str],
    keep: str | None,
    choose: Sequence[str],
    only_look: bool,
    shelf: Path | None,
    as_json: bool,
) -> int:
    """Take things from a common shelf onto one's own, all where none is named; the exit code."""
    pack = given(packed_from(folder, names), as_json)
    choices, otherwise = chosen(keep, choose, pack, as_json)
    return taken_in(pack, str(folder), choices, otherwise, only_look, shelf, as_json)


def give_common(folder: Path, names: Sequence[str], with_commit: bool, shelf: Path | None, as_json: bool) -> int:
    """Give things to a common shelf; notes and rounds stay at home. The exit code."""
    items = [thing(name, shelf, as_json)[0] for name in names]
    if with_commit:
        given(repository(folder), as_json)
    given_things = given(give(folder, items), as_json)
    files = [file for each in given_things for file in each.files]
    name = ""
    if with_commit and files:
        words = f"Give {listing(each.item.name for each in given_things if each.state is not State.SAME)}"
        name = given(commit(folder, files, words), as_json)
    if as_json:
        told = [{"name": each.item.name, "state": each.state.value, "files": list(each.files)} for each in given_things]
        say_json({"given": told, "commit": name or None})
        return FINE
    for each in given_things:
        say(each.words())
    if name:
        say(f"Committed as {name}; sending it on is yours to do.")
    return FINE


def make_page(folder: Path, out: Path, title: str, pdf: bool, as_json: bool) -> int:
    """Make the page of a common shelf, or bring it up to date; the exit code."""
    if not folder.is_dir():
        given(common_shelf(folder), as_json)
    called = title or folder.resolve().name
    with progress_bar(as_json) as progress:
        outcome = build_site(folder, out, called, pdf, progress)
    built = given(outcome, as_json)
    if as_json:
        told = {"made": built.made, "kept": built.kept, "gone": built.gone}
        refused = [{"file": path, "why": why} for path, why in built.refused]
        say_json({"page": str(out / "index.html"), **told, "refused": refused})
        return TO_MEND if built.refused else FINE
    say(
        f"The page is {out / 'index.html'}: {built.made} made, {built.kept} left as they were, {built.gone} taken away."
    )
    for path, why in built.refused:
        say(f"Left out: {why if path in why else f'{path}: {why}'}")
    return TO_MEND if built.refused else FINE


@contextmanager
def progress_bar(as_json: bool) -> Iterator[Callable[[int, int], None]]:
    """Something that is told how many of how many are done; shown where somebody looks at the terminal."""
    if as_json or not sys.stderr.isatty():
        yield lambda done, of: None
        return
    from rich.console import Console
    from rich.progress import Progress

    with Progress(console=Console(stderr=True), transient=True) as bar:
        pages = bar.add_task("Pages", total=None)
        yield lambda done, of: bar.update(pages, completed=done, total=of)
