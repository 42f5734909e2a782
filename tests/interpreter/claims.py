"""Whether what a sheet claims of the sides is so: "the other side has no lanterns standing"."""

from __future__ import annotations

from attrs import frozen

from grammar.sentences import claims, play
from grammar.sentences.base import AnySide, Np, SideRef, SideSame
from grammar.sentences.points import BeginsPoints
from grammar.sentences.runs import CountedRuns
from tests.interpreter.begin_points import most_points
from tests.interpreter.board import DOWN, IN, OUT, UP, Board, Spot
from tests.interpreter.frozen import frozen_of
from tests.interpreter.most_lives import most_lives
from tests.interpreter.names import Folk, Frozen, Part, Stuff
from tests.interpreter.set_up import set_up
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import half, of_task, spot
from tests.interpreter.ways import ways
from tests.interpreter.whose import ANY, EVERY, OTHERS, UNSAID, Of, side_said, whose


@frozen
class Spoken:
    """Of whom a claim speaks: `it`, `the other` sides, and each who took part.

    `some` is set where "a side" means any side at all, not the one spoken of.
    """

    it: str | None
    others: tuple[str, ...]
    some: bool = False
    parts: tuple[tuple[str, str | None], ...] = ()

    def part(self, name: str) -> str | None:
        return dict(self.parts).get(name)


def spoken_of(sheet: Sheet, side: str) -> Spoken:
    """As in "a side wins when it ...": one side is spoken of, the other side is every other."""
    return Spoken(side, sheet.others(side))


def true(sheet: Sheet, condition: claims.Condition, spoken: Spoken, board: Board) -> bool:
    """Whether a condition holds."""
    return any(all(claimed(sheet, claim, spoken, board) for claim in way.claims) for way in condition.ways)


def claimed(sheet: Sheet, claim: claims.Claim, spoken: Spoken, board: Board) -> bool:
    """Whether one claim holds: for every side that it means, or for some where it says "a side" of anybody."""
    sides, some = _meant(sheet, claim.side, spoken)
    holds = [
        _enough(sheet, claim, *counted(sheet, claim.counted, side, board))
        if claim.than is None
        else all(_leads(sheet, claim, side, other, board) for other in _others(sheet, claim.than, side))
        for side in sides
    ]
    return any(holds) if some else all(holds)


def _meant(sheet: Sheet, phrase: AnySide, spoken: Spoken) -> tuple[tuple[str, ...], bool]:
    said = side_said(sheet, phrase)
    if isinstance(said, Of):
        return (said.side,), False
    if isinstance(said, Part):
        side = spoken.part(said.part)
    elif said == OTHERS:
        return spoken.others, False
    elif said == EVERY and isinstance(phrase, SideRef):
        return sheet.sides, False
    elif said == ANY and spoken.some:
        return sheet.sides, True
    else:
        assert isinstance(phrase, SideSame | SideRef), phrase
        side = spoken.it
    assert side is not None, f"nobody is spoken of: {phrase}"
    return (side,), False


def _others(sheet: Sheet, than: AnySide, side: str) -> tuple[str, ...]:
    said = side_said(sheet, than)
    return (said.side,) if isinstance(said, Of) else sheet.others(side)


def _leads(sheet: Sheet, claim: claims.Claim, side: str, other: str, board: Board) -> bool:
    """Whether a side has so much more, or so much less, than another."""
    mine, its = (counted(sheet, claim.counted, each, board)[0] for each in (side, other))
    match claim.quantity:
        case claims.MoreOf(count=count, more=more):
            return (mine - its if more == "more" else its - mine) >= (count.whole if count is not None else 1)
        case claims.TimesAsMany(times=times):
            return mine > 0 and mine >= its * {"twice as many": 2, "3 times as many": 3}[times]
    raise AssertionError(claim.words())


def _enough(sheet: Sheet, claim: claims.Claim, there: int, whole: int) -> bool:
    if isinstance(claim.counted, CountedRuns):
        assert isinstance(claim.quantity, claims.Exactly)
        each = max(sheet.players.values()) if claim.counted.with_each else 1
        return there >= claim.quantity.count.whole * each
    match claim.quantity:
        case claims.NoneOf():
            return there == 0
        case claims.AtLeast(count=count):
            return there >= count.whole
        case claims.AtMost(count=count):
            return there <= count.whole
        case claims.AllBut(count=count):
            left_out = whole - there
            return left_out == count.whole if _shrinks(sheet, claim.counted) else left_out <= count.whole
        case claims.HalfOf(amount=amount):
            word = amount.removesuffix("half of its").strip()
            word = word or ("at most" if _shrinks(sheet, claim.counted) else "at least")
            twice = 2 * there
            return {
                "more than": twice > whole, "at least": twice >= whole,
                "at most": twice <= whole, "fewer than": twice < whole,
            }[word]  # fmt: skip
        case claims.AllOf(determiner=word):
            return there >= whole if word in ("all", "each", "every") else there >= 1
        case claims.Exactly(count=count):
            falls = isinstance(claim.counted, claims.CountedPoints) and _begins_above(sheet, count.whole)
            exact = count.whole == 0 or falls or _shrinks(sheet, claim.counted)
            return there == count.whole if exact else there >= count.whole


def _begins_above(sheet: Sheet, asked: int) -> bool:
    """Whether sides have more points at the set-up than are asked for, so that play must take some away."""
    return any(line.number.whole > asked for line in sheet.declared(BeginsPoints))


