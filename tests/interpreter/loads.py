"""What pupils take from place to place: one thing each, taken up, brought, dropped or put back."""

from __future__ import annotations

from grammar.sentences import ball, then, when
from grammar.sentences.base import Np
from tests.interpreter.board import AT, HANDS, Board, Load, Spot
from tests.interpreter.events import Scene
from tests.interpreter.landing import goal
from tests.interpreter.names import Stuff
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import half


def take_up(board: Board, number: int, ball: int, load: Load) -> None:
    """A pupil has it in their hands now."""
    board.balls[ball] = board.balls[ball]._replace(spot=HANDS)
    board.pupils[number] = board.pupils[number]._replace(load=load)


def about_loads(sheet: Sheet, said: when.Consequence) -> bool:
    """Whether a consequence says what becomes of a thing that somebody carries."""
    if isinstance(said, then.GoesBack):
        return sheet.is_taken(said.what)
    if isinstance(said, then.Drops):
        return True
    meant = sheet.meaning(said.who.name) if isinstance(said, then.MovesTo) and isinstance(said.who, Np) else None
    return isinstance(meant, Stuff) and meant.category == "load"


def let_go(sheet: Sheet, said: when.Consequence, scene: Scene, board: Board) -> None:
    """Whoever was touched or hit has the thing no longer, if it is one of these."""
    hit = scene.deed.aim.hit if scene.deed is not None else None
    load = board.pupils[hit].load if hit is not None else None
    if hit is None or load is None:
        return
    what = said.what if isinstance(said, then.Drops | then.GoesBack) else getattr(said, "who", None)
    assert isinstance(what, Np)
    if load.kind not in sheet.stuff(what).kinds:
        return
    if isinstance(said, then.GoesBack) and said.where is not None:
        board.put_down(hit, goal(sheet, ball.RestTo(said.where), scene, sent=scene.it, rule=True))
    elif isinstance(said, then.MovesTo):
        board.put_down(hit, goal(sheet, said.place, scene, sent=scene.it, rule=True))
    elif isinstance(said, then.Drops):
        board.put_down(hit, half(sheet, load.start.owner) if load.start.owner else Spot("court", AT, None))
    else:
        board.put_down(hit, load.start)
