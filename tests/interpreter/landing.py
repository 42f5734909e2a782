"""Where a ball comes to rest: as a rule says that holds, else as the most particular line of resting balls."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import attempting, ball, resting, then, when
from grammar.sentences.base import Np
from tests.interpreter.board import AT, Spot
from tests.interpreter.catching import means_ball
from tests.interpreter.deeds import BLOCKED, CAUGHT, HIGH, LEFT, MISSED, REACHED, TOUCHING, Deed
from tests.interpreter.events import Scene, Settled
from tests.interpreter.names import OWNED_PLACES, Folk, Part, Stuff, is_keeper
from tests.interpreter.plainly import Loose
from tests.interpreter.sheet import Place, Sheet
from tests.interpreter.spots import half, of_task, place_of, spot, spots_of, stands
from tests.interpreter.whose import ACTING, EVERY, OTHERS, OWN, SPOKEN, UNSAID, Of, Whose, side_said, whose


def landings(sheet: Sheet, deed: Deed, scene: Scene, settled: list[Settled]) -> list[Spot]:
    """Every spot where the ball of a deed may come to rest."""
    meant_for_own = deed.aim.sent == deed.side or deed.aim.what == "mate"
    sent = scene.catching if deed.outcome == CAUGHT and meant_for_own else deed.aim.sent  # they have it on their side
    for each in settled:
        if isinstance(each.said, then.MovesTo) and about_balls(sheet, each.said):
            return [goal(sheet, each.said.place, scene, sent, rule=True)]
        if isinstance(each.said, then.GoesBack) and about_balls(sheet, each.said):
            return [_back(sheet, each.said.where, scene)]
    if deed.skill == TOUCHING:  # whoever has it keeps it
        return [deed.came] if deed.came is not None else []
    if deed.aim.what == "way" and not (deed.aim.in_hand and deed.outcome == REACHED):
        # what did not arrive, or goes to and fro, lies where it was
        there = deed.aim.spot if deed.aim.carried_for_good and deed.outcome == REACHED else deed.came
        return [there] if there is not None else []
    line, own = _line(sheet, deed)
    loose = sheet.held and not own and line.state == "missed"
    rest = Spot("court", AT, None) if loose else goal(sheet, line.place, scene, sent, rule=False)
    flew = deed.outcome in (MISSED, HIGH) or (deed.outcome == REACHED and deed.aim.what not in ("mate", "way"))
    if not flew or rest.place not in ("half", "court") or not _is_a_place(sheet, line.place):
        return [rest]
    return [rest, *_unfollowed(sheet, rest, deed)]


def _is_a_place(sheet: Sheet, place: resting.RestingPlace) -> bool:
    """Whether a ball comes to lie there, anywhere in it; whoever has it again, or is given it, has it in the hands."""
    if isinstance(place, ball.RestTo):
        meant = sheet.meaning(place.where.name)
        return not isinstance(meant, Folk | Part) and sheet.side_meant(meant) is None
    return isinstance(place, resting.RestInHalf | resting.RestToHalf | resting.RestThere)


def about_balls(sheet: Sheet, said: when.Consequence) -> bool:
    """Whether a consequence sends balls somewhere."""
    if isinstance(said, then.GoesBack):
        return not sheet.is_taken(said.what)
    if not isinstance(said, then.MovesTo) or not isinstance(said.who, Np):
        return False
    meant = sheet.meaning(said.who.name)
    return isinstance(meant, Stuff) and meant.category == "ball"


def _back(sheet: Sheet, where: Np | None, scene: Scene) -> Spot:
    """Where the side that sent a ball has it again: with its others, or in its own place of that name."""
    if where is None or isinstance(sheet.meaning(where.name), Stuff):
        return half(sheet, scene.actor_side)
    return spot(sheet, None, where, scene.actor_side)


def _line(sheet: Sheet, deed: Deed) -> tuple[resting.Rest, bool]:
    """The sheet's own line before what is granted, a state before none, a named ball before any, one that
    is not of what lies loose before one that is, then the first.

    With it comes whether it is the sheet's own.
    """
    state = {BLOCKED: "blocked", CAUGHT: "caught", MISSED: "missed", LEFT: "missed", HIGH: "missed"}.get(
        deed.outcome, "passed" if deed.aim.what == "mate" else "scored"
    )
    for own in (True, False):
        lines = sheet.said(resting.Rest, granted=not own)
        fitting = [
            line
            for line in lines
            if line.state in (None, state) and means_ball(sheet, line.ball, deed.skill, deed.kind)
        ]
        if fitting:
            return max(fitting, key=lambda line: _particular(sheet, line)), own
    raise LookupError(f"nothing says where a {state} ball rests")


def _particular(sheet: Sheet, line: resting.Rest) -> tuple[bool, bool, bool]:
    return line.state is not None, _named(sheet, line), not isinstance(line, Loose)


def _named(sheet: Sheet, line: resting.Rest) -> bool:
    meant = sheet.meaning(line.ball)
    return isinstance(meant, Stuff) and (meant.named or bool(meant.skills))


def goal(sheet: Sheet, place: resting.RestingPlace, scene: Scene, sent: str | None, rule: bool) -> Spot:
    """The spot that a phrase such as "in the half it was sent to" means.

    Without an owner it is that of the side to which the ball was sent, or of the side spoken of.
    """
    if isinstance(place, resting.RestInHalf | resting.RestToHalf):
        if place.which == "half it came from" or (place.which == "half it left" and not _left(scene)):
            return half(sheet, scene.actor_side)
        return half(sheet, sent)
    if isinstance(place, resting.RestBack):
        return _back(sheet, place.where, scene)
    if isinstance(place, resting.RestInside):
        assert scene.deed is not None
        aim = scene.deed.aim  # whosever thing it went into
        return Spot("inside", AT, None if aim.of_nobody else aim.concerned)
    if isinstance(place, ball.KeptBy):
        return goal(sheet, place.whom, scene, sent, rule)
    if isinstance(place, ball.RestToSide):
        return half(sheet, _taking(sheet, side_said(sheet, place.side), scene))
    assert isinstance(place, resting.RestThere | ball.RestTo)
    meant = sheet.meaning(place.where.name) if isinstance(place, ball.RestTo) else None
    if isinstance(meant, Folk) and meant.role is not None and meant.role not in ACTING:
        return of_task(sheet, _their_side(sheet, place, meant, scene), meant.role)
    if isinstance(meant, Part):
        return half(sheet, _taking(sheet, meant, scene))
    if meant is not None and (named := sheet.side_meant(meant)) is not None:
        return half(sheet, named)
    preposition = place.preposition if isinstance(place, resting.RestThere) else None
    side = _owner(whose(sheet, place.where), scene, sent, rule)
    return spot(sheet, preposition, place.where, side)


def _their_side(sheet: Sheet, place: resting.RestingPlace, meant: Folk, scene: Scene) -> str | None:
    """The side of those with a task: as the phrase says, else of keepers that of what is kept, or the only one."""
    assert isinstance(place, ball.RestTo)
    said = whose(sheet, place.where)
    if said != UNSAID:
        return _taking(sheet, said, scene)
    only = sheet.roles[str(meant.role)].sides
    deed = scene.deed
    kept = deed is not None and deed.outcome in (REACHED, BLOCKED, HIGH) and deed.aim.what != "mate"
    return only[0] if len(only) == 1 and not (is_keeper(meant) and kept) else scene.keeping


def _taking(sheet: Sheet, said: Whose, scene: Scene) -> str | None:
    """The side that has a ball which goes to it: "the other side" is never that of who sent it."""
    if isinstance(said, Of):
        return said.side
    if isinstance(said, Part):
        return {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[said.part]
    if said == OTHERS:
        own = scene.actor_side
        if scene.deed is not None and scene.deed.skill == TOUCHING:
            return own  # the ball is that of whoever is touched
        other = scene.other if scene.other != own else None
        return other or (sheet.only_other(own) if own else None)
    return scene.it


def _left(scene: Scene) -> bool:
    return scene.deed is not None and scene.deed.outcome == LEFT


def _owner(said: Whose, scene: Scene, sent: str | None, rule: bool) -> str | None:
    if isinstance(said, Of):
        return said.side
    if isinstance(said, Part):
        return {"actor": scene.actor_side, "catcher": scene.catching, "keeper": scene.keeping}[said.part]
    if said == OTHERS:
        return scene.other if rule else sent
    if said in (OWN, SPOKEN):
        return scene.it
    assert said != EVERY, "a ball comes to rest in one place"
    return sent if scene.deed is not None else scene.it


def _unfollowed(sheet: Sheet, rest: Spot, deed: Deed) -> list[Spot]:
    """Where nobody follows a ball: areas where nobody enters or fetches, and behind lines where nobody fetches."""
    lines = [line for line in sheet.said(resting.NobodyFetches) if deed.kind in sheet.stuff(line.what).kinds]
    left = {spot for line in lines for spot in _left_lying(sheet, line)}
    past = deed.outcome == REACHED and deed.aim.what in ("line", "ring")
    found = [
        spot
        for each in (() if past else sheet.places.values())
        for spot in _parts_of(sheet, each, rest)
        if each.shut or spot in left
    ]
    sides = (deed.aim.sent,) if deed.aim.sent else sheet.sides
    found.extend(each for each in _with_who_waits(sheet, rest, deed, past, sides) if each not in found)
    for line in lines:
        if place_of(sheet, line.where) in ("back line", "side line", "wall", "corner"):
            found.extend(each for each in _left_lying(sheet, line) if each.owner in sides)
    return found


def _left_lying(sheet: Sheet, line: resting.NobodyFetches) -> Iterator[Spot]:
    said = whose(sheet, line.where)
    yield from spots_of(sheet, line.preposition, line.where, (said.side,) if isinstance(said, Of) else sheet.sides)


def _with_who_waits(sheet: Sheet, rest: Spot, deed: Deed, past: bool, sides: tuple[str, ...]) -> Iterator[Spot]:
    """Where those wait who may send such a ball from there: areas of the half, and those that lie behind it."""
    for line in sheet.said(attempting.Attempt):
        if line.where is None or deed.kind not in _kinds_of(sheet, line):
            continue
        area = sheet.places[place_of(sheet, line.where)]
        inside = area.preposition in ("before", "across", "along", "around")
        for there in dict.fromkeys(each for side in sheet.sides for each in stands(sheet, line.where, side)):
            if inside and there in _parts_of(sheet, area, rest):
                yield from () if past else (there,)
            elif there.owner in (*sides, None):
                yield there


def _kinds_of(sheet: Sheet, line: attempting.Attempt) -> frozenset[str]:
    """The balls of a line; of a role that has a ball of its own, that one, too."""
    assert line.ball is not None
    own = (role.uses for role in sheet.roles.values() if role.uses is not None)
    return sheet.stuff(line.ball).kinds.union(*own)


def _parts_of(sheet: Sheet, area: Place, rest: Spot) -> list[Spot]:
    """The parts of a half, or of the court, that an area takes."""
    if area.preposition not in ("before", "across", "along", "around"):
        return []
    if area.owners == (None,) and area.by in OWNED_PLACES and rest.owner not in (None, sheet.sides[-1]):
        return []  # the one that is for all lies at the end of the side named last
    owners = area.owners if rest.owner is None else [owner for owner in area.owners if owner in (rest.owner, None)]
    return [Spot(area.name, "at", owner) for owner in owners]
