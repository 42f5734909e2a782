"""Which rules speak of what happened, how narrowly, and which of several holds for each thing that they settle."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from grammar.sentences import events, finish, lives, queues, sets, then, when
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import AnySide, Np, SideRef
from grammar.sentences.blocking import Blocked
from grammar.sentences.time import TheFirstTime
from tests.interpreter.board import Board, Spot
from tests.interpreter.by_whom import acts_by_name, by_whom, done_by_name
from tests.interpreter.catching import by_other_side
from tests.interpreter.claims import Spoken, true
from tests.interpreter.deeds import BLOCKED, CAUGHT, HIGH, LEFT, MISSED, REACHED, TOUCHING, Deed
from tests.interpreter.frozen import means_frozen
from tests.interpreter.hours import first_time, holds_now
from tests.interpreter.names import Part, Stuff
from tests.interpreter.narrow import of_ball, of_hit, of_mate, of_place, of_thing, of_who_arrives, plays_on
from tests.interpreter.plainly import More
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of
from tests.interpreter.whose import EVERY, OTHERS, Of, side_said, whose


@frozen
class Scene:
    """What happened, for whoever asks "who is that player": a deed, a ball held too long, or a count come true.

    `it` is the side spoken of: whose thing it is, who was hit, or who has what the rule counts; `having` the side whose
    ball it is where nobody sends one.
    """

    it: str | None
    other: str | None
    actor_side: str | None = None
    catching: str | None = None
    keeping: str | None = None
    deed: Deed | None = None
    everybody: bool = False
    loser: int | None = None
    having: str | None = None


@frozen
class Taking:
    """A line that holds only the first time takes effect."""

    line: str


def taking(sheet: Sheet, rule: when.When) -> tuple[Taking, ...]:
    """What a line that holds only the first time does besides."""
    return (Taking(first_time(sheet, rule)),) if isinstance(rule.span_of_time, TheFirstTime) else ()


@frozen
class Settled:
    """One consequence that holds; points only for the sides of which no other rule says more."""

    said: when.Consequence | Taking
    scoring: frozenset[str] | None = None


def scene_of(sheet: Sheet, deed: Deed, board: Board) -> Scene:
    """The scene of a deed."""
    aim = deed.aim
    owner = board.things[aim.thing].owner if aim.thing is not None else None
    keeping = board.pupils[aim.hit].side if aim.hit is not None else owner or aim.concerned
    catching = board.pupils[deed.catcher].side if deed.catcher is not None else None
    concerned = catching if deed.outcome == CAUGHT else owner or aim.concerned
    concerned = deed.side if aim.what in ("way", "mate") and deed.outcome == REACHED else concerned
    own = concerned == deed.side and not sheet.solo
    return Scene(concerned, sheet.only_other(deed.side) if own else concerned, deed.side, catching, keeping, deed)


def holding(sheet: Sheet, scene: Scene, rules: list[tuple[when.When, bool, int]], board: Board) -> list[Settled]:
    """The consequences that hold, of rules with whether they are the sheet's own and how narrow their event is.

    For what two of them would settle the own one holds before the granted, the narrower before the wider, one with
    "while" before one without, and of these the first of the sheet.
    """
    spoken = Spoken(
        scene.it,
        (scene.other,) if scene.other else (),
        True,
        (("actor", scene.actor_side), ("catcher", scene.catching), ("keeper", scene.keeping)),
    )
    best: dict[object, tuple[tuple[bool, int, bool, int], int]] = {}
    found: list[tuple[int, object, when.Consequence | Taking]] = []
    now = [
        (order, rule, own, narrow, rule.condition is not None or rule.span_of_time is not None)
        for order, (rule, own, narrow) in enumerate(rules)
        if (rule.condition is None or true(sheet, rule.condition, spoken, board)) and holds_now(sheet, rule, board)
    ]
    nothing = max((each[3:] for each in now if each[2] and plays_on(each[1])), default=(-1, False))
    for order, rule, own, narrow, sometimes in now:
        if own and (narrow, sometimes) < nothing:
            continue
        rank = (own, narrow, sometimes, -order)
        for said in (*rule.consequences, *taking(sheet, rule)):
            for settles in slots(sheet, said, scene, board):
                found.append((order, settles, said))
                if settles not in best or rank > best[settles][0]:
                    best[settles] = (rank, order)
    lost = {id(said) for order, settles, said in found if best[settles][1] != order}
    held: dict[int, Settled] = {}
    for order, settles, said in found:
        if isinstance(said, then.Scores) and not isinstance(said, More) and best[settles][1] == order:
            so_far = held[id(said)].scoring if id(said) in held else None
            held[id(said)] = Settled(said, (so_far or frozenset()) | {str(settles)})
        elif (isinstance(said, More) or not isinstance(said, then.Scores)) and id(said) not in lost:
            held[id(said)] = Settled(said)
    return list(held.values())


def slots(sheet: Sheet, said: when.Consequence | Taking, scene: Scene, board: Board) -> Iterator[object]:
    """What a consequence settles."""
    match said:
        case Taking():
            yield ("line", said.line)
        case then.StaysDown() | sets.StaysAsItIs() | then.StandsUp() | then.TakenOver() | then.Steps():
            yield "thing"
        case then.MovesTo(who=Np() as who) if isinstance(meant := sheet.meaning(who.name), Stuff):
            word = {"ball": "ball", "load": "load"}.get(meant.category, "thing")
            yield (word, who.words() if scene.deed is None else "")
        case sets.StandAgain():
            yield ("down", said.what.words())
        case then.ComesIn() | then.TakenAway():
            balls = said.name if isinstance(said, then.ComesIn) else said.who
            yield from (("balls", kind) for kind in sorted(sheet.stuff(balls).kinds))
        case then.PlaysOn():
            yield from (("person", "hit"), ("lives", ("person", "hit")))
        case lives.LosesLife() | lives.WinsLife():
            yield ("lives", _person(sheet, said.who, scene))
        case More():
            yield from (("more", side) for side in sides_meant(sheet, said.side, scene))
        case then.Drops() | then.GoesBack():
            yield "load" if isinstance(said, then.Drops) or sheet.is_taken(said.what) else ("ball", "")
        case then.Scores():
            yield from sides_meant(sheet, said.side, scene)
        case finish.SideWins() | finish.SideLoses():
            yield "result"
        case then.StartsAgain():
            yield "everything"
        case then.ChangesPlaces():
            yield from (_person(sheet, said.who, scene), _person(sheet, said.other, scene))
        case _:
            yield _person(sheet, said.who, scene)


def sides_meant(sheet: Sheet, phrase: AnySide, scene: Scene) -> tuple[str, ...]:
    """The sides that a consequence speaks of."""
    said = side_said(sheet, phrase)
    if isinstance(said, Of):
        return (said.side,)
    if isinstance(phrase, SideRef) and phrase.other and phrase.determiner in ("each", "every", "all"):
        return sheet.others(scene.actor_side)
    if said == EVERY:
        return sheet.sides
    if isinstance(said, Part):
        found = {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[said.part]
    elif said == OTHERS:
        found = scene.other
    else:
        found = scene.it
    assert found is not None, f"nobody is meant by {phrase}"
    return (found,)


def _person(sheet: Sheet, who: then.Who, scene: Scene) -> object:
    if isinstance(who, queues.Queued | queues.AllQueued):
        return ("queue", place_of(sheet, who.where), whose(sheet, who.where))
    if who.determiner in ("all", "each", "every") or means_frozen(sheet, who) is not None:
        return ("all", who.words())
    meant = sheet.meaning(who.name)
    if who.determiner in ("its", "their"):
        return ("person", "keeper")
    if acts_by_name(sheet, who, scene.deed):
        return ("person", "actor")
    if (by := done_by_name(sheet, who, scene.deed)) is not None:
        return ("person", by)
    return ("person", meant.part if isinstance(meant, Part) else "hit")


def rules_for(sheet: Sheet, deed: Deed, board: Board) -> list[tuple[when.When, bool, int]]:
    """The rules that speak of a deed, the sheet's own first, each with how narrowly it does."""
    found = []
    for granted in (False, True):
        for rule in sheet.said(when.When, granted=granted):
            narrow = speaks_of(sheet, rule.event, deed, board)
            there = _from_there(sheet, rule.whence, deed, board) if narrow is not None else None
            doer = by_whom(sheet, rule, deed, board) if there is not None else None
            if rule.bounced is not None:
                there = there + 1 if deed.bounced and there is not None else None
            if narrow is not None and there is not None and doer is not None:
                found.append((rule, not granted, narrow + there + doer))
    return found


