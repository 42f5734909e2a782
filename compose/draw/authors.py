"""What the authors of a game and of its modifiers wrote, and whether all of it can be said in another language."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.draw.speak_setup import like_name
from compose.net.side_words import is_plural, singular_side
from compose.telling.wording import Wording
from grammar.game import Game
from grammar.sentences.head import Caution, Switch, Switched
from grammar.sentences.play import SaidRule
from grammar.sentences.sides import SideBySide
from library.records import KitItem

TOLD = ("about", "cue", "caution", "credit", "outcomes")
AS_WRITTEN = "Words of the authors that nobody has translated stand as they were written."


def as_written(
    game: Game, more: Iterator[str] | tuple[str, ...], catalogue: Mapping[str, KitItem], wording: Wording
) -> str:
    """The line that says so, where a name or a text of the authors stays as it is; else nothing."""
    written = (*names_of(game), *texts_of(game), *_of_kit(game, catalogue), *more)
    return "" if all(wording.knows(each) for each in written if each) else wording.say(AS_WRITTEN)


def names_of(game: Game) -> Iterator[str]:
    """Every name that the sheet gives: of things, areas, tracks, sides, roles, games side by side."""
    for line in game.kit:
        yield line.name
        yield like_name(game, line)
    yield from (area.name for area in game.areas)
    yield from (track.name for track in game.tracks)
    for side in game.sides:
        yield singular_side(side.name) if is_plural(side.name) else side.name
    yield from (role.name for role in game.roles)
    yield from (several.what.text for several in game.all_of("sides", SideBySide))


def texts_of(game: Game) -> Iterator[str]:
    """Every text that the sheet quotes, and its switches; the title is a name of its own and stays."""
    for what in TOLD:
        yield from game.told(what)
    yield from (line.text for line in game.all_of("care", Caution))
    yield from (switch.name.text for switch in game.all_of("head", Switch))
    for line in game.sheet.lines("play"):
        said = line.sentence.sentence if isinstance(line.sentence, Switched) else line.sentence
        if isinstance(said, SaidRule):
            yield said.text


def _of_kit(game: Game, catalogue: Mapping[str, KitItem]) -> Iterator[str]:
    yield from (catalogue[line.like].caution for line in game.kit if line.like in catalogue)
