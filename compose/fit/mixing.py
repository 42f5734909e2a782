"""Every modifier with every game: it fits, it does not fit and why, or it makes something to mend."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from compose.check.space import KeepGoing, always
from compose.fit.suggest.look import Looker
from compose.fit.suggest.wish import Told, in_words, of_finding
from compose.modifiers.apply import apply
from compose.modifiers.modifier import Modifier, Use
from compose.staging.teams import Teams
from compose.telling.wording import ENGLISH, Wording
from grammar.core.declared import Odd
from grammar.frozen import frozen
from grammar.game import Game

FITS, FINDS, REFUSED, UNSURE = "fits", "creates a finding", "does not fit", "fits as far as was looked"
VERDICTS = (FITS, FINDS, REFUSED, UNSURE)
CELL_STATES = 20_000
Progress = Callable[[int, int], None]


@frozen
class Cell:
    """One modifier with one game: a verdict, and what is told of it where it is not simply that it fits. For a class
    a game fits only where the class has nothing to mend in it.

    `lines` is how many lines the modifier changes: none where it fits and changes nothing.
    """

    game: str
    modifier: str
    step: str
    verdict: str
    told: Told | None = None
    codes: tuple[str, ...] = ()
    lines: int = 0

    @property
    def why(self) -> str:
        """Why, in one sentence of English."""
        return self.why_in(ENGLISH)

    def why_in(self, wording: Wording) -> str:
        """Why, in one sentence; "" where it simply fits."""
        said = " ".join(in_words(self.told, wording).split()) if self.told is not None else ""
        return said if not said or said.endswith(("!", "?")) else f"{said}."


def fewest_players(game: Game) -> Teams:
    """The least of the range on every side: the table is made with these, so that each cell is small."""
    return Teams(({side.name: side.least for side in game.sides},), 0, Odd.UNSAID)


def mixing_table(
    games: Sequence[Game],
    modifiers: Sequence[Modifier],
    looker: Looker,
    keep_going: KeepGoing = always,
    progress: Progress = lambda done, of: None,
) -> Iterator[Cell]:
    """The cells, game by game; those that come after somebody's stop are tried on the sheet only, and say so."""
    of = len(games) * len(modifiers)
    for row, game in enumerate(games):
        for column, modifier in enumerate(modifiers):
            looked = keep_going("pairs looked at", row * len(modifiers) + column, of)
            yield cell(game, modifier, looker, only_sheet=not looked)
            progress(row * len(modifiers) + column + 1, of)


def cell(game: Game, modifier: Modifier, looker: Looker, only_sheet: bool = False) -> Cell:
    """One modifier with its usual values and one game."""
    use = Use(modifier)
    outcome = apply(game, use, looker.kit)
    if outcome.value is None:
        return Cell(game.title, modifier.name, modifier.step, REFUSED, of_finding(outcome.findings[0]))
    made, edits = outcome.value
    if not edits:
        return Cell(game.title, modifier.name, modifier.step, FITS, "It changes nothing here.")
    if only_sheet:
        return Cell(game.title, modifier.name, modifier.step, UNSURE, "It was stopped before.", (), len(edits))
    return _checked(game, made, modifier, looker, len(edits))


def _checked(game: Game, made: Game, modifier: Modifier, looker: Looker, lines: int) -> Cell:
    known = {each.code for each in looker.findings(game).to_mend}
    found, of_class = looker.findings(made), looker.of_class(made)
    if found.broken:
        return Cell(game.title, modifier.name, modifier.step, REFUSED, "What it makes of the game cannot be played.")
    new = [*of_class, *(each for each in found.to_mend if each.code not in known)]
    if new:
        codes = tuple(dict.fromkeys(each.code for each in new))
        return Cell(game.title, modifier.name, modifier.step, FINDS, of_finding(new[0]), codes, lines)
    if not found.whole:
        why = "The game is too large to look at everything."
        return Cell(game.title, modifier.name, modifier.step, UNSURE, why, (), lines)
    return Cell(game.title, modifier.name, modifier.step, FITS, lines=lines)
