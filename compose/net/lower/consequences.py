"""Effects of the core → effects on counts, for persons that are settled."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import assert_never

from compose.net.lower.builder import Builder
from compose.net.lower.carrying import set_down
from compose.net.lower.cast import Stand, lives_left, waiting_stands, with_lives
from compose.net.lower.dispatch import Case
from compose.net.lower.lives import left_at
from compose.net.lower.own_ground import own_part
from compose.net.lower.room import rooms_for
from compose.net.lower.tokens import (
    ball_place,
    balls_lying,
    in_play,
    line_place,
    place_reached,
    player_place,
    points_place,
    step_place,
    store_place,
    target_place,
)
from compose.net.lower.whereabouts import who_waits
from compose.net.net import Assign, Effect, Move, Rule, Shift
from compose.net.outcome import Moment
from grammar.core import rules as core
from grammar.core.clock import ComeIn, TakeAway, TakeEffect
from grammar.core.loads import Lies, SetDown
from grammar.core.play import Turn, Waiting
from grammar.core.values import (
    PLAIN,
    SAME,
    At,
    Laden,
    Population,
    Posture,
    Presence,
    Thing,
)

Persons = Mapping[core.Person | Waiting, Stand | None]


def counted(
    builder: Builder, effect: core.Effect, moment: Moment | None, persons: Persons, rule: Rule
) -> Iterator[Effect]:
    """What an effect does to the counts, in its order. The landing of the event's ball is not among it."""
    match effect:
        case core.Put() | core.Own() | core.Shift() | core.PutOnStep():
            yield from _of_thing(builder, effect, moment, rule)
        case core.StandAgain():
            for thing in sorted(effect.things, key=repr):
                down, up = (target_place(builder, thing, posture) for posture in (Posture.DOWN, Posture.UP))
                yield Move(down, up, None if effect.all else 1, rule)
        case core.Go():
            yield from _gone(builder, effect, persons, rule)
        case core.Swap():
            yield from _swapped(builder, effect, persons, rule)
        case core.SendBalls():
            for kind in sorted(effect.balls):
                target = ball_place(builder, kind, effect.to)
                theirs = (ball_place(builder, kind, own_part(builder.play, effect.of)),) if effect.of else ()
                for source in theirs or balls_lying(builder, kind):
                    if source != target:
                        yield Move(source, target, None if effect.all else 1, rule)
        case TakeAway():
            for kind in sorted(effect.balls):
                yield from (Move(lying, store_place(builder, kind), None, rule) for lying in balls_lying(builder, kind))
        case TakeEffect():
            yield Assign(line_place(builder, effect.line), 1, rule)
        case core.Add():
            yield Shift(points_place(builder, effect.side), effect.points, rule)
        case core.Finish():
            assert builder.result_place is not None
            yield Assign(builder.result_place, builder.play.side_ids.index(effect.winner) + 1, rule)
        case core.StartAgain():
            for number, place in enumerate(builder.places):
                if place.token in ("player", "ball", "store", "load", "target", "body", "row", "runs"):
                    yield Assign(number, place.start, rule)
        case core.SendBall() | core.PlayOn() | core.Nothing() | SetDown() | ComeIn() | core.LifeOf():
            return
        case _:
            assert_never(effect)


def leaves_a_task(effect: core.Effect) -> bool:
    """Whether somebody gives up a role: so that there is room in it for who takes it over, this comes first."""
    return isinstance(effect, core.Go) and effect.becomes.role is PLAIN


def _of_thing(
    builder: Builder,
    effect: core.Put | core.Own | core.Shift | core.PutOnStep,
    moment: Moment | None,
    rule: Rule,
) -> Iterator[Move]:
    """It falls or stands, changes its owner, or moves along its track; at an end of the track it stays."""
    if isinstance(effect, core.PutOnStep):
        step = moment.step if moment is not None and effect.source is None else None
        source = effect.source.step if effect.source is not None else step
        if source is not None and source != effect.to.step:
            kind = effect.thing.kind
            yield Move(step_place(builder, kind, source), step_place(builder, kind, effect.to.step), 1, rule)
        return
    if moment is None or moment.thing is None:
        return
    thing, step = moment.thing, moment.step
    if isinstance(effect, core.Shift):
        track = builder.play.track_of(thing.kind)
        if track is not None and step is not None:
            there = min(max(step + effect.steps, 0), track.steps)
            if there != step:
                yield Move(step_place(builder, thing.kind, step), step_place(builder, thing.kind, there), 1, rule)
        return
    if step is not None:
        return
    standing = target_place(builder, thing, Posture.UP)
    if isinstance(effect, core.Own):
        if effect.side != thing.owner:
            yield Move(standing, target_place(builder, Thing(thing.kind, effect.side), Posture.UP), 1, rule)
    elif effect.posture is Posture.DOWN:
        yield Move(standing, target_place(builder, thing, Posture.DOWN), 1, rule)


