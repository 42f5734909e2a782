"""Acts that aim at nothing: fetching balls, freeing who waits, standing up targets, a ball held too long."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from attrs import evolve

from compose.net.lower.attempts import Table
from compose.net.lower.builder import Builder, Key, at_least
from compose.net.lower.consequences import follow
from compose.net.lower.moment import Moment
from compose.net.lower.say import player_words
from compose.net.lower.spots import named_sides, spot_key
from compose.net.lower.tokens import (
    IN,
    ball_place,
    in_play,
    kit_meant,
    of_side,
    owners,
    player_place,
    roles_of,
    target_place,
)
from compose.net.net import All, Attempt, Comparison, Effect, Move, Rate, Ratio, Transition
from grammar.meanings import PlaceMeaning, PlayerMeaning, TeacherMeaning
from grammar.sentences import play, when
from grammar.words import article


def _act(builder: Builder, skill: str, name: str, pace: play.Pace | None) -> Attempt:
    said = pace.times.value if pace else None
    return Attempt(name, skill, None, "none", said_per_minute=said, age_years=builder.game.ages_years)


def lower_fetches(builder: Builder, sentences: tuple[play.Fetch, ...]) -> None:
    """Balls come back from where players may fetch them.

    What is taken for granted only matters where balls can lie; a line of the sheet's own is followed up, so that
    the check can say that no ball ever comes to lie there.
    """
    for sentence in sentences:
        meaning = builder.game.meaning(sentence.who.name)
        for side in builder.side_names:
            named = meaning.side if isinstance(meaning, PlayerMeaning) else None
            if named in (None, side):
                builder.transitions.extend(_fetches(builder, sentence, side, isinstance(meaning, TeacherMeaning)))


def _fetches(builder: Builder, sentence: play.Fetch, side: str, teacher: bool) -> Iterator[Transition]:
    spot = spot_key(builder, sentence.preposition, sentence.where, side, side)
    home: Key = ("half", side) if builder.game.halved else ("court", None)
    for line in kit_meant(builder, builder.game.meaning(sentence.what.name), "ball"):
        somewhere = ("ball", line.name, *spot) in builder.places or builder.own(sentence)
        if not somewhere or spot == home:
            continue
        source, target = ball_place(builder, line.name, spot), ball_place(builder, line.name, home)
        who = "the teacher" if teacher else player_words(side, None)
        where = (
            builder.places["ball", line.name, spot[0], spot[1]].one.removeprefix(f"{line.name} ").removeprefix("in ")
        )
        fetchers = in_play(builder, side)
        rule = builder.rule(sentence)
        yield Transition(
            f"{who} fetches a {line.name} from {where}",
            None if teacher else side,
            teacher,
            _act(builder, "fetch", sentence.words(), sentence.pace),
            "always",
            Rate() if teacher else Rate((fetchers, (source,))),
            at_least((source,)) if teacher else All((at_least((source,)), at_least(fetchers))),
            (Move(source, target, 1, rule),),
            (rule,),
            part=1 / len(builder.side_names) if teacher and spot[1] is None else 1.0,  # now to one side, now to another
        )


def lower_frees(builder: Builder, sentences: tuple[play.Free, ...]) -> None:
    """The teacher, or players of the side, bring back who waits."""
    for sentence in sentences:
        meaning = builder.game.meaning(sentence.who.name)
        queue = builder.game.meaning(sentence.queued.where.name)
        assert isinstance(queue, PlaceMeaning)
        for side in named_sides(builder, sentence.queued.where):
            if isinstance(meaning, PlayerMeaning) and meaning.side not in (None, side):
                continue
            places = {role: player_place(builder, side, role, queue.place) for role in roles_of(builder, side)}
            if isinstance(sentence.queued, play.AllQueued):
                builder.transitions.append(_free(builder, sentence, side, places, meaning))
                continue
            waiting = tuple(places.values())
            for role, place in places.items():
                freed = _free(builder, sentence, side, {role: place}, meaning)
                limits = tuple((freers, waiting) for freers in freed.rate.limits)
                share = (Ratio((place,), waiting),) if len(places) > 1 else ()
                builder.transitions.append(evolve(freed, rate=Rate(sum(limits, ()), share)))


def _free(
    builder: Builder, sentence: play.Free, side: str, places: Mapping[str | None, int], meaning: object
) -> Transition:
    """Those in the places come back in: the first, or all."""
    rule = builder.rule(sentence)
    everyone = isinstance(sentence.queued, play.AllQueued)
    own = in_play(builder, side, meaning.role or "any") if isinstance(meaning, PlayerMeaning) else ()
    who = player_words(side, meaning.role) if isinstance(meaning, PlayerMeaning) else "the teacher"
    queue = sentence.queued.where.name.text
    waiting = tuple(places.values())
    return Transition(
        f"{who} frees {'all' if everyone else 'the first'} in the {queue} of {side}",
        side if own else None,
        not own,
        _act(builder, "free", sentence.words(), sentence.pace),
        "always",
        Rate((own,) if own else ()),
        All((at_least(waiting), at_least(own))) if own else at_least(waiting),
        tuple(
            Move(place, player_place(builder, side, role, IN), None if everyone else 1, rule)
            for role, place in places.items()
        ),
        (rule,),
    )


def lower_held_too_long(builder: Builder, table: Table) -> None:
    """A ball held longer than its limit: the referee's switch, which nobody may refuse."""
    for rule in builder.game.whens:
        if not isinstance(rule.event, when.HeldLong):
            continue
        for side in builder.side_names:
            for line in kit_meant(builder, builder.game.meaning(rule.event.what.name), "ball"):
                builder.transitions.append(_held(builder, rule, side, line.name, table))


