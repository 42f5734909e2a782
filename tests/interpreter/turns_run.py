"""How often the pupils of each side have run, as far as any line asks for it."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import attempting, claims, finish, play, when
from grammar.sentences.relays import HasRun
from grammar.sentences.runs import CountedRuns
from tests.interpreter.asked import claims_in
from tests.interpreter.board import Board
from tests.interpreter.deeds import REACHED, Deed
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet


def runs_asked(sheet: Sheet, claim: claims.Claim) -> int:
    """How many runs are enough: where each pupil is to run, as many as the side with most pupils needs."""
    assert isinstance(claim.quantity, claims.Exactly) and isinstance(claim.counted, CountedRuns)
    pupils = max(sheet.players.values()) if claim.counted.with_each else 1
    return claim.quantity.count.whole * pupils


def count_run(sheet: Sheet, deed: Deed, board: Board) -> None:
    """One more for the side of whoever has come where they ran to."""
    if deed.skill == "run" and deed.outcome == REACHED:
        number = sheet.sides.index(deed.side)
        board.runs[number] = min(board.runs[number] + 1, _most(sheet, deed.side))


@remembered
def _most(sheet: Sheet, side: str) -> int:
    return max((runs_asked(sheet, claim) for claim in _claims(sheet)), default=0)


def _claims(sheet: Sheet) -> Iterator[HasRun]:
    asking = (finish.WinWhen, finish.LoseWhen, finish.EndsWhen, when.When, attempting.Attempt, play.Touch)
    for kind in asking:
        for sentence in sheet.said(kind):
            yield from (claim for claim in claims_in(sentence) if isinstance(claim, HasRun))
