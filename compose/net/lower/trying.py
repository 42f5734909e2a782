"""An attempt in numbers: skill, distance, size, and what the text itself says of chance and pace."""

from __future__ import annotations

import library
from compose.net.distance import distance_m
from compose.net.lower.builder import Builder
from compose.net.lower.moment import Moment
from compose.net.lower.tokens import IN
from compose.net.net import Attempt
from grammar.game import Game
from grammar.sentences import play


def attempt_of(builder: Builder, sentence: play.Attempt, skill: str, moment: Moment) -> Attempt:
    """What the forecast needs to know of an attempt: by which skill, at what, from how far, and what is said."""
    chance, caught, pace = (sentence.told(k) for k in (play.SucceedChance, play.CaughtChance, play.Pace))
    away = sentence.told(play.FromWhere)
    catchers = any(rule.event.words().endswith("is caught") for rule in builder.game.whens)
    width_m, height_m = _size(builder, moment.thing)
    return Attempt(
        name=sentence.words(),
        skill=skill,
        ball=builder.game.kit_named(moment.ball[0]).like if moment.ball else None,
        aim=moment.aim,
        target=builder.game.kit_named(moment.thing).like if moment.thing else None,
        distance_m=away.distance.metres if isinstance(away, play.FromWhere) else _distance(builder, sentence, moment),
        width_m=width_m,
        height_m=height_m,
        said_chance=chance.times.value / chance.of.value if isinstance(chance, play.SucceedChance) else None,
        said_catch=caught.times.value / caught.of.value if isinstance(caught, play.CaughtChance) else None,
        said_per_minute=pace.times.value if isinstance(pace, play.Pace) else None,
        catchable=catchers and moment.aim in ("target", "player", "ring"),
        age_years=builder.game.ages_years,
        chance_factor=_factor(builder, play.SucceedAsOften),
        pace_factor=_factor(builder, play.TakeAsLong),
    )


def sizes_m(game: Game) -> dict[str, tuple[float, float]]:
    """Width and height in metres of everything in the kit that the library knows, as the sheet scales it."""
    known = library.kit_names()
    found = {}
    for line in game.kit:
        if line.like in known:
            width, height = known[line.like].size_m
            found[line.name] = (width * line.scale, height * line.scale)
    return found


def _size(builder: Builder, thing: str | None) -> tuple[float, float]:
    """Width and height in metres of a thing that the sheet makes larger or smaller; 0 as the kit has it."""
    if thing is None:
        return 0.0, 0.0
    if builder.game.kit_named(thing).scale == 1.0:
        return 0.0, 0.0
    return sizes_m(builder.game).get(thing, (0.0, 0.0))


def _factor(builder: Builder, kind: type[play.SucceedAsOften] | type[play.TakeAsLong]) -> float:
    factor = 1.0
    for sentence in builder.game.all_of("play", kind):
        factor *= sentence.percent.value / 100
    return factor


def _distance(builder: Builder, sentence: play.Attempt, moment: Moment) -> float:
    start = next((aim.start.name.text for aim in sentence.aims if isinstance(aim, play.AimBetween)), None)
    target = {"player": "player", "line": "line", "mate": "mate"}.get(moment.aim, moment.thing or "line")
    return distance_m(
        builder.floor,
        builder.game,
        thrower_side=moment.actor,
        target=target,
        owner_side=moment.actor if moment.aim == "mate" else moment.owner or moment.other,
        place=moment.line or (moment.mates_at if moment.mates_at != IN else None),
        role=moment.actor_role,
        start=start if moment.aim == "none" else None,
    )