def _held(builder: Builder, rule: when.When, side: str, kind: str, table: Table) -> Transition:
    spot: Key = ("half", side) if builder.game.halved else ("court", None)
    source = ball_place(builder, kind, spot)
    other = (builder.others(side) or (side,))[0]
    moment = Moment(side, None, other, "none", "held", ball=(kind, spot))
    follows = follow(builder, rule, moment, table.result_place)
    effects: list[Effect] = list(follows.effects)
    own_rule = builder.rule(rule)
    if follows.ball_to and follows.ball_to != spot:
        effects.insert(0, Move(source, ball_place(builder, kind, follows.ball_to), 1, own_rule))
    holders = in_play(builder, side)
    return Transition(
        f"{player_words(side, None)} holds a {kind} too long; {follows.words}",
        None,
        True,
        _act(builder, "hold", rule.words(), None),
        "always",
        Rate((holders, (source,))),
        All((at_least(holders), at_least((source,)))),
        tuple(effects),
        (own_rule,),
    )


def lower_stand_ups(builder: Builder) -> None:
    """Fallen targets are put up again, by the teacher or by players of their own side."""
    for sentence in builder.game.all_of("play", play.StandUp):
        meaning = builder.game.meaning(sentence.who.name)
        for line in kit_meant(builder, builder.game.meaning(sentence.what.name), "target"):
            for owner in owners(builder, line):
                if isinstance(meaning, PlayerMeaning) and meaning.side not in (None, owner):
                    continue
                own = (
                    in_play(builder, owner, meaning.role or "any")
                    if isinstance(meaning, PlayerMeaning) and owner
                    else ()
                )
                builder.transitions.append(_stand_up(builder, sentence, line.name, owner, own))


def _stand_up(
    builder: Builder, sentence: play.StandUp, kind: str, owner: str | None, own: tuple[int, ...]
) -> Transition:
    rule = builder.rule(sentence)
    fallen, standing = (target_place(builder, kind, owner, state) for state in ("down", "standing"))
    who = player_words(owner, None) if own and owner else "the teacher"
    return Transition(
        f"{who} stands up {article(of_side(kind, owner))}",
        owner if own else None,
        not own,
        _act(builder, "free", sentence.words(), sentence.pace),
        "always",
        Rate((own, (fallen,)) if own else ()),
        All((at_least((fallen,)), at_least(own))) if own else at_least((fallen,)),
        (Move(fallen, standing, 1, rule),),
        (rule,),
    )


def lower_everyone_holds(builder: Builder, table: Table) -> None:
    """What follows when every player in play holds a ball: possible while there are balls enough."""
    for rule in builder.game.whens:
        if not isinstance(rule.event, when.EveryoneHolds):
            continue
        side = builder.side_names[0]
        players = tuple(place for each in builder.side_names for place in in_play(builder, each))
        balls = builder.found(("ball",))
        enough = Comparison((*((1, ball) for ball in balls), *((-1, player) for player in players)), ">=", 0)
        follows = follow(builder, rule, Moment(side, None, side, "none", "held"), table.result_place)
        builder.transitions.append(
            Transition(
                f"{rule.event.words()}; {follows.words}",
                None,
                True,
                _act(builder, "hold", rule.words(), None),
                "always",
                Rate(),
                All((enough, at_least(players))),
                follows.effects,
                (builder.rule(rule),),
            )
        )
