"""What may stand in for a thing of the kit: whatever serves for all that the game does with it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from compose.staging.reach import ON_THE_FLOOR, foot_m, reaches
from compose.staging.resolved import resolved
from grammar.core.declared import Kind
from grammar.core.game import Core, Play
from grammar.core.limits import Valid, counts_by_bounce
from grammar.core.play import Along, AtPlayers, Attempt, AtThing, PickUp, Through
from grammar.core.rules import Happening
from grammar.core.skills import BOUNCING, FLYING, WITH_A_BALL
from grammar.core.values import CatalogueId, KindId, Population, Sort, Thing
from grammar.frozen import evolve
from grammar.game import Game, GameKit
from library import KitItem

LARGEST_RATIO = 3.0  # assumption: a stand-in is at most three times as wide or high, and no less than a third
NEAR_M = 0.5  # assumption: things to hit or to send a ball through hang about as high
AT_PEOPLE, BOUNCE, CARRY, LIE, HANG = "at people", "bounce", "carry", "lie", "hang"
ONLY_BROUGHT = {CARRY, LIE}
BOUNCES = re.compile(r"\bbounc", re.I)
NONE = re.compile(r"\b(?:not?|never|without|nobody)\b", re.I)


def alike(game: Game, line: GameKit, left: Mapping[str, int], kit: Mapping[str, KitItem]) -> Iterator[KitItem]:
    """What of all that is left could take the place of a thing; nothing where the library does not know the thing, or
    where the sheet's own cautions allow no other."""
    wanted = kit.get(line.like)
    core = resolved(game)
    if wanted is None or _no_other(core, line):
        return
    kind = core.play.kind(KindId(line.name))
    uses = _uses_of(core, kind, wanted)
    for name, count in left.items():
        other = kit.get(name)
        if count and other is not None and other is not wanted and _serves(core.play, kind, uses, wanted, other):
            met = (_is_met(core.play, kind, wanted, other, attempt, kit) for attempt in core.play.attempts)
            if all(met):
                yield other


def _serves(play: Play, kind: Kind, uses: frozenset[str], wanted: KitItem, other: KitItem) -> bool:
    """Whether another thing serves for all of these uses: of its sort, unless the thing is only brought somewhere,
    about as large, and soft where it is soft."""
    if other.category != wanted.category and not (_only_brought(play, kind, uses) and _known(wanted, other)):
        return False
    soft_enough = other.soft or not wanted.soft
    return uses <= {*other.may, *other.serves} and soft_enough and unlike(wanted, other) <= LARGEST_RATIO


def _uses_of(core: Core, kind: Kind, wanted: KitItem) -> frozenset[str]:
    """What the core does with a thing: the skills that use it, and by the words of the kit whether it comes at people,
    bounces, or is carried and has to stay where it is put. Of furniture and big bodies the core knows no use: they have
    to serve for whatever the thing itself serves for."""
    return frozenset((*_as_a_ball(core, kind), *_as_a_load(core.play, kind, wanted), *_as_furniture(kind, wanted)))


def unlike(wanted: KitItem, other: KitItem) -> float:
    """How many times one is as large as the other, in whichever of width and height they differ more; 1 for alike."""
    ratios = [max(a, b) / min(a, b) for a, b in zip(wanted.size_m, other.size_m, strict=True) if a > 0 and b > 0]
    return max(ratios, default=1.0)


def _known(wanted: KitItem, other: KitItem) -> bool:
    """Whether the kit says of both how wide or how high they are."""
    return any(a > 0 and b > 0 for a, b in zip(wanted.size_m, other.size_m, strict=True))


def _only_brought(play: Play, kind: Kind, uses: frozenset[str]) -> bool:
    """Whether nothing is done with a thing but to bring it from place to place."""
    return bool(uses) and uses <= ONLY_BROUGHT and not any(each.kind == kind.id for each in play.aimed_at)


def _as_a_ball(core: Core, kind: Kind) -> Iterator[str]:
    play = core.play
    for offer, attempt in play.tries:
        if attempt.ball != kind.id or attempt.skill not in WITH_A_BALL:
            continue
        yield attempt.skill.value
        if _comes_at_people(play, offer.by, attempt):
            yield AT_PEOPLE
        if attempt.skill in BOUNCING and (has_to_bounce(play, attempt) or _is_to_bounce(core)):
            yield BOUNCE


