"""What a pupil may try in a state, and every way in which it can turn out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from attrs import evolve, frozen

from grammar.sentences import attempting, events, play, when
from grammar.sentences.base import Np
from grammar.sentences.runs import OnlyAfterRow
from tests.interpreter.aims import Target, carries, hit_aims, targets, way_start
from tests.interpreter.board import DOWN, IN, UP, Board, Load, Pupil, Spot
from tests.interpreter.catching import can_be_caught, can_leave, catchers
from tests.interpreter.reach import hangs_too_high
from tests.interpreter.roaming import runs_there
from tests.interpreter.room import barred
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import always_safe, at_hand, stands
from tests.interpreter.stopping import blocked_by
from tests.interpreter.ways import at_once, ways
from tests.interpreter.whose_task import acts, asks, is_open

REACHED, CAUGHT, MISSED, LEFT, BLOCKED, HIGH = "reached", "caught", "missed", "left", "blocked", "high"
TOUCHING = "touch"
FLYING = ("overarm throw", "underarm throw", "kick", "strike", "pass")


@frozen
class Deed:
    """One pupil's try with one ball at one aim, and how it turned out. Pupils, balls and things by their numbers."""

    actor: int
    side: str
    role: str
    skill: str
    aim: Target
    outcome: str
    ball: int | None = None
    kind: str | None = None
    came: Spot | None = None
    catcher: int | None = None
    load: Load | None = None
    bounced: bool = False
    from_m: float | None = None
    after: OnlyAfterRow | None = None

    def told(self, board: Board) -> tuple[str, ...]:
        """Words that any telling of the deed must hold."""
        thing = board.things[self.aim.thing].kind if self.aim.thing is not None else ""
        return tuple(word for word in (self.kind or "", thing) if word)


def alike(tokens: Iterable[tuple[object, int]], everyone: bool) -> list[int]:
    """One number for all that stand alike, or every number."""
    found: dict[object, int] = {}
    for token, number in tokens:
        found.setdefault((token, number) if everyone else token, number)
    return list(found.values())


def deeds(sheet: Sheet, board: Board, everyone: bool) -> Iterator[Deed]:
    """All deeds that are possible; of those who stand alike one tries for all, unless `everyone` does."""
    yield from _from_outside(sheet, board, everyone)
    free = [(each, number) for number, each in enumerate(board.pupils) if each.where == IN]
    for number in alike(free, everyone):
        pupil = board.pupils[number]
        if pupil.load is not None:
            yield _bring(sheet, number, board)
            continue
        for sentence in sheet.said(attempting.Attempt):
            if sentence.where is None and acts(sheet, sentence, pupil.side, pupil.role):
                yield from _by(sheet, sentence, number, board, everyone)
        yield from _from_where_they_run(sheet, number, board, everyone)
        for chase in sheet.said(play.Touch):
            if acts(sheet, chase, pupil.side, pupil.role) and is_open(sheet, chase, pupil.side, board):
                yield from _chases(sheet, chase, number, board, everyone)
        for take in sheet.said(play.Take):
            if acts(sheet, take, pupil.side, pupil.role) and is_open(sheet, take, pupil.side, board):
                yield from _takes(sheet, take, number, board, everyone)


def _from_outside(sheet: Sheet, board: Board, everyone: bool) -> Iterator[Deed]:
    """What those may try who wait somewhere, with the balls that lie there."""
    away = [(each, number) for number, each in enumerate(board.pupils) if isinstance(each.where, Spot)]
    for number in alike((((each.side, each.role, each.where), n) for each, n in away), everyone):
        pupil = board.pupils[number]
        for sentence in sheet.said(attempting.Attempt):
            there = sentence.where is not None and pupil.where in stands(sheet, sentence.where, pupil.side)
            if there and acts(sheet, sentence, pupil.side, pupil.role):
                yield from _by(sheet, sentence, number, board, everyone)


def _from_where_they_run(sheet: Sheet, number: int, board: Board, everyone: bool) -> Iterator[Deed]:
    """What those may try who run as they play into an area from which a line lets them."""
    pupil = board.pupils[number]
    for sentence in sheet.said(attempting.Attempt):
        if sentence.where is None or not acts(sheet, sentence, pupil.side, pupil.role):
            continue
        if any(runs_there(sheet, where, pupil) for where in stands(sheet, sentence.where, pupil.side)):
            yield from _by(sheet, sentence, number, board, everyone)


