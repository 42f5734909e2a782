"""How large a shared thing may be, and the reading of a foreign rule file within these bounds.

A hall game is a page of rules for a class. What is far larger is no game, and could make the reader, the
check or the drawing work for hours: it is refused before that. All bounds are our choice (assumption);
they lie well above anything that a class can play.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from compose.net.width import MOST_COMBINATIONS, combinations
from compose.share.pack.item import KINDS, Sheet, sheets_in
from compose.share.refusal import RefusedError, shown
from grammar.core.reading.from_game import core_of
from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.layout import Part, TextLine, decoded, parts
from grammar.own_names import declared_names
from grammar.parse import parse, parse_line
from grammar.resolve import resolve
from grammar.tree import GameSheet
from library import kit_categories

MOST_PACK_BYTES = 16 << 20
MOST_UNPACKED_BYTES = 16 << 20
MOST_RULES_BYTES = 64 << 10
MOST_MANIFEST_BYTES = 4 << 20
MOST_ENTRIES = 2_000
MOST_RATIO = 100
MOST_LINES = 250
MOST_PLAIN_LINES = 60
MOST_SIDES = 40
MOST_PLAYERS = 400
MOST_KIT_LINES = 16
MOST_KIT_PIECES = 400
MOST_AREAS = 16
MOST_RULES = 60


@lru_cache(maxsize=256)
def read_rules(data: bytes, file: str) -> Sheet:
    """The one game, remix or modifier of a foreign file; raises RefusedError at the first thing that is wrong."""
    if len(data) > MOST_RULES_BYTES:
        raise RefusedError("P-size", f"{file} is larger than {MOST_RULES_BYTES >> 10} KiB; a game is a page or two.")
    if data.startswith(b"PK"):
        raise RefusedError("P-nested", f"{file} is itself a zip file; a pack holds no packs.")
    text, findings = decoded(data, file)
    _stop_at_first(findings, file)
    found, layout_findings = parts(text, file)
    _stop_at_first(layout_findings, file)
    if len(found) != 1 or found[0].kind not in KINDS:
        raise RefusedError("P-content", f"{file} does not hold just one game, one remix or one modifier.")
    part = found[0]
    _read_line_by_line(part, file)
    outcome = parse(text, file)
    _stop_at_first(outcome.findings, file)
    if outcome.value is None:
        raise RefusedError("P-content", f"{file} cannot be read.")
    return sheets_in(outcome.value)[0]


def game_within_bounds(sheet: GameSheet, file: str) -> Game:
    """The game that a foreign sheet means; raises RefusedError where it means none, or one too large to play."""
    outcome = resolve(sheet, kit_categories())
    _stop_at_first(outcome.findings, file)
    if outcome.value is None:
        raise RefusedError("P-content", f"{file} is not a game.")
    for words, number, most in _sizes(outcome.value):
        if number > most:
            title = f"{file} has {number} {words}; more than {most} are not played with a class."
            raise RefusedError("P-huge", title)
    return outcome.value


def _sizes(game: Game) -> Iterator[tuple[str, int, int]]:
    sides = len(game.sides)
    pieces = sum(line.count * (sides if line.owner == "each" else 1) for line in game.kit)
    rules = sum(len(game.sheet.lines(section)) for section in ("play", "when", "finish"))
    yield "sides", sides, MOST_SIDES
    yield "players", sum(side.most for side in game.sides), MOST_PLAYERS
    yield "lines of kit", len(game.kit), MOST_KIT_LINES
    yield "pieces of kit", pieces, MOST_KIT_PIECES
    yield "areas", len(game.areas), MOST_AREAS
    yield "rules", rules, MOST_RULES
    # Who may try what with which thing: the work of taking a game apart grows with all three together.
    core = core_of(game).value
    yield "combinations of players, balls and aims", combinations(core) if core else 0, MOST_COMBINATIONS


def _read_line_by_line(part: Part, file: str) -> None:
    """Refuse at the first line that is no sentence: the search for what was meant is costly, and done once."""
    bodies = [("head", part.head), *((name, lines) for name, _, lines in part.sections)]
    lines = sum(len(body) for _, body in bodies)
    most = MOST_LINES if part.kind == "game" else MOST_PLAIN_LINES
    if lines > most:
        raise RefusedError("P-size", f"{file} has {lines} lines; a {part.kind} has at most {most}.")
    if part.kind != "game":
        _read_plain_lines(part, file)
        return
    names = declared_names(part)
    for section, body in bodies:
        for line in body:
            _stop_at_first(parse_line(section, line.text, names=names).findings, file, line.number)


def _read_plain_lines(part: Part, file: str) -> None:
    """Each line of a modifier or remix by itself, with the lines that it cannot be read without."""
    takes = [line.text for line in part.head if line.text.lower().startswith("takes")]
    block: TextLine | None = None
    for line in part.head:
        if block is not None and line.indent <= block.indent:
            block = None
        said = [line.text] if block is None else [block.text, f"  {line.text}"]
        opens = block is None and line.text.lower().startswith(("put in ", "replace in ", "take from "))
        if opens:
            block = line
            continue
        text = "\n  ".join([f"{part.kind} tried alone", *(each for each in takes if each != line.text), *said])
        _stop_at_first(parse(text, file).findings, file, line.number)


def _stop_at_first(findings: tuple[Finding, ...] | list[Finding], file: str, line: int = 0) -> None:
    error = next((finding for finding in findings if finding.severity is Severity.ERROR), None)
    if error is not None:
        place = f", line {line or error.place.line}" if line or error.place.line else ""
        raise RefusedError("P-content", f"{file}{place}: {shown(error.title, 200)}", error.hint)
