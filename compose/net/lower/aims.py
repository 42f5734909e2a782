"""Attempt sentences → options: one for every acting side and role, kind of ball, and thing aimed at."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.net.lower.at_once import Uses, rate_of
from compose.net.lower.builder import Builder, Key, at_least
from compose.net.lower.claims import lower_condition
from compose.net.lower.moment import Moment
from compose.net.lower.shares import Option, negated, shared
from compose.net.lower.spots import side_meant
from compose.net.lower.tokens import (
    IN,
    ball_place,
    in_play,
    kit_meant,
    owners,
    player_place,
    roles_of,
    target_place,
    target_total,
)
from compose.net.lower.trying import attempt_of
from compose.net.net import All, Condition, Rate, Ratio
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences import finish, play
from grammar.sentences.base import Np

STANDING_OR_NOT = "standing or not"  # "in order" is no such thing: who aims in order aims at one that stands


def options_of(builder: Builder) -> tuple[Option, ...]:
    """All options of a game, with the shares of the attempts that fall to each."""
    options = [option for sentence in builder.game.all_of("play", play.Attempt) for option in _of(builder, sentence)]
    return shared(options, _while_play_goes_on(builder))


def _while_play_goes_on(builder: Builder) -> frozenset[Condition]:
    """What must be so for the round not to be over: somebody or something is left where none left ends it."""
    found: set[Condition] = set()
    for sentence in builder.game.sentences("finish"):
        if isinstance(sentence, finish.WinWhen | finish.LoseWhen) and len(sentence.condition.ways) == 1:
            for side in builder.side_names:
                over = lower_condition(builder, sentence.condition, side, 0)
                claims = over.parts if isinstance(over, All) else (over,)
                found |= {negated(claim) for claim in claims if len(claims) == 1}
    return frozenset(found)


def _of(builder: Builder, sentence: play.Attempt) -> Iterator[Option]:
    meaning = builder.game.meaning(sentence.who.name)
    if not isinstance(meaning, PlayerMeaning):
        return
    named = meaning.side
    for side in builder.side_names:
        if named not in (None, side):
            continue
        for role in _acting_roles(builder, side, meaning, sentence):
            for ball in _balls(builder, sentence, side, role):
                for skill in sentence.skills:
                    for aim in sentence.aims:
                        yield from _aimed(builder, sentence, skill, aim, side, role, ball)


def _acting_roles(
    builder: Builder, side: str, meaning: PlayerMeaning, sentence: play.Attempt
) -> tuple[str | None, ...]:
    if meaning.role:
        return (meaning.role,)
    with_own_task = {
        other.role
        for each in builder.game.all_of("play", play.Attempt)
        if isinstance(other := builder.game.meaning(each.who.name), PlayerMeaning) and other.role
    }
    return tuple(role for role in roles_of(builder, side) if role not in with_own_task)


def _balls(builder: Builder, sentence: play.Attempt, side: str, role: str | None) -> tuple[tuple[str, Key] | None, ...]:
    """Each kind of ball with the place in which the side has it at hand; None where the act needs no ball."""
    if sentence.ball is None or not _is_ball(builder, sentence.ball):
        return (None,)
    own = next((each.uses for each in builder.game.roles if each.name == role and each.uses), None)
    spot: Key = ("half", side) if builder.game.halved else ("court", None)
    meaning = builder.game.vocabulary[own] if own else builder.game.meaning(sentence.ball.name)
    return tuple((line.name, spot) for line in kit_meant(builder, meaning, "ball"))


def _is_ball(builder: Builder, phrase: Np) -> bool:
    meaning = builder.game.meaning(phrase.name)
    return isinstance(meaning, KitMeaning | CategoryMeaning) and meaning.category == "ball"


def _uses(builder: Builder, side: str) -> Uses:
    """Which kinds of balls the players of each role of a side may use, and where they have them at hand."""
    found: Uses = {role: {} for role in roles_of(builder, side)}
    for sentence in builder.game.all_of("play", play.Attempt):
        meaning = builder.game.meaning(sentence.who.name)
        if isinstance(meaning, PlayerMeaning) and meaning.side in (None, side):
            for role in _acting_roles(builder, side, meaning, sentence):
                found[role] |= {ball[0]: ball[1] for ball in _balls(builder, sentence, side, role) if ball}
    return found


def _aimed(
    builder: Builder,
    sentence: play.Attempt,
    skill: str,
    aim: play.Aim,
    side: str,
    role: str | None,
    ball: tuple[str, Key] | None,
) -> Iterator[Option]:
    guard: list[Condition] = [at_least(in_play(builder, side, role))]
    if ball:
        guard.append(at_least((ball_place(builder, *ball),)))
    only_when, only = sentence.told(play.OnlyWhen), None
    if isinstance(only_when, play.OnlyWhen):
        only = lower_condition(builder, only_when.condition, side, 0)
        guard.append(only)
    rate = rate_of(builder, side, role, ball, _uses(builder, side))
    if isinstance(aim, play.AimBetween) and (towed := _towed(builder, sentence, side)):
        rate = Rate((*rate.limits, towed), rate.ratios)
    for moment, extra, ratios in _moments(builder, sentence, aim, side, role, ball):
        attempt = attempt_of(builder, sentence, skill, moment)
        option = Option(sentence, skill, moment, attempt, (*guard, *extra), rate, only, extra)
        if isinstance(aim, play.AimAt) and aim.standing_or_not == STANDING_OR_NOT and ratios:
            option = evolve(option, guard=tuple(guard), there=(), standing_ratio=ratios[:1], down_ratio=ratios[1:])
        elif isinstance(aim, play.AimAt) and (moment.aim == "player" or moment.step is not None):
            option = evolve(option, rate=evolve(rate, ratios=rate.ratios + ratios))
        yield option


Aimed = tuple[Moment, tuple[Condition, ...], tuple[Ratio, ...]]


def _moments(
    builder: Builder,
    sentence: play.Attempt,
    aim: play.Aim,
    side: str,
    role: str | None,
    ball: tuple[str, Key] | None,
) -> Iterator[Aimed]:
    def moment(**said: str | None) -> Moment:
        other = said.pop("other", None) or (builder.others(side) or (side,))[0]
        return Moment(side, role, str(other), str(said.pop("aim")), "", ball=ball, **said)

    match aim:
        case play.AimAt() | play.AimThrough():
            yield from _at(builder, aim, side, moment)
        case play.AimPast():
            meaning = builder.game.meaning(aim.what.name)
            line = meaning.place if isinstance(meaning, PlaceMeaning) else aim.what.name.text
            for other in _against(builder, aim.what, side):
                yield moment(aim="line", line=line, other=other), (), ()
        case play.AimTo():
            yield from _to_mate(builder, aim, side, moment)
        case play.AimBetween():
            towed = _towed(builder, sentence, side)
            yield moment(aim="none", line=aim.goal.name.text), tuple(at_least((place,)) for place in towed), ()


def _against(builder: Builder, phrase: Np, side: str) -> tuple[str, ...]:
    """The sides whose things a phrase means: without an owner, those of every other side."""
    if phrase.owner is None and not phrase.possessive and phrase.determiner not in ("their", "its"):
        return builder.others(side) or (side,)
    meant = side_meant(builder, phrase, side, (builder.others(side) or (side,))[0])
    return builder.others(side) if meant != side and phrase.owner and getattr(phrase.owner, "other", None) else (meant,)


def _at(builder: Builder, aim: play.AimAt | play.AimThrough, side: str, moment: object) -> Iterator[Aimed]:
    make = moment if callable(moment) else None
    assert make is not None
    meaning = builder.game.meaning(aim.what.name)
    if isinstance(meaning, PlayerMeaning):
        for other in (meaning.side,) if meaning.side else _against(builder, aim.what, side):
            yield from _at_players(builder, meaning, other, make)
        return
    if isinstance(meaning, KitMeaning) and builder.found(("step", meaning.key)):
        yield from _on_track(builder, meaning.key, side, make)
        return
    category = meaning.category if isinstance(meaning, KitMeaning | CategoryMeaning) else "target"
    for line in kit_meant(builder, meaning, category):
        allowed = _against(builder, aim.what, side)
        for owner in owners(builder, line):
            if owner is not None and owner not in allowed:
                continue
            other = owner or (builder.others(side) or (side,))[0]
            if line.category == "target" and isinstance(aim, play.AimAt):
                standing = target_place(builder, line.name, owner, "standing")
                down = target_place(builder, line.name, owner, "down")
                total = target_total(builder, line, owner)
                ratios = (Ratio((standing,), total), Ratio((down,), total))
                yield make(aim="target", thing=line.name, owner=owner, other=other), (at_least((standing,)),), ratios
            else:
                yield make(aim="ring", thing=line.name, owner=owner, other=other), (), ()


def _on_track(builder: Builder, kind: str, side: str, make: object) -> Iterator[Aimed]:
    """Whatever stands on a track is aimed at where it stands: one option for every step."""
    assert callable(make)
    places = builder.found(("step", kind))
    for step, place in enumerate(places):
        yield make(aim="target", thing=kind, step=str(step)), (at_least((place,)),), (Ratio((place,), places),)


def _towed(builder: Builder, sentence: play.Attempt, side: str) -> tuple[int, ...]:
    """The places of standing loads that somebody who carries or tows must have."""
    if sentence.ball is None or _is_ball(builder, sentence.ball):
        return ()
    lines = kit_meant(builder, builder.game.meaning(sentence.ball.name), "target")
    return tuple(
        target_place(builder, line.name, own, "standing")
        for line in lines
        for own in owners(builder, line)
        if own in (side, None)
    )


def _at_players(builder: Builder, meaning: PlayerMeaning, other: str, make: object) -> Iterator[Aimed]:
    assert callable(make)
    everyone = in_play(builder, other)
    spared = {role.name for role in builder.game.roles if not role.aimed_at}
    for role in roles_of(builder, other) if meaning.role is None else (meaning.role,):
        if role in spared:
            continue
        places = in_play(builder, other, role)
        ratios = (Ratio(places, everyone),) if len(everyone) > 1 else ()
        yield make(aim="player", hit_role=role, other=other), (at_least(places),), ratios


def _to_mate(builder: Builder, aim: play.AimTo, side: str, moment: object) -> Iterator[Aimed]:
    assert callable(moment)
    where = builder.game.meaning(aim.where.name) if aim.where else None
    standing = where.place if isinstance(where, PlaceMeaning) and not where.built_in else IN
    places = tuple(player_place(builder, side, role, standing) for role in roles_of(builder, side))
    needed, other = (1, None) if standing != IN else (2, side)
    yield moment(aim="mate", mates_at=standing, other=other), (at_least(places, needed),), ()
