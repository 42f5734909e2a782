"""The classes of one teacher: the one at hand, and the others beside it on the shelf, which may share its cupboard."""

from __future__ import annotations

import re
from pathlib import Path

from attrs import evolve

from compose.page.class_form import NAME, fields_of, sheet_of
from compose.page.kept import MOST_BYTES, group_text, is_kept, keep_group
from compose.share.naming import slug
from compose.share.refusal import RefusedError
from compose.share.whole_files import read_plain, write_whole
from grammar.frozen import frozen

FOLDER = "classes"
TITLE = re.compile(r"(?m)^class (.+)$")


@frozen
class Other:
    """A class that is not at hand: its name in addresses, what it is called, and its sheet."""

    slug: str
    name: str
    text: str


def name_of(text: str) -> str:
    """What a class is called."""
    found = TITLE.search(text)
    return found.group(1).strip() if found else NAME


def others(shelf: Path) -> tuple[Other, ...]:
    """The classes that are not at hand, by their names; what cannot be read is none."""
    found = []
    for path in sorted((shelf / FOLDER).glob("*.rules")):
        try:
            text = read_plain(path, MOST_BYTES).decode("utf-8", "replace")
        except RefusedError:
            continue
        found.append(Other(path.stem, name_of(text), text))
    return tuple(sorted(found, key=lambda each: each.name))


def choose(shelf: Path, wanted: str) -> bool:
    """Take another class at hand; the one that was stays beside it. Whether there is such a class."""
    other = next((each for each in others(shelf) if each.slug == wanted), None)
    if other is None:
        return False
    _lay_aside(shelf)
    keep_group(shelf, other.text)
    (shelf / FOLDER / f"{wanted}.rules").unlink()
    return True


def begin(shelf: Path, called: str) -> None:
    """A class more, with the hall and the cupboard of the one at hand; a number tells it from one of its name."""
    if not is_kept(shelf):
        return
    text = group_text(shelf)
    there = {slug(name_of(text)), *(slug(each.name) for each in others(shelf))}
    name = next(name for number in range(2, len(there) + 3) if slug(name := f"{called} {number}") not in there)
    _lay_aside(shelf)
    keep_group(shelf, TITLE.sub(lambda _: f"class {name}", text, count=1))


def take_away(shelf: Path) -> None:
    """Take the class at hand away; another one comes to its place. The last one stays."""
    left = others(shelf)
    if left:
        keep_group(shelf, left[0].text)
        (shelf / FOLDER / f"{left[0].slug}.rules").unlink()


def _lay_aside(shelf: Path) -> None:
    """Put the class at hand beside the others, never in the place of one of them."""
    text, folder = group_text(shelf), shelf / FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    names = (slug(name_of(text)), *(f"{slug(name_of(text))}-{number}" for number in range(2, 100)))
    free = next(name for name in names if not (folder / f"{name}.rules").exists())
    write_whole(folder / f"{free}.rules", text.encode())


def one_cupboard(shelf: Path) -> bool:
    """Whether every class says of the kit what the one at hand says."""
    own = fields_of(group_text(shelf)).value
    read = [fields_of(each.text).value for each in others(shelf)]
    return own is not None and all(each is None or each.counts == own.counts for each in read)


def share_cupboard(shelf: Path) -> None:
    """Let every other class have the kit of the one at hand; a sheet that cannot be read stays as it is."""
    own = fields_of(group_text(shelf)).value
    for each in others(shelf):
        fields = fields_of(each.text).value
        if own is not None and fields is not None:
            text = sheet_of(evolve(fields, counts=own.counts))
            write_whole(shelf / FOLDER / f"{each.slug}.rules", text.encode())