def _from_there(sheet: Sheet, whence: Np | when.Afar | None, deed: Deed, board: Board) -> int | None:
    """How narrowly a line speaks of where somebody acted from; None where they were not there."""
    if whence is None:
        return 0
    if isinstance(whence, when.Afar):
        return 1 if deed.from_m is not None and deed.from_m >= whence.distance.metres else None
    where = board.pupils[deed.actor].where
    return of_place(sheet, whence, where, deed) if isinstance(where, Spot) else None


def speaks_of(sheet: Sheet, event: events.Event, deed: Deed, board: Board) -> int | None:
    """How narrowly an event speaks of a deed: the number of things that it names; None where it does not."""
    aim, fact = deed.aim, (deed.aim.what, deed.outcome)
    match event:
        case events.Knocked() if fact == ("target", REACHED):
            return of_thing(sheet, event.what, deed, board)
        case events.Hit() | events.Touched() if fact == ("player", REACHED):
            of_touches = isinstance(event, events.Touched) == (deed.skill == TOUCHING)
            return of_hit(sheet, event.who, event.load, deed, board) if of_touches else None
        case events.HitHigh() if fact == ("player", HIGH):
            return of_hit(sheet, event.who, None, deed, board)
        case Intercepted() if deed.outcome == CAUGHT and deed.skill == "pass":
            spoken_of = of_ball(sheet, event.what, deed)
            return None if spoken_of is None else 1 + sheet.stuff(event.what).named
        case events.Caught() if by_other_side(sheet, event) and deed.outcome == CAUGHT:
            return of_ball(sheet, event.what, deed)
        case events.Caught() if not by_other_side(sheet, event) and fact == ("mate", REACHED):
            there = of_mate(sheet, event.where, deed, board)
            ball = of_ball(sheet, event.what, deed)
            return ball + there if ball is not None and there is not None else None
        case events.Missed() if deed.outcome == MISSED and deed.ball is not None:
            return of_ball(sheet, event.what, deed)
        case Blocked() if deed.outcome == BLOCKED:
            return of_ball(sheet, event.what, deed)
        case events.Leaves() if deed.outcome == LEFT:
            return of_ball(sheet, event.what, deed)
        case events.GoesThrough() if fact == ("ring", REACHED):
            ball, ring = of_ball(sheet, event.what, deed), of_thing(sheet, event.through, deed, board)
            return ball + ring if ball is not None and ring is not None else None
        case events.Crosses() if fact == ("line", REACHED):
            ball, line = of_ball(sheet, event.what, deed), of_place(sheet, event.line, aim.spot, deed)
            return ball + line if ball is not None and line is not None else None
        case events.Arrives() if fact == ("way", REACHED):
            there = 0 if event.where is None else of_place(sheet, event.where, aim.spot, deed)
            arriving = of_who_arrives(sheet, event, deed, board)
            return arriving + there if arriving is not None and there is not None else None
    return None
