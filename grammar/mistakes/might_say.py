"""What lines that could not be read may have said: sentences without which others may seem to mean nothing.

A mistake that goes with one of them may be none, and is not told before that line is read. `might_say.txt` has a line
for each: its section, the words by which such a line is known, and the sentence. A name stands in it as {thing},
{area}, {role} or {track} for every such name of the sheet, or as a letter that nobody writes.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from functools import cache, lru_cache
from itertools import product
from pathlib import Path

import attrs
from attrs import define, field

from grammar.finding import Finding
from grammar.from_lark import Reader
from grammar.frozen import frozen
from grammar.game import Game
from grammar.language import parse_sentence
from grammar.layout import SECTIONS
from grammar.mistakes.lost import LostLine
from grammar.own_names import MASK
from grammar.sentences.space import Court
from grammar.span import Span
from grammar.tree import GameSheet, Line, Section
from grammar.words import LIKE_ENOUGH, can_be_alike, likeness

LIST = Path(__file__).with_name("might_say.txt")
_NEW_SIDES = (f"{MASK} west", f"{MASK} east")
_NEW_BASE = f"{MASK} base"
_NEW_TRACK = f"{MASK} track"
_SMALL = 3  # letters of words of which another is soon a slip: "it" and "hit"
_NAMED = re.compile(r"\{(\w+)\}")


@frozen
class Possible:
    """A sentence that a lost line of a section may have been, and the words by which that is seen."""

    section: str
    words: frozenset[str]
    sentence: str


@cache
def _possible() -> tuple[Possible, ...]:
    rows = (line.split(" | ") for line in LIST.read_text(encoding="utf-8").splitlines())
    return tuple(Possible(section, frozenset(words.split()), sentence) for section, words, sentence in rows)


def _may_have_said(lost: Sequence[LostLine]) -> frozenset[Possible]:
    """What lost lines may have said: what their words speak of; anything where they speak of nothing."""
    return frozenset[Possible]().union(*map(_line_may_have_said, lost))


@lru_cache(maxsize=1_024)
def _line_may_have_said(line: LostLine) -> frozenset[Possible]:
    """What one lost line may have said; kept, for it is asked anew for every other that is in doubt."""
    found: set[Possible] = set()
    said = _words_of((line,))
    for section in line.sections:
        rows = [row for row in _possible() if row.section == section]
        spoken_of = [row for row in rows if _speaks_of(said, row.words)]
        found.update(spoken_of or rows)
    return frozenset(found)


def _words_of(lines: Sequence[LostLine]) -> frozenset[str]:
    return frozenset(word for line in lines for word in re.findall(r"[a-z]+", line.text.lower()))


def _speaks_of(said: frozenset[str], words: frozenset[str]) -> bool:
    return bool(said & words) or any(
        one[0] == other[0] and can_be_alike(one, other, LIKE_ENOUGH) and likeness(one, other) >= LIKE_ENOUGH
        for one in said
        for other in words
        if min(len(one), len(other)) > _SMALL
    )


@define
class Completed:
    """A sheet, of which `game` is what can be read, with all that its wrong lines may have said.

    `findings_of` finds the mistakes of a sheet.
    """

    sheet: GameSheet
    game: Game
    findings_of: Callable[[GameSheet], Sequence[Finding]]
    _found: dict[tuple[frozenset[Possible], frozenset[str]], list[Sequence[Finding]]] = field(factory=dict)

    def still_has(self, mistake: Finding, wrong: Sequence[LostLine]) -> bool:
        """Whether a mistake stays, whatever these lines say."""
        spots = _spots(mistake)
        return all(any(spots & _spots(each) for each in found) for found in self._with(wrong))

    def with_a_court(self, lost: Sequence[LostLine]) -> Iterator[Finding]:
        """What means nothing in a game whose court is lost, however it is divided."""
        first, *others = self._with(lost, ("space",))
        for each in first:
            if each.place.line > 0 and all(any(_spots(each) & _spots(one) for one in found) for found in others):
                yield each

    def _with(
        self, wrong: Sequence[LostLine], sections: Sequence[str] = (*SECTIONS, "head")
    ) -> list[Sequence[Finding]]:
        possible = frozenset(row for row in _may_have_said(wrong) if row.section in sections)
        said = _words_of(wrong)
        key = possible, said
        if key not in self._found:
            self._found[key] = [self.findings_of(sheet) for sheet in self._sheets(possible, said)]
        return self._found[key]

    def _sheets(self, possible: frozenset[Possible], said: frozenset[str]) -> Iterator[GameSheet]:
        """The sheet with all of these sentences; two sheets where it cannot be known how the court is divided."""
        rows = [row for row in _possible() if row in possible]
        courts = [row for row in rows if row.sentence.startswith("court ")]
        rest = [row for row in rows if row not in courts]
        known = any(self.sheet.all_of("space", Court))
        for more in [[]] if known or not courts else [[court] for court in courts]:
            yield _with(self.sheet, self.game, [*more, *rest], said)


def _spots(finding: Finding) -> frozenset[tuple[str, int]]:
    """The lines of the file with which it is wrong, each with what is wrong: too few are too few whoever is told."""
    places = (finding.place, *(finding.others if finding.code == "G-too-many" else ()))
    return frozenset((finding.code, place.line) for place in places)


def _with(sheet: GameSheet, game: Game, rows: Sequence[Possible], said: frozenset[str]) -> GameSheet:
    lines = {name: sheet.lines(name) for name in SECTIONS}
    number = 0
    for row in rows:
        for names in _named(game, row, said):
            number -= 1  # no line of the file, and no two of them the same
            lines[row.section] = (*lines[row.section], _line(row, names, number))
    sections = tuple(Section(name, lines[name]) for name in SECTIONS if lines[name])
    return attrs.evolve(sheet, sections=sections)


def _named(game: Game, row: Possible, said: frozenset[str]) -> Sequence[tuple[str, ...]]:
    """The names of the sheet with which a sentence may have stood there: those of which the lines speak, or any."""
    if row.section == "sides" and MASK in row.sentence and row.sentence != _new_sides(game, said):
        return ()
    of_the_sheet = {
        "thing": [line.name for line in game.kit],
        "area": [*(area.name for area in game.areas), _NEW_BASE],
        "role": [role.name for role in game.roles],
        "track": [*(track.name for track in game.tracks), _NEW_TRACK],
        "first": [side.name for side in game.sides[:1]] or _NEW_SIDES[:1],
        "last": [side.name for side in game.sides[-1:]] or _NEW_SIDES[1:],
    }
    named = (of_the_sheet[kind] for kind in _NAMED.findall(row.sentence))
    return tuple(product(*([name for name in names if _spoken_of(name, said)] or names for names in named)))


def _new_sides(game: Game, said: frozenset[str]) -> str:
    """Which sides are new where a line of sides is lost: one more, two, or the only one."""
    if game.sides:
        return f"{MASK}0, 6 to 14 players"
    alone = f"{MASK}0, 10 to 24 players, each for themselves"
    return alone if "themselves" in said else f"{MASK}0 and {MASK}1, 6 to 14 players each, mirrored"


def _spoken_of(name: str, said: frozenset[str]) -> bool:
    """Whether lines with these words speak of a name; of a new one, which nobody knows, they may."""
    return name.startswith(MASK) or _speaks_of(said, frozenset(name.split()[:1]))


def _line(row: Possible, names: tuple[str, ...], number: int) -> Line:
    text = row.sentence
    for at, kind in enumerate(_NAMED.findall(text), start=MASK in text):
        text = text.replace(f"{{{kind}}}", f"{MASK}{at}", 1)
    new = (MASK,) if row.section == "space" else (f"{MASK}{number}",)
    named = (*new, *names) if MASK in row.sentence else names
    if row.sentence.startswith(f"{MASK}0 and "):
        named = _NEW_SIDES
    reader = Reader(Span("", number, 1, 1), lambda column: column, {}, named)
    return Line(reader.node(parse_sentence(row.section, text)))
