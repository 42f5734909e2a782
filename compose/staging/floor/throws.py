"""The attempts of a game as lines on the floor: who, what, from where, how far."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import field, frozen

from compose.staging.floor.distance import Reach, reach_of, reach_of_length
from compose.staging.floor.phrases import owner_of
from compose.staging.floor.values import Floor
from grammar.game import Game
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences.base import Name, Np
from grammar.sentences.play import Aim, AimAt, AimBetween, AimPast, AimThrough, AimTo, Attempt, FromWhere
from grammar.words import listing


@frozen
class Throw:
    """One attempt of one side at one kind of goal. `at` names the goal in a word or two: "lanterns"."""

    side: str
    role: str | None
    skill: str
    at: str
    reach: Reach
    sentence: Attempt = field(eq=False)


def throws(game: Game, floor: Floor) -> tuple[Throw, ...]:
    """Every attempt of the play, sentence by sentence, side by side."""
    return tuple(throw for sentence in game.all_of("play", Attempt) for throw in _of_sentence(game, floor, sentence))


def _of_sentence(game: Game, floor: Floor, sentence: Attempt) -> Iterator[Throw]:
    meaning = game.meaning(sentence.who.name)
    who = meaning if isinstance(meaning, PlayerMeaning) else PlayerMeaning()
    away = sentence.told(FromWhere)
    for side in game.sides:
        if who.side not in (None, side.name):
            continue
        for aim in sentence.aims:
            for at, reach in _reaches(game, floor, aim, side.name, who.role):
                said = reach_of_length(reach, away.distance.metres) if isinstance(away, FromWhere) else reach
                yield Throw(side.name, who.role, listing(sentence.skills, "or"), at, said, sentence)


def _reaches(game: Game, floor: Floor, aim: Aim, side: str, role: str | None) -> Iterator[tuple[str, Reach]]:
    others = [other.name for other in game.sides if other.name != side] or [side]

    def reach(target: str, owners: list[str], place: str | None = None, start: str | None = None) -> Reach:
        tries = (
            reach_of(
                floor, game, thrower_side=side, target=target, owner_side=owner, place=place, role=role, start=start
            )
            for owner in owners
        )
        return min(tries, key=lambda one: one.metres)

    match aim:
        case AimAt() | AimThrough():
            owners = _against(game, aim.what, side, others)
            for target, at in _targets(game, aim.what.name):
                yield at, reach(target, owners, _place(game, aim.what.name) if target == "line" else None)
        case AimPast():
            place = _place(game, aim.what.name)
            yield place, reach("line", _against(game, aim.what, side, others), place)
        case AimTo():
            where = _place(game, aim.where.name) if aim.where else None
            yield f"team-mate on the {where}" if where else "team-mate", reach("mate", [side], where)
        case AimBetween():
            goal = _place(game, aim.goal.name)
            yield goal, reach("line", others[:1], goal, _place(game, aim.start.name))


def _against(game: Game, phrase: Np, side: str, others: list[str]) -> list[str]:
    """Whose things are meant: those of the side named, else those of any other side."""
    if phrase.determiner in ("their", "its"):
        return [side]
    named = owner_of(game, phrase, side)
    return others if named in (None, side) else [named]


def _targets(game: Game, name: Name) -> Iterator[tuple[str, str]]:
    """What a name aims at, as reach_of wants it, and what to call it."""
    meaning = game.meaning(name)
    if isinstance(meaning, PlayerMeaning):
        yield "player", meaning.role or "players"
    elif isinstance(meaning, KitMeaning):
        line = game.kit_named(meaning.key)
        yield line.name, line.plural if line.count > 1 else line.name
    elif isinstance(meaning, CategoryMeaning):
        for line in game.kit:
            if line.category == meaning.category:
                yield line.name, line.plural if line.count > 1 else line.name
    elif isinstance(meaning, PlaceMeaning):
        yield "line", meaning.place


def _place(game: Game, name: Name) -> str:
    meaning = game.meaning(name)
    return meaning.place if isinstance(meaning, PlaceMeaning) else name.text
