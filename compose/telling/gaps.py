"""What a sheet leaves out: who tries nothing, what nobody aims at, what ends a row, who never comes back."""

from __future__ import annotations

from collections.abc import Iterator

from compose.telling.balls_left import balls_left
from compose.telling.granted import places_of_balls
from compose.telling.orbit import alike_for_each
from compose.telling.owners import home_of
from compose.telling.topics import Topic
from compose.telling.unfetched import nobody_fetches
from compose.telling.voice import Voice
from grammar.core.area_kind import AreaKind
from grammar.core.coming_back import waited_at
from grammar.core.guards import Row, ThingsAt, counts_in
from grammar.core.play import Along, Fetch, Free, PickUp, StandUp, Who
from grammar.core.rules import Go, PutOnStep, Shift, Swap
from grammar.core.runs import InARow
from grammar.core.schedule import guards_of
from grammar.core.values import At, KindId, Landmark, OnStep, Part, Population, Presence, Sort, Spot, Teacher, Thing

WAITING_AREAS = frozenset({AreaKind.QUEUE, AreaKind.BENCH})


def who_tries_nothing(voice: Voice) -> Iterator[str]:
    """One sentence where some players have nothing to try; a sheet may say so, too, and that line has no value."""
    play = voice.play
    idle = frozenset(play.populations()) - {offer.by for offer in play.offers}
    serving = frozenset(who for each in play.services if isinstance(each, Free | StandUp) for who in _pupils(each.who))
    told = ((idle - serving, "{who} try nothing"), (idle & serving, "{who} try nothing but what is said of them below"))
    for who, pattern in told if play.offers else ():
        if who:
            yield _alike(voice, who).say(pattern, who=_alike(voice, who).players(who))


def _pupils(who: Who) -> frozenset[Population]:
    return frozenset() if isinstance(who, Teacher) else frozenset(who)


def gaps(voice: Voice) -> Iterator[tuple[Topic, str]]:
    """Topic and sentence."""
    for text in who_tries_nothing(voice):
        yield Topic.DOES, text
    for text in _moved_on(voice):
        yield Topic.FOLLOWS, text
    for text in _rows_begin_anew(voice):
        yield Topic.FOLLOWS, text
    left = _unaimed(voice)
    if left:
        yield Topic.DOES, _alike(voice, left).say("nobody aims at {what}", what=_alike(voice, left).things(left, True))
    for balls, spots in _unfetched(voice):
        yield Topic.BALLS, nobody_fetches(_alike(voice, spots), balls, set(spots))
    for text in _stopping_elsewhere(voice):
        yield Topic.BALLS, text
    stuck = _never_left(voice)
    if frozen := frozenset(spot for spot in stuck if spot.is_frozen):
        yield Topic.WAITS, voice.say("nobody frees who is frozen")
        stuck -= frozen
    if stuck:
        speaking = _alike(voice, stuck)
        read = "by what is read, nobody comes back from {where}"  # a rule in quotes may bring them back
        pattern = read if voice.core.told.quotes else "nobody comes back from {where}"
        yield Topic.WAITS, speaking.say(pattern, where=speaking.bare_place(stuck))
    if not _anybody_leaves(voice):
        yield Topic.WAITS, voice.say("nobody waits, and nobody is out")


def _stopping_elsewhere(voice: Voice) -> Iterator[str]:
    """Which of the balls that rest somewhere in a half, or on the court, stop where nobody follows them."""
    on_floor, off_floor = balls_left(voice.play)
    for pattern, left in (
        ("as many of the {balls} that come to lie somewhere stop {where} as it covers of the floor", on_floor),
        ("half of the {balls} that come to lie somewhere roll on that way and stop {where}", off_floor),
    ):
        for kinds, spots in left:
            speaking = _alike(voice, spots)
            balls = speaking.balls(kinds, True, None)
            yield speaking.say(pattern, balls=balls, where=speaking.calling("a").place(spots))


def _moved_on(voice: Voice) -> Iterator[str]:
    """What has come to the end of its track and is put nowhere else may be moved on from there."""
    counts = {count for guard, _ in guards_of(voice.play) for count in counts_in(guard) if isinstance(count, ThingsAt)}
    homes = {at for count in counts for at in count.at if isinstance(at, OnStep) and home_of(voice, at)}
    effects = [effect for rule in voice.play.rules for effect in rule.effects]
    put = {effect.source for effect in effects if isinstance(effect, PutOnStep)}
    kinds = {thing.kind for count in counts if count.at & (homes - put) for thing in count.of}
    if kinds and any(isinstance(effect, Shift) for effect in effects) and not _ends_there(voice, homes):
        yield voice.say("{what} at home may be moved away again", what=voice.any_of(kinds))


