"""The games of the library, read and laid out, for tests of what is drawn."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from compose.draw.card.card import Card, CardNotes, card_of
from compose.draw.plan.plan import plan_on_card
from compose.staging.floor.values import Floor
from compose.staging.laid_out import laid_out as at_its_place
from compose.staging.resolved import resolved
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from library.load import game_paths, kit_catalogue
from library.records import Hall, KitItem
from tests.interpreter.sheets import library_game as library_game

Kit = Mapping[str, KitItem]
NAMES = tuple(path.stem for path in game_paths())
GOLDEN = Path(__file__).parent.parent / "golden"


def game_of(text: str, file: str = "test.rules") -> Game:
    """The game of a text without mistakes."""
    catalogue = {name: item.category for key, item in kit_catalogue().items() for name in (key, *item.also)}
    read = parse(text, file)
    assert read.value is not None, [finding.title for finding in read.findings]
    outcome = resolve(read.value.games[0], catalogue)
    assert outcome.value is not None, [finding.title for finding in outcome.findings]
    return outcome.value


def laid_out(game: Game) -> Floor:
    """The floor with a middling number of players."""
    return at_its_place(game, {side.name: (side.least + side.most + 1) // 2 for side in game.sides})


def card_for(
    game: Game, notes: CardNotes | None = None, hall: Hall | None = None, catalogue: Kit | None = None, **look: Any
) -> Card:
    """The card of a game, laid out for a middling number of players."""
    plan = plan_on_card(game, laid_out(game), hall, **look)
    look.pop("large", None)
    return card_of(resolved(game), plan, notes, catalogue=catalogue, **look)


def lanterns(court: str = "18 m by 9 m", **more: str) -> Game:
    """A small game of two halves; `more` adds lines to a section (set_up for set-up)."""
    sections = {
        "head": 'ages 8 to 12\nabout "Clear the row."\ncredit "Tarn Valley schools (invented)"\nlicence CC-BY-4.0',
        "space": f"court {court}, halved across",
        "sides": "north and south, 6 to 14 players each, mirrored",
        "kit": "8 foam balls\n5 lanterns for each side, like a skittle",
        "set_up": "lanterns on the back line of their side, evenly spaced\n4 foam balls in each half",
        "play": "players stay in their half\nplayers overarm throw a foam ball at the lanterns of the other side",
        "when": "a lantern is knocked: it stays down",
        "finish": "a side wins when the other side has no lanterns standing",
        "care": '"Aim low."',
    }
    title = more.pop("title", "Lanterns")
    for name, lines in more.items():
        sections[name] = f"{sections[name]}\n{lines}"
    text = f"game {title}\n" + "".join(f"  {line}\n" for line in sections.pop("head").splitlines())
    for name, lines in sections.items():
        text += f"{name.replace('_', '-')}\n" + "".join(f"  {line}\n" for line in lines.splitlines())
    return game_of(text)
