"""An attempt in numbers: skill, distance, size, and what the text itself says of chance and pace."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import prod

from attrs import evolve

from compose.net.attempt import Attempt
from compose.net.lower.builder import Builder
from compose.net.lower.heights import share_safe, sizes_m
from compose.net.lower.tokens import how_many, in_play
from compose.net.lower.unread import grows
from compose.net.outcome import Moment
from compose.staging.floor.distance import reach, run_m
from grammar.core.factor import Of
from grammar.core.game import Play
from grammar.core.limits import Valid, counts_by_bounce
from grammar.core.play import Aim, AtPlayers, AtThing, Guarding, Offer, Order, Through, ToMate
from grammar.core.rules import Happening, Result
from grammar.core.skills import BOUNCING
from grammar.core.values import At, KindId, OnStep, Skill

BELOW = (Valid.BELOW_SHOULDER, Valid.BELOW_HIP, Valid.BELOW_KNEE)
HITS = {Valid.DIRECT_HIT: "floor", Valid.NO_WALL_HIT: "wall"}
CATCHES = {Valid.DIRECT_CATCH: "floor", Valid.NO_WALL_CATCH: "wall"}
KINDS_OF_AIM = {
    Result.KNOCKED: "target",
    Result.HIT: "player",
    Result.TOUCHED: "player",
    Result.THROUGH: "ring",
    Result.CROSSED: "line",
    Result.PASSED: "mate",
    Result.ARRIVED: "none",
    Result.TAKEN: "none",
}


def attempt_of(builder: Builder, offer: Offer, moment: Moment) -> Attempt:
    """What the forecast needs to know of an attempt: by which skill, at what, from how far, and what is said."""
    assert moment.skill is not None and moment.aim is not None and moment.result is not None
    figures, play, aim = offer.figures, builder.play, moment.aim
    width_m, height_m = _size(builder, moment.thing.kind if moment.thing else None)
    taken = moment.ball if moment.result is Result.TAKEN else None
    used, thing = None if taken else moment.ball, taken or (moment.thing.kind if moment.thing else None)
    return Attempt(
        name=builder.core.lines[offer.lines[0]].words,
        skill=moment.skill.value,
        ball=play.kind(used).like.key if used else None,
        aim=KINDS_OF_AIM[moment.result],
        target=play.kind(thing).like.key if thing else None,
        distance_m=_distance_m(builder, offer, moment),
        width_m=width_m,
        height_m=height_m,
        said_chance=_number(figures.chance),
        said_catch=_number(figures.caught),
        said_per_minute=_number(figures.per_minute),
        catchable=can_be_caught(builder, offer, moment),
        age_years=ages_years(builder),
        chance_factor=_factor(builder, Of.SUCCESS) * _in_the_open(builder, offer, moment),
        pace_factor=_factor(builder, Of.TIME),
        hold_limit_s=min((float(hold.limit_s) for hold in play.holds if hold.ball == moment.ball), default=None),
        guards_most=_guards(builder, moment),
        after_bounce=_after_bounce(builder, moment),
        below=_below(builder, moment),
        said_bounced=_number(figures.bounced),
        ruled_out=_ruled_out(builder, moment, CATCHES if isinstance(aim, ToMate) else HITS),
        catches_ruled_out=_ruled_out(builder, moment, CATCHES) if can_be_caught(builder, offer, moment) else (),
        steps_most=min((each.most for each in play.steps if each.ball == moment.ball), default=None),
        in_order=isinstance(moment.aim, AtThing) and moment.aim.order is Order.IN_ORDER,
        in_turn=bool(offer.at_once) and moment.result is Result.ARRIVED and moment.skill is Skill.RUN,
    )


def _after_bounce(builder: Builder, moment: Moment) -> bool:
    """Whether it flies at something, and only counts after a bounce."""
    assert moment.skill is not None and moment.aim is not None
    flies = counts_by_bounce(moment.skill, moment.aim)
    return flies and any(each.valid is Valid.AFTER_BOUNCE for each in builder.play.valid)


def _ruled_out(builder: Builder, moment: Moment, ways: Mapping[Valid, str]) -> tuple[str, ...]:
    """By what it may come that does not count: by the floor where it flies, by a wall."""
    may = {"floor": can_bounce(moment), "wall": _is_sent(moment)}
    hit = moment.person if isinstance(moment.aim, AtPlayers) else moment.thing
    said = {each.valid for each in builder.play.valid if each.rules_out(hit)}
    return tuple(way for valid, way in ways.items() if valid in said and may[way])


def can_bounce(moment: Moment) -> bool:
    """Whether a ball flies to somebody or something and may touch the floor before."""
    return _is_sent(moment) and moment.skill in BOUNCING


def _is_sent(moment: Moment) -> bool:
    """Whether a ball goes to somebody or something, on the floor or through the air."""
    return moment.ball is not None and isinstance(moment.aim, AtThing | AtPlayers | Through | ToMate)


def _below(builder: Builder, moment: Moment) -> str | None:
    """Below which part of the body a hit counts: the lowest of which the sheet speaks."""
    if not isinstance(moment.aim, AtPlayers) or moment.ball is None:
        return None
    said = [each.valid for each in builder.play.valid if each.valid in BELOW]
    return max(said, key=list(Valid).index).value if said else None


def _in_the_open(builder: Builder, offer: Offer, moment: Moment) -> float:
    """How much of the time whoever is to be touched or hit is not safe; a chance of the sheet's own has that in it."""
    if not isinstance(moment.aim, AtPlayers) or moment.person is None or offer.figures.chance is not None:
        return 1.0
    return 1.0 - share_safe(builder, moment.by, moment.person, moment.skill)


