"""Packs: items to one zip with a manifest, and back again from a zip that anybody may have made."""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterable

from compose.share.bounds import (
    MOST_ENTRIES,
    MOST_MANIFEST_BYTES,
    MOST_RULES_BYTES,
    game_within_bounds,
    read_rules,
)
from compose.share.pack.item import FOLDERS, KINDS, Item, Sheet, item_of, kind_of
from compose.share.pack.manifest import FILE, PATH, Entry, Manifest, manifest_from, manifest_json
from compose.share.pack.zip_read import unzipped
from compose.share.pack.zip_write import zip_bytes
from compose.share.refusal import RefusedError, shown
from compose.share.strict_json import json_bytes
from grammar.finding import Outcome
from grammar.frozen import frozen
from grammar.tree import GameSheet


@frozen
class Pack:
    """A pack that was read and verified: every item is what its sheet says, every hash is right."""

    manifest: Manifest
    items: tuple[Item, ...]
    sheets: tuple[Sheet, ...]
    sha256: str

    @property
    def title(self) -> str:
        return self.manifest.title

    @property
    def origin(self) -> str:
        return self.manifest.origin


def sha256(data: bytes) -> str:
    """SHA-256 in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def make_pack(items: Iterable[Item], title: str, origin: str) -> Outcome[bytes]:
    """The bytes of a pack: the same items, title and origin always give the same bytes.

    It is read back before it is given out, so no pack is made that would be refused elsewhere.
    """
    ordered = sorted(items, key=lambda item: (KINDS.index(item.kind), item.path))
    texts = {item.path: item.text.encode() for item in ordered}
    try:
        _one_of_each([item.key for item in ordered])
        if len(ordered) >= MOST_ENTRIES:
            raise RefusedError("P-size", f"A pack carries at most {MOST_ENTRIES - 1} things.", "Make several packs.")
    except RefusedError as refusal:
        return Outcome(None, (refusal.finding(title),))
    manifest = Manifest(title, origin, tuple(_entry(item, texts[item.path]) for item in ordered))
    made = zip_bytes({FILE: json_bytes(manifest_json(manifest)), **texts})
    read = read_pack(made, title)
    return Outcome(None if read.value is None else made, read.findings)


def _entry(item: Item, text: bytes) -> Entry:
    return Entry(
        item.kind,
        item.name,
        item.path,
        len(text),
        sha256(text),
        item.content,
        item.about,
        item.credit,
        item.licence,
        item.history,
        item.lineage,
    )


def read_pack(data: bytes, file: str) -> Outcome[Pack]:
    """The pack of a file's bytes; no value, and one finding in one sentence, where it is refused."""
    try:
        return Outcome(_read(data))
    except RefusedError as refusal:
        return Outcome(None, (refusal.finding(file),))


def _read(data: bytes) -> Pack:
    files = unzipped(data, _room_for)
    if FILE not in files:
        raise RefusedError("P-manifest", f"This zip is not a pack: it holds no {FILE}.")
    manifest = manifest_from(files.pop(FILE))
    named = {entry.file: entry for entry in manifest.entries}
    if len(named) != len(manifest.entries):
        raise RefusedError("P-twice", "The manifest lists a file twice.")
    for name in files.keys() - named.keys():
        raise RefusedError("P-manifest", f"The pack holds {shown(name)}, which its manifest does not list.")
    for name in named.keys() - files.keys():
        raise RefusedError("P-manifest", f"The pack lacks {shown(name)}, which its manifest lists.")
    for entry in manifest.entries:
        if len(files[entry.file]) != entry.size or sha256(files[entry.file]) != entry.sha256:
            raise RefusedError("P-hash", f"{entry.file} is not what the manifest says: its hash is wrong.")
    read = [_item(entry, files[entry.file]) for entry in manifest.entries]
    _one_of_each([item.key for item, _ in read])
    return Pack(manifest, tuple(item for item, _ in read), tuple(sheet for _, sheet in read), sha256(data))


def _item(entry: Entry, data: bytes) -> tuple[Item, Sheet]:
    """The item of an entry, whose sheet must say all that the manifest says of it."""
    sheet = read_rules(data, entry.file)
    if kind_of(sheet) != entry.kind:
        raise RefusedError("P-content", f"{entry.file} does not hold a {entry.kind}.")
    if isinstance(sheet, GameSheet):
        game_within_bounds(sheet, entry.file)
    item = entry.item(data.decode("utf-8-sig"))
    meant = item_of(sheet)
    for what, says, is_so in (
        ("name", item.name, meant.name),
        ("file", entry.file, meant.path),
        ("about", item.about, meant.about),
        ("credit", item.credit, meant.credit),
        ("licence", item.licence, meant.licence),
        ("lineage", item.lineage, meant.lineage),
        ("content", item.content, meant.content),
    ):
        if says != is_so:
            raise RefusedError("P-hash", f"{entry.file} is not what the manifest says: its {what} differs.")
    return item, sheet


def _one_of_each(keys: list[tuple[bool, str]]) -> None:
    for (_, name), times in Counter(keys).items():
        if times > 1:
            raise RefusedError("P-twice", f"The pack has {times} things that go by the name {shown(name)}.")


def _room_for(name: str) -> int:
    """How many bytes a file of that name may have; raises RefusedError for a name that has no place in a pack."""
    if name == FILE:
        return MOST_MANIFEST_BYTES
    if PATH.fullmatch(name):
        return MOST_RULES_BYTES
    if name.rstrip("/") in FOLDERS.values():
        return 0
    if name.startswith(("/", "\\")) or ".." in name or "\\" in name or ":" in name:
        raise RefusedError("P-path", f"The pack names a place outside itself: {shown(name)}.")
    if name.lower().endswith((".zip", ".jar", ".7z", ".gz", ".rar", ".tar")):
        raise RefusedError("P-nested", f"The pack holds another packed file, {shown(name)}; a pack holds no packs.")
    raise RefusedError("P-name", f"The pack holds {shown(name)}, which has no place in a pack.")
