"""Targets that are down stand up again, all of a side or one of them."""

from __future__ import annotations

from grammar.sentences import sets
from tests.interpreter.board import DOWN, UP, Board
from tests.interpreter.events import Scene
from tests.interpreter.names import Part
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import EVERY, OTHERS, OWN, SPOKEN, UNSAID, Of, whose


def stand_again(sheet: Sheet, said: sets.StandAgain, scene: Scene, board: Board) -> None:
    """Whichever of several it is, things of one kind and side are alike."""
    owners, kinds = _owners(sheet, said, scene), sheet.stuff(said.what).kinds
    theirs = [(n, each) for n, each in enumerate(board.things) if each.kind in kinds and each.owner in owners]
    down = [number for number, each in theirs if each.how == DOWN]
    for number in down[:1] if said.what.determiner in ("a", "an", "any") else down:
        board.things[number] = board.things[number]._replace(how=UP)


def _owners(sheet: Sheet, said: sets.StandAgain, scene: Scene) -> tuple[str | None, ...]:
    whose_it_is = whose(sheet, said.what)
    if isinstance(whose_it_is, Of):
        return (whose_it_is.side,)
    if isinstance(whose_it_is, Part):
        return ({"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[whose_it_is.part],)
    if whose_it_is in (OWN, SPOKEN):
        return (scene.it,)
    if whose_it_is == OTHERS:
        return (scene.other,)
    assert whose_it_is in (UNSAID, EVERY), whose_it_is
    narrow = said.what.determiner not in ("all", "each", "every")
    if whose_it_is == UNSAID and narrow and scene.deed is None and scene.it is not None:
        return (scene.it, None)
    return (*sheet.sides, *((None,) if whose_it_is == UNSAID else ()))
