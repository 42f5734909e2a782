"""What goes by which name: the files of this folder, then what lies on the shelf, then the library."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import library
from compose.share.naming import slug
from compose.share.shelf.usual_folder import usual_folder
from grammar.frozen import frozen

HERE, SHELF, LIBRARY = "here", "on the shelf", "in the library"
ENDING = ".rules"
GAMES = ("game", "remix")
_ON_SHELF = {"game": "games", "remix": "remixes", "modifier": "modifiers"}
MOST_LETTERS = 1 << 20
_HEAD = re.compile(r"^(game|remix|modifier|class|hall) +(\S.*?) *$", re.IGNORECASE | re.MULTILINE)


@frozen
class Named:
    """A thing by its name: a game, remix, modifier or class, and the file that holds it. `where` is one of HERE,
    SHELF and LIBRARY."""

    kind: str
    slug: str
    path: Path
    where: str


def at_hand(kinds: Sequence[str]) -> tuple[Named, ...]:
    """All things of these kinds, those of one's own first; of one name the first is meant."""
    found = (*_here(kinds), *_on_shelf(kinds), *_in_library(kinds))
    return tuple({each.slug: each for each in reversed(found)}.values())[::-1]


def own(kinds: Sequence[str]) -> tuple[Named, ...]:
    """Those of one's own alone, each file once."""
    return tuple({each.path: each for each in at_hand(kinds) if each.where != LIBRARY}.values())


def each_once(kinds: Sequence[str]) -> tuple[Named, ...]:
    """All things of these kinds, each file once though it may go by two names."""
    return tuple({each.path: each for each in at_hand(kinds)}.values())


def _here(kinds: Sequence[str], folder: Path = Path()) -> Iterator[Named]:
    """By the names of the files, then by what is written in them."""
    for path in sorted(folder.glob(f"*{ENDING}")):
        heads = [(kind.lower(), title) for kind, title in _HEAD.findall(_text(path))]
        mine = [(kind, title) for kind, title in heads if kind in kinds]
        if len(heads) == 1 and mine:
            yield Named(mine[0][0], slug(path.stem), path, HERE)
        yield from (Named(kind, slug(title), path, HERE) for kind, title in mine[:1])


def _text(path: Path) -> str:
    """The text of a file; nothing where it cannot be read, for nobody has asked for it."""
    try:
        with path.open(encoding="utf-8") as file:
            return file.read(MOST_LETTERS)
    except (OSError, UnicodeDecodeError):
        return ""


def _on_shelf(kinds: Sequence[str]) -> Iterator[Named]:
    for kind in kinds:
        inner = usual_folder() / _ON_SHELF[kind] if kind in _ON_SHELF else None
        for path in sorted(inner.glob(f"*{ENDING}")) if inner is not None and inner.is_dir() else ():
            yield Named(kind, path.stem, path, SHELF)


def _in_library(kinds: Sequence[str]) -> Iterator[Named]:
    paths: dict[str, Callable[[], Sequence[Path]]] = {
        "game": library.game_paths,
        "remix": library.remix_paths,
        "modifier": library.modifier_paths,
        "class": library.class_paths,
    }
    for kind in kinds:
        yield from (Named(kind, path.stem, path, LIBRARY) for path in paths[kind]())