def _gone(builder: Builder, effect: core.Go, persons: Persons, rule: Rule) -> Iterator[Move]:
    who = effect.who
    if isinstance(who, core.AllPlaying):
        yield from _all_set_down(builder, who, rule)
        stands: list[Stand] = [
            stand
            for each in free_players(builder)
            if each in who.who
            for stand in with_lives(builder, each, Presence.PLAYING)
        ]
        amount = None
    elif isinstance(who, Waiting) and who.turn is Turn.ALL:
        stands, amount = list(waiting_stands(builder, who)), None
    else:
        stand = persons.get(who)
        stands, amount = ([stand] if stand else []), who.count if isinstance(who, Waiting) else 1
    last = isinstance(who, Waiting) and who.turn is Turn.LAST
    for each in stands:
        yield from _moved(builder, each, effect, amount, rule, last)


def _all_set_down(builder: Builder, who: core.AllPlaying, rule: Rule) -> Iterator[Move]:
    """All who carry something set it down before they go; it goes back."""
    for each in builder.play.populations():
        if each in who.who and isinstance(each.role, Laden):
            yield from set_down(builder, each, Lies.BACK, None, rule)


def free_players(builder: Builder) -> list[Population]:
    """The populations that carry nothing."""
    return [each for each in builder.play.populations() if not isinstance(each.role, Laden)]


def _moved(
    builder: Builder,
    stand: Stand,
    effect: core.Go,
    amount: int | None,
    rule: Rule,
    last: bool,
) -> Iterator[Move]:
    who = stand[0]
    there = changed(builder, who, effect.becomes)
    source, target = player_place(builder, *stand), place_reached(builder, there, effect.to, lives_left(stand))
    if source != target:
        yield Move(source, target, amount, rule, rooms_for(builder, who, there, effect.to), last)


def lives_changed(builder: Builder, case: Case, persons: dict[core.Person | Waiting, Stand | None]) -> Iterator[Move]:
    """Lives come and go before anybody goes anywhere. Changes in `persons` how many they have.

    What comes of the last one is said by a rule of its own.
    """
    for effect, rule in case.effects:
        stand = persons.get(effect.who) if isinstance(effect, core.LifeOf) else None
        lives = lives_left(stand) if stand is not None else None
        if stand is None or not lives or not isinstance(effect, core.LifeOf):
            continue
        then = left_at(builder.play, builder.kept, stand[0], stand[1], lives + effect.by)
        if then is not None and then != lives:
            persons[effect.who] = changed_stand = (stand[0], stand[1], then)
            source, target = player_place(builder, *stand), player_place(builder, *changed_stand)
            yield Move(source, target, 1, builder.rule(rule.lines))


def changed(builder: Builder, who: Population, becomes: core.Becoming) -> Population:
    """Who somebody turns into; a side that has no such role takes them without one."""
    side = who.side if becomes.side is SAME else becomes.side
    role = who.role if becomes.role is SAME else becomes.role
    there = Population(side, role)
    return there if there in builder.play.populations(side) else Population(side, PLAIN)


def _swapped(builder: Builder, effect: core.Swap, persons: Persons, rule: Rule) -> Iterator[Move]:
    """Out goes the one, in comes the other; passer and mate exchange tasks, too. It needs no room.

    With nobody waiting the one comes straight back.
    """
    if isinstance(effect.who, core.AllPlaying):
        yield from _all_swapped(builder, effect, rule)
        return
    one, other = persons.get(effect.who), persons.get(effect.other)
    if one is None or other is None:
        return
    if one[1] is Presence.PLAYING and other[1] is Presence.PLAYING:
        yield Move(player_place(builder, *one), place_reached(builder, other[0], one[1], lives_left(one)), 1, rule)
        yield Move(player_place(builder, *other), place_reached(builder, one[0], other[1], lives_left(other)), 1, rule)
        return
    tasks = (other[0], one[0]) if effect.other is core.Person.MATE else (one[0], other[0])
    yield Move(player_place(builder, *one), place_reached(builder, tasks[0], other[1], lives_left(one)), 1, rule)
    last = isinstance(effect.other, Waiting) and effect.other.turn is Turn.LAST
    came = place_reached(builder, tasks[1], one[1], lives_left(other))
    yield Move(player_place(builder, *other), came, 1, rule, (), last)


def _all_swapped(builder: Builder, effect: core.Swap, rule: Rule) -> Iterator[Move]:
    """All who play go to the end of the queue, and as many as played at the start come in; or so many as is said."""
    assert isinstance(effect.who, core.AllPlaying) and isinstance(effect.other, Waiting)
    yield from _all_set_down(builder, effect.who, rule)
    for who, spot in who_waits(builder, effect.other):
        if who in effect.who.who:
            playing, waiting = player_place(builder, who, Presence.PLAYING), player_place(builder, who, At(spot))
            yield from (Move(place, waiting, effect.number, rule) for place in in_play(builder, who))
            yield Move(waiting, playing, effect.number or builder.places[playing].start, rule)
