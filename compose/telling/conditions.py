"""Guards in words: "the other side has no lanterns standing and it has at least 2 points"."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from attrs import evolve

from compose.telling.leads import lead, part_of_all
from compose.telling.nouns import PLAYER, Noun
from compose.telling.of_time import part_of_round
from compose.telling.orbit import exchanged
from compose.telling.owners import home_of, owner_of
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.guards import (
    WHOLE,
    Ahead,
    BallsAt,
    Clock,
    Compare,
    Count,
    Either,
    Every,
    Guard,
    LivesOf,
    OfEach,
    PartOfAll,
    PlayersAt,
    Points,
    Relation,
    Row,
    Taken,
    ThingsAt,
    TimesRun,
)
from grammar.core.values import (
    PLAIN,
    SHARED,
    At,
    KindId,
    OnStep,
    Owner,
    Plain,
    Posture,
    Presence,
    RoleId,
    SideId,
    Sort,
    without_load,
)

NOBODY = SideId("")  # stands for any side where claims about several are compared


def condition(voice: Voice, guard: Guard) -> str:
    """Parts of "and" listed; ways of "or" one after the other. With no parts it always holds, or never."""
    match guard:
        case Compare() if isinstance(guard.count, Clock | Taken | Row):
            return part_of_round(voice, guard)
        case Compare():
            return claim(voice, guard, frozenset({owner_of(voice, guard.count)}))
        case Ahead():
            owner, than = (frozenset({owner_of(voice, each)}) for each in (guard.count, guard.than))
            return lead(voice, guard, owner, than, counted(voice, guard.count))
        case Every():
            said = voice.wording.listed(_parts(evolve(voice, whole="each"), guard.parts))
            return said or voice.say("at any time")
        case Either():
            return f" {voice.say('or')} ".join(_parts(voice, guard.parts)) or voice.say("never")


def _parts(voice: Voice, parts: Iterable[Guard]) -> Iterable[str]:
    """What is claimed of several sides in the same words is said once."""
    alike: dict[object, list[Compare]] = {}
    others: list[Guard] = []
    ahead: dict[object, list[Ahead]] = {}
    for part in sorted(parts, key=lambda each: _rank(voice, each)):
        if isinstance(part, Compare):
            owner = owner_of(voice, part.count)
            key = exchanged(part, {owner: NOBODY}) if isinstance(owner, SideId) else part
            alike.setdefault(key, []).append(part)
        elif isinstance(part, Ahead):
            ahead.setdefault((part.count, part.times, part.by), []).append(part)
        else:
            others.append(part)
    for group in alike.values():
        owners = [owner_of(voice, each.count) for each in group]
        rest = set(voice.play.side_ids) - set(owners)
        if voice.me is not None and len(group) > 1 and (not rest or rest == {voice.me}):
            yield claim(voice, group[0], frozenset(owners))
        else:
            yield from (claim(voice, each, frozenset({owner})) for each, owner in zip(group, owners, strict=True))
    for several in ahead.values():
        yield from _leads(voice, several)
    yield from (condition(voice, other) for other in others)


def _leads(voice: Voice, several: list[Ahead]) -> Iterable[str]:
    """By how much one side is ahead: of all others at once, where it is so of each."""
    owner, than = owner_of(voice, several[0].count), frozenset(owner_of(voice, each.than) for each in several)
    if voice.me is not None and len(several) > 1 and than == set(voice.play.side_ids) - {owner}:
        yield lead(voice, several[0], frozenset({owner}), than, counted(voice, several[0].count))
    else:
        yield from (condition(voice, each) for each in several)


def _rank(voice: Voice, part: Guard) -> tuple[int, str]:
    """The order of the sheet is not known any more: what is said of the side spoken of comes first."""
    if not isinstance(part, Compare):
        return 9, str(part)
    owner = owner_of(voice, part.count)
    return (0 if owner == voice.near else 1), str(part)


def claim(voice: Voice, compare: Compare, owners: frozenset[Owner]) -> str:
    """One claim, of these owners."""
    spoken = frozenset(voice.ordered(owners))
    one = next(iter(spoken)) if len(spoken) == 1 else None
    within = voice.about(one, Subject.SIDE) if one is not None else voice
    within = evolve(within, whole=None)  # all have so many each, but what is there is counted in all places together
    if isinstance(compare.count, TimesRun):
        return _runs(voice, compare, spoken)
    if isinstance(compare.bound, PartOfAll):
        things = counted(within, compare.count)
        return part_of_all(voice, spoken or frozenset({SHARED}), compare.relation, compare.bound, things)
    what = _what(within, compare)
    if not spoken:
        return _impersonal(voice, compare, what)
    patterns = {
        "none": ("{side} has no {things}", "{side} have no {things}"),
        "least": ("{side} has at least {things}", "{side} have at least {things}"),
        "most": ("{side} has at most {things}", "{side} have at most {things}"),
        "exactly": ("{side} has exactly {things}", "{side} have exactly {things}"),
        "all": ("{side} has {things}", "{side} have {things}"),
    }
    if voice.wording.english:
        patterns["all"] = ("{side} has all its {things}", "{side} have all their {things}")
    return voice.does(spoken, *patterns[_amount(compare)], things=what)


def _runs(voice: Voice, compare: Compare, spoken: Collection[Owner]) -> str:
    """ "It has run 10 times", or 2 times with each player."""
    each = isinstance(compare.bound, OfEach)
    number = compare.bound.times if isinstance(compare.bound, OfEach) else compare.bound
    assert isinstance(number, int)
    often = voice.say("once") if number == 1 else voice.wording.counted(number, "time", "times")
    if each:
        often = voice.say("{often} with each player (where sides differ, as often as the largest)", often=often)
    return voice.does(spoken, "{side} has run {often}", "{side} have run {often}", often=often)


def _impersonal(voice: Voice, compare: Compare, what: str) -> str:
    patterns = {
        "none": "there are no {things}",
        "least": "there are at least {things}",
        "most": "there are at most {things}",
        "exactly": "there are exactly {things}",
        "all": "there are all {things}" if voice.wording.english else "there are {things}",
    }
    said = voice.say(patterns[_amount(compare)], things=what)
    return said.replace("there are", "there is", 1) if voice.wording.english and compare.bound == 1 else said


def _amount(compare: Compare) -> str:
    if compare.bound is WHOLE:
        return "all"
    if compare.bound == 0 and compare.relation is not Relation.AT_LEAST:
        return "none"
    return {Relation.AT_LEAST: "least", Relation.AT_MOST: "most", Relation.EQUAL: "exactly"}[compare.relation]


def _what(voice: Voice, compare: Compare) -> str:
    """ "no lanterns standing", "5 players on the far bench"; all of them without "all its"."""
    noun, state = counted(voice, compare.count)
    if isinstance(compare.bound, int):
        said = voice.counted(compare.bound, noun) if compare.bound or _amount(compare) != "none" else noun.many
    else:
        said = noun.many if voice.wording.english else voice.nouns.with_article("all", noun, True)
    return f"{said} {state}".rstrip()


def counted(voice: Voice, count: Count) -> tuple[Noun, str]:
    """The noun of what is counted, and how it stands: "lantern" and "standing"."""
    match count:
        case Clock() | Taken() | Row():
            return voice.nouns.noun("moment"), ""
        case Points():
            return voice.nouns.noun("point"), ""
        case LivesOf():
            return voice.nouns.noun("life", "lives"), ""
        case TimesRun():
            return voice.nouns.noun("finished run"), ""
        case PlayersAt():
            return _players_noun(voice, count), _states(voice, count.at, False)
        case ThingsAt():
            noun = _kinds_noun(voice, {thing.kind for thing in count.of})
            return noun, _states(voice, count.at, noun.feminine)
        case BallsAt():
            if not count.of <= set(voice.play.of_sort(Sort.BALL)):
                return _kinds_noun(voice, set(count.of)), voice.place(count.at)
            nouns = voice.nouns.balls(count.of)
            noun = nouns[0] if len(nouns) == 1 else voice.nouns.noun("ball")
            return noun, voice.place(count.at)


def _players_noun(voice: Voice, count: PlayersAt) -> Noun:
    side = next(iter(count.of)).side
    roles = {without_load(who.role) for who in count.of}
    if roles == set(voice.play.tasks_of(side)):
        return voice.nouns.noun(PLAYER)
    nouns = [
        voice.nouns.noun(PLAYER) if role is PLAIN else voice.nouns.role(role) for role in _in_order(voice, side, roles)
    ]
    return _either_noun(voice, nouns)


def _in_order(voice: Voice, side: SideId, roles: set[RoleId | Plain]) -> Iterable[RoleId | Plain]:
    return (role for role in voice.play.tasks_of(side) if role in roles)


def _kinds_noun(voice: Voice, kinds: set[KindId]) -> Noun:
    return _either_noun(voice, [voice.nouns.kind(kind.id) for kind in voice.play.kinds if kind.id in kinds])


def _either_noun(voice: Voice, nouns: list[Noun]) -> Noun:
    if len(nouns) == 1:
        return nouns[0]
    one = voice.wording.listed((noun.one for noun in nouns), "or")
    return Noun(one, voice.wording.listed((noun.many for noun in nouns), "or"), all(noun.feminine for noun in nouns))


def _states(voice: Voice, at: Iterable[object], feminine: bool) -> str:
    spots = [each.spot for each in at if isinstance(each, At)]
    steps = [each for each in at if isinstance(each, OnStep)]
    said = []
    for posture, word in ((Posture.UP, "standing"), (Posture.DOWN, "down"), (Presence.PLAYING, "in play")):
        if posture in at:
            said.append(voice.say(word))
    if Presence.OUT in at:
        said.append(voice.say("out of play"))
    if any(home_of(voice, step) is not None for step in steps):
        said.append(voice.say("at home"))
    said += [voice.say("on {step}", step=voice.step(step)) for step in steps if home_of(voice, step) is None]
    if spots:
        said.append(voice.place(spots))
    return voice.wording.listed(said, "or")
