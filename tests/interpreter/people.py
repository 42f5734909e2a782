"""Which pupils a consequence speaks of, and in which queue: every way in which it can be meant."""

from __future__ import annotations

from grammar.sentences import queues, then
from grammar.sentences.base import Np, Owner
from tests.interpreter.board import Board, Pupil, Spot
from tests.interpreter.by_whom import acts_by_name, done_by_name
from tests.interpreter.deeds import CAUGHT, REACHED
from tests.interpreter.events import Scene
from tests.interpreter.frozen import any_of_them, frozen_of, means_frozen
from tests.interpreter.names import Folk, Mate, Part
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of, spots_of
from tests.interpreter.whose import ANY, EVERY, OTHERS, OWN, SPOKEN, UNSAID, Of, whose

Chosen = tuple[int, ...]


def people(sheet: Sheet, who: then.Who, scene: Scene, board: Board, mover: str | None = None) -> list[Chosen]:
    """The pupils meant; several ways where it may be one or another. `mover` is the side of who changes places."""
    if isinstance(who, queues.Queued | queues.AllQueued):
        there = _in_line(sheet, who.where, scene, board, mover)
        if isinstance(who, queues.AllQueued):
            return [tuple(there)]
        return several_of(sheet, there, who, board) or [()]
    if (meant := means_frozen(sheet, who)) is not None:
        there = frozen_of(sheet, meant, queue_sides(sheet, who, scene, mover), board)
        everybody = who.determiner in ("all", "each", "every")
        return [tuple(there)] if everybody else [(each,) for each in any_of_them(there, board)] or [()]
    if who.determiner in ("all", "each", "every"):
        return [tuple(_everybody(sheet, who, scene, board))]
    return [(each,) for each in _one(sheet, who, scene, board)] or [()]


def several_of(sheet: Sheet, there: list[int], who: queues.Queued, board: Board) -> list[Chosen]:
    """The first of those in line, or the first so many; those of whom more than one is meant are alike."""
    number = who.number.whole if who.number is not None else 1
    if number == 1:
        return [(each,) for each in next_of(sheet, there, who.end, board)]
    return [tuple(there[-number:] if who.end == "last" else there[:number])]


def next_of(sheet: Sheet, there: list[int], end: str, board: Board) -> list[int]:
    """Whose turn it is of those in line; where nobody knows the order, one of each side and role may be that one."""
    if sheet.orderly:
        return there[-1:] if end == "last" else there[:1]
    return list({_kind(board.pupils[number]): number for number in there}.values())


def _kind(pupil: Pupil) -> tuple[object, ...]:
    return pupil.side, pupil.role, pupil.lives


def _in_line(sheet: Sheet, phrase: Np, scene: Scene, board: Board, mover: str | None) -> list[int]:
    sides = queue_sides(sheet, phrase, scene, mover)
    there = board.waiting(spots_of(sheet, None, phrase, sides))
    shared = None in sheet.owners_of(place_of(sheet, phrase))
    if shared and whose(sheet, phrase) != UNSAID:
        return [each for each in there if board.pupils[each].side in sides]
    return there