def _distance_m(builder: Builder, offer: Offer, moment: Moment) -> float:
    """From where this population aims to where this thing stands, or this team-mate is, now."""
    aim = moment.aim
    assert aim is not None
    if moment.skill is Skill.TOUCH:
        return 0.0  # the norm of a chase counts the way
    if isinstance(aim, ToMate) and moment.mate_at is not None:
        aim = evolve(aim, at=frozenset({moment.mate_at}))
    track = builder.play.track_of(moment.thing.kind) if moment.thing else None
    on = OnStep(track.id, moment.step) if track is not None and moment.step is not None else None
    waiting = (moment.by_at.spot,) if isinstance(moment.by_at, At) else ()
    return run_m(reach(builder.floor, builder.core, offer.by, aim, offer.figures.from_m, on, waiting), aim)


def said_distance(play: Play, offer: Offer, aim: Aim) -> Fraction | None:
    """From how far the line says that they try it; else what the role says, but of a pass, or of who waits."""
    role = play.role(offer.by)
    if offer.figures.from_m is not None or role is None or isinstance(aim, ToMate) or offer.at:
        return offer.figures.from_m
    return role.aims_from_m


def ages_years(builder: Builder) -> tuple[float, float]:
    """For whom the game is."""
    least, most = builder.core.facts.ages_years
    return float(least), float(most)


def _number(said: Fraction | None) -> float | None:
    return float(said) if said is not None else None


def _factor(builder: Builder, of: Of) -> float:
    return float(prod(factor.by for factor in builder.play.factors if factor.of is of))


def _guards(builder: Builder, moment: Moment) -> float | None:
    """How many guard what is aimed at, where the sheet says how many may: those who can share its like among them."""
    about = [each for each in builder.play.guarding if each.thing == moment.thing and each.who]
    return min((min(float(each.most), _able(builder, each) / _things(builder, each)) for each in about), default=None)


def _things(builder: Builder, guarding: Guarding) -> float:
    """How many there are to guard; what falls part by part is one."""
    thing = guarding.thing
    return how_many(builder, thing.kind, thing.owner) / builder.play.kind(thing.kind).parts or 1.0


def _able(builder: Builder, guarding: Guarding) -> int:
    """How many there are who may guard; where rules make more of them, as many as there can be."""
    roles = [role for who in guarding.who if (role := builder.play.role(who)) and grows(builder.play, role)]
    grown = {(role.side, role.id) for role in roles}
    there = (who for who in guarding.who if (who.side, who.role) not in grown)
    return sum(role.most for role in roles) + sum(builder.places[at].start for at in in_play(builder, *there))


def can_be_caught(builder: Builder, offer: Offer, moment: Moment) -> bool:
    """Whether anything is said of catches of such a ball: a figure, a rule, or where a caught one comes to lie."""
    if moment.ball is None or moment.result is Result.ARRIVED:
        return False
    if offer.figures.caught is not None:
        return True
    by_rule = any(
        isinstance(rule.trigger, Happening)
        and rule.trigger.result is Result.CAUGHT
        and not rule.granted
        and moment.by in rule.trigger.by
        and moment.skill in rule.trigger.skills
        and moment.ball in rule.trigger.balls
        for rule in builder.play.rules
    )
    return by_rule or any(
        rest.results == {Result.CAUGHT}
        and not rest.granted
        and moment.ball in rest.balls
        and moment.skill in rest.skills
        for rest in builder.play.rests
        if rest.by == moment.by.side
    )


def _size(builder: Builder, kind: KindId | None) -> tuple[float, float]:
    """Width and height in metres of a thing that the sheet makes larger or smaller; 0 as the kit has it."""
    if kind is None or builder.play.kind(kind).scale == 1:
        return 0.0, 0.0
    return sizes_m(builder.play).get(kind.key, (0.0, 0.0))
