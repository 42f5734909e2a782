"""What becomes of a target or body that was hit: it falls, changes its owner, or moves along its track."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.moment import Moment, side_of, who_moves
from compose.net.lower.tokens import step_place, target_place, track_of
from compose.net.net import Effect, Move, Rule
from grammar.meanings import KitMeaning
from grammar.sentences import when
from grammar.sentences.base import Np
from grammar.sentences.play import RestOnStep


def fell(builder: Builder, moment: Moment, rule: Rule) -> Iterator[Effect]:
    """It stays down; on a track nothing falls."""
    if moment.thing is None or moment.step is not None:
        return
    standing = target_place(builder, moment.thing, moment.owner, "standing")
    yield Move(standing, target_place(builder, moment.thing, moment.owner, "down"), 1, rule)


def stepped(builder: Builder, consequence: when.Steps, moment: Moment, rule: Rule) -> Iterator[Effect]:
    """Along the track towards a side's home, or away from it; at the end it stays."""
    if moment.thing is None or moment.step is None:
        return
    track = track_of(builder, moment.thing)
    side = _part_side(builder, consequence.towards, moment)
    down = (side == track.start) == (consequence.direction == "towards")
    step = int(moment.step) + (-1 if down else 1) * consequence.by.whole
    step = min(max(step, 0), track.steps)
    source = step_place(builder, moment.thing, int(moment.step), track.name)
    if step != int(moment.step):
        yield Move(source, step_place(builder, moment.thing, step, track.name), 1, rule)


def _part_side(builder: Builder, phrase: Np, moment: Moment) -> str:
    who = who_moves(builder, phrase, moment)
    if who is not None:
        return who[0]
    meaning = builder.game.meaning(phrase.name)
    return getattr(meaning, "side", None) or moment.actor


def put_on_step(
    builder: Builder, consequence: when.MovesTo, place: RestOnStep, moment: Moment, rule: Rule
) -> Iterator[Effect]:
    """Something on a track is put on a step: from where it was hit, or from the home that it reached."""
    if not isinstance(consequence.who, Np):
        return
    meaning = builder.game.meaning(consequence.who.name)
    if not isinstance(meaning, KitMeaning):
        return
    track = track_of(builder, meaning.key)
    home = 0 if moment.actor == track.start else track.steps
    step = int(moment.step) if moment.step is not None else home
    source = step_place(builder, meaning.key, step, track.name)
    target = step_place(builder, meaning.key, place.step.whole, track.name)
    if source != target:
        yield Move(source, target, 1, rule)


def taken_over(builder: Builder, consequence: when.TakenOver, moment: Moment, rule: Rule) -> Iterator[Effect]:
    """It changes its owner and stands."""
    if moment.thing is None:
        return
    side = side_of(builder, consequence.side, moment)
    standing = target_place(builder, moment.thing, moment.owner, "standing")
    yield Move(standing, target_place(builder, moment.thing, side, "standing"), 1, rule)