def queue_sides(sheet: Sheet, phrase: Np, scene: Scene, mover: str | None) -> tuple[str, ...]:
    """Whose queue is meant: without an owner that of who changes places, of who acted or of who caught."""
    said = whose(sheet, phrase)
    if isinstance(said, Of):
        return (said.side,)
    if isinstance(said, Part):
        found = {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[said.part]
    elif said in (EVERY, ANY):
        return sheet.sides
    elif said == OTHERS and isinstance(phrase.owner, Owner) and phrase.owner.determiner in ("each", "every", "all"):
        return sheet.others(scene.actor_side)
    elif said == OTHERS:
        found = scene.other
    elif said in (OWN, SPOKEN):
        found = scene.it
    elif scene.everybody:
        return sheet.sides
    else:
        found = mover or (scene.catching if _caught(scene) else scene.actor_side or scene.it)
    assert found is not None, f"nobody's {phrase.words()}"
    return (found,)


def _caught(scene: Scene) -> bool:
    deed = scene.deed
    return deed is not None and (deed.outcome == CAUGHT or (deed.aim.what == "mate" and deed.outcome == REACHED))


def _everybody(sheet: Sheet, who: Np, scene: Scene, board: Board) -> list[int]:
    folk = sheet.folk(who)
    assert folk is not None, who.words()
    return board.playing(sides_of_all(sheet, who, scene), folk.role)


def sides_of_all(sheet: Sheet, who: Np, scene: Scene) -> tuple[str, ...]:
    """The sides of which all players are meant."""
    folk, said = sheet.folk(who), whose(sheet, who)
    assert folk is not None, who.words()
    if folk.side is not None:
        return (folk.side,)
    if isinstance(said, Of):
        return (said.side,)
    if isinstance(said, Part):
        found = {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[said.part]
    elif (who.owner is not None and said in (EVERY, ANY)) or scene.everybody:
        return sheet.sides
    else:
        found = scene.other if said == OTHERS else scene.it
    return (found,) if found else ()


def _one(sheet: Sheet, who: Np, scene: Scene, board: Board) -> list[int]:
    deed, meant = scene.deed, sheet.meaning(who.name)
    if who.determiner in ("its", "their") or meant == Part("keeper"):
        found: dict[object, int] = {}
        for number in board.playing((scene.keeping,) if scene.keeping else ()):
            found.setdefault(board.pupils[number], number)
        return list(found.values())
    if scene.loser is not None:
        return [scene.loser]
    if deed is None:
        return []
    if isinstance(meant, Part):
        chosen = deed.actor if meant.part == "actor" else deed.catcher
    elif acts_by_name(sheet, who, deed) or done_by_name(sheet, who, deed) == "actor":
        chosen = deed.actor
    elif done_by_name(sheet, who, deed) is not None:
        chosen = deed.catcher
    elif deed.aim.what == "way":  # who came to a place, by the name of their side
        chosen = deed.actor
    else:
        assert isinstance(meant, Folk | Mate), who.words()
        chosen = deed.aim.mate if isinstance(meant, Mate) or deed.aim.what == "mate" else deed.aim.hit
    return [] if chosen is None else [chosen]


def where_to(sheet: Sheet, phrase: Np, side: str, scene: Scene) -> Spot:
    """The area to which a pupil of a side is sent: one's own where nobody else's is said."""
    said = whose(sheet, phrase)
    if isinstance(said, Of):
        owner: str | None = said.side
    elif isinstance(said, Part):
        owner = {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[said.part]
    elif said == OTHERS:
        owner = other_than(sheet, side, scene)
    else:
        owner = scene.it if said == SPOKEN else side
    return spots_of(sheet, None, phrase, (owner or side,))[0]


def other_than(sheet: Sheet, side: str, scene: Scene) -> str:
    """The other side for somebody who goes over: that of who acted for the side concerned, else the concerned one."""
    against = scene.actor_side if scene.other == side else scene.other
    found = against or sheet.only_other(side)
    assert found is not None, "which other side?"
    return found


def waits_there(sheet: Sheet, where: Np, pupil: Pupil) -> bool:
    """Whether a pupil waits where a line says; "their" and "of the other side" are said of whoever waits."""
    own = pupil.side if whose(sheet, where) in (OWN, OTHERS) else None
    return pupil.where in spots_of(sheet, None, where, owners_meant(sheet, where, own))


@remembered
def owners_meant(sheet: Sheet, phrase: Np, own: str | None) -> tuple[str, ...]:
    """Whose places a line means that is said for a side (None: by the teacher, for all)."""
    said = whose(sheet, phrase)
    if isinstance(said, Of):
        return (said.side,)
    if own is None or said == EVERY:
        return sheet.sides
    return sheet.others(own) if said == OTHERS else (own,)
