"""A folder that several schools share, plain or a git repository: looked through, taken from, given to.

It holds the plain files of a shelf and nothing else: no index, no notes, no rounds, no origins. Everything
in it is read as a stranger's.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

import attrs

from compose.share.naming import slug
from compose.share.pack.item import ENDING, FOLDERS, Item
from compose.share.pack.pack import Pack, make_pack, read_pack
from compose.share.pack.taking_in import State, state_of
from compose.share.refusal import RefusedError, shown
from compose.share.shelf.files import PAST, Stored, files_of, read_stored, sheet_paths
from compose.share.told import outcome_of
from compose.share.whole_files import write_whole
from grammar.finding import Finding, Outcome
from grammar.frozen import frozen
from grammar.words import did_you_mean, listing


@frozen
class Common:
    """What a common shelf holds, games first, and which of its files cannot be read."""

    things: tuple[Stored, ...]
    troubles: tuple[Finding, ...] = ()

    @property
    def items(self) -> tuple[Item, ...]:
        return tuple(stored.item for stored in self.things)


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
    things: list[Stored] = []
    troubles: list[Finding] = []
    for path in sheet_paths(folder):
        try:
            things.append(read_stored(folder, path)[0])
        except RefusedError as refusal:
            troubles.append(refusal.finding(str(folder / path)))
        except OSError as error:
            why = (error.strerror or str(error)).lower()
            troubles.append(RefusedError("S-unreadable", f"{path} cannot be read: {why}.").finding(path))
    return Common(tuple(things), tuple(troubles))


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
    theirs = {stored.item.key: stored for stored in _read(folder).things}
    standing = [Giving(item, _state(item, theirs.get(item.key))) for item in items]
    wrong = [each for each in standing if each.state in (State.OLDER, State.CLASHING)]
    if wrong:
        title = f"Nothing was given: {' '.join(each.words() for each in wrong)}"
        raise RefusedError("C-clash", title, f"Leave out {listing(each.item.name for each in wrong)}, or merge.")
    files = [_files(folder, each, theirs.get(each.item.key)) for each in standing]
    for one in files:
        # The sheet comes last, so that nobody finds it without what is known of it.
        for path in sorted(one, key=lambda path: path.endswith(ENDING) and not path.startswith(PAST)):
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            write_whole(folder / path, one[path])
    return tuple(attrs.evolve(each, files=tuple(sorted(one))) for each, one in zip(standing, files, strict=True))


def _files(folder: Path, giving: Giving, there: Stored | None) -> dict[str, bytes]:
    """The files to write; refused where another file lies in the place of one."""
    if giving.state is State.SAME:
        return {}
    item = giving.item
    path = there.path if there and there.item.kind == item.kind else item.path
    if (there is None or there.path != path) and ((folder / path).exists() or (folder / path).is_symlink()):
        title = f"There is a file {path} on the common shelf that does not hold {item.name}."
        raise RefusedError("S-taken", title, "Look at it together.")
    before = (*(there.item.history if there else ()), *item.history)
    history = tuple(dict.fromkeys(one for one in before if one != item.content))
    return files_of(Stored(attrs.evolve(item, history=history), path))


def _state(item: Item, stored: Stored | None) -> State:
    if stored is None:
        return State.NEW
    return state_of(item, stored.item.content, stored.item.history)
