"""A small game of two rows, to be changed by the tests, and what is understood of it."""

from __future__ import annotations

from compose.telling.read_back import ReadBack, read_back
from compose.telling.wording import ENGLISH, Wording
from grammar.core.game import Core
from grammar.core.reading.from_game import core_of
from grammar.game import Game
from tests.interpreter.sheets import game_in, granted

ROW = {
    "head": "ages 8 to 12\nskills overarm throw",
    "space": "court 18 m by 9 m, halved across",
    "sides": "rowans and willows, 6 to 14 players each, mirrored",
    "kit": "8 foam balls\n5 beacons for each side, like a plastic pin",
    "set-up": "beacons on the back line of their side, evenly spaced\n4 foam balls in each half",
    "play": "players stay in their half\n"
    "players overarm throw a foam ball at the beacons of the other side\n"
    "a ball is held at most 10 s",
    "when": "a beacon is knocked: it stays down",
    "finish": "a side wins when the other side has no beacons standing\n"
    "after 6 min: more beacons standing wins, else a draw",
    "care": '"Aim low."',
}


def row(change: dict[str, tuple[str, str]] | None = None, /, **more: str) -> str:
    """The sheet of the row, with words exchanged in sections and lines added (set_up for set-up)."""
    sections = dict(ROW)
    for name, (written, instead) in (change or {}).items():
        assert written in sections[name]
        sections[name] = sections[name].replace(written, instead)
    for name, lines in more.items():
        key = name.replace("_", "-")
        sections[key] = f"{sections[key]}\n{lines}"
    head = sections.pop("head")
    text = "game Beacon Row\n" + "".join(f"  {line}\n" for line in head.splitlines())
    return text + "".join(
        f"{name}\n" + "".join(f"  {line}\n" for line in lines.splitlines()) for name, lines in sections.items()
    )


def core_in(game: Game) -> Core:
    """The core of a game; the test fails where it has none."""
    outcome = core_of(game, granted())
    assert outcome.value is not None, [finding.title for finding in outcome.findings]
    return outcome.value


def understood(text: str, wording: Wording = ENGLISH) -> ReadBack:
    """What is understood of a sheet."""
    return read_back(core_in(game_in(text)), wording)


def told(text: str, wording: Wording = ENGLISH) -> str:
    """All of it in one text."""
    return "\n".join(said.text for section in understood(text, wording).sections for said in section.said)
