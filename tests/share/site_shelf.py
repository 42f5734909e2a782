"""A folder of many invented games, and names that try to break out of a page."""

from __future__ import annotations

from pathlib import Path

from shared_games import FELL_GATE, everything, game_item

from compose.share.pack.item import Item
from compose.share.shelf.files import Stored, files_of

ESCAPES = (
    "</script><script>document.title='taken'</script>",
    "<img src=x onerror=document.title='taken'>",
    "&lt;b&gt; ]]> --> <!-- '",
)


def wicked() -> Item:
    """A game whose free texts try to be read as HTML."""
    text = FELL_GATE.replace("game Fell Gate", "game Wicked Gate").replace("Roll the ball through", ESCAPES[0])
    text = text.replace("Tarn Valley schools", ESCAPES[1]).replace("Stop the ball before you run.", ESCAPES[2])
    return game_item(text)


def keep(folder: Path, *items: Item) -> None:
    """Put things into a folder as a common shelf has them."""
    for item in items:
        for path, data in files_of(Stored(item, item.path)).items():
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            (folder / path).write_bytes(data)


def many(number: int) -> list[Item]:
    """So many games of their own names and sizes, and a few other things."""
    games = []
    for at in range(number):
        text = FELL_GATE.replace("game Fell Gate", f"game Gate {at}")
        text = text.replace("14 m by 7 m", f"{14 + at % 7} m by {7 + at % 3} m")
        text = text.replace("4 to 10 players", f"{4 + at % 3} to {8 + at % 9} players")
        games.append(game_item(text.replace("ages 7 to 11", f"ages {6 + at % 5} to {11 + at % 5}")))
    return [*games, *everything()]
