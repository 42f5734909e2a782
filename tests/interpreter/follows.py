"""What follows from a deed: which rules apply, where the ball comes to rest, what changes on the board."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from grammar.meanings import AgentMeaning, CategoryMeaning, KitMeaning, PlaceMeaning
from grammar.sentences import finish, play, when
from grammar.sentences.base import Np
from tests.interpreter.board import IN, OUT, RESULT, Counts, ball, move, player, points, step, target
from tests.interpreter.claims import points_matter_to, true
from tests.interpreter.deeds import CAUGHT, LEFT, MISSED, REACHED, Deed
from tests.interpreter.set_up import set_up
from tests.interpreter.sheet import Sheet, Spot


def carried_out(sheet: Sheet, deed: Deed, before: Counts) -> Counts:
    """The counts after a deed: first the ball flies, then the rules are followed in their order."""
    counts = dict(before)
    rules = applying(sheet, deed, before)
    if deed.ball is not None:
        move(counts, ball(*deed.ball), ball(deed.ball[0], _rest(sheet, deed, rules)))
    for rule in rules:
        follow(sheet, rule, deed, counts)
    return counts


def follow(sheet: Sheet, rule: when.When, deed: Deed, counts: Counts) -> None:
    """All that a rule says, in its order; where the ball goes is settled before."""
    for consequence in rule.consequences:
        if not _about_balls(sheet, consequence):
            _change(sheet, consequence, deed, counts)


def applying(sheet: Sheet, deed: Deed, counts: Counts) -> list[when.When]:
    """The sheet's own rules for what happened, or else those taken for granted.

    Of several lines with "while" the first counts that is so, beside the lines without.
    """
    for rules in (sheet.said(when.When), sheet.said(when.When, granted=True)):
        met = [rule for rule in rules if _happened(sheet, rule.event, deed)]
        plain = [rule for rule in met if rule.condition is None]
        so = (r for r in met if r.condition and true(sheet, r.condition, deed.other, counts, deed.side))
        found = [*plain, *itertools.islice(so, 1)]
        if found:
            return found
    return []


def _happened(sheet: Sheet, event: when.Event, deed: Deed) -> bool:
    fact = (deed.kind, deed.outcome)
    match event:
        case when.Knocked():
            return fact == ("target", REACHED) and _means(sheet, event.what, deed.thing)
        case when.Hit():
            who = sheet.players_meant(event.who)
            fits = who is not None and who.side in (None, deed.other) and who.role in (None, deed.hit_role)
            return fact == ("player", REACHED) and fits
        case when.Caught():
            ours = fact == ("mate", REACHED) if event.where is not None else deed.outcome == CAUGHT
            return ours and _means(sheet, event.what, deed.ball and deed.ball[0])
        case when.Missed():
            return deed.outcome == MISSED and _means(sheet, event.what, deed.ball and deed.ball[0])
        case when.Leaves():
            return deed.outcome == LEFT and _means(sheet, event.what, deed.ball and deed.ball[0])
        case when.GoesThrough():
            through = _means(sheet, event.through, deed.thing)
            return fact == ("ring", REACHED) and through and _means(sheet, event.what, deed.ball and deed.ball[0])
        case when.Crosses():
            line = sheet.game.meaning(event.line.name)
            same = isinstance(line, PlaceMeaning) and line.place == deed.place
            return fact == ("line", REACHED) and same and _means(sheet, event.what, deed.ball and deed.ball[0])
        case when.Arrives():
            who = sheet.players_meant(event.who)
            return fact == ("way", REACHED) and who is not None and who.side in (None, deed.side)
    return False


def _means(sheet: Sheet, phrase: Np, kind: str | None) -> bool:
    """Whether a phrase of kit means things of that kind."""
    meaning = sheet.game.meaning(phrase.name)
    if isinstance(meaning, KitMeaning):
        return meaning.key == kind
    return isinstance(meaning, CategoryMeaning) and any(
        line.name == kind and line.category == meaning.category for line in sheet.game.kit
    )


def _rest(sheet: Sheet, deed: Deed, rules: list[when.When]) -> Spot:
    """Where the ball lies in the end: as the rule says that was followed, else as the most particular line says."""
    for rule in reversed(rules):
        for consequence in reversed(rule.consequences):
            if isinstance(consequence, when.MovesTo) and _about_balls(sheet, consequence):
                return resting(sheet, consequence.place, deed)
    state = {CAUGHT: "caught", MISSED: "missed", LEFT: "missed"}.get(
        deed.outcome, "passed" if deed.kind == "mate" else "scored"
    )
    for lines in (sheet.said(play.Rest), sheet.said(play.Rest, granted=True)):
        fitting = [line for line in lines if line.state in (None, state) and _rest_means(sheet, line, deed)]
        if fitting:
            best = max(fitting, key=lambda line: (line.state is not None, line.ball.text not in ("ball", "balls")))
            return resting(sheet, best.place, deed)
    raise LookupError(f"nothing says where a {state} ball rests")


def _rest_means(sheet: Sheet, line: play.Rest, deed: Deed) -> bool:
    assert deed.ball is not None
    if line.ball.text in ("ball", "balls"):
        return True
    meaning = sheet.game.vocabulary.get(line.ball.text)
    return isinstance(meaning, KitMeaning) and meaning.key == deed.ball[0]


def resting(sheet: Sheet, place: play.RestingPlace, deed: Deed) -> Spot:
    """The spot that a phrase such as "in the half it was sent to" means after a deed."""
    if isinstance(place, play.RestInHalf | play.RestToHalf):
        return sheet.at_hand(deed.side if place.which == "half it came from" else deed.other)
    preposition = place.preposition if isinstance(place, play.RestThere) else None
    return sheet.spot(preposition, place.where, deed.side, deed.other, deed.parts)


def _about_balls(sheet: Sheet, consequence: when.Consequence) -> bool:
    if not isinstance(consequence, when.MovesTo) or not isinstance(consequence.who, Np):
        return False
    return sheet.is_ball(consequence.who)


def _change(sheet: Sheet, said: when.Consequence, deed: Deed, counts: Counts) -> None:
    match said:
        case when.StaysDown() if deed.thing is not None and deed.step is None:
            standing = target(deed.thing, deed.owner, "standing")
            move(counts, standing, target(deed.thing, deed.owner, "down"))
        case when.TakenOver() if deed.thing is not None:
            side = sheet.side_in(said.side, deed.side, deed.other, deed.parts)
            move(counts, target(deed.thing, deed.owner, "standing"), target(deed.thing, side, "standing"))
        case when.Steps() if deed.thing is not None and deed.step is not None:
            _step(sheet, said, deed, counts)
        case when.MovesTo() if isinstance(said.place, play.RestOnStep):
            _put_on_step(sheet, said, said.place, deed, counts)
        case when.Waits() | when.MovesTo() | when.Joins() | when.Out() | when.TurnsInto() | when.Returns():
            _players_go(sheet, said, deed, counts)
        case when.ChangesPlaces():
            _change_places(sheet, said, deed, counts)
        case when.Scores():
            side = sheet.side_in(said.side, deed.side, deed.other, deed.parts)
            by = said.points.whole if said.verb == "scores" else -said.points.whole
            now = counts.get(points(side), 0) + by
            counts[points(side)] = min(max(now, 0), points_matter_to(sheet))
        case finish.SideWins() | when.SideLoses():
            side = sheet.side_in(said.side, deed.side, deed.other, deed.parts)
            winner = side if isinstance(said, finish.SideWins) else sheet.others(side)[0]
            counts[RESULT] = sheet.sides.index(winner) + 1
        case when.StartsAgain():
            scored = {name: count for name, count in counts.items() if name.startswith(("points/", RESULT))}
            counts.clear()
            counts.update(set_up(sheet) | scored)


def _step(sheet: Sheet, said: when.Steps, deed: Deed, counts: Counts) -> None:
    assert deed.thing is not None and deed.step is not None
    found = sheet.track(deed.thing)
    assert found is not None
    track, _ = found
    goal = _one_player(sheet, said.towards, deed)
    home = goal[0] if goal is not None else sheet.whose(said.towards, deed.side, deed.other, deed.parts)
    towards_start = (home == track.start) == (said.direction == "towards")
    by = -said.by.whole if towards_start else said.by.whole
    move(counts, step(deed.thing, deed.step), step(deed.thing, min(max(deed.step + by, 0), track.steps)))


def _put_on_step(sheet: Sheet, said: when.MovesTo, place: play.RestOnStep, deed: Deed, counts: Counts) -> None:
    """From where it was hit; where a count brought it about, from the home of the side spoken of."""
    assert isinstance(said.who, Np)
    meaning = sheet.game.meaning(said.who.name)
    assert isinstance(meaning, KitMeaning)
    found = sheet.track(meaning.key)
    assert found is not None
    home = 0 if found[0].start == deed.side else found[0].steps
    here = home if deed.step is None else deed.step
    move(counts, step(meaning.key, here), step(meaning.key, place.step.whole))


def _one_player(sheet: Sheet, phrase: Np, deed: Deed) -> tuple[str, str | None] | None:
    """Side and role of the one player whom a phrase means."""
    meaning = sheet.game.meaning(phrase.name)
    if isinstance(meaning, AgentMeaning):
        return (deed.side, deed.role) if meaning.part == "actor" else (deed.other, deed.hit_role)
    if sheet.is_mate(phrase):
        return deed.side, None
    return (deed.other, deed.hit_role) if sheet.players_meant(phrase) is not None else None


Going = when.Waits | when.MovesTo | when.Joins | when.Out | when.TurnsInto | when.Returns


def _players_go(sheet: Sheet, said: Going, deed: Deed, counts: Counts) -> None:
    for side, role, where, most in _movers(sheet, said, deed):
        goal = _goal(sheet, said, side, role, deed)
        if player(side, role, where) != goal:
            move(counts, player(side, role, where), goal, most)


def _movers(sheet: Sheet, said: Going, deed: Deed) -> Iterator[tuple[str, str | None, str, int | None]]:
    """Side, role, where they are, and how many of them go (None: all)."""
    if isinstance(said.who, Np):
        who = _one_player(sheet, said.who, deed)
        if who is not None and not isinstance(said, when.Returns):
            on_bench = sheet.is_mate(said.who) and deed.place is not None
            yield (*who, deed.place or IN if on_bench else IN, 1)
        return
    most = 1 if isinstance(said.who, play.Queued) else None
    for side in queue_sides(sheet, said.who.where, deed):
        for role in sheet.roles(side):
            yield side, role, sheet.area(said.who.where), most


def queue_sides(sheet: Sheet, phrase: Np, deed: Deed) -> tuple[str, ...]:
    """Whose queue a phrase means: without an owner that of the player hit."""
    if phrase.determiner in ("each", "every"):
        return sheet.sides
    if phrase.possessive or phrase.owner is not None or phrase.other:
        return (sheet.whose(phrase, deed.other, deed.other, deed.parts),)
    return (deed.other,)


def _goal(sheet: Sheet, said: Going, side: str, role: str | None, deed: Deed) -> str:
    match said:
        case when.Out():
            return player(side, role, OUT)
        case when.TurnsInto():
            into = sheet.players_meant(said.role)
            assert into is not None
            return player(into.side or side, into.role, IN)
        case when.Waits():
            return player(side, role, sheet.area(said.where))
        case when.MovesTo():
            where = getattr(said.place, "where", None)
            return player(side, role, sheet.area(where) if where is not None else IN)
        case when.Joins():
            if isinstance(said.what, Np):
                return player(side, role, sheet.area(said.what))
            other = getattr(said.what, "other", None)
            new = sheet.others(side)[0] if other else sheet.side_in(said.what, deed.side, deed.other, deed.parts)
            return player(new, role, IN)
    return player(side, role, IN)


def _change_places(sheet: Sheet, said: when.ChangesPlaces, deed: Deed, counts: Counts) -> None:
    if not isinstance(said.who, Np) or isinstance(said.other, Np):
        return
    queue = sheet.area(said.other.where)
    if isinstance(said.other, play.Queued):
        who = _one_player(sheet, said.who, deed)
        if who is not None:
            move(counts, player(*who, IN), player(*who, queue))
            move(counts, player(*who, queue), player(*who, IN))
        return
    begin = set_up(sheet)
    for side in sheet.sides:
        for role in sheet.roles(side):
            playing, waiting = player(side, role, IN), player(side, role, queue)
            move(counts, playing, waiting, None)
            move(counts, waiting, playing, begin.get(playing, 0))
