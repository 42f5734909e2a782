"""From what a teacher types to a hall: its size, a sheet of its own, or a name of the library or of the folder."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import library
from compose.terminal.answer import refuse, stop
from compose.terminal.typed.finding_games import ENDING, read
from grammar.finding import Outcome
from grammar.hall_told import hall_told
from grammar.parse import parse
from grammar.words import did_you_mean, listing
from library import Hall, own_hall


def hall_named(name: str | None, as_json: bool, folder: Path = Path()) -> Hall | None:
    """The hall that an option says, "15 m by 12 m" or a name; ends the command where there is none."""
    if name is None:
        return None
    if name[:1].isdigit() and (sized := _sized(name)) is not None:
        return _right(sized, as_json)
    if name.endswith(ENDING) or "/" in name or "\\" in name:
        return _first(Path(name), as_json)
    halls = halls_at_hand(folder, name, as_json)
    found = next((hall for key, hall in halls.items() if key.lower() == name.lower()), None)
    if found is None:
        hint = did_you_mean(name, halls) or f'Known are {listing(halls)}; or write a size: "15 m by 12 m".'
        refuse(f"There is no hall called `{name}`.", hint, as_json)
    return found


def halls_at_hand(folder: Path, wanted: str, as_json: bool) -> Mapping[str, Hall]:
    """The halls of the library, and those whose sheets lie in a folder; one of one's own comes first.

    Ends the command where the hall that is wanted has mistakes; those of others are no matter.
    """
    known = dict(library.halls())
    for path in sorted(folder.glob(f"*{ENDING}")):
        for title, outcome in _in_file(path).items():
            if title.lower() == wanted.lower():
                known[title] = _right(outcome, as_json)
            elif outcome.value is not None:
                known[title] = outcome.value
    return known


def _sized(written: str) -> Outcome[Hall] | None:
    """The hall of a size; None where that is no size."""
    sheet = parse(f"hall of a size\n  the hall is {written}\n", "the command line").value
    return own_hall(hall_told(sheet.halls[0])) if sheet and len(sheet.halls[0].lines) == 1 else None


def _in_file(path: Path) -> dict[str, Outcome[Hall]]:
    """The halls of a file by their names; none where it cannot be read, for nobody has asked for it."""
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        return {}
    if not any(line.lower().startswith("hall ") for line in text.splitlines()):
        return {}
    outcome = parse(text, str(path))
    if outcome.value is None:
        named = (line[5:].strip() for line in text.splitlines() if line.lower().startswith("hall "))
        return {name: Outcome(None, outcome.findings) for name in named}
    return {sheet.title: own_hall(hall_told(sheet), sheet.title) for sheet in outcome.value.halls}


def _first(path: Path, as_json: bool) -> Hall:
    sheets = read(path, as_json).halls
    if not sheets:
        refuse(f"`{path}` holds no hall.", "A hall begins with a line such as: hall Beck Hall", as_json)
    return _right(own_hall(hall_told(sheets[0]), sheets[0].title), as_json)


def _right(outcome: Outcome[Hall], as_json: bool) -> Hall:
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return outcome.value