def _ends_there(voice: Voice, homes: set[OnStep]) -> bool:
    """Whether the round is over once something is there."""
    guards = [end.guard for end in voice.play.ends]
    return any(isinstance(count, ThingsAt) and count.at & homes for each in guards for count in counts_in(each))


def _rows_begin_anew(voice: Voice) -> Iterator[str]:
    """What puts a count of successes in a row back to nothing: no line of a sheet says it."""
    counts = {count for guard, _ in guards_of(voice.play) for count in counts_in(guard)}
    asked = any(isinstance(count, Row) for count in counts)
    if asked or any(isinstance(rule.trigger, InARow) for rule in voice.play.rules):
        yield voice.say(
            "a count in a row starts at 0 again with a miss, with a ball that the other side catches or stops or that "
            "leaves the court, and once the row is made"
        )
    if asked:
        yield voice.say(
            "what is allowed only after a row asks for a new one after each try of it, after any other ball that this "
            "side sends, and where a rule takes the ball away from it"
        )


def _alike(voice: Voice, values: frozenset[object]) -> Voice:
    """The voice that says it once where it holds for each side."""
    play = voice.play
    if not alike_for_each(values, play):
        return voice
    return Voice(voice.core, voice.wording, me=play.side_ids[0], other=play.side_ids[1])


def _unaimed(voice: Voice) -> frozenset[Thing]:
    """Things of the kit at which nobody aims, which nobody carries, and which no miss hits."""
    play = voice.play
    used = play.aimed_at.union(*(attempt.load for attempt in play.attempts))
    sorts = (Sort.TARGET, Sort.RING, Sort.BODY)
    every = {supply.thing for supply in play.supplies if play.kind(supply.thing.kind).sort in sorts}
    return frozenset(every - used)


def _unfetched(voice: Voice) -> Iterator[tuple[set[KindId], frozenset[Spot]]]:
    """Places where balls can lie, where nobody has them at hand and from where nobody fetches them."""
    play = voice.play
    fetched = {(each.ball, each.spot) for each in play.services if isinstance(each, Fetch)}
    said = {(each.ball, each.spot) for each in play.unfetched}
    along = ((each.ball, each.aim) for each in play.attempts)
    said |= {(ball, aim.start) for ball, aim in along if isinstance(aim, Along | PickUp) and ball is not None}
    left = {pair for pair in places_of_balls(play) - fetched - said if not _at_hand(voice, pair[1])}
    by_balls: dict[frozenset[KindId], set[Spot]] = {}
    for spot in {spot for _, spot in left}:
        by_balls.setdefault(frozenset(ball for ball, at in left if at == spot), set()).add(spot)
    for balls, spots in by_balls.items():
        yield set(balls), frozenset(spots)


def _at_hand(voice: Voice, spot: Spot) -> bool:
    """Whether whoever plays has a ball at hand there: in a half, on the court, where somebody stays."""
    if spot.part is not Part.AT:
        return False
    return spot.of in (Landmark.HALF, Landmark.COURT, Landmark.HANDS) or spot in {home.at for home in voice.play.homes}


def _never_left(voice: Voice) -> frozenset[Spot]:
    """Areas to which players are sent, or where they start, and from which nothing brings them back."""
    play = voice.play
    entered = {start.at for start in play.starts if isinstance(start.what, Population) and isinstance(start.at, Spot)}
    for rule in play.rules:
        for effect in rule.effects:
            if isinstance(effect, Go) and isinstance(effect.to, At):
                entered.add(effect.to.spot)
    areas = {spot for spot in entered if (area := play.area(spot)) is not None and area.kind in WAITING_AREAS}
    areas |= {spot for spot in entered if spot.is_frozen}
    return frozenset(areas - waited_at(play))


def _anybody_leaves(voice: Voice) -> bool:
    play = voice.play
    effects = [effect for rule in play.rules for effect in rule.effects]
    sent = any(isinstance(each, Go) and each.to is not Presence.PLAYING for each in effects)
    starts = any(isinstance(start.what, Population) and isinstance(start.at, Spot) for start in play.starts)
    return sent or starts or any(isinstance(each, Swap) for each in effects)