def _comes_at_people(play: Play, by: Population, attempt: Attempt) -> bool:
    """Whether people are aimed at, or a ball flies at a thing before or behind which others stand: of several sides
    all do but those whose own thing it is, and so do those who guard it."""
    if isinstance(attempt.aim, AtPlayers):
        return True
    thing = _thing(attempt)
    if thing is None or attempt.skill not in FLYING:
        return False
    guarded = {each.thing for each in play.blocking} | {each.thing for each in play.guarding}
    return thing in guarded or (len(play.sides) > 1 and thing.owner != by.side)


def has_to_bounce(play: Play, attempt: Attempt) -> bool:
    """Whether something hangs on it that a ball bounced."""
    if counts_by_bounce(attempt.skill, attempt.aim) and any(each.valid is Valid.AFTER_BOUNCE for each in play.valid):
        return True
    asked = any(isinstance(each.trigger, Happening) and each.trigger.bounced for each in play.rules)
    return asked or any(offer.figures.bounced is not None and attempt in offer.attempts for offer in play.offers)


def _is_to_bounce(core: Core) -> bool:
    """Whether the sheet's own words tell players to let a ball bounce, or a rule in quotes speaks of it."""
    if any(BOUNCES.search(text) for _, text in core.told.quotes):
        return True
    return any(BOUNCES.search(text) and not NONE.search(text) for text in (*core.told.about, *core.told.cues))


def _as_a_load(play: Play, kind: Kind, wanted: KitItem) -> Iterator[str]:
    """Whatever is taken, brought or held while others are touched with it; what lies still has to be replaced by what
    does, for it is put somewhere."""
    brought = kind.sort is Sort.LOAD or any(
        (attempt.ball == kind.id and isinstance(attempt.aim, PickUp | Along))
        or any(thing.kind == kind.id for thing in attempt.load)
        or (isinstance(attempt.aim, AtPlayers) and kind.id in attempt.aim.holding)
        for attempt in play.attempts
    )
    if brought:
        yield CARRY
        if LIE in wanted.serves:
            yield LIE


def _as_furniture(kind: Kind, wanted: KitItem) -> tuple[str, ...]:
    return wanted.serves if wanted.category in ("furniture", "body") and kind.sort is not Sort.LOAD else ()


def _thing(attempt: Attempt) -> Thing | None:
    return attempt.aim.thing if isinstance(attempt.aim, AtThing | Through) else None


def _is_met(
    play: Play, kind: Kind, wanted: KitItem, other: KitItem, attempt: Attempt, kit: Mapping[str, KitItem]
) -> bool:
    """Whether an attempt can come off with another thing in the place of one that it is made with, or made at."""
    thing = _thing(attempt)
    if thing is None or kind.id not in (thing.kind, attempt.ball):
        return True
    ball = play.kind(attempt.ball) if attempt.ball else None
    at = play.kind(thing.kind)
    of_ball = other if ball is kind else (kit.get(ball.like.key) if ball else None)
    of_thing = other if at is kind else kit.get(at.like.key)
    if isinstance(attempt.aim, Through) and of_ball and of_thing and of_ball.size_m[0] > of_thing.size_m[0] > 0:
        return False
    return at is not kind or _as_a_target(kind, ball, wanted, other, attempt)


def _as_a_target(kind: Kind, ball: Kind | None, wanted: KitItem, other: KitItem, attempt: Attempt) -> bool:
    """What falls, falls; what a ball goes into is open the same way; what it goes through hangs about as high, or may
    be hung there; and a rolled ball reaches it."""
    aim, through = attempt.aim, isinstance(attempt.aim, Through)
    if other.fixed is not wanted.fixed or (isinstance(aim, Through) and aim.into and other.opens != wanted.opens):
        return False
    before, after = (evolve(kind, like=CatalogueId(each.name)) for each in (wanted, other))
    if HANG not in other.serves and abs(foot_m(before) - foot_m(after)) > NEAR_M:
        return False
    return attempt.skill not in ON_THE_FLOOR or reaches(after, ball, through) or not reaches(before, ball, through)


def _no_other(core: Core, line: GameKit) -> bool:
    """Whether a caution of the sheet asks for this thing alone: "Yarn balls only"."""
    only = re.compile(rf"\bonly {re.escape(line.plural)}\b|\b{re.escape(line.plural)} only\b", re.I)
    return any(only.search(text) for text in (*core.told.care, *core.told.cautions))
