"""Which of the rules taken for granted have a say in a game: those of what can happen and of which it says nothing."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.game import Play
from grammar.core.guards import ALWAYS
from grammar.core.lives import LastLife
from grammar.core.loads import Lies, SetDown
from grammar.core.play import Aim, Along, AtPlayers, Attempt, AtThing, Fetch, Offer, Past, PickUp, Through, ToMate
from grammar.core.precedence import overlap, written
from grammar.core.reading.phrases.aims import against
from grammar.core.rules import AllPlaying, Go, Happening, Person, Rest, Result, Rule, SendBall, SendBalls, Swap
from grammar.core.success import success_of
from grammar.core.values import SHARED, KindId, Laden, Owner, Population, Sort, Spot, Thing


def _concerned(play: Play, offer: Offer, aim: Aim, result: Result) -> frozenset[Owner]:
    """Whose the things or players aimed at are; a pass, or what is sent at one's own, is caught by another side."""
    owners, others = frozenset(against(aim, offer.by)), play.others(offer.by.side)
    anywhere = owners == {offer.by.side} or isinstance(aim, ToMate)
    return frozenset(others) if result is Result.CAUGHT and others and anywhere else owners


def _happening(play: Play) -> Iterator[tuple[Offer, Attempt, frozenset[Result]]]:
    """Every attempt with what can come of it."""
    blocked = {each.thing for each in play.blocking}
    for offer in play.offers:
        for attempt in offer.attempts:
            found = {success_of(attempt.skill, attempt.aim)}
            if isinstance(attempt.aim, Along | PickUp) and offer.figures.chance is None:
                yield offer, attempt, frozenset(found)  # whoever goes there arrives
                continue
            if not isinstance(attempt.aim, Along | PickUp):
                found.add(Result.MISSED)
            if _objects(offer, attempt.aim) & blocked:
                found.add(Result.BLOCKED)
            if offer.figures.caught or _speaks_of_catches(play, attempt):
                found.add(Result.CAUGHT)
            yield offer, attempt, frozenset(found)


def _speaks_of_catches(play: Play, attempt: Attempt) -> bool:
    """Catches by the other side exist where the sheet speaks of those of such an attempt."""
    events = [rule.trigger for rule in play.rules if not rule.granted and isinstance(rule.trigger, Happening)]
    rests = [rest for rest in play.rests if not rest.granted and rest.results == {Result.CAUGHT}]
    caught = [(each.skills, each.balls) for each in events if each.result is Result.CAUGHT]
    caught += [(rest.skills, rest.balls) for rest in rests]
    return any(attempt.skill in skills and attempt.ball in balls for skills, balls in caught)


def rests_left(play: Play) -> list[Rest]:
    """Where balls can come to lie: by the sheet's own lines, then by those taken for granted of what is left."""
    own = [rest for rest in play.rests if not rest.granted]
    coming = {rest.lines for rest in own if _sent(play, rest)}
    kept = [rest for rest in own if _sent(play, rest) or rest.lines not in coming]
    for rest in play.rests:
        if rest.granted:
            over = [each for each in own if each.by == rest.by and rest.against <= each.against]
            over = [each for each in over if rest.results <= each.results and rest.skills <= each.skills]
            said = {ball for each in over for ball in each.balls}
            left = frozenset(_sent(play, rest) - said - _sent_on(play, rest))
            kept += [evolve(rest, balls=left)] if left else []
    return kept


def _sent(play: Play, rest: Rest) -> set[KindId]:
    """The balls of a rest that somebody sends so."""
    return {attempt.ball for _, attempt, _ in _coming(play, rest) if attempt.ball is not None}


def _coming(play: Play, rest: Rest) -> Iterator[tuple[Offer, Attempt, Result]]:
    """All that leaves a ball to a rest, if no rule says where it goes."""
    for offer, attempt, results in _happening(play):
        if isinstance(attempt.aim, Along) and not attempt.aim.from_hand:
            continue  # it lies where it was brought
        if attempt.ball in rest.balls and attempt.skill in rest.skills and offer.by.side == rest.by:
            for result in results & rest.results:
                if _concerned(play, offer, attempt.aim, result) & rest.against:
                    yield offer, attempt, result


def _sent_on(play: Play, rest: Rest) -> set[KindId]:
    """The balls of a rest that a rule of the sheet sends elsewhere whenever they would come to lie so."""
    own = [rule for rule in play.rules if not rule.granted and rule.guard == ALWAYS]
    sending = [rule.trigger for rule in own if any(isinstance(effect, SendBall) for effect in rule.effects)]
    events = [trigger for trigger in sending if isinstance(trigger, Happening)]
    left = {
        attempt.ball
        for offer, attempt, result in _coming(play, rest)
        if not any(_meets(play, each, offer, attempt, result) for each in events)
    }
    return _sent(play, rest) - left


def _meets(play: Play, trigger: Happening, offer: Offer, attempt: Attempt, result: Result) -> bool:
    """Whether an attempt with this result is always one of those of which a rule speaks."""
    aimed, owners = _objects(offer, attempt.aim), _concerned(play, offer, attempt.aim, result)
    return (
        trigger.result is result
        and not trigger.at
        and (not trigger.by or offer.by in trigger.by)
        and (not trigger.skills or attempt.skill in trigger.skills)
        and (not trigger.balls or attempt.ball in trigger.balls)
        and (not trigger.against or owners <= trigger.against)
        and (not trigger.to or (bool(aimed) and aimed <= trigger.to))
    )


