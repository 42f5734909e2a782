"""Whether what a sheet claims of the sides is so: "the other side has no lanterns standing"."""

from __future__ import annotations

from collections.abc import Iterable

import attrs

from grammar.game import GameKit
from grammar.meanings import PlayerMeaning, side_named
from grammar.sentences import finish, when
from grammar.sentences.base import AnySide, Node, SideNamed, SideOf, SideRef
from tests.interpreter.board import IN, Counts, ball, player, points, step, target, total
from tests.interpreter.sheet import Sheet

Amount = finish.AmountOf


def true(sheet: Sheet, condition: finish.Condition, side: str, counts: Counts, actor: str = "") -> bool:
    """Whether a condition holds with "it" meaning the side; `actor` is whose move is spoken of, if any."""
    return any(all(claimed(sheet, claim, side, counts, actor) for claim in way.claims) for way in condition.ways)


def claimed(sheet: Sheet, claim: finish.Claim, side: str, counts: Counts, actor: str = "") -> bool:
    """Whether one claim holds; of several other sides it must hold for every one."""
    return all(
        _enough(claim.quantity, claim.counted, *_counted(sheet, claim.counted, meant, counts))
        for meant in _meant(sheet, claim.side, side, actor)
    )


def _meant(sheet: Sheet, phrase: AnySide, side: str, actor: str) -> tuple[str, ...]:
    if isinstance(phrase, SideNamed):
        return (side_named(sheet.game.meaning(phrase.name)) or side,)
    if isinstance(phrase, SideOf):
        return (sheet.possessor(phrase.possessive, {"actor": actor or side}) or side,)
    return sheet.others(side) if isinstance(phrase, SideRef) and phrase.other else (side,)


def _enough(quantity: Amount, counted: finish.Counted | finish.CountedPoints, there: int, whole: int) -> bool:
    match quantity:
        case finish.NoneOf():
            return there == 0
        case finish.AtLeast():
            return there >= quantity.count.whole
        case finish.AtMost():
            return there <= quantity.count.whole
        case finish.AllOf():
            return there >= whole if quantity.determiner == "all" else there >= 1
        case finish.Exactly():
            return _reached(counted, there, quantity.count.whole)


def _reached(counted: finish.Counted | finish.CountedPoints, there: int, number: int) -> bool:
    """A number that play only builds up to counts once it is reached; one that shrinks counts exactly."""
    shrinking = isinstance(counted, finish.Counted) and (
        counted.state is None or isinstance(counted.state, finish.Standing | finish.Inside)
    )
    return there == number if shrinking else there >= number


def _counted(
    sheet: Sheet, counted: finish.Counted | finish.CountedPoints, side: str, counts: Counts
) -> tuple[int, int]:
    """How many a side has, and how many it would have if it had all."""
    if isinstance(counted, finish.CountedPoints):
        return counts.get(points(side), 0), points_matter_to(sheet)
    meaning = sheet.game.meaning(counted.what)
    if isinstance(meaning, PlayerMeaning):
        return _players(sheet, meaning, counted.state, side, counts)
    number = whole = 0
    for line in sheet.lines(meaning, "ball", "target", "ring", "body"):
        there, most = _kit(sheet, line, counted.state, side, counts)
        number, whole = number + there, whole + most
    return number, whole


def _players(
    sheet: Sheet, meaning: PlayerMeaning, state: finish.State | None, side: str, counts: Counts
) -> tuple[int, int]:
    if state is None or isinstance(state, finish.Inside):
        where = [IN]
    elif isinstance(state, finish.Placed):
        where = [sheet.area(state.where)]
    else:
        where = [area.name for area in sheet.game.areas if area.kind == "queue"]
    roles = sheet.roles(side) if meaning.role is None else (meaning.role,)
    there = total(counts, [player(side, role, each) for role in roles for each in where])
    joining = [each for rule in sheet.said(when.When) for each in rule.consequences if isinstance(each, when.Joins)]
    all_sides = any(not hasattr(each.what, "name") for each in joining)
    return there, sum(sheet.players.values()) if all_sides else sheet.players[side]


def _kit(sheet: Sheet, line: GameKit, state: finish.State | None, side: str, counts: Counts) -> tuple[int, int]:
    number = sheet.number_in_all(line)
    if line.category == "ball":
        spot = sheet.at_hand(side)
        if isinstance(state, finish.Placed):
            spot = sheet.spot(state.preposition, state.where, side, side)
        return counts.get(ball(line.name, spot), 0), number
    on_track = sheet.track(line.name)
    if on_track is not None:
        track, _ = on_track
        home = 0 if track.start == side else track.steps
        steps = [home] if isinstance(state, finish.AtHome) else list(range(track.steps + 1))
        return total(counts, [step(line.name, each) for each in steps]), number
    how = "down" if isinstance(state, finish.Down) else "standing"
    captured = any(isinstance(each, when.TakenOver) for rule in sheet.said(when.When) for each in rule.consequences)
    theirs = [own for own in sheet.may_own(line) if own == side or (own is None and not captured)]
    whole = number if captured else sum(sheet.number(line, own) for own in theirs)
    return total(counts, [target(line.name, own, how) for own in theirs]), whole * line.parts


def points_matter_to(sheet: Sheet) -> int:
    """Points are counted as far as any sentence asks for them; where none of the finish does, at least to 25."""
    finishing = _asked(sheet.game.sentences("finish"))
    others = _asked((*sheet.game.sentences("when"), *sheet.game.sentences("play")))
    return max(finishing + others) if finishing else max([25, *others])


def _asked(pieces: Iterable[object]) -> list[int]:
    """Every number of points that a claim somewhere in the sentences asks for."""
    found: list[int] = []
    for piece in pieces:
        if isinstance(piece, finish.FirstTo):
            found.append(piece.points.whole)
        elif isinstance(piece, finish.Claim):
            count = getattr(piece.quantity, "count", None)
            if isinstance(piece.counted, finish.CountedPoints) and count is not None:
                found.append(count.whole)
        elif isinstance(piece, Node):
            found += _asked(getattr(piece, field.name) for field in attrs.fields(type(piece)))
        elif isinstance(piece, tuple):
            found += _asked(piece)
    return found
