"""Which rules apply to what happened, and where the ball comes to rest."""

from __future__ import annotations

import itertools

from grammar.meanings import CategoryMeaning, KitMeaning, PlaceMeaning
from grammar.sentences import play, when
from grammar.sentences.base import Np
from tests.interpreter.board import Counts
from tests.interpreter.claims import true
from tests.interpreter.deeds import CAUGHT, LEFT, MISSED, REACHED, Deed
from tests.interpreter.sheet import Sheet, Spot


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


def rests(sheet: Sheet, deed: Deed, rules: list[when.When]) -> list[Spot]:
    """Where the ball may lie in the end: as the rule says that was followed, else as the most particular line says.

    A ball that flew into a half may also stop where nobody enters it.
    """
    for rule in reversed(rules):
        for consequence in reversed(rule.consequences):
            if isinstance(consequence, when.MovesTo) and about_balls(sheet, consequence):
                return [resting(sheet, consequence.place, deed)]
    state = {CAUGHT: "caught", MISSED: "missed", LEFT: "missed"}.get(
        deed.outcome, "passed" if deed.kind == "mate" else "scored"
    )
    for lines in (sheet.said(play.Rest), sheet.said(play.Rest, granted=True)):
        fitting = [line for line in lines if line.state in (None, state) and _rest_means(sheet, line, deed)]
        if fitting:
            best = max(fitting, key=lambda line: (line.state is not None, line.ball.text not in ("ball", "balls")))
            spot = resting(sheet, best.place, deed)
            flew = state in ("missed", "scored") and deed.outcome != LEFT and isinstance(best.place, play.RestInHalf)
            return [spot, *(_shut(sheet, spot, deed) if flew else ())]
    raise LookupError(f"nothing says where a {state} ball rests")


def _shut(sheet: Sheet, spot: Spot, deed: Deed) -> list[Spot]:
    """Where nobody follows a ball: areas that nobody enters or fetches from, and behind lines where nobody fetches.

    An area across the middle lies in every half, others in their side's own.
    """
    assert deed.ball is not None
    lost = [
        line
        for line in sheet.said(play.NobodyFetches)
        if any(each.name == deed.ball[0] for each in sheet.lines(sheet.game.meaning(line.what.name), "ball"))
    ]
    names = {line.where.name.text for line in lost}
    closed = [area for area in sheet.game.areas if "enters" in area.forbidden or area.name in names]
    for area in closed:
        if area.preposition not in ("before", "along", "across"):
            raise LookupError(f"not known here: {area.preposition}")
    if deed.outcome == REACHED and deed.kind in ("line", "ring"):
        closed = []  # it is past all of them
    areas = [(area.name, spot[1] if area.each else None) for area in closed]
    behind = [line for line in lost if line.where.name.text in ("back line", "side line", "wall", "corner")]
    return [*areas, *(sheet.spot(line.preposition, line.where, deed.other, deed.other) for line in behind)]


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


def about_balls(sheet: Sheet, consequence: when.Consequence) -> bool:
    if not isinstance(consequence, when.MovesTo) or not isinstance(consequence.who, Np):
        return False
    return sheet.is_ball(consequence.who)