def _takes(sheet: Sheet, sentence: play.Take, number: int, board: Board, everyone: bool) -> Iterator[Deed]:
    """One thing that lies where the way begins."""
    pupil = board.pupils[number]
    if at_once(sentence):
        lines = [each for each in sheet.said(play.Take) if at_once(each)]
        in_turn = {load for each in lines for load in ways(sheet, each, pupil.side)}
        if sum(each.side == pupil.side and each.load in in_turn for each in board.pupils) >= at_once(sentence):
            return
    for load in ways(sheet, sentence, pupil.side):
        if barred(sheet, load.start, pupil) or barred(sheet, load.goal, pupil):
            continue
        there = [(each, n) for n, each in enumerate(board.balls) if (each.kind, each.spot) == (load.kind, load.start)]
        for ball in alike(there, everyone):
            aim = Target("take", None, None, spot=load.goal)
            yield Deed(number, pupil.side, pupil.role, "take", aim, REACHED, ball, load.kind, load.start, load=load)


def _bring(sheet: Sheet, number: int, board: Board) -> Deed:
    """Whoever carries something brings it."""
    pupil = board.pupils[number]
    assert pupil.load is not None
    concerned = sheet.only_other(pupil.side)
    aim = Target("way", concerned, concerned, spot=pupil.load.goal)
    return Deed(number, pupil.side, pupil.role, "carry", aim, REACHED, load=pupil.load)


def _chases(sheet: Sheet, sentence: play.Touch, number: int, board: Board, everyone: bool) -> Iterator[Deed]:
    """One after another pupil, who is touched or gets away; who has the same task is left alone unless named."""
    pupil, whom = board.pupils[number], sheet.folk(sentence.whom)
    assert whom is not None
    for aim in hit_aims(sheet, sentence.whom, number, board, everyone):
        assert aim.hit is not None
        other = board.pupils[aim.hit]
        balls = in_their_hands(sheet, other, sentence.load, board)
        if sentence.load is not None and not balls and not carries(sheet, other, sentence.load):
            continue
        if sentence.where is not None and other.load is None:
            continue  # only who carries something is ever in the other half
        floor, its = (set(at_hand(sheet, each.side, each.role)) for each in (pupil, other))
        if sheet.halved and other.load is None and not floor & its:
            continue  # they stay on different floor
        if whom.role is None and pupil.role and (other.side, other.role) == (pupil.side, pupil.role):
            continue
        deed = Deed(number, pupil.side, pupil.role, TOUCHING, aim, REACHED)
        if other.load is not None or not always_safe(sheet, other, pupil, "touched"):
            for ball in alike(((board.balls[n], n) for n in balls), everyone):
                yield evolve(deed, ball=ball, kind=board.balls[ball].kind, came=board.balls[ball].spot)
            yield from () if balls else (deed,)
        yield evolve(deed, outcome=MISSED)


def in_their_hands(sheet: Sheet, pupil: Pupil, load: Np | None, board: Board) -> list[int]:
    """The balls of a phrase that somebody may have, where nobody takes them from place to place."""
    if load is None or load.name.text == "nothing" or sheet.stuff(load).category != "ball" or pupil.load is not None:
        return []
    kinds = sheet.stuff(load).kinds
    if any(kinds & sheet.stuff(phrase).kinds for take in sheet.said(play.Take) for phrase in take.phrases):
        return []
    hands = at_hand(sheet, pupil.side, pupil.role)
    return [number for number, each in enumerate(board.balls) if each.kind in kinds and each.spot in hands]