def rule_left(play: Play, rule: Rule) -> Rule | None:
    """A rule of what can happen: at whom or what somebody aims. Of one taken for granted, what no other rule says."""
    trigger = rule.trigger
    if isinstance(trigger, LastLife) and rule.granted and any(_covers(each, rule) for each in play.rules):
        return None
    if not isinstance(trigger, Happening):
        return rule
    aimed = frozenset(
        to
        for offer, attempt, results in _happening(play)
        if trigger.result in results and offer.by in trigger.by
        for to in _objects(offer, attempt.aim)
    )
    if not rule.granted:
        to = trigger.to & aimed
        owners = frozenset(owner for each in to if (owner := _owner(each)) is not None)
        return evolve(rule, trigger=evolve(trigger, to=to, against=owners or trigger.against)) if to else rule
    sure = (each for each in play.rules if not each.granted and each.guard == ALWAYS)
    covered = frozenset(
        to
        for each in sure
        if isinstance(each.trigger, Happening) and overlap(each.trigger, trigger) and trigger.by <= each.trigger.by
        for to in (each.trigger.to if written(each) & written(rule) else each.trigger.to & _all_moved(each))
    )
    left = (trigger.to & aimed) - covered
    return evolve(rule, trigger=evolve(trigger, to=left)) if left else None


def with_what_goes_back(rule: Rule) -> Rule:
    """The rule with what becomes of things whose carriers it sends away, where it does not say: they go back."""
    trigger, gone = rule.trigger, (each for each in rule.effects if isinstance(each, Go | Swap))
    leaves = any(each.who is Person.OBJECT or (isinstance(each, Swap) and each.other is Person.OBJECT) for each in gone)
    if not isinstance(trigger, Happening) or not leaves or any(isinstance(each, SetDown) for each in rule.effects):
        return rule
    roles = (to.role for to in trigger.to if isinstance(to, Population))
    kinds = frozenset(role.kind for role in roles if isinstance(role, Laden))
    return evolve(rule, effects=(*rule.effects, SetDown(kinds, Lies.BACK))) if kinds else rule


def _all_moved(rule: Rule) -> frozenset[object]:
    """Those who all go somewhere, whichever of them it happened to."""
    everybody = (each.who for each in rule.effects if isinstance(each, Go))
    return frozenset(of for each in everybody if isinstance(each, AllPlaying) for of in each.who)


def _covers(own: Rule, granted: Rule) -> bool:
    """Whether a line of the sheet says in every case what is taken for granted otherwise."""
    who = own.trigger.who if isinstance(own.trigger, LastLife) else frozenset()
    of = granted.trigger.who if isinstance(granted.trigger, LastLife) else frozenset()
    return not own.granted and own.guard == ALWAYS and of <= who and written(granted) <= written(own)


def can_happen(play: Play, rule: Rule) -> bool:
    """Whether anybody tries what this rule waits for; a rule for a count or a time is none of these."""
    trigger = rule.trigger
    if not isinstance(trigger, Happening) or trigger.result is Result.LEFT:
        return True
    return any(
        offer.by in trigger.by
        and (not trigger.to or bool(_objects(offer, attempt.aim) & trigger.to))
        and (trigger.result is not Result.ARRIVED or _arrives(attempt, trigger))
        for offer, attempt, results in _happening(play)
        if trigger.result in results or (trigger.result is Result.KNOCKED and offer.figures.stray)
    )


def _arrives(attempt: Attempt, trigger: Happening) -> bool:
    """Whether somebody comes so with what an arrival speaks of, to where it speaks of."""
    goals = {attempt.aim.goal} if isinstance(attempt.aim, Along | PickUp) else set()
    brought = not trigger.balls or attempt.ball in trigger.balls
    return brought and (not trigger.reaching or bool(goals & trigger.reaching))


def can_leave(play: Play) -> bool:
    """Whether rules speak of balls that leave the court, which are then no misses."""
    triggers = (rule.trigger for rule in play.rules)
    return any(isinstance(each, Happening) and each.result is Result.LEFT for each in triggers)


def _owner(to: object) -> Owner | None:
    return to.side if isinstance(to, Population) else to.owner if isinstance(to, Thing | Spot) else None


def _objects(offer: Offer, aim: Aim) -> frozenset[object]:
    match aim:
        case AtThing() | Through():
            strays = offer.figures.stray.at if offer.figures.stray else frozenset()
            return frozenset({aim.thing, *strays})
        case AtPlayers():
            return frozenset(aim.of)
        case Past():
            return frozenset({aim.line})
    return frozenset()


def fetch_holds(play: Play, fetch: Fetch) -> bool:
    """Whether a ball can ever lie where it is fetched from."""
    return not fetch.granted or (fetch.ball, fetch.spot) in places_of_balls(play)


def places_of_balls(play: Play) -> set[tuple[KindId, Spot]]:
    """Where balls of each kind can lie: at the set-up, where they rest, where rules send them."""
    shared = {supply.thing.kind for supply in play.supplies if supply.thing.owner is SHARED}
    balls = {kind for kind in shared if play.kind(kind).sort is Sort.BALL}
    found = {
        (start.what.kind, start.at)
        for start in play.starts
        if isinstance(start.at, Spot) and hasattr(start.what, "kind") and start.what.kind in balls
    }
    for rest in rests_left(play):
        found |= {(ball, rest.to) for ball in rest.balls}
    for rule in play.rules:
        for effect in rule.effects:
            if isinstance(effect, SendBall) and isinstance(rule.trigger, Happening):
                found |= {(ball, effect.to) for ball in rule.trigger.balls if ball is not None}
            elif isinstance(effect, SendBalls):
                found |= {(ball, effect.to) for ball in effect.balls}
    return found
