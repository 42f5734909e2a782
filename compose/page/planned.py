"""The lesson that is being built: games with their modifiers in order, kept on the shelf."""

from __future__ import annotations

import json
from collections.abc import Container
from pathlib import Path

from compose.share.whole_files import read_plain, write_whole
from grammar.frozen import frozen

FILE = "my-lesson.json"
MOST_BYTES = 64 << 10
MOST_GAMES = 8  # our choice: a lesson has no room for more


@frozen
class Item:
    """A game of the lesson: its name in addresses, and its modifiers."""

    slug: str
    uses: tuple[str, ...]


def planned(shelf: Path, there: Container[str]) -> tuple[Item, ...]:
    """The games in order, but those that are no longer `there`; none where what was kept is no lesson."""
    path = shelf / FILE
    if not path.is_file():
        return ()
    try:
        listed = json.loads(read_plain(path, MOST_BYTES))
        games = tuple(Item(str(slug), tuple(str(use) for use in uses)) for slug, uses in listed["games"])[:MOST_GAMES]
    except (ValueError, TypeError, KeyError):
        return ()
    return tuple(each for each in games if each.slug in there)


def keep(shelf: Path, games: tuple[Item, ...]) -> None:
    """Keep the games in this order."""
    shelf.mkdir(parents=True, exist_ok=True)
    told = {"version": 1, "games": [[each.slug, list(each.uses)] for each in games[:MOST_GAMES]]}
    write_whole(shelf / FILE, json.dumps(told, ensure_ascii=False, indent=1).encode())


def moved(games: tuple[Item, ...], one: int, to: int) -> tuple[Item, ...]:
    """The games with one of them at another place."""
    if not (0 <= one < len(games) and 0 <= to < len(games)):
        return games
    rest = [*games[:one], *games[one + 1 :]]
    return (*rest[:to], games[one], *rest[to:])


def without(games: tuple[Item, ...], one: int) -> tuple[Item, ...]:
    """The games but one."""
    return (*games[:one], *games[one + 1 :]) if 0 <= one < len(games) else games