def _by(sheet: Sheet, sentence: attempting.Attempt, number: int, board: Board, everyone: bool) -> Iterator[Deed]:
    pupil = board.pupils[number]
    if not is_open(sheet, sentence, pupil.side, board):
        return
    for ball in _balls(sheet, sentence, number, board, everyone):
        for skill in sentence.skills:
            for aim in targets(sheet, sentence, number, board, everyone):
                away = _distance(sheet, sentence, pupil, aim)
                deed = Deed(number, pupil.side, pupil.role, skill, aim, REACHED, from_m=away, after=asks(sentence))
                if ball is not None:
                    deed = evolve(deed, ball=ball, kind=board.balls[ball].kind, came=board.balls[ball].spot)
                for done in _outcomes(sheet, sentence, deed, board, everyone):
                    yield from after_bounce(sheet, done)


def _distance(sheet: Sheet, sentence: attempting.Attempt, pupil: Pupil, aim: Target) -> float | None:
    """From how far the sheet says that somebody tries it; a role's own distance is not for passes."""
    said = sentence.told(attempting.FromWhere)
    if isinstance(said, attempting.FromWhere):
        return said.distance.metres
    role = sheet.roles.get(pupil.role)
    return role.aims_from if role is not None and aim.what != "mate" and sentence.where is None else None


def _balls(
    sheet: Sheet, sentence: attempting.Attempt, number: int, board: Board, everyone: bool
) -> Iterable[int | None]:
    """A ball of each kind and place that the pupil has at hand; None where the try needs no ball."""
    if sentence.ball is None or sheet.stuff(sentence.ball).category != "ball":
        return [None]
    pupil = board.pupils[number]
    role = sheet.roles.get(pupil.role)
    kinds = role.uses if role is not None and role.uses is not None else sheet.stuff(sentence.ball).kinds
    hand = (pupil.where,) if isinstance(pupil.where, Spot) else at_hand(sheet, pupil.side, pupil.role)
    ways = [aim for aim in sentence.aims if isinstance(aim, attempting.AimBetween)]
    hand = way_start(sheet, ways[0], pupil.side) if ways else hand
    there = [(each, n) for n, each in enumerate(board.balls) if each.kind in kinds and each.spot in hand]
    return alike(there, everyone)


def _outcomes(sheet: Sheet, sentence: attempting.Attempt, tried: Deed, board: Board, everyone: bool) -> Iterator[Deed]:
    aim = tried.aim
    down = aim.what == "target" and aim.thing is not None and board.things[aim.thing].how == DOWN
    hit = board.pupils[aim.hit] if aim.what == "player" and aim.hit is not None else None
    safe = hit is not None and always_safe(sheet, hit, board.pupils[tried.actor], "hit")
    if not down and not safe and not hangs_too_high(sheet, board, tried.skill, tried.kind, aim):
        yield evolve(tried, catcher=aim.mate)
        if tried.ball is not None and blocked_by(sheet, tried, board):
            yield evolve(tried, outcome=BLOCKED)
    fouls = any(isinstance(rule.event, events.HitHigh) for rule in sheet.said(when.When))
    if aim.what == "player" and fouls and not safe:
        yield evolve(tried, outcome=HIGH)
    if aim.what == "way" and sentence.told(attempting.SucceedChance) is None:
        return
    if can_be_caught(sheet, sentence, tried.skill, tried.kind, aim):
        there = catchers(sheet, tried.actor, aim, board)
        for number in alike(((board.pupils[each], each) for each in there), everyone):
            yield evolve(tried, outcome=CAUGHT, catcher=number)
    yield evolve(tried, outcome=MISSED)
    if tried.ball is not None and can_leave(sheet, tried.skill, tried.kind):
        yield evolve(tried, outcome=LEFT)
    stray = sentence.told(attempting.Stray)
    if isinstance(stray, attempting.Stray):
        for hit in targets(sheet, evolve(sentence, aims=(attempting.AimAt(stray.what),)), tried.actor, board, everyone):
            if hit.thing != aim.thing and hit.thing is not None and board.things[hit.thing].how == UP:
                yield evolve(tried, aim=hit)


def after_bounce(sheet: Sheet, deed: Deed) -> Iterator[Deed]:
    """The deed straight, and where a rule speaks of that also after a bounce: of what flies at or to somebody."""
    yield deed
    comes = deed.outcome in (REACHED, CAUGHT) and deed.aim.what in ("target", "player", "ring", "mate")
    if comes and deed.skill in FLYING and any(rule.bounced for rule in sheet.said(when.When)):
        yield evolve(deed, bounced=True)
