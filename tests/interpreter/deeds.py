"""What somebody may try in a state, and how it can turn out: one deed for every outcome."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve, frozen

import library
from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences import play, when
from grammar.sentences.base import Np
from tests.interpreter.board import IN, Counts, ball, player, step, target, total
from tests.interpreter.claims import true
from tests.interpreter.sheet import Sheet, Spot

REACHED, CAUGHT, MISSED, LEFT, HELD, BECAME = "reached", "caught", "missed", "left", "held", "became"


@frozen
class Deed:
    """Who tried what with which ball at whom or what, and how it turned out.

    `kind` is what was aimed at: "target", "player", "ring", "line", "mate", "way", or "" where nothing was.
    `first` is the role of the first in the line that the rules speak of, where somebody waits in it.
    """

    side: str
    role: str | None
    other: str
    kind: str
    outcome: str
    verb: str = ""
    ball: tuple[str, Spot] | None = None
    thing: str | None = None
    owner: str | None = None
    step: int | None = None
    hit_role: str | None = None
    place: str | None = None
    first: tuple[str | None, ...] | None = None

    @property
    def parts(self) -> dict[str, str]:
        """Whose are "the thrower", "the catcher" and "its keeper"."""
        return {"actor": self.side, "catcher": self.other, "owner": self.other}

    def told(self) -> tuple[str, ...]:
        """Words that any telling of the deed must hold."""
        said = [self.verb, self.ball[0] if self.ball else "", self.thing or "", self.place or ""]
        ends = {CAUGHT: "catch", MISSED: "misses", LEFT: "leaves"}
        return tuple(word for word in (*said, ends.get(self.outcome, "")) if word)


def deeds(sheet: Sheet, counts: Counts) -> Iterator[Deed]:
    """All deeds that are possible in a state."""
    for sentence in sheet.said(play.Attempt):
        for side in sheet.sides:
            for role in _roles(sheet, sentence, side):
                if counts.get(player(side, role, IN), 0):
                    yield from _by(sheet, sentence, side, role, counts)


def _roles(sheet: Sheet, sentence: play.Attempt, side: str) -> Iterator[str | None]:
    who = sheet.players_meant(sentence.who)
    if who is None or who.side not in (None, side):
        return
    busy = {
        other.role
        for each in sheet.said(play.Attempt)
        if (other := sheet.players_meant(each.who)) is not None and other.role is not None
    }
    for role in sheet.roles(side):
        if role == who.role or (who.role is None and role not in busy):
            yield role


def _by(sheet: Sheet, sentence: play.Attempt, side: str, role: str | None, counts: Counts) -> Iterator[Deed]:
    only = sentence.told(play.OnlyWhen)
    if isinstance(only, play.OnlyWhen) and not true(sheet, only.condition, side, counts, side):
        return
    for what in _balls(sheet, sentence, side, role):
        if what is not None and not counts.get(ball(*what), 0):
            continue
        for skill in sentence.skills:
            for aim in sentence.aims:
                for aimed in _aims(sheet, sentence, aim, side, counts):
                    tried = evolve(aimed, role=role, ball=what, verb=_verb(skill))
                    yield from _outcomes(sheet, sentence, tried, counts)


def _verb(skill: str) -> str:
    return skill.split()[-1].removesuffix("y")  # "carry", "carries"


def _balls(sheet: Sheet, sentence: play.Attempt, side: str, role: str | None) -> Iterator[tuple[str, Spot] | None]:
    if sentence.ball is None or not sheet.is_ball(sentence.ball):
        yield None
        return
    meaning = sheet.game.meaning(sentence.ball.name)
    for each in sheet.game.roles:
        if each.name == role and each.uses:
            meaning = sheet.game.vocabulary[each.uses]
    for line in sheet.lines(meaning, "ball"):
        yield line.name, sheet.at_hand(side)


def _aims(sheet: Sheet, sentence: play.Attempt, aim: play.Aim, side: str, counts: Counts) -> Iterator[Deed]:
    blank = Deed(side, None, sheet.others(side)[0], "", REACHED)
    match aim:
        case play.AimAt() | play.AimThrough():
            yield from _at(sheet, aim, blank, counts)
        case play.AimPast():
            meaning = sheet.game.meaning(aim.what.name)
            place = meaning.place if isinstance(meaning, PlaceMeaning) else None
            for other in _aimed_sides(sheet, aim.what, side):
                yield evolve(blank, kind="line", place=place, other=other)
        case play.AimTo():
            bench = sheet.area(aim.where) if aim.where is not None else IN
            there = total(counts, [player(side, role, bench) for role in sheet.roles(side)])
            if there >= (2 if bench == IN else 1):
                other = side if bench == IN else blank.other
                yield evolve(blank, kind="mate", place=bench if bench != IN else None, other=other)
        case play.AimBetween():
            if all(counts.get(load, 0) for load in _loads(sheet, sentence, side)):
                yield evolve(blank, kind="way", place=aim.goal.name.text)


def _aimed_sides(sheet: Sheet, phrase: Np, side: str) -> tuple[str, ...]:
    named = phrase.owner is not None or phrase.possessive or phrase.determiner in ("their", "its")
    if not named or (phrase.owner is not None and getattr(phrase.owner, "other", None)):
        return sheet.others(side)
    return (sheet.whose(phrase, side, sheet.others(side)[0]),)


def _loads(sheet: Sheet, sentence: play.Attempt, side: str) -> Iterator[str]:
    if sentence.ball is not None and not sheet.is_ball(sentence.ball):
        for line in sheet.lines(sheet.game.meaning(sentence.ball.name), "target"):
            for owner in sheet.may_own(line):
                if owner in (side, None):
                    yield target(line.name, owner, "standing")


def _at(sheet: Sheet, aim: play.AimAt | play.AimThrough, blank: Deed, counts: Counts) -> Iterator[Deed]:
    meaning = sheet.game.meaning(aim.what.name)
    sides = _aimed_sides(sheet, aim.what, blank.side)
    if isinstance(meaning, PlayerMeaning):
        for other in (meaning.side,) if meaning.side else sides:
            yield from _at_players(sheet, meaning, evolve(blank, kind="player", other=other), counts)
        return
    assert isinstance(meaning, KitMeaning | CategoryMeaning)
    for line in sheet.lines(meaning, meaning.category):
        track = sheet.track(line.name)
        if track is not None:
            for number in range(track[0].steps + 1):
                if counts.get(step(line.name, number), 0):
                    yield evolve(blank, kind="target", thing=line.name, step=number)
            continue
        for owner in sheet.may_own(line):
            if owner is not None and owner not in sides:
                continue
            at = evolve(blank, thing=line.name, owner=owner, other=owner or blank.other)
            if line.category != "target" or isinstance(aim, play.AimThrough):
                yield evolve(at, kind="ring")
            else:
                yield from _at_targets(aim, at, counts)


def _at_targets(aim: play.AimAt, at: Deed, counts: Counts) -> Iterator[Deed]:
    """At one that stands; where the sheet says "standing or not" also at one that is down, in vain."""
    assert at.thing is not None
    if counts.get(target(at.thing, at.owner, "standing"), 0):
        yield evolve(at, kind="target")
    elif aim.standing_or_not == "standing or not" and counts.get(target(at.thing, at.owner, "down"), 0):
        yield evolve(at, kind="target", outcome=MISSED)


def _at_players(sheet: Sheet, meaning: PlayerMeaning, blank: Deed, counts: Counts) -> Iterator[Deed]:
    spared = {role.name for role in sheet.game.roles if not role.aimed_at}
    roles = sheet.roles(blank.other) if meaning.role is None else (meaning.role,)
    for role in roles:
        if role not in spared and counts.get(player(blank.other, role, IN), 0):
            yield evolve(blank, hit_role=role)


def _outcomes(sheet: Sheet, sentence: play.Attempt, aimed: Deed, counts: Counts) -> Iterator[Deed]:
    if not _hangs_too_high(sheet, aimed):
        yield aimed
    if aimed.kind == "way" and sentence.told(play.SucceedChance) is None:
        return
    catchers = total(counts, [player(aimed.other, role, IN) for role in sheet.roles(aimed.other)])
    if aimed.kind in ("target", "player", "ring") and catchers and _said(sheet, when.Caught):
        yield evolve(aimed, outcome=CAUGHT)
    yield evolve(aimed, outcome=MISSED)
    if aimed.ball is not None and _said(sheet, when.Leaves):
        yield evolve(aimed, outcome=LEFT)
    stray = sentence.told(play.Stray)
    if isinstance(stray, play.Stray):
        for line in sheet.lines(sheet.game.meaning(stray.what.name), "target"):
            for owner in sheet.may_own(line):
                if owner in (aimed.other, None) and counts.get(target(line.name, owner, "standing"), 0):
                    yield evolve(aimed, kind="target", thing=line.name, owner=owner, outcome=REACHED)


def _hangs_too_high(sheet: Sheet, aimed: Deed) -> bool:
    """A ball that rolls stays below what hangs, and goes through no ring but one that stands on the floor."""
    if aimed.verb != "roll" or aimed.thing is None:
        return False
    kit = library.kit_names()
    thing = kit.get(sheet.game.kit_named(aimed.thing).like)
    above = thing.stands_above_floor_cm.usual if thing and thing.stands_above_floor_cm else 0.0
    item = kit.get(sheet.game.kit_named(aimed.ball[0]).like) if aimed.ball else None
    return above > (0.0 if aimed.kind == "ring" else item.diameter_cm.usual if item and item.diameter_cm else 20.0)


def _said(sheet: Sheet, kind: type[when.Caught] | type[when.Leaves]) -> bool:
    """Whether the sheet, or what it takes for granted, says what follows from such an event."""
    rules = (*sheet.said(when.When), *sheet.said(when.When, granted=True))
    return any(isinstance(rule.event, kind) and getattr(rule.event, "preposition", None) is None for rule in rules)
