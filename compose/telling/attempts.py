"""Offers in words: who may do what with which ball, from how far, at what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import groupby
from typing import assert_never

from attrs import evolve

from compose.telling.conditions import condition
from compose.telling.empty_hands import with_a_ball, with_empty_hands
from compose.telling.of_others import of_others
from compose.telling.of_time import part_of_round, parted
from compose.telling.side_voice import Subject
from compose.telling.voice import Voice
from grammar.core.guards import ALWAYS
from grammar.core.play import (
    Aim,
    Along,
    AtPlayers,
    Attempt,
    AtThing,
    Figures,
    Offer,
    Order,
    Past,
    PickUp,
    Through,
    ToMate,
)
from grammar.core.skills import SKILL_WORDS, bare
from grammar.core.values import At, KindId, Laden, Landmark, Population, Presence, Skill, Spot, without_load

BY_THEMSELVES = (Skill.RUN, Skill.TOUCH)
DOING = {
    skill: f"{bare(skill)}{'' if skill in BY_THEMSELVES else ' {what}'}{words.way}"
    for skill, words in SKILL_WORDS.items()
}
WITH_IT = "run with {what}"
ORDERS = {Order.STANDING_OR_NOT: "standing or not", Order.IN_ORDER: "in order"}


def offers_told(voice: Voice, offers: Sequence[Offer]) -> Iterator[str]:
    """One sentence for what the same players may do alike, with whichever ball."""
    side = offers[0].by.side
    speaking = voice.about(side, Subject.PLAYERS)
    for alike in _with_any_ball(voice, _by_anybody(voice, offers)):
        who = [each.by for each in alike]
        yield _told(voice.calling("each"), speaking, alike[0], who, [each.attempts[0].ball for each in alike])


def _by_anybody(voice: Voice, offers: Sequence[Offer]) -> list[list[Offer]]:
    """The offers that differ only in who may take them."""
    found: dict[object, list[Offer]] = {}
    for offer in offers:
        found.setdefault((evolve(offer, by=offers[0].by), _away_m(voice, offer)), []).append(offer)
    return list(found.values())


def _away_m(voice: Voice, offer: Offer) -> Fraction | None:
    """From how far, where the sheet says it of the attempt or of the role."""
    role = voice.play.role(offer.by)
    return offer.figures.from_m or (role.aims_from_m if role is not None else None)


def _with_any_ball(voice: Voice, groups: list[list[Offer]]) -> list[list[Offer]]:
    """The same, put together where they differ in the ball alone and are by the same players."""
    found: dict[object, list[Offer]] = {}
    for group in groups:
        first = group[0]
        bare = tuple(evolve(attempt, ball=None) for attempt in first.attempts)
        key = (evolve(first, attempts=bare), frozenset(each.by for each in group), _away_m(voice, first))
        found.setdefault(key, []).extend(group)
    return list(found.values())


def _brings(voice: Voice, speaking: Voice, offer: Offer, who: list[Population]) -> str:
    """Whoever has taken something brings it where it is to go."""
    goals = frozenset(attempt.aim.goal for attempt in offer.attempts if isinstance(attempt.aim, Along))
    return voice.say("{who} bring it {goal}", who=voice.players(set(who)), goal=speaking.goal(goals))


def _told(voice: Voice, speaking: Voice, offer: Offer, who: list[Population], balls: Sequence[KindId | None]) -> str:
    if isinstance(offer.by.role, Laden):
        return _brings(voice, speaking, offer, who)
    skills = list(dict.fromkeys(attempt.skill for attempt in offer.attempts))
    load = speaking.balls([ball for ball in balls if ball is not None])
    if Skill.TAKE in skills:
        load = speaking.any_of({ball for ball in balls if ball is not None})
    if offer.attempts[0].load:
        load = loads(speaking, offer.attempts[0])
    # "roll, throw underarm or kick a foam ball": the ball is named once.
    patterns = [WITH_IT if skill is Skill.RUN and load else DOING[skill] for skill in skills]
    verbs = [voice.say(each, what=load if each is patterns[-1] else "") for each in patterns]
    doing = voice.wording.listed((verb.replace("  ", " ").strip() for verb in verbs), "or")
    aims = list(dict.fromkeys(attempt.aim for attempt in offer.attempts))
    distance = _away_m(voice, offer)
    away = voice.say(", from {distance} away", distance=voice.metres(distance)) if distance else ""
    if not away and skills != [Skill.TOUCH]:
        away = _usually(voice, offer.by, aims, offer.at)
    only = voice.say(", but only one of them at a time") if offer.at_once else ""
    if offer.at_once > 1:
        only = voice.say(", but only {number} of them at a time", number=voice.wording.figure(offer.at_once))
    clock, asked = parted(offer.only)
    if asked != ALWAYS:
        only += voice.say(", but only when {condition}", condition=condition(speaking, asked))
    only += "".join(voice.say(", but only {when}", when=part_of_round(voice, part)) for part in clock)
    figures = "".join(f", {said}" for said in _figures(speaking, offer))
    what = f"{doing} {_at_what(speaking, skills, aims)}".strip()
    waiting = speaking.place(offer.at) if offer.at else ""
    said = voice.say("{who} may {what}", who=f"{voice.players(set(who))} {waiting}".strip(), what=what)
    return f"{said}{away}{figures}{only}"


def loads(voice: Voice, attempt: Attempt) -> str:
    """What is carried: "their logs"."""
    return voice.things(attempt.load)


def _at_what(voice: Voice, skills: Sequence[Skill], aims: Sequence[Aim]) -> str:
    """At what, through what or past what; whoever touches does not aim."""
    if skills == [Skill.TOUCH]:
        at_players = [aim for aim in aims if isinstance(aim, AtPlayers)]
        said = aimed_at(voice, frozenset(one for aim in at_players for one in aim.of))
        told = with_a_ball(voice, frozenset(ball for aim in at_players for ball in aim.holding), said, True)
        if voice.near is not None and all(aim.come_over for aim in at_players):
            return f"{told} {voice.place([Spot(Landmark.HALF, voice.near)])}"
        return told
    if skills == [Skill.RUN]:  # nothing is carried that would be used up
        aims = [evolve(aim, again=True) if isinstance(aim, Along) else aim for aim in aims]
    return _aims(voice, aims)


def _aims(voice: Voice, aims: Sequence[Aim]) -> str:
    """Aims of one sort together: "at the lanterns of the other side or the players of the other side"."""
    return voice.wording.listed((_of_sort(voice, list(group)) for _, group in groupby(aims, _sort)), "or")


def _sort(aim: Aim) -> object:
    return (type(aim), aim.order) if isinstance(aim, AtThing) else type(aim)


def _of_sort(voice: Voice, aims: list[Aim]) -> str:
    first = aims[0]
    match first:
        case AtThing():
            things = frozenset(aim.thing for aim in aims if isinstance(aim, AtThing))
            order = f", {voice.say(ORDERS[first.order])}" if first.order in ORDERS else ""
            return voice.say("at {what}", what=of_others(voice, things)) + order
        case AtPlayers():
            who = frozenset(one for aim in aims if isinstance(aim, AtPlayers) for one in aim.of)
            return voice.say("at {what}", what=aimed_at(voice, who))
        case Through():
            rings = frozenset(aim.thing for aim in aims if isinstance(aim, Through))
            pattern = "into {what}" if first.into else "through {what}"
            return voice.say(pattern, what=of_others(voice, rings))
        case Past():
            lines = frozenset(aim.line for aim in aims if isinstance(aim, Past))
            return voice.say("past {what}", what=voice.bare_place(lines))
        case ToMate():
            mates = [aim for aim in aims if isinstance(aim, ToMate)]
            return _to_mates(voice, mates)
        case PickUp():
            ways = [aim for aim in aims if isinstance(aim, PickUp)]
            start = evolve(voice, rest="a").bare_place(frozenset(way.start for way in ways))
            goal = voice.bare_place(frozenset(way.goal for way in ways))
            return voice.say("from {start} to {goal}, one at a time", start=start, goal=goal)
        case Along():
            return " ".join(_along(voice, aim) for aim in aims if isinstance(aim, Along))
        case _:
            assert_never(first)
    return ""


def aimed_at(voice: Voice, who: frozenset[Population]) -> str:
    """ "the players of the other side"; where all play for themselves the others of one's own."""
    if {each.side for each in who} == {voice.near}:
        return with_empty_hands(voice, who, voice.say("other {players}", players=voice.players(who, None, True)))
    return with_empty_hands(voice, who, voice.players(who))


