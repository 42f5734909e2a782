"""The manifest of a pack: what it carries, from whom, under which licence, with which hashes.

pack.schema.json beside this file publishes the same shape as a JSON Schema, for others to read and write
packs; a test holds the two together.
"""

from __future__ import annotations

import re
from typing import Any

from compose.modifiers.parents import Lineage
from compose.share.bounds import MOST_ENTRIES, MOST_RULES_BYTES
from compose.share.fields import Fields
from compose.share.lineage_json import MOST_HISTORY, MOST_NAME_LETTERS, history_from, lineage_from, lineage_json
from compose.share.pack.item import KINDS, Item
from compose.share.refusal import RefusedError
from compose.share.strict_json import strict_json
from grammar.frozen import frozen

FORMAT = "ruleweave pack"
VERSION = 1
FILE = "manifest.json"
LICENCE = re.compile(r"[A-Za-z0-9][A-Za-z0-9.+-]*")
PATH = re.compile(r"(games|remixes|modifiers)/[a-z0-9]+(-[a-z0-9]+)*\.rules")


@frozen
class Entry:
    """One line of a manifest: an item without its text, with the file that holds it."""

    kind: str
    name: str
    file: str
    size: int
    sha256: str
    content: str
    about: str
    credit: tuple[str, ...]
    licence: str | None
    history: tuple[str, ...]
    lineage: Lineage | None

    def item(self, text: str) -> Item:
        """The item that the entry and its text are together."""
        return Item(
            self.kind, self.name, text, self.content, self.about, self.credit, self.licence, self.lineage, self.history
        )


@frozen
class Manifest:
    """What a pack says of itself; `origin` is the school or person that made it, in their words."""

    title: str
    origin: str
    entries: tuple[Entry, ...]


def manifest_json(manifest: Manifest) -> dict[str, Any]:
    """A manifest as JSON, keys in the order in which a person reads."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "title": manifest.title,
        "from": manifest.origin,
        "items": [_entry_json(entry) for entry in manifest.entries],
    }


def _entry_json(entry: Entry) -> dict[str, Any]:
    told: dict[str, Any] = {
        "kind": entry.kind,
        "name": entry.name,
        "about": entry.about,
        "credit": list(entry.credit),
        "licence": entry.licence,
        "file": entry.file,
        "bytes": entry.size,
        "sha256": entry.sha256,
        "content": entry.content,
        "history": list(entry.history[-MOST_HISTORY:]),
    }
    return told | ({"lineage": lineage_json(entry.lineage)} if entry.lineage else {})


def manifest_from(data: bytes) -> Manifest:
    """The manifest of a pack's bytes; raises RefusedError."""
    value = strict_json(data, FILE)
    whole = Fields.of(value, FILE, "", ("format", "version", "title", "from", "items"))
    whole.one_of("format", (FORMAT,))
    if whole.whole("version", 1, 10**6) != VERSION:
        raise RefusedError(
            "P-version", "This pack was made by a newer program than this one.", "Get the newer program."
        )
    title, origin = whole.text("title", 120), whole.text("from", 120)
    return Manifest(title, origin, whole.listed("items", MOST_ENTRIES, _entry))


def _entry(listed: Fields) -> Entry:
    needed = ("kind", "name", "about", "credit", "licence", "file", "bytes", "sha256", "content", "history")
    fields = listed.inner("it", needed, ("lineage",))
    kind = fields.one_of("kind", KINDS)
    if (kind == "remix") != ("lineage" in fields.values):
        raise fields.refuse("lineage", "belongs to a remix, and to nothing else")
    licence = fields.values["licence"]
    return Entry(
        kind,
        fields.text("name", MOST_NAME_LETTERS, 1),
        fields.matching("file", PATH, "a name that a pack may hold"),
        fields.whole("bytes", 1, MOST_RULES_BYTES),
        fields.hash("sha256"),
        fields.hash("content"),
        fields.text("about", 2000),
        fields.listed("credit", 20, lambda each: each.text("it", 400, 1)),
        None if licence is None else fields.matching("licence", LICENCE, "an identifier of a licence", 60),
        history_from(fields, "history"),
        lineage_from(fields, "lineage") if kind == "remix" else None,
    )
