"""What the net does not count, or not as it is said: room that nobody is sent to, how many of a range have a role,
skills not played, how slow somebody is who sits, halves of three, what is compared in a half whose points are added.

It is told, so that nobody takes the number for proved.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.unspoken import is_quoted, unspoken
from compose.net.lower.whereabouts import places_of_players
from grammar.core.declared import Per, Role
from grammar.core.ends import Most
from grammar.core.game import Core, Play
from grammar.core.guards import Points
from grammar.core.play import AtPlayers, AtThing, Lines, Offer, Order, Waiting
from grammar.core.rules import Go, Happening, Person, Result, Swap
from grammar.core.values import At, KindId, Skill, Sort, Spot, Thing
from grammar.finding import Finding, Severity, spoken
from grammar.said import Many, Side, Value, said
from grammar.words import listing, plural

CODE = "N-unread"


def unread(core: Core) -> tuple[Finding, ...]:
    """One note for each such line."""
    found: dict[int, Finding] = {}
    counts = (*_rooms(core), *_ranges(core), *_guards(core), *_skills(core), *_nowhere(core))
    said = (*_halves(core), *_added(core), *_stays(core), *_orders(core), *_low(core), *_posts(core), *_worths(core))
    for finding, line in (*counts, *said, *unspoken(core, CODE)):
        found.setdefault(line, finding)
    return tuple(found.values())


def _halves(core: Core) -> Iterator[tuple[Finding, int]]:
    """A court that is halved has as many parts as there are sides, also where some of them only chase."""
    court, sides = core.play.court, len(core.play.sides)
    if court.halved and sides > 2:
        title = f"The court is halved, and {sides} sides play: it is read as {sides} equal parts, one for each."
        hint = "Write: in equal parts. Or, where all of them share it: in one piece."
        yield _told(core, court.lines, title, hint), court.lines[0]


def _added(core: Core) -> Iterator[tuple[Finding, int]]:
    """What the clock compares before the points, in a game of several parts whose points are added."""
    bell, match = core.play.bell, core.play.match
    first = bell.verdicts[0] if bell is not None and match.halves and core.play.gives_points else None
    if bell is not None and isinstance(first, Most) and not any(isinstance(each, Points) for _, each in first.counts):
        part = "round" if match.of_rounds else "innings" if match.of_innings else "half"
        title = f"What is compared first here says who wins one {part}; over the whole game only the points are added."
        hint = "Let what is compared give points as it comes about, and say here: more points wins"
        yield _told(core, bell.lines, title, hint), bell.lines[0]


def _stays(core: Core) -> Iterator[tuple[Finding, int]]:
    """For how long somebody is safe where nobody is after anybody."""
    if any(isinstance(each.aim, AtPlayers) for each in core.play.attempts):
        return
    for area in core.play.areas:
        if area.stay_s is not None:
            title = f"How long somebody is in the {area.id.key} is not read by the check: nobody is after anybody."
            yield _told(core, area.lines, title, "Leave it out, or say who touches whom."), area.lines[0]


def _rooms(core: Core) -> Iterator[tuple[Finding, int]]:
    there, sent = places_of_players(core.play), _sent_to(core.play)
    limits = [(area, limit, Spot(area.id, area.owner)) for area in core.play.areas for limit in area.room if limit.most]
    read = {area.lines for area, limit, at in limits if at in sent and any((who, at) in there for who in limit.who)}
    swapped = _swapped_at(core.play)
    for area, *_ in limits:
        if area.lines not in read:
            title = f"How many are in the {area.id.key} is not read by the check: no rule sends these players there."
            if Spot(area.id, area.owner) in swapped:
                title = f"How many are in the {area.id.key} is not read by the check: players only change places there."
            yield (
                _told(core, area.lines, title, "Mind it while you watch; the check lets any number in."),
                area.lines[0],
            )


def _sent_to(play: Play) -> set[Spot]:
    """Where rules send players; who changes places with somebody there needs no room."""
    gone = (effect.to for rule in play.rules for effect in rule.effects if isinstance(effect, Go))
    return {to.spot for to in gone if isinstance(to, At)}


def _swapped_at(play: Play) -> set[Spot]:
    """Where somebody changes places with whoever is there, so that as many are there as before."""
    swaps = [(rule.trigger, effect.other) for rule in play.rules for effect in rule.effects if isinstance(effect, Swap)]
    found = {spot for _, other in swaps if isinstance(other, Waiting) for spot in other.at}
    passes = [trigger for trigger, other in swaps if other is Person.MATE and isinstance(trigger, Happening)]
    return found | {at.spot for trigger in passes for at in trigger.at if isinstance(at, At)}


def _ranges(core: Core) -> Iterator[tuple[Finding, int]]:
    for role in core.play.roles:
        if role.least < role.most and not grows(core.play, role):
            there = Many(role.least, role.id.key, plural(role.id.key))
            pattern = "The check plays with {players} of {side}; more of them are not read."
            title = said(pattern, players=there, side=Side(role.side.key))
            hint = "Say how many there are, or who becomes one."
            yield _told(core, role.lines, title, hint), role.lines[0]


def grows(play: Play, role: Role) -> bool:
    """Whether any rule makes somebody one of them."""
    gone = (effect for rule in play.rules for effect in rule.effects if isinstance(effect, Go))
    return any(effect.becomes.role == role.id for effect in gone)


def _guards(core: Core) -> Iterator[tuple[Finding, int]]:
    for each in core.play.guarding:
        roles = [core.play.role(who) for who in each.who]
        if roles and all(role is not None and role.least == 0 and grows(core.play, role) for role in roles):
            title = "How many guards there are at the moment is not read by the check."
            hint = f"It reckons with {each.most} before each from the start: say in sides that some guard from then on."
            yield _told(core, each.lines, title, hint), each.lines[0]


def _skills(core: Core) -> Iterator[tuple[Finding, int]]:
    """What the game is said to practise and nobody does in it, with all switches on. Other words are for people."""
    hanging = (each for choice in core.play.choices for each in choice.hanging)
    offers = [each for each in (*core.play.offers, *hanging) if isinstance(each, Offer)]
    played = {attempt.skill.value for offer in offers for attempt in offer.attempts}
    by_running = {Skill.TOUCH.value, Skill.TAKE.value}  # who chases, who is chased and who fetches things run
    played |= {Skill.RUN.value} if played & by_running else set()
    idle = [skill.value for skill in Skill if skill.value in core.facts.skills and skill.value not in played]
    if idle:
        title = f"The game is to practise {listing(idle)}; no line of play lets anybody try that."
        yield _told(core, core.facts.lines, title, "Leave it out of skills, or add it to play."), core.facts.lines[0]


def _orders(core: Core) -> Iterator[tuple[Finding, int]]:
    """An order of one target."""
    for offer, attempt in core.play.tries:
        aim = attempt.aim
        if isinstance(aim, AtThing) and aim.order is Order.IN_ORDER:
            supplies = [supply for supply in core.play.supplies if supply.thing == aim.thing]
            number = sum(supply.count for supply in supplies) * core.play.kind(aim.thing.kind).parts
            if number == 1 and all(supply.per is not Per.PLAYER for supply in supplies):
                title = f"There is one {aim.thing.kind.key} to aim at: in order or not is the same."
                yield _told(core, offer.lines, title, "Leave the order out, or put up more."), offer.lines[0]


def _low(core: Core) -> Iterator[tuple[Finding, int]]:
    """Who sits is slower and misses more; how much only a line about all attempts says."""
    for each in core.play.low if not core.play.factors else ():
        title = f"That players play {each.posture.value} changes no time and no chance of the check or the forecast."
        hint = "Say how much it changes, such as: attempts take 130 % as long"
        yield _told(core, each.lines, title, hint), each.lines[0]


def _posts(core: Core) -> Iterator[tuple[Finding, int]]:
    """Where players start who are in play from there: nothing hangs on it."""
    staying = {(home.who, home.at) for home in core.play.homes}
    for post in core.facts.posts:
        if (post.what, post.at) in staying:
            continue
        title = "Where players start who are in play at once is for people: the check reckons with it nowhere."
        yield _told(core, post.lines, title, "Say with `stay` where they stay, if they do."), post.lines[0]


def _worths(core: Core) -> Iterator[tuple[Finding, int]]:
    """What one part of a line says of things at which nobody aims, where the line takes effect by another part."""
    play = core.play
    aimed = {thing.kind for thing in play.aimed_at}
    parts: dict[Lines, list[frozenset[KindId]]] = {}
    for rule in play.rules:
        if isinstance(rule.trigger, Happening) and rule.trigger.result in (Result.KNOCKED, Result.THROUGH):
            kinds = frozenset(each.kind for each in rule.trigger.to if isinstance(each, Thing))
            parts.setdefault(rule.lines, []).append(kinds)
    for lines, several in parts.items():
        idle = sorted({kind.key for kinds in several if not kinds & aimed for kind in kinds})
        if idle and any(kinds & aimed for kinds in several):
            title = f"Nobody aims at any {listing(idle)}: what this line says of that never comes."
            yield _told(core, lines, title, "Let somebody aim there, or leave it out of the line."), lines[0]


def _nowhere(core: Core) -> Iterator[tuple[Finding, int]]:
    """Things of the kit that no line sets up, at which nobody aims and of which no line in quotes speaks; mats and
    benches make places."""
    used = {start.what.kind for start in core.play.starts if isinstance(start.what, Thing)}
    used |= {thing.kind for thing in core.play.aimed_at}
    for kind in core.play.kinds:
        if kind.sort in (Sort.TARGET, Sort.RING, Sort.BODY, Sort.LOAD) and kind.id not in used:
            if is_quoted(core, kind.id.key):
                continue
            title = f"No line says where any {kind.id.key} stands, and nobody aims there: the check reckons without it."
            hint = "Say it in set-up, if play has to do with it; what is for people alone needs no place."
            yield _told(core, kind.lines, title, hint), kind.lines[0]


def _told(core: Core, lines: Lines, title: Value, hint: str) -> Finding:
    return spoken(CODE, Severity.NOTE, title, core.lines[lines[0]].span, hint)