def _to_mates(voice: Voice, mates: list[ToMate]) -> str:
    at = frozenset(place for mate in mates for place in mate.at)
    who = frozenset(one for mate in mates for one in mate.of)
    roles = {without_load(one.role) for one in who}
    said = voice.say("to a team-mate")
    if roles != set(voice.play.tasks_of(next(iter(who)).side)):
        said = voice.say("to {what}", what=voice.players(who, "a", False))
    spots = [each.spot for each in at if isinstance(each, At)]
    places = ([voice.say("in play")] if Presence.PLAYING in at else []) + ([voice.place(spots)] if spots else [])
    return f"{said} {voice.wording.listed(places, 'or')}"


def _along(voice: Voice, aim: Along) -> str:
    start, goal = voice.bare_place([aim.start]), voice.bare_place([aim.goal])
    if aim.from_hand:
        return voice.say("from wherever they are to {goal}", goal=goal)
    said = voice.say("from {start} to {goal}", start=start, goal=goal)
    if aim.start == aim.goal:
        said = voice.say("from one {what} to the other", what=voice.place_noun(aim.start).one)
    if aim.back:
        said = voice.say("{way} and back", way=said)
    return f"{said}, {voice.say('again and again' if aim.again else 'each once')}"


def _usually(voice: Voice, who: Population, aims: Sequence[Aim], waiting: frozenset[Spot]) -> str:
    """From how far they usually try, on the floor that is laid out; nobody aims who carries."""
    aimed = [aim for aim in aims if not isinstance(aim, Along | PickUp)]
    if voice.usual_m is None or not aimed:
        return ""
    far = sorted(round(voice.usual_m(who, aim, waiting)) for aim in aimed)
    if far[0] == far[-1]:
        return voice.say(", usually from about {distance} away", distance=voice.metres(far[0]))
    low, high = str(far[0]), voice.metres(far[-1])
    return voice.say(", usually from about {low} to {high} away", low=low, high=high)


def _figures(voice: Voice, offer: Offer) -> Iterator[str]:
    """What the sheet itself says of how often and how well."""
    figures: Figures = offer.figures
    if figures.chance is not None:
        yield voice.say("{share} succeed", share=voice.share(figures.chance))
    if figures.caught is not None:
        yield voice.say("{share} are caught", share=voice.share(figures.caught))
    if figures.bounced is not None:
        yield voice.say("{share} touch the floor first", share=voice.share(figures.bounced))
    if figures.per_minute is not None:
        yield voice.often(figures.per_minute).strip()
    if figures.stray is not None:
        what = voice.things(figures.stray.at, False, "a")
        yield voice.say("{share} of the misses hit {what}", share=voice.share(figures.stray.share), what=what)
    if offer.share is not None:
        yield voice.say("{share} of their attempts", share=voice.share(offer.share))
