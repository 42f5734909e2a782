"""Who is said to gain by what others do to them, or by their own fouls: hardly anybody means that."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.ends import Most, Verdict, Won
from grammar.core.fouls import Fouled
from grammar.core.game import Core, Play
from grammar.core.guards import ALWAYS, Compare, Count, Guard, PlayersAt, Points, Relation, ThingsAt
from grammar.core.play import AtThing
from grammar.core.rules import Add, Becomes, Finish, Go, Happening, KeptFor, Person, Result, Rule, Shift, Swap
from grammar.core.values import OnStep, Population, Posture, Presence, SideId
from grammar.finding import Finding, Severity

CODE = "N-own-down"
SUCCESS = (Result.KNOCKED, Result.HIT, Result.TOUCHED, Result.THROUGH, Result.CROSSED, Result.ARRIVED)
FAILED = (Result.MISSED, Result.LEFT, Result.HIGH)
LOW = frozenset({Relation.AT_MOST, Relation.EQUAL})


def own_down(core: Core) -> Iterator[Finding]:
    """A warning for each such line."""
    play, bell = core.play, core.play.bell
    said = [(end.verdicts, end.lines) for end in (*play.ends, *((bell,) if bell else ()))]
    ahead = [lines[0] for verdicts, lines in said if any(_ahead_by_falling(play, v) for v in verdicts)]
    lost = ((end, _who_lost(play, end.guard)) for end in play.ends)
    wins = [end.lines[0] for end, side in lost if side is not None and Won(side) in end.verdicts]
    gains = [rule.lines[0] for rule in play.rules if _gains_by_being_hit(play, rule)]
    fouls = [rule.lines[0] for rule in play.rules if _gains_by_a_foul(play, rule)]
    for line in dict.fromkeys(ahead):
        title = "A side is ahead here when more of its own things are down: when it was hit more often."
        hint = "Write, such as: more lanterns standing wins. Or give points for each that falls."
        yield Finding(CODE, Severity.WARNING, title, core.lines[line].span, hint)
    for line in dict.fromkeys((*wins, *gains)):
        title = "A side gains here by what others do to it: whoever is hit more often, or driven back, is ahead."
        hint = "Let the other side gain by it, or let each side aim at what is its own."
        if line in gains:
            hint = (
                'Let the side of who does it gain, such as "the thrower\'s side scores 1 point": "the other side" is, '
                "in what follows, the one against who acted."
            )
        yield Finding(CODE, Severity.WARNING, title, core.lines[line].span, hint)
    for line in dict.fromkeys(fouls):
        title = "A side gains here by its own fouls or misses: it need not even play well."
        hint = 'Let the other side gain by it: "the other side scores 1 point".'
        yield Finding(CODE, Severity.WARNING, title, core.lines[line].span, hint)
    for line in dict.fromkeys(rule.lines[0] for rule in play.rules if _costs_by_success(play, rule)):
        title = "A side loses here by what it does well: each success of its own costs it."
        hint = "Let more points win; or give the point to the side to which it is done."
        yield Finding(CODE, Severity.WARNING, title, core.lines[line].span, hint)


def _ahead_by_falling(play: Play, verdict: Verdict) -> bool:
    if not isinstance(verdict, Most):
        return False
    posture = Posture.DOWN if verdict.more else Posture.UP
    return any(_owner(play, count, posture) == side for side, count in verdict.counts)


def _owner(play: Play, count: Count, posture: Posture) -> SideId | None:
    """The side whose things are counted in that posture, if only others knock them over."""
    if not isinstance(count, ThingsAt) or count.at != {posture}:
        return None
    owners = {thing.owner for thing in count.of}
    owner = next(iter(owners)) if len(owners) == 1 else None
    aims = ((offer.by.side, attempt.aim) for offer, attempt in play.tries)
    by = {side for side, aim in aims if isinstance(aim, AtThing) and aim.thing in count.of}
    return owner if isinstance(owner, SideId) and by and owner not in by else None


def _who_lost(play: Play, guard: Guard) -> SideId | None:
    """The side of whose things few stand, or many lie, where a guard holds that asks for nothing else."""
    if not isinstance(guard, Compare):
        return None
    if isinstance(guard.count, PlayersAt):
        return _who_is_driven_out(play, guard.count, guard.relation)
    if isinstance(guard.count, ThingsAt) and guard.relation is not Relation.AT_MOST:
        home = _who_is_driven_home(play, guard.count)
        if home is not None:
            return home
    low = guard.relation in LOW and (guard.relation is Relation.AT_MOST or guard.bound == 0)
    high = guard.relation is not Relation.AT_MOST
    return (_owner(play, guard.count, Posture.UP) if low else None) or (
        _owner(play, guard.count, Posture.DOWN) if high else None
    )


def _who_is_driven_out(play: Play, count: PlayersAt, relation: Relation) -> SideId | None:
    """The side few of whose players are in, if nothing but a hit by others sends anybody away."""
    sides = {who.side for who in count.of}
    away = [(rule, each) for rule in play.rules for each in rule.effects if isinstance(each, Go | Swap)]
    away = [(rule, each) for rule, each in away if isinstance(each, Swap) or each.to is not Presence.PLAYING]
    hit = {_who_is_hit(play, rule) for rule, each in away if each.who is Person.OBJECT}
    only_so = all(each.who is Person.OBJECT and _who_is_hit(play, rule) for rule, each in away)
    low = count.at == {Presence.PLAYING} and relation is not Relation.AT_LEAST
    return next(iter(sides)) if low and only_so and len(sides) == 1 and sides <= hit else None


def _who_is_driven_home(play: Play, count: ThingsAt) -> SideId | None:
    """The side that has no part in bringing things to an end of a track, where only the other brings them there."""
    tracks = {track.id: track for track in play.tracks}
    homes = {(at.track, at.step) for at in count.at if isinstance(at, OnStep)}
    found = [(tracks[track], step) for track, step in homes if step in (0, tracks[track].steps)]
    if len(found) != 1 or len(count.at) != 1:
        return None
    track, step = found[0]
    moved = ((rule.trigger, each) for rule in play.rules for each in rule.effects if isinstance(each, Shift))
    bringing = [trigger for trigger, each in moved if (each.steps > 0) == (step > 0)]
    by = {who.side for trigger in bringing if isinstance(trigger, Happening) for who in trigger.by}
    without = [side for side in track.homes if side not in by]
    return without[0] if len(without) == 1 and all(isinstance(each, Happening) for each in bringing) else None


def _gains_by_being_hit(play: Play, rule: Rule) -> bool:
    """One that no condition makes a penalty, in a game where hitting gains nothing either."""
    lost = _who_is_hit(play, rule)
    if lost is None or rule.guard != ALWAYS:
        return False
    if any(_gained_by_success(play, side) > 0 for side in play.side_ids):
        return False
    return _gains_most(play, rule, lost)


def _gains_by_a_foul(play: Play, rule: Rule) -> bool:
    """Whether whoever fouls, keeps a ball too long or misses gains by it more than by any success."""
    trigger = rule.trigger
    by = trigger.who if isinstance(trigger, Fouled | KeptFor) else frozenset()
    if isinstance(trigger, Happening) and trigger.result in FAILED:
        by = trigger.by
    sides = {who.side for who in by}
    side = next(iter(sides)) if len(sides) == 1 else None
    if side is None or rule.guard != ALWAYS or not _gains_most(play, rule, side):
        return False
    return not isinstance(trigger, Happening) or _gain(rule, side) > _gained_by_success(play, side)


def _costs_by_success(play: Play, rule: Rule) -> bool:
    """Whether a side has points by its own success where whoever has many loses."""
    trigger = rule.trigger
    if not isinstance(trigger, Happening) or trigger.result not in SUCCESS or rule.guard != ALWAYS:
        return False
    sides = {who.side for who in trigger.by}
    mine, theirs = (
        max((_gain(rule, side) for side in play.side_ids if (side in sides) == own), default=0) for own in (True, False)
    )
    return mine > max(0, theirs) and not _points_are_good(play)


def _gains_most(play: Play, rule: Rule, side: SideId) -> bool:
    """Whether a rule is good for a side, and better than for any other."""
    others = max((_gain(rule, other) for other in play.side_ids if other != side), default=0)
    return Finish(side) in rule.effects or (_gain(rule, side) > max(0, others) and _points_are_good(play))


def _gained_by_success(play: Play, side: SideId) -> int:
    """The most that a side gets by one success of its own."""
    done = ((each, each.trigger) for each in play.rules if isinstance(each.trigger, Happening))
    gained = (_gain(each, side) for each, what in done if what.result in SUCCESS and _by(what, side))
    return max(gained, default=0)


def _by(trigger: Happening, side: SideId) -> bool:
    return any(who.side == side for who in trigger.by)


def _gain(rule: Rule, side: SideId) -> int:
    """The points of a side by a rule; the win is worth one."""
    points = sum(each.points for each in rule.effects if isinstance(each, Add) and each.side == side)
    return points + (Finish(side) in rule.effects)


def _who_is_hit(play: Play, rule: Rule) -> SideId | None:
    """The side to which another does something where a rule holds."""
    trigger = rule.trigger
    if isinstance(trigger, Becomes):
        return _who_lost(play, trigger.guard)
    if not isinstance(trigger, Happening) or trigger.result not in SUCCESS:
        return None
    acting = {who.side for who in trigger.by}
    if trigger.result is Result.ARRIVED:
        sides: set[object] = {side for side in play.side_ids if side not in acting}
    else:
        sides = {to.side if isinstance(to, Population) else to.owner for to in trigger.to}
    side = next(iter(sides)) if len(sides) == 1 else None
    return side if isinstance(side, SideId) and side not in acting else None


def _points_are_good(play: Play) -> bool:
    """Whether no line lets fewer points win, or whoever has so many lose."""
    bell = play.bell.verdicts if play.bell else ()
    verdicts = (*bell, *(verdict for end in play.ends for verdict in end.verdicts))
    asked = [each for each in verdicts if isinstance(each, Most)]
    ends = [(end.guard, verdict.side) for end in play.ends for verdict in end.verdicts if isinstance(verdict, Won)]
    for rule in play.rules:
        if isinstance(rule.trigger, Becomes):
            ends += [(rule.trigger.guard, each.winner) for each in rule.effects if isinstance(each, Finish)]
    lost = any(_points_of(guard) not in (None, winner) for guard, winner in ends)
    fewer = any(not each.more and any(isinstance(count, Points) for _, count in each.counts) for each in asked)
    return not lost and not fewer


def _points_of(guard: Guard) -> SideId | None:
    """The side that must have so many points where a guard holds that asks for nothing else."""
    if not isinstance(guard, Compare) or not isinstance(guard.count, Points) or guard.bound == 0:
        return None  # who must have none is no worse off for having some
    return guard.count.side if guard.relation is not Relation.AT_MOST else None
