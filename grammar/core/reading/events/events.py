"""Events → triggers: one for each side that acts and each owner who is concerned."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from grammar.core.fouls import Fouled
from grammar.core.guards import Compare, Points
from grammar.core.reading.events.event_phrases import (
    arriving,
    balls_of_event,
    carried_along,
    lines_crossed,
    only_the_court,
    players_against,
    players_of_event,
    reached,
)
from grammar.core.reading.events.stopped import caught, stopped
from grammar.core.reading.phrases.aims import open_to
from grammar.core.reading.phrases.carrying import touched_with, with_load
from grammar.core.reading.phrases.claims import read_claim
from grammar.core.reading.phrases.clock import read_moment, read_wait
from grammar.core.reading.phrases.rows import run_of
from grammar.core.reading.play.lives import last_lives
from grammar.core.reading.sheet.naming import named_in
from grammar.core.reading.sheet.pairs import pairs_of_event, parts_of
from grammar.core.reading.sheet.reader import ALL_SKILLS, Reader, with_which
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose_side
from grammar.core.rules import AllHold, Becomes, Happening, KeptFor, Result, Trigger
from grammar.core.values import KindId, Owner, Population, SideId, Sort
from grammar.frozen import evolve, field, frozen
from grammar.said import write
from grammar.sentences import claims, events, lives, time
from grammar.sentences.ball import Intercepted
from grammar.sentences.blocking import Blocked
from grammar.sentences.determiners import ONE
from grammar.sentences.fouls import Fouls
from grammar.sentences.runs import InARow

ON_PLAYERS = {events.Hit: Result.HIT, events.Touched: Result.TOUCHED, events.HitHigh: Result.HIGH}


@frozen
class Moment:
    """A trigger with who acted and who is concerned, as the consequences of the line speak of them.

    `actor` is None where nobody acted, `concerned` where of several sides it is not known which; `holder` is the side
    that a count-rule speaks of.
    """

    trigger: Trigger
    spoken: Spoken
    actor: SideId | None
    concerned: SideId | None
    of_each: SideId | None = field(default=None)

    @property
    def result(self) -> Result | None:
        return self.trigger.result if isinstance(self.trigger, Happening) else None


Narrowed = Callable[[Moment], Moment | None]


def of_anybody(moment: Moment) -> Moment | None:
    """The moment as it is."""
    return moment


def moments(reader: Reader, event: events.Event, of_whom: Narrowed = of_anybody) -> Iterator[Moment]:
    """All triggers of an event, with what its words mean in each; of attempts only those `of_whom` a line speaks."""
    match event:
        case events.Becomes():
            yield from _becoming(reader, event.claim)
        case InARow():
            yield from _runs(reader, event)
        case lives.LastLife():
            for side, trigger, spoken in last_lives(reader, event):
                yield Moment(trigger, spoken, None, side, side)
        case time.AfterTime() | time.EveryTime() | time.HalfTime():
            yield Moment(read_moment(reader, event), Spoken(reader.side_ids), None, None)
        case Fouls():
            yield from _fouls(reader, event)
        case events.EveryoneHolds():
            held_s = read_wait(reader, event.time, event.time)
            everybody = frozenset(reader.populations(reader.side_ids))
            yield Moment(AllHold(everybody, held_s), Spoken(reader.side_ids), None, None)
        case events.HeldLong():
            balls, limit = frozenset(reader.balls(event.what)), read_wait(reader, event.limit, event.limit)
            for side in reader.side_ids:
                yield _kept(reader, side, balls, limit)
        case _:
            for pairs in (pairs_of_event(reader, event), reader.all_pairs):
                every = [each for pair in pairs for each in _of_attempts(reader, event, *pair)]
                if found := [each for each in map(of_whom, every) if each is not None]:
                    yield from found
                    return


def _runs(reader: Reader, event: InARow) -> Iterator[Moment]:
    """So many successes of a side in a row: side by side."""
    for side in reader.side_ids:
        others, own = reader.others(side), frozenset({side})
        spoken = Spoken(reader.side_ids, own=own, that=own, other=others or None, parts={Whose.ACTOR: own})
        one = next(iter(others)) if len(others) == 1 else None
        yield Moment(run_of(reader, event, side), spoken, side, one, side)


def _fouls(reader: Reader, event: Fouls) -> Iterator[Moment]:
    """A player in play of each side that is meant, against each other side. Raises Senseless."""
    said, role = reader.player_phrase(event.who)
    if said.whose not in (Whose.UNSAID, Whose.NAMED, Whose.ONE_EACH, Whose.ANY):
        raise Senseless(event.who, "`{said}`: of nobody has been spoken.", write("a player fouls"))
    meant = Spoken(reader.side_ids).meant(said, reader.all_sides)
    for side in (each for each in reader.side_ids if each in meant and reader.of_role([each], role)):
        others, who = reader.others(side), frozenset(reader.of_role([side], role))
        for other in (each for each in reader.side_ids if each in others):
            yield Moment(Fouled(who, frozenset({other})), _against_nobody(reader, side, other), side, other)
        if not others:
            yield Moment(Fouled(who, frozenset()), _against_nobody(reader, side, None), side, None)


def _kept(reader: Reader, side: SideId, balls: frozenset[KindId], limit_s: Fraction) -> Moment:
    others = reader.others(side)
    concerned = next(iter(others)) if len(others) == 1 else None
    trigger = KeptFor(frozenset(reader.populations([side])), balls, limit_s)
    return Moment(trigger, _against_nobody(reader, side, concerned), side, concerned)


def _becoming(reader: Reader, claim: claims.Claim) -> Iterator[Moment]:
    """For each side in turn where it speaks of "a side", else for the one that it names."""
    one = isinstance(claim.quantity, claims.AllOf) and claim.quantity.determiner in ONE and claim.than is None
    for side, spoken in each_spoken_of(reader, claim):
        guard = read_claim(reader, claim, spoken)
        each = one and isinstance(guard, Compare) and not isinstance(guard.count, Points)
        yield Moment(Becomes(guard, each), _one_other(reader, spoken, side), None, None, side)


def each_spoken_of(reader: Reader, claim: claims.Claim) -> Iterator[tuple[SideId | None, Spoken]]:
    """The sides of which a claim speaks in turn, with what "it" and "the other side" mean then."""
    said = whose_side(reader.game, claim.side)
    if said.whose is Whose.NAMED:
        assert said.side is not None
        yield said.side, reader.of_one(said.side)
    elif said.whose is Whose.ANY:
        for side in reader.side_ids:
            yield side, reader.of_one(side)
    elif said.whose is Whose.ONE_EACH:
        yield None, Spoken(reader.side_ids)
    else:
        raise Senseless(claim.side, "`{said}`: of no side has been spoken.", write("a side", "name one."))


def _one_other(reader: Reader, spoken: Spoken, side: SideId | None) -> Spoken:
    """In consequences "the other side" is one side."""
    others = reader.others(side) if side else frozenset()
    return evolve(spoken, other=others if len(others) == 1 else None)


def _spoken(reader: Reader, actor: SideId, concerned: SideId | None, result: Result | None) -> Spoken:
    one = frozenset({concerned}) if concerned else None
    others = reader.others(actor)
    other = one if concerned not in (None, actor) else (others if len(others) == 1 else None)
    parts = parts_of(frozenset({result}) if result else frozenset(), actor, one)
    return Spoken(reader.side_ids, own=None, that=one, other=other, parts=parts)


def _against_nobody(reader: Reader, actor: SideId, other: SideId | None) -> Spoken:
    """Where a side does something to nobody "that side" could be its own or the other one: neither is meant."""
    return evolve(_spoken(reader, actor, other, None), that=None)


def _of_attempts(reader: Reader, event: events.Event, side: SideId, against: Owner) -> Iterator[Moment]:
    happening = _happening(reader, event, side, against)
    if happening is None:
        return
    happening = evolve(happening, named=named_in(reader, event))
    if isinstance(against, SideId):
        concerned: SideId | None = against
    else:
        others = reader.others(side) or frozenset({side})
        concerned = next(iter(others)) if len(others) == 1 else None
    yield Moment(happening, _spoken(reader, side, concerned, happening.result), side, concerned)


def _seen_by(reader: Reader, side: SideId) -> Spoken:
    """Who the words of an event mean while a side acts."""
    return Spoken(reader.side_ids, other=reader.others(side) or None, parts={Whose.ACTOR: frozenset({side})})


def _happening(reader: Reader, event: events.Event, side: SideId, against: Owner) -> Happening | None:
    """What has to happen, where the event can happen between these two at all."""
    by = frozenset(reader.populations([side]))
    owner = frozenset({against})
    spoken = _seen_by(reader, side)
    anybody = reader.all_sides
    no_ball: frozenset[KindId | None] = frozenset({None})
    any_ball = no_ball | frozenset(kind.id for kind in reader.kinds if kind.sort is Sort.BALL)
    match event:
        case events.Knocked():
            things = reader.thing_phrase(event.what, spoken, anybody, Sort.TARGET, Sort.BODY)
            to = frozenset(thing for thing in things if thing.owner == against)
            return Happening(Result.KNOCKED, by, ALL_SKILLS, any_ball, owner, to) if to else None
        case events.Hit() | events.Touched() | events.HitHigh():
            meant = frozenset(players_of_event(reader, event.who, spoken)) & frozenset(players_against(reader, against))
            hit, holding = _who_of_them(reader, event, meant)
            result = ON_PLAYERS[type(event)]
            return Happening(result, by, ALL_SKILLS, any_ball, owner, hit, holding=holding) if hit else None
        case events.GoesThrough():
            rings = reader.thing_phrase(event.through, spoken, anybody, *open_to(isinstance(event, events.GoesInto)))
            through = frozenset(ring for ring in rings if ring.owner == against)
            balls = balls_of_event(reader, event.what)
            return Happening(Result.THROUGH, by, ALL_SKILLS, balls, owner, through) if through else None
        case events.Crosses():
            lines = frozenset(line for line in lines_crossed(reader, event.line, spoken) if line.owner == against)
            balls = balls_of_event(reader, event.what)
            return Happening(Result.CROSSED, by, ALL_SKILLS, balls, owner, lines) if lines else None
        case events.Arrives():
            along, goals = carried_along(reader, event.who, spoken), reached(reader, event.where, spoken)
            balls, to = along or (any_ball, frozenset())
            who = by if along is not None else arriving(reader, event.who, spoken) & by
            arrived = Happening(Result.ARRIVED, who, ALL_SKILLS, balls or any_ball, frozenset(), to, reaching=goals)
            return arrived if who else None
        case events.Caught():
            return caught(reader, event, side, against, spoken)
        case Blocked() | Intercepted():
            return stopped(reader, event, by, owner)
        case events.Missed() | events.Leaves():
            if isinstance(event, events.Leaves):
                only_the_court(reader, event.where)
            result = Result.MISSED if isinstance(event, events.Missed) else Result.LEFT
            skills, balls = with_which(reader, event.what)
            return Happening(result, by, skills, balls, owner)
    raise TypeError(type(event).__name__)


def _who_of_them(
    reader: Reader, event: events.Hit | events.Touched | events.HitHigh, meant: frozenset[Population]
) -> tuple[frozenset[Population], frozenset[KindId]]:
    """Of those to whom it happens who carries what the line says; or all, and the balls of which they have one."""
    load = None if isinstance(event, events.HitHigh) else event.load
    holding = touched_with(reader, load) if isinstance(event, events.Touched) else frozenset[KindId]()
    return (meant if holding else with_load(reader, meant, load)), holding
