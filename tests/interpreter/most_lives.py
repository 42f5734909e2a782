"""How many lives each pupil has at the start, as the second reader reads it."""

from __future__ import annotations

from grammar.sentences import lives
from tests.interpreter.names import Folk
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import Of, whose


@remembered
def most_lives(sheet: Sheet, side: str, role: str) -> int:
    """How many lives a pupil of a side and role has at most; 0 where they are not counted."""
    lines = [line for line in sheet.tree.all_of("sides", lives.HasLives) if means(sheet, line, side, role)]
    return max(lines, key=lambda line: _narrow(sheet, line)).number.whole if lines else 0


def _narrow(sheet: Sheet, line: lives.HasLives) -> int:
    """How much a line names: a task, a side."""
    folk = sheet.meaning(line.who.name)
    assert isinstance(folk, Folk)
    return int(folk.role is not None) + int(folk.side is not None or isinstance(whose(sheet, line.who), Of))


def means(sheet: Sheet, line: lives.HasLives | lives.LastLife, side: str, role: str) -> bool:
    folk, said = sheet.meaning(line.who.name), whose(sheet, line.who)
    assert isinstance(folk, Folk)
    of = said.side if isinstance(said, Of) else folk.side
    return of in (None, side) and folk.role in (None, role)
