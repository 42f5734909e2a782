"""Consequences of an event → effects on counts, in the order of the sentence."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from compose.net.lower.builder import Builder, Key
from compose.net.lower.moment import Moment, queue_side, rest_key, side_of, who_moves
from compose.net.lower.room import has_limits, rooms_for
from compose.net.lower.targets_moved import fell, put_on_step, stepped, taken_over
from compose.net.lower.tokens import IN, OUT, player_place, roles_of
from compose.net.net import Assign, Effect, Move, Rule, Shift
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences import finish, when
from grammar.sentences.base import Np
from grammar.sentences.play import AllQueued, Queued, RestOnStep


@frozen
class Follows:
    """What follows from a rule at a moment: effects, and where the ball goes if the rule says so."""

    effects: tuple[Effect, ...]
    ball_to: Key | None
    words: str


def follow(builder: Builder, rule: when.When, moment: Moment, result_place: int | None) -> Follows:
    """The effects of all consequences of a rule."""
    effects: list[Effect] = []
    ball_to: Key | None = None
    source = builder.rule(rule)
    for consequence in rule.consequences:
        if isinstance(consequence, when.MovesTo) and _is_ball(builder, consequence.who):
            ball_to = rest_key(builder, consequence.place, moment)
        else:
            effects.extend(_effects(builder, consequence, moment, source, result_place))
    return Follows(tuple(effects), ball_to, " and ".join(_words(builder, each) for each in rule.consequences))


def _words(builder: Builder, consequence: when.Consequence) -> str:
    """The consequence as the sheet says it; somebody who finds no room stays, so that it may not come to pass."""
    where = _sent_to(consequence)
    ball = isinstance(consequence, when.MovesTo) and _is_ball(builder, consequence.who)
    if where is None or ball or not has_limits(builder, _area(builder, where)):
        return consequence.words()
    return f"{consequence.words()}, if there is room"


def _sent_to(consequence: when.Consequence) -> Np | None:
    """The place to which a consequence sends players, where it names one."""
    match consequence:
        case when.Waits():
            return consequence.where
        case when.MovesTo():
            return getattr(consequence.place, "where", None)
        case when.Joins() if isinstance(consequence.what, Np):
            return consequence.what
    return None


def _is_ball(builder: Builder, who: when.Who) -> bool:
    if not isinstance(who, Np):
        return False
    meaning = builder.game.meaning(who.name)
    return isinstance(meaning, KitMeaning | CategoryMeaning) and meaning.category == "ball"


def _effects(
    builder: Builder, consequence: when.Consequence, moment: Moment, rule: Rule, result_place: int | None
) -> Iterator[Effect]:
    match consequence:
        case when.StaysDown():
            yield from fell(builder, moment, rule)
        case when.Steps():
            yield from stepped(builder, consequence, moment, rule)
        case when.TakenOver():
            yield from taken_over(builder, consequence, moment, rule)
        case when.MovesTo() if isinstance(consequence.place, RestOnStep):
            yield from put_on_step(builder, consequence, consequence.place, moment, rule)
        case when.StandsUp():
            pass  # it never fell: what was knocked stands as before
        case when.Waits() | when.MovesTo() | when.Joins() | when.Out() | when.TurnsInto():
            yield from _moved(builder, consequence, moment, rule)
        case when.Returns():
            yield from _returned(builder, consequence.who, moment, rule)
        case when.ChangesPlaces():
            yield from _swapped(builder, consequence, moment, rule)
        case when.Scores():
            side = side_of(builder, consequence.side, moment)
            sign = 1 if consequence.verb == "scores" else -1
            yield Shift(builder.index(("points", side)), sign * consequence.points.whole, rule)
        case finish.SideWins() | when.SideLoses():
            assert result_place is not None
            side = side_of(builder, consequence.side, moment)
            if isinstance(consequence, when.SideLoses):
                side = builder.others(side)[0]
            yield Assign(result_place, builder.side_names.index(side) + 1, rule)
        case when.StartsAgain():
            for number, place in enumerate(builder.places.values()):
                if place.token in ("player", "ball", "target", "body"):
                    yield Assign(number, place.start, rule)


def _moved(
    builder: Builder,
    consequence: when.Waits | when.MovesTo | when.Joins | when.Out | when.TurnsInto,
    moment: Moment,
    rule: Rule,
) -> Iterator[Effect]:
    if not isinstance(consequence.who, Np):
        yield from _queue_moved(builder, consequence, moment, rule)
        return
    who = who_moves(builder, consequence.who, moment)
    if who is None:
        return
    side, role = who
    new_side, new_role, standing = _destination(builder, consequence, moment, side, role)
    source = player_place(builder, side, role, moment.mates_at or IN if _is_mate(builder, consequence.who) else IN)
    target = player_place(builder, new_side, new_role, standing)
    if source != target:
        yield Move(source, target, 1, rule, rooms_for(builder, new_side, new_role, standing))


def _is_mate(builder: Builder, who: Np) -> bool:
    return type(builder.game.meaning(who.name)).__name__ == "MateMeaning"


def _destination(
    builder: Builder, consequence: when.Consequence, moment: Moment, side: str, role: str | None
) -> tuple[str, str | None, str]:
    match consequence:
        case when.Out():
            return side, role, OUT
        case when.TurnsInto():
            meaning = builder.game.meaning(consequence.role.name)
            assert isinstance(meaning, PlayerMeaning)
            return meaning.side or side, meaning.role, IN
        case when.Waits() | when.MovesTo():
            where = _sent_to(consequence)
            return side, role, _area(builder, where) if where is not None else IN
        case when.Joins():
            if isinstance(consequence.what, Np):
                return side, role, _area(builder, consequence.what)
            if getattr(consequence.what, "other", None):
                return builder.others(side)[0], role, IN
            return side_of(builder, consequence.what, moment), role, IN
    return side, role, IN


def _area(builder: Builder, where: Np) -> str:
    meaning = builder.game.meaning(where.name)
    assert isinstance(meaning, PlaceMeaning)
    return IN if meaning.built_in else meaning.place


def _queue_moved(builder: Builder, consequence: when.Consequence, moment: Moment, rule: Rule) -> Iterator[Effect]:
    who = getattr(consequence, "who", None)
    if not isinstance(who, Queued | AllQueued):
        return
    side = queue_side(builder, who.where, moment, moment.other)
    queue = _area(builder, who.where)
    for role in _roles(builder, who, moment, side):
        new_side, new_role, standing = _destination(builder, consequence, moment, side, role)
        yield Move(
            player_place(builder, side, role, queue),
            player_place(builder, new_side, new_role, standing),
            1 if isinstance(who, Queued) else None,
            rule,
            rooms_for(builder, new_side, new_role, standing),
        )


def _roles(builder: Builder, who: Queued | AllQueued, moment: Moment, side: str) -> tuple[str | None, ...]:
    """The roles of those meant: of the first in line, where that is settled, else every role."""
    if isinstance(who, Queued) and moment.first is not None:
        return (None if moment.first == "-" else moment.first,)
    return roles_of(builder, side)


def _returned(builder: Builder, who: when.Who, moment: Moment, rule: Rule) -> Iterator[Effect]:
    if isinstance(who, Np):
        return  # that player goes straight back in: nothing changes hands
    queue = _area(builder, who.where)
    side = queue_side(builder, who.where, moment, moment.other)
    amount = None if isinstance(who, AllQueued) else 1
    for one_side in builder.side_names if who.where.determiner in ("each", "every") else (side,):
        for role in _roles(builder, who, moment, one_side):
            source = player_place(builder, one_side, role, queue)
            yield Move(source, player_place(builder, one_side, role, IN), amount, rule)


def _swapped(builder: Builder, consequence: when.ChangesPlaces, moment: Moment, rule: Rule) -> Iterator[Effect]:
    """Out goes the one, in comes the first who waits; with nobody waiting the one comes straight back.

    That needs no room, for each takes the place of another.
    """
    if isinstance(consequence.who, Np) and isinstance(consequence.other, AllQueued):
        yield from _all_swapped(builder, consequence.other, rule)
        return
    if not isinstance(consequence.who, Np) or not isinstance(consequence.other, Queued):
        return
    who = who_moves(builder, consequence.who, moment)
    if who is None:
        return
    side, role = who
    queue = player_place(builder, side, role, _area(builder, consequence.other.where))
    playing = player_place(builder, side, role, IN)
    yield Move(playing, queue, 1, rule)
    yield Move(queue, playing, 1, rule)


def _all_swapped(builder: Builder, queued: AllQueued, rule: Rule) -> Iterator[Effect]:
    """All who play go to the end of the queue, and as many as played at the start come in."""
    queue = _area(builder, queued.where)
    for side in builder.side_names:
        for role in roles_of(builder, side):
            playing, waiting = player_place(builder, side, role, IN), player_place(builder, side, role, queue)
            at_once = builder.places["player", side, role, IN].start
            yield Move(playing, waiting, None, rule)
            yield Move(waiting, playing, at_once, rule)
