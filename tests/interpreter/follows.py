"""What follows from a deed: the ball flies, and the rules that apply change what is on the board."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from attrs import evolve

from grammar.meanings import AgentMeaning, KitMeaning
from grammar.sentences import finish, play, when
from grammar.sentences.base import Np
from tests.interpreter.applying import about_balls, applying, rests
from tests.interpreter.board import IN, OUT, RESULT, Counts, ball, move, player, points, step, target
from tests.interpreter.claims import points_matter_to
from tests.interpreter.deeds import Deed
from tests.interpreter.room import how_many_may_go
from tests.interpreter.set_up import set_up
from tests.interpreter.sheet import Sheet


def carried_out(sheet: Sheet, deed: Deed, before: Counts) -> Iterator[Counts]:
    """The counts after a deed: first the ball flies, then the rules are followed in their order.

    A ball may stop in several places, each of which is one way to go on. Where somebody is first in a line,
    anybody who waited in it may be that one.
    """
    rules = applying(sheet, deed, before)
    spots = rests(sheet, deed, rules) if deed.ball is not None else [None]
    for first, spot in itertools.product(_may_be_first(sheet, rules, deed, before), spots):
        counts = dict(before)
        if deed.ball is not None and spot is not None:
            move(counts, ball(*deed.ball), ball(deed.ball[0], spot))
        for rule in rules:
            follow(sheet, rule, evolve(deed, first=first), counts)
        yield counts


def _may_be_first(
    sheet: Sheet, rules: list[when.When], deed: Deed, counts: Counts
) -> list[tuple[str | None, ...] | None]:
    """The role of each who may be first in the line that the rules speak of; None where nobody waited there."""
    for rule in rules:
        for said in rule.consequences:
            who = getattr(said, "who", None)
            if isinstance(who, play.Queued):
                (side, *_), queue = queue_sides(sheet, who.where, deed), sheet.area(who.where)
                waiting = [(role,) for role in sheet.roles(side) if counts.get(player(side, role, queue), 0)]
                return [*waiting] or [None]
    return [None]


def follow(sheet: Sheet, rule: when.When, deed: Deed, counts: Counts) -> None:
    """All that a rule says, in its order; where the ball goes is settled before."""
    for consequence in rule.consequences:
        if not about_balls(sheet, consequence):
            _change(sheet, consequence, deed, counts)


def _change(sheet: Sheet, said: when.Consequence, deed: Deed, counts: Counts) -> None:
    match said:
        case when.StaysDown() if deed.thing is not None and deed.step is None:
            standing = target(deed.thing, deed.owner, "standing")
            move(counts, standing, target(deed.thing, deed.owner, "down"))
        case when.TakenOver() if deed.thing is not None:
            side = sheet.side_in(said.side, deed.side, deed.other, deed.parts)
            move(counts, target(deed.thing, deed.owner, "standing"), target(deed.thing, side, "standing"))
        case when.Steps() if deed.thing is not None and deed.step is not None:
            _step(sheet, said, deed, counts)
        case when.MovesTo() if isinstance(said.place, play.RestOnStep):
            _put_on_step(sheet, said, said.place, deed, counts)
        case when.Waits() | when.MovesTo() | when.Joins() | when.Out() | when.TurnsInto() | when.Returns():
            _players_go(sheet, said, deed, counts)
        case when.ChangesPlaces():
            _change_places(sheet, said, deed, counts)
        case when.Scores():
            side = sheet.side_in(said.side, deed.side, deed.other, deed.parts)
            by = said.points.whole if said.verb == "scores" else -said.points.whole
            now = counts.get(points(side), 0) + by
            counts[points(side)] = min(max(now, 0), points_matter_to(sheet))
        case finish.SideWins() | when.SideLoses():
            side = sheet.side_in(said.side, deed.side, deed.other, deed.parts)
            winner = side if isinstance(said, finish.SideWins) else sheet.others(side)[0]
            counts[RESULT] = sheet.sides.index(winner) + 1
        case when.StartsAgain():
            scored = {name: count for name, count in counts.items() if name.startswith(("points/", RESULT))}
            counts.clear()
            counts.update(set_up(sheet) | scored)


def _step(sheet: Sheet, said: when.Steps, deed: Deed, counts: Counts) -> None:
    assert deed.thing is not None and deed.step is not None
    found = sheet.track(deed.thing)
    assert found is not None
    track, _ = found
    goal = _one_player(sheet, said.towards, deed)
    home = goal[0] if goal is not None else sheet.whose(said.towards, deed.side, deed.other, deed.parts)
    towards_start = (home == track.start) == (said.direction == "towards")
    by = -said.by.whole if towards_start else said.by.whole
    move(counts, step(deed.thing, deed.step), step(deed.thing, min(max(deed.step + by, 0), track.steps)))


def _put_on_step(sheet: Sheet, said: when.MovesTo, place: play.RestOnStep, deed: Deed, counts: Counts) -> None:
    """From where it was hit; where a count brought it about, from the home of the side spoken of."""
    assert isinstance(said.who, Np)
    meaning = sheet.game.meaning(said.who.name)
    assert isinstance(meaning, KitMeaning)
    found = sheet.track(meaning.key)
    assert found is not None
    home = 0 if found[0].start == deed.side else found[0].steps
    here = home if deed.step is None else deed.step
    move(counts, step(meaning.key, here), step(meaning.key, place.step.whole))


def _one_player(sheet: Sheet, phrase: Np, deed: Deed) -> tuple[str, str | None] | None:
    """Side and role of the one player whom a phrase means."""
    meaning = sheet.game.meaning(phrase.name)
    if isinstance(meaning, AgentMeaning):
        return (deed.side, deed.role) if meaning.part == "actor" else (deed.other, deed.hit_role)
    if sheet.is_mate(phrase):
        return deed.side, None
    return (deed.other, deed.hit_role) if sheet.players_meant(phrase) is not None else None


Going = when.Waits | when.MovesTo | when.Joins | when.Out | when.TurnsInto | when.Returns


def _players_go(sheet: Sheet, said: Going, deed: Deed, counts: Counts) -> None:
    for side, role, where, most in _movers(sheet, said, deed):
        goal = _goal(sheet, said, side, role, deed)
        room = how_many_may_go(sheet, *goal, counts)
        if (side, role, where) != goal:
            bounds = [bound for bound in (most, room) if bound is not None]
            move(counts, player(side, role, where), player(*goal), min(bounds, default=None))


def _movers(sheet: Sheet, said: Going, deed: Deed) -> Iterator[tuple[str, str | None, str, int | None]]:
    """Side, role, where they are, and how many of them go (None: all)."""
    if isinstance(said.who, Np):
        who = _one_player(sheet, said.who, deed)
        if who is not None and not isinstance(said, when.Returns):
            on_bench = sheet.is_mate(said.who) and deed.place is not None
            yield (*who, deed.place or IN if on_bench else IN, 1)
        return
    most = 1 if isinstance(said.who, play.Queued) else None
    for side in queue_sides(sheet, said.who.where, deed):
        for role in sheet.roles(side) if most is None or deed.first is None else deed.first:
            yield side, role, sheet.area(said.who.where), most


def queue_sides(sheet: Sheet, phrase: Np, deed: Deed) -> tuple[str, ...]:
    """Whose queue a phrase means: without an owner that of the player hit."""
    if phrase.determiner in ("each", "every"):
        return sheet.sides
    if phrase.possessive or phrase.owner is not None or phrase.other:
        return (sheet.whose(phrase, deed.other, deed.other, deed.parts),)
    return (deed.other,)


def _goal(sheet: Sheet, said: Going, side: str, role: str | None, deed: Deed) -> tuple[str, str | None, str]:
    match said:
        case when.Out():
            return side, role, OUT
        case when.TurnsInto():
            into = sheet.players_meant(said.role)
            assert into is not None
            return into.side or side, into.role, IN
        case when.Waits():
            return side, role, sheet.area(said.where)
        case when.MovesTo():
            where = getattr(said.place, "where", None)
            return side, role, sheet.area(where) if where is not None else IN
        case when.Joins():
            if isinstance(said.what, Np):
                return side, role, sheet.area(said.what)
            other = getattr(said.what, "other", None)
            new = sheet.others(side)[0] if other else sheet.side_in(said.what, deed.side, deed.other, deed.parts)
            return new, role, IN
    return side, role, IN


def _change_places(sheet: Sheet, said: when.ChangesPlaces, deed: Deed, counts: Counts) -> None:
    if not isinstance(said.who, Np) or isinstance(said.other, Np):
        return
    queue = sheet.area(said.other.where)
    if isinstance(said.other, play.Queued):
        who = _one_player(sheet, said.who, deed)
        if who is not None:
            move(counts, player(*who, IN), player(*who, queue))
            move(counts, player(*who, queue), player(*who, IN))
        return
    begin = set_up(sheet)
    for side in sheet.sides:
        for role in sheet.roles(side):
            playing, waiting = player(side, role, IN), player(side, role, queue)
            move(counts, playing, waiting, None)
            move(counts, waiting, playing, begin.get(playing, 0))
