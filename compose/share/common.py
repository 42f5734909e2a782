"""A folder that several schools share, plain or a git repository: looked through, taken from, given to.

It holds the plain files of a shelf and nothing else: no index, no notes, no rounds, no origins. Everything
in it is read as a stranger's.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

import attrs
from attrs import frozen

from compose.share.item import FOLDERS, Item
from compose.share.naming import slug
from compose.share.pack import Pack, make_pack, read_pack
from compose.share.refusal import RefusedError, shown
from compose.share.shelf_files import Stored, files_of, read_stored, sheet_paths
from compose.share.taking_in import State
from compose.share.told import outcome_of
from compose.share.whole_files import write_whole
from grammar.finding import Finding, Outcome
from grammar.words import did_you_mean, listing


@frozen
class Common:
    """What a common shelf holds, games first, and which of its files cannot be read."""

    items: tuple[Item, ...]
    troubles: tuple[Finding, ...] = ()


@frozen
class Giving:
    """How a thing stands to the common shelf, and the files that giving it writes there."""

    item: Item
    state: State
    files: tuple[str, ...] = ()

    def words(self) -> str:
        """One sentence about it."""
        said = {
            State.NEW: "is new there.",
            State.SAME: "is there already, the same.",
            State.NEWER: "takes the place of its earlier state.",
            State.OLDER: "is older than theirs; take theirs.",
            State.CLASHING: "is not the same there, and neither came from the other; merge the two first.",
        }
        return f"{self.item.name} {said[self.state]}"


def common_shelf(folder: Path) -> Outcome[Common]:
    """What a common shelf holds."""
    return outcome_of(folder, lambda: _read(folder))


def _read(folder: Path) -> Common:
    if not folder.is_dir():
        raise RefusedError("C-folder", f"There is no folder `{folder}`.", "Name the folder that the schools share.")
    for inner in FOLDERS.values():
        if (folder / inner).is_symlink():
            raise RefusedError("S-link", f"`{inner}` in the common shelf is a link, not a folder.")
    items: list[Item] = []
    troubles: list[Finding] = []
    for path in sheet_paths(folder):
        try:
            items.append(read_stored(folder, path)[0].item)
        except RefusedError as refusal:
            troubles.append(refusal.finding(str(folder / path)))
        except OSError as error:
            why = (error.strerror or str(error)).lower()
            troubles.append(RefusedError("S-unreadable", f"{path} cannot be read: {why}.").finding(path))
    return Common(tuple(items), tuple(troubles))


def packed_from(folder: Path, names: Sequence[str]) -> Outcome[Pack]:
    """The named things of a common shelf (all, where none is named) as a pack, to be taken in like any other."""
    return outcome_of(folder, lambda: _packed(folder, names))


def _packed(folder: Path, names: Sequence[str]) -> Pack:
    common = _read(folder)
    chosen = [_named(common.items, name) for name in names] or list(common.items)
    title = folder.resolve().name[:120]
    made = make_pack(dict.fromkeys(chosen), title if title.isprintable() else "common shelf", "")
    pack = read_pack(made.value, title) if made.value is not None else None
    if pack is None or pack.value is None:
        finding = (made.findings or (pack.findings if pack else ()))[0]
        raise RefusedError(finding.code, finding.title, finding.hint)
    return pack.value


def _named(items: Iterable[Item], name: str) -> Item:
    found = [item for item in items if item.slug == slug(name)]
    if not found:
        hint = did_you_mean(name, [item.name for item in items]) or "Look at the list of what is there."
        raise RefusedError("C-unknown", f"The common shelf has nothing called `{shown(name)}`.", hint)
    return found[0]


def give(folder: Path, items: Sequence[Item]) -> Outcome[tuple[Giving, ...]]:
    """Put things on a common shelf: what is new there, and what is newer than theirs. Where one of them is
    neither the same nor newer nor new, nothing is given."""
    return outcome_of(folder, lambda: _give(folder, items))


def _give(folder: Path, items: Sequence[Item]) -> tuple[Giving, ...]:
    theirs = {item.key: item for item in _read(folder).items}
    standing = [Giving(item, _state(item, theirs.get(item.key))) for item in items]
    wrong = [each for each in standing if each.state in (State.OLDER, State.CLASHING)]
    if wrong:
        title = f"Nothing was given: {' '.join(each.words() for each in wrong)}"
        raise RefusedError("C-clash", title, f"Leave out {listing(each.item.name for each in wrong)}, or merge.")
    given = []
    for each in standing:
        files: dict[str, bytes] = {}
        if each.state is not State.SAME:
            item, there = each.item, theirs.get(each.item.key)
            before = (*(there.history if there else ()), *item.history)
            history = tuple(dict.fromkeys(one for one in before if one != item.content))
            files = files_of(Stored(attrs.evolve(item, history=history), item.path))
            _lies_free(folder, item, there)
        for path in files:
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
        # The sheet comes last, so that nobody finds it without what is known of it.
        for path in sorted(files, key=lambda path: path == each.item.path):
            write_whole(folder / path, files[path])
        given.append(attrs.evolve(each, files=tuple(files)))
    return tuple(given)


def _lies_free(folder: Path, item: Item, there: Item | None) -> None:
    path = folder / item.path
    if (there is None or there.path != item.path) and (path.exists() or path.is_symlink()):
        title = f"There is a file {item.path} on the common shelf that does not hold {item.name}."
        raise RefusedError("S-taken", title, "Look at it together.")


def _state(item: Item, there: Item | None) -> State:
    if there is None:
        return State.NEW
    if there.content == item.content:
        return State.SAME
    if there.content in item.history and item.content not in there.history:
        return State.NEWER
    return State.OLDER if item.content in there.history else State.CLASHING
