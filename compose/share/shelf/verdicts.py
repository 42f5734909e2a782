"""Which games of a shelf have nothing to mend: told by the check, and remembered by content hash."""

from __future__ import annotations

from collections.abc import Callable

from compose.answer.answer import to_mend
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.share.folder_at_hand import FolderAtHand
from compose.share.making import played
from compose.share.shelf.files import read_stored
from compose.share.shelf.shelf import Shelf
from compose.share.told import outcome_of
from compose.staging.staging import stage
from grammar.finding import Outcome
from grammar.game import Game
from grammar.tree import ModifierSheet
from library import granted_sheet, kit_names, norms

Progress = Callable[[int, int], None]


def judge(shelf: Shelf, progress: Progress = lambda done, of: None) -> Outcome[int]:
    """Check every game of the shelf that was not checked yet, as the check does; how many were."""
    return outcome_of(shelf.folder, lambda: _judge(shelf, progress))


def _judge(shelf: Shelf, progress: Progress) -> int:
    shelf.catch_up()
    query = "SELECT path, plays FROM items WHERE plays <> '' AND plays NOT IN (SELECT content FROM verdicts)"
    waiting = shelf.index.execute(query).fetchall()
    for done, (path, plays) in enumerate(waiting):
        progress(done, len(waiting))
        _, sheet = read_stored(shelf.folder, path)
        game = played(sheet, FolderAtHand(shelf.folder)).value if not isinstance(sheet, ModifierSheet) else None
        if game is not None:
            row = (plays, *_verdict(game))
            shelf.index.execute("INSERT OR REPLACE INTO verdicts VALUES (?, ?, ?)", row)
    progress(len(waiting), len(waiting))
    return len(waiting)


def _verdict(game: Game) -> tuple[int, bool]:
    """How many things there are to mend in what is proved, and whether everything was looked at."""
    made = staged(stage(game, norms(), kit_names()), granted_sheet())
    if made.value is None:
        return max(1, len(made.findings)), True
    answer = proved(made.value)
    return len(to_mend(answer.findings)), answer.whole