def _shrinks(sheet: Sheet, what: claims.CountedWhat) -> bool:
    """Whether play makes less of it: what stands, players in, balls, lives; a bare number of these is exact."""
    if isinstance(what, claims.CountedLives):
        return True
    if isinstance(what, claims.CountedPoints):
        return False
    meant = sheet.meaning(what.what)
    if isinstance(meant, Frozen):
        return False
    ball = isinstance(meant, Stuff) and meant.category == "ball"
    return ball or what.state is None or isinstance(what.state, claims.Standing | claims.Inside)


def times_become_so(sheet: Sheet, claim: claims.Claim, side: str, was_so: Board | None, now: Board) -> int:
    """How often a claim that is so has become so: where it speaks of one, once for each that has come."""
    if getattr(claim.quantity, "determiner", None) not in ("a", "an", "any"):
        return int(was_so is None)
    before = counted(sheet, claim.counted, side, was_so)[0] if was_so is not None else 0
    return max(counted(sheet, claim.counted, side, now)[0] - before, 0)


def counted(sheet: Sheet, what: claims.CountedWhat, side: str, board: Board) -> tuple[int, int]:
    """How many a side has, and how many it would have if it had all."""
    if isinstance(what, claims.CountedPoints):
        return board.points[sheet.sides.index(side)], most_points(sheet, side)
    if isinstance(what, CountedRuns):
        return board.runs[sheet.sides.index(side)], max(board.runs)
    if isinstance(what, claims.CountedLives):
        at_first = (most_lives(sheet, side, each.role) for each in set_up(sheet).pupils if each.side == side)
        return sum(max(each.lives, 0) for each in board.pupils if each.side == side), sum(at_first)
    meant = sheet.meaning(what.what)
    if isinstance(meant, Frozen):
        there = frozen_of(sheet, meant, (side,), board)
        return len(there), sum(each.side == side and meant.role in (None, each.role) for each in board.pupils)
    if isinstance(meant, Folk):
        return _players(sheet, meant, what.state, side, board)
    assert isinstance(meant, Stuff), what
    if meant.category in ("ball", "load") or {sheet.categories[kind] for kind in meant.kinds} == {"load"}:
        return _balls(sheet, meant, what.state, side, board)
    return _things(sheet, meant, what.state, side, board)


def _players(sheet: Sheet, meant: Folk, state: claims.State | None, side: str, board: Board) -> tuple[int, int]:
    of_kind = [each for each in board.pupils if each.side == side and meant.role in (None, each.role)]
    if isinstance(state, claims.Placed):
        waiting = [(each, each.where) for each in of_kind if isinstance(each.where, Spot)]
        there = [each for each, here in waiting if _there(sheet, state, side, here, True)]
    elif isinstance(state, claims.Gone):
        there = [each for each in of_kind if each.where == OUT]
    else:
        assert state is None or isinstance(state, claims.Inside)
        there = [each for each in of_kind if each.where == IN]
    return len(there), len(of_kind)


def _there(sheet: Sheet, state: claims.Placed, side: str, here: Spot | None, whoever: bool = False) -> bool:
    """Whether a spot is the one that is asked for: without an owner one's own, of players `whoever`'s it is."""
    said = whose(sheet, state.where)
    if here is None:
        return False
    if said == UNSAID and whoever:
        asked = spot(sheet, state.preposition, state.where, side)
        return (asked.place, asked.part) == (here.place, here.part)
    owners = sheet.others(side) if said == OTHERS else (said.side,) if isinstance(said, Of) else (side,)
    owners = sheet.sides if said in (EVERY, ANY) else owners
    return here in {spot(sheet, state.preposition, state.where, owner) for owner in owners}


def _balls(sheet: Sheet, meant: Stuff, state: claims.State | None, side: str, board: Board) -> tuple[int, int]:
    balls = [each for each in board.balls if each.kind in meant.kinds]
    if isinstance(state, claims.Placed):
        return sum(_there(sheet, state, side, each.spot) for each in balls), len(balls)
    theirs = {half(sheet, side), *(of_task(sheet, side, role) for role in sheet.roles)}
    homes = _brought_to(sheet, meant, side) or theirs
    return sum(each.spot in homes for each in balls), len(balls)


def _brought_to(sheet: Sheet, meant: Stuff, side: str) -> set[Spot]:
    """Where those of a side bring what they take: there it has them, where no place is named."""
    lines = [line for line in sheet.said(play.Take) if _is_for(sheet, line.who, side)]
    return {way.goal for line in lines for way in ways(sheet, line, side) if way.kind in meant.kinds}


def _is_for(sheet: Sheet, who: Np, side: str) -> bool:
    folk, said = sheet.folk(who), whose(sheet, who)
    return folk is not None and folk.side in (None, side) and (not isinstance(said, Of) or said.side == side)


def _things(sheet: Sheet, meant: Stuff, state: claims.State | None, side: str, board: Board) -> tuple[int, int]:
    """Whose things they are counts, and the things that nobody owns are everybody's."""
    mine = [each for each in board.things if each.kind in meant.kinds and each.owner in (side, None)]
    whole = [each for each in board.things if each.kind in meant.kinds] if sheet.things_move else mine
    match state:
        case claims.Down():
            there = [each for each in mine if each.how == DOWN]
        case claims.AtHome():
            there = [each for each in mine if each.how == home(sheet, each.kind, side)]
        case claims.Placed():
            there = [each for each in mine if each.how == UP and _there(sheet, state, side, each.spot)]
        case _:
            there = [each for each in mine if each.how != DOWN]
    return len(there), len(whole)


def home(sheet: Sheet, kind: str, side: str) -> int | None:
    """The step of a track that is a side's home; None where it has none there."""
    track, _ = sheet.tracks[kind]
    if track.start.text == side:
        return 0
    return track.steps.whole if track.goal.text == side else None
