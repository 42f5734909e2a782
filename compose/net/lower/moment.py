"""The moment an event speaks of: who acted, at whom or what, with which ball."""

from __future__ import annotations

from attrs import frozen

from compose.net.lower.builder import Builder, Key
from compose.net.lower.spots import side_meant, spot_key
from grammar.meanings import AgentMeaning, CategoryMeaning, KitMeaning, MateMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences import play, when
from grammar.sentences.base import AnySide, Np, SideNamed, SideOf, SideRef

SUCCESS, CAUGHT, MISSED, LEFT = "success", "caught", "missed", "left"


@frozen
class Moment:
    """One outcome of one attempt. `aim` is as in net.Attempt; `thing` is the target or ring aimed at;
    `line` the line to cross; `mates_at` where the team-mate stands; `ball` kind and the key it came from;
    `step` where on its track the thing stands; `first` the role of the first in line ("-" for none), where settled.
    """

    actor: str
    actor_role: str | None
    other: str
    aim: str
    outcome: str
    thing: str | None = None
    owner: str | None = None
    hit_role: str | None = None
    line: str | None = None
    mates_at: str | None = None
    ball: tuple[str, Key] | None = None
    step: str | None = None
    first: str | None = None


def happens(builder: Builder, event: when.Event, moment: Moment) -> bool:
    """Whether the event of a rule is what happened."""
    match event:
        case when.Knocked():
            return (moment.outcome, moment.aim) == (SUCCESS, "target") and _is_kit(builder, event.what, moment.thing)
        case when.Hit():
            return (moment.outcome, moment.aim) == (SUCCESS, "player") and _is_player(builder, event.who, moment)
        case when.Caught():
            wanted = (SUCCESS, "mate") if event.where else (CAUGHT, moment.aim)
            return (moment.outcome, moment.aim) == wanted and _is_ball(builder, event.what, moment)
        case when.Missed():
            return moment.outcome == MISSED and _is_ball(builder, event.what, moment)
        case when.Leaves():
            return moment.outcome == LEFT and _is_ball(builder, event.what, moment)
        case when.GoesThrough():
            return (
                (moment.outcome, moment.aim) == (SUCCESS, "ring")
                and _is_ball(builder, event.what, moment)
                and _is_kit(builder, event.through, moment.thing)
            )
        case when.Arrives():
            who = builder.game.meaning(event.who.name)
            return (
                (moment.outcome, moment.aim) == (SUCCESS, "none")
                and moment.line is not None
                and getattr(who, "side", None) in (None, moment.actor)
            )
        case when.Crosses():
            spot = builder.game.meaning(event.line.name)
            return (
                (moment.outcome, moment.aim) == (SUCCESS, "line")
                and isinstance(spot, PlaceMeaning)
                and spot.place == moment.line
                and _is_ball(builder, event.what, moment)
            )
    return False


def _is_kit(builder: Builder, phrase: Np, thing: str | None) -> bool:
    meaning = builder.game.meaning(phrase.name)
    if isinstance(meaning, KitMeaning):
        return meaning.key == thing
    if isinstance(meaning, CategoryMeaning) and thing is not None:
        return builder.game.kit_named(thing).category == meaning.category
    return False


def _is_ball(builder: Builder, phrase: Np, moment: Moment) -> bool:
    meaning = builder.game.meaning(phrase.name)
    if isinstance(meaning, CategoryMeaning):
        return True
    return isinstance(meaning, KitMeaning) and moment.ball is not None and meaning.key == moment.ball[0]


def _is_player(builder: Builder, phrase: Np, moment: Moment) -> bool:
    meaning = builder.game.meaning(phrase.name)
    if not isinstance(meaning, PlayerMeaning):
        return False
    return meaning.side in (None, moment.other) and meaning.role in (None, moment.hit_role)


def side_of(builder: Builder, phrase: AnySide, moment: Moment) -> str:
    """The side that a phrase means at this moment."""
    if isinstance(phrase, SideOf):
        return _part(builder, phrase.possessive, moment)
    if isinstance(phrase, SideNamed):
        meaning = builder.game.meaning(phrase.name)
        return getattr(meaning, "side", moment.actor) or moment.actor
    if isinstance(phrase, SideRef) and phrase.other:
        return moment.other
    return moment.actor


def _part(builder: Builder, possessive: str, moment: Moment) -> str:
    """The side of "the thrower's", "the catcher's", "north's"."""
    word = possessive.removesuffix("'s")
    meaning = builder.game.vocabulary.get(word)
    if isinstance(meaning, AgentMeaning):
        return moment.actor if meaning.part == "actor" else moment.other
    side = getattr(meaning, "side", None)
    return side if side else moment.other


def who_moves(builder: Builder, who: Np, moment: Moment) -> tuple[str, str | None] | None:
    """Side and role of the one player that a phrase means, or None where it means no single player."""
    meaning = builder.game.meaning(who.name)
    if isinstance(meaning, AgentMeaning):
        if meaning.part == "actor":
            return moment.actor, moment.actor_role
        return moment.other, moment.hit_role
    if isinstance(meaning, PlayerMeaning):
        return (moment.other, moment.hit_role)
    if isinstance(meaning, MateMeaning):
        return (moment.actor, None)
    return None


def queue_side(builder: Builder, where: Np, moment: Moment, own: str) -> str:
    """Whose queue a phrase means."""
    if where.possessive:
        return _part(builder, where.possessive, moment)
    if where.owner is None and not where.other:
        return own
    return side_meant(builder, where, own, moment.other)


def rest_key(builder: Builder, place: play.RestingPlace, moment: Moment) -> Key:
    """Where a ball comes to rest."""
    if isinstance(place, play.RestInHalf | play.RestToHalf):
        if not builder.game.halved:
            return ("court", None)
        if place.which == "half it came from":
            return ("half", moment.actor)
        return ("half", moment.other)
    preposition = place.preposition if isinstance(place, play.RestThere) else None
    if place.where.possessive:
        side = _part(builder, place.where.possessive, moment)
        return spot_key(builder, preposition, place.where, side, side)
    return spot_key(builder, preposition, place.where, moment.actor, moment.other)
