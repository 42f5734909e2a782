"""What follows from what happened: the consequences change who and what is where, in the order of the sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.sentences import finish, freezing, lives, resting, sets, then, when
from grammar.sentences.ball import RestTo
from grammar.sentences.base import Np
from tests.interpreter.begin_points import most_points
from tests.interpreter.board import DOWN, IN, OUT, UP, Board, Spot, State
from tests.interpreter.claims import home
from tests.interpreter.events import Scene, Settled, Taking, sides_meant
from tests.interpreter.frozen import frozen_spot
from tests.interpreter.hours import WITH_THE_TEACHER, points_are_over, times_more
from tests.interpreter.landing import about_balls
from tests.interpreter.life import after_the_last, lose_or_win
from tests.interpreter.loads import about_loads, let_go
from tests.interpreter.moved_balls import come_in, send_balls
from tests.interpreter.names import Part, Stuff
from tests.interpreter.next_point import with_the_point
from tests.interpreter.people import other_than, people, where_to
from tests.interpreter.places import change_places
from tests.interpreter.room import finds_room
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of
from tests.interpreter.stood_up import stand_again

Going = freezing.Freezes | then.Waits | then.MovesTo | then.Joins | then.Out | then.TurnsInto | then.Returns


def follow(sheet: Sheet, settled: Sequence[Settled], scene: Scene, board: Board, begin: State) -> Iterator[Board]:
    """The boards after all consequences; several where somebody may be one or another.

    Lives come and go first. Who has lost the last one goes as the lines for that say, after all that follows else.
    """
    for done in _follow(sheet, settled, scene, board, begin):
        boards = [done]
        for number in done.lost:
            of_loser, then_so = after_the_last(sheet, number, board)
            boards = [each for one in boards for each in _follow(sheet, then_so, of_loser, one, begin)]
        for each in boards:
            each.lost = ()
        yield from boards


def _follow(sheet: Sheet, settled: Sequence[Settled], scene: Scene, board: Board, begin: State) -> Iterator[Board]:
    with_the_point(sheet, settled, board)
    yield from _each(sheet, settled, scene, board, begin)


def _each(sheet: Sheet, settled: Sequence[Settled], scene: Scene, board: Board, begin: State) -> Iterator[Board]:
    if not settled:
        yield board
        return
    first = next((each for each in settled if isinstance(each.said, lives.LosesLife | lives.WinsLife)), None)
    first = first or next((each for each in settled if about_loads(sheet, each.said)), None)
    first = first or next((each for each in settled if _gives_up_a_task(sheet, each.said)), settled[0])
    rest = [each for each in settled if each is not first]
    for after in _change(sheet, first, scene, board, begin):
        yield from _each(sheet, rest, scene, after, begin)


def _gives_up_a_task(sheet: Sheet, said: when.Consequence) -> bool:
    """Whoever gives a task up does so first, so that another can have it."""
    folk = sheet.folk(said.role) if isinstance(said, then.TurnsInto) else None
    return folk is not None and folk.role is None


def _change(sheet: Sheet, settled: Settled, scene: Scene, board: Board, begin: State) -> Iterator[Board]:
    said = settled.said
    match said:
        case then.MovesTo() | then.Drops() | then.GoesBack() if about_loads(sheet, said) and scene.deed is not None:
            let_go(sheet, said, scene, board)
        case then.MovesTo() if about_balls(sheet, said) or about_loads(sheet, said):
            yield from send_balls(sheet, said, scene, board)
            return
        case lives.LosesLife() | lives.WinsLife():
            for chosen in people(sheet, said.who, scene, board):
                yield lose_or_win(sheet, said, chosen, board.copy())
            return
        case Taking():
            board.taken |= {said.line}
        case then.ComesIn():
            yield from come_in(sheet, said, board)
            return
        case then.TakenAway(who=Np() as who):
            for number, ball in enumerate(board.balls):
                if ball.kind in sheet.stuff(who).kinds:
                    board.balls[number] = ball._replace(spot=WITH_THE_TEACHER)
        case then.MovesTo(place=resting.RestOnStep()):
            _put_on_step(sheet, said, scene, board)
        case _ if isinstance(said, Going):
            yield from _go(sheet, said, scene, board)
            return
        case then.ChangesPlaces():
            yield from change_places(sheet, said, scene, board, begin)
            return
        case then.StaysDown() | then.StandsUp() | then.TakenOver() | then.Steps() | sets.StandAgain():
            _thing(sheet, said, scene, board)
        case then.Scores() if not points_are_over(sheet, board):
            for side in settled.scoring or sides_meant(sheet, said.side, scene):
                number = sheet.sides.index(side)
                by = said.points.whole * times_more(sheet, board) if said.verb == "scores" else -said.points.whole
                board.points[number] = min(max(board.points[number] + by, 0), most_points(sheet, side))
        case finish.SideWins() | finish.SideLoses():
            (side,) = sides_meant(sheet, said.side, scene)
            board.won = side if isinstance(said, finish.SideWins) else sheet.others(side)[0]
        case then.StartsAgain():
            board.pupils, board.balls, board.things = list(begin.pupils), list(begin.balls), list(begin.things)
            board.rows, board.runs = list(begin.rows), list(begin.runs)
    yield board


def _thing(
    sheet: Sheet,
    said: then.StaysDown | then.StandsUp | then.TakenOver | then.Steps | sets.StandAgain,
    scene: Scene,
    board: Board,
) -> None:
    if isinstance(said, sets.StandAgain):
        return stand_again(sheet, said, scene, board)
    assert scene.deed is not None and scene.deed.aim.thing is not None
    number = scene.deed.aim.thing
    thing = board.things[number]
    match said:
        case then.StaysDown() if not isinstance(thing.how, int):
            board.things[number] = thing._replace(how=DOWN)
        case then.TakenOver():
            side = other_than(sheet, thing.owner, scene) if _over(sheet, said) and thing.owner else None
            owner = side or sides_meant(sheet, said.side, scene)[0]
            board.things[number] = thing._replace(owner=owner, how=UP)
        case then.Steps() if isinstance(thing.how, int):
            towards = home(sheet, thing.kind, _towards(sheet, said.towards, scene))
            track, _ = sheet.tracks[thing.kind]
            down = (towards == 0) == (said.direction == "towards")
            step = thing.how + (-said.by.whole if down else said.by.whole)
            board.things[number] = thing._replace(how=min(max(step, 0), track.steps.whole))


def _over(sheet: Sheet, said: then.TakenOver) -> bool:
    return bool(getattr(said.side, "other", None))


def _towards(sheet: Sheet, phrase: Np, scene: Scene) -> str:
    meant = sheet.meaning(phrase.name)
    if isinstance(meant, Part):
        side = {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[meant.part]
    else:
        side = sheet.side_meant(meant)
    assert side is not None, phrase.words()
    return side


def _put_on_step(sheet: Sheet, said: then.MovesTo, scene: Scene, board: Board) -> None:
    """From where it was hit; where a count came true, from the home of the side spoken of."""
    assert isinstance(said.who, Np) and isinstance(said.place, resting.RestOnStep)
    meant = sheet.meaning(said.who.name)
    assert isinstance(meant, Stuff)
    number = scene.deed.aim.thing if scene.deed is not None else None
    if scene.deed is None and scene.it is not None:
        at_home = [
            n
            for n, each in enumerate(board.things)
            if each.kind in meant.kinds and each.how == home(sheet, each.kind, scene.it)
        ]
        number = at_home[0] if at_home else None
    if number is not None:
        board.things[number] = board.things[number]._replace(how=said.place.step.whole)


def _go(sheet: Sheet, said: Going, scene: Scene, board: Board) -> Iterator[Board]:
    for chosen in people(sheet, said.who, scene, board):
        after = board.copy()
        for number in chosen:
            if scene.loser is None and number in board.lost:
                continue
            pupil = after.pupils[number]
            side, role, where = _goal(sheet, said, pupil.side, pupil.role, scene, after)
            if pupil.load is not None:
                after.put_down(number, pupil.load.start)  # whether they find room or not
            stays = (side, role, where) == (pupil.side, pupil.role, pupil.where)
            if not stays and (isinstance(said, then.Returns | then.Out) or finds_room(sheet, side, role, where, after)):
                after.go(number, side, role, where)
        yield after


def _goal(sheet: Sheet, said: Going, side: str, role: str, scene: Scene, board: Board) -> tuple[str, str, str | Spot]:
    match said:
        case then.Out():
            return side, role, OUT
        case freezing.Freezes():
            return side, role, frozen_spot(side)
        case then.TurnsInto():
            into = sheet.folk(said.role)
            assert into is not None
            if into.role is None:
                return into.side or side, "", IN
            there = sum((each.side, each.role) == (side, into.role) and each.where != OUT for each in board.pupils)
            return side, into.role if there < sheet.roles[into.role].most else role, IN
        case then.Waits():
            return side, role, where_to(sheet, said.where, side, scene)
        case then.MovesTo():
            assert isinstance(said.place, RestTo | resting.RestThere)
            return side, role, where_to(sheet, said.place.where, side, scene)
        case then.Joins(what=Np() as what) if place_or_none(sheet, what):
            return side, role, where_to(sheet, what, side, scene)
        case then.Joins():
            return _new_side(sheet, said, side, scene), role, IN
    return side, role, IN


def place_or_none(sheet: Sheet, phrase: Np) -> str | None:
    """The place that a phrase names, if it names one."""
    return None if sheet.side_meant(sheet.meaning(phrase.name)) else place_of(sheet, phrase)


def _new_side(sheet: Sheet, said: then.Joins, side: str, scene: Scene) -> str:
    if isinstance(said.what, Np):
        new = sheet.side_meant(sheet.meaning(said.what.name))
        assert new is not None
        return new
    if getattr(said.what, "other", None):
        return other_than(sheet, side, scene)
    return sides_meant(sheet, said.what, scene)[0]
