"""Bases and modifiers for making remixes, looked for among the plain files of a shelf, then in the library."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from compose.share.bounds import MOST_RULES_BYTES, read_rules
from compose.share.making import LibraryAtHand
from compose.share.naming import slug
from compose.share.pack.item import ENDING, Sheet
from compose.share.refusal import RefusedError
from compose.share.whole_files import read_plain
from grammar.frozen import field, frozen
from grammar.tree import GameSheet, ModifierSheet, RemixSheet


@frozen
class FolderAtHand:
    """The sheets of a folder. `files` says where a thing lies whose file is not called after it, by whether it
    is a modifier and by its slug."""

    folder: Path
    files: Mapping[tuple[bool, str], str] = field(factory=dict)

    def base(self, name: str) -> GameSheet | RemixSheet | None:
        for inner in ("games", "remixes"):
            sheet = self._sheet(self.files.get((False, slug(name)), f"{inner}/{slug(name)}{ENDING}"))
            if isinstance(sheet, GameSheet | RemixSheet):
                return sheet
        return LibraryAtHand().base(name)

    def modifier(self, name: str) -> ModifierSheet | None:
        sheet = self._sheet(self.files.get((True, slug(name)), f"modifiers/{slug(name)}{ENDING}"))
        return sheet if isinstance(sheet, ModifierSheet) else LibraryAtHand().modifier(name)

    def _sheet(self, path: str) -> Sheet | None:
        try:
            return read_rules(read_plain(self.folder / path, MOST_RULES_BYTES), path)
        except (OSError, RefusedError):
            # What cannot be read is told where it is listed; here it only is not at hand.
            return None
