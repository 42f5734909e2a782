"""Every line that a finding of the check offers can be read where it is offered: it names what the sheet has."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import library
from compose.check import Budget, check
from compose.net.from_game import net_of
from compose.telling.english.findings import findings_told
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.sheets import game_in, granted, net_in
from tests.wrong_games.wrong import FOLDER

OFFERED = re.compile(r'(?:such as|instead of it|hold limit:|fetch as well:) ("[^"]+"(?:(?:, | and )"[^"]+")*)')
SHEETS = (*sorted(FOLDER.glob("*.rules")), *library.game_paths())


def offered_in(text: str) -> Iterator[tuple[str, str]]:
    """Each line offered for a sheet, with the hint in which it stands; nothing for a sheet with mistakes."""
    parsed = parse(text, "(test)").value
    game = resolve(parsed.games[0], library.kit_categories()).value if parsed is not None else None
    net = net_of(game, granted()).value if game is not None else None
    if net is None:
        return
    for finding in findings_told(check(net, Budget(states=20_000)).findings, net):
        for lines in OFFERED.findall(finding.hint):
            for line in re.findall(r'"([^"]+)"', lines):
                yield line, finding.hint


def mistakes_with(text: str, line: str) -> list[str]:
    """The mistakes of a sheet to which a line of play, or of the finish, is put."""
    section = "finish" if " wins when " in line else "play"
    written = re.sub(rf"^{section}$", f"{section}\n  {line}", text, count=1, flags=re.MULTILINE)
    parsed = parse(written, "(test)")
    found = parsed.findings or resolve(parsed.value.games[0], library.kit_categories()).findings  # type: ignore[union-attr]
    return [each.title for each in found if "twice" not in each.title and "already" not in each.title]


def with_one_line_less(text: str) -> Iterator[str]:
    """The sheet itself, and without each of its lines from the set-up on."""
    yield text
    lines = text.splitlines()
    begin = next((number for number, line in enumerate(lines) if line.strip() == "set-up"), len(lines))
    for number in range(begin + 1, len(lines)):
        if lines[number].startswith("  "):
            yield "\n".join([*lines[:number], *lines[number + 1 :]]) + "\n"


@pytest.mark.sample(12)
@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_every_line_that_is_offered_can_be_read(path: Path) -> None:
    refused = {}
    for text in with_one_line_less(path.read_text(encoding="utf-8")):
        for line, hint in offered_in(text):
            if "..." not in line and (found := mistakes_with(text, line)):
                refused[line] = (hint, found)
    assert not refused


IN_HANDS = """\
game Tin Alley
  ages 8 to 12
space
  court 20 m by 12 m, in one piece
sides
  hares, 2 to 12 players
  stoats, 2 to 12 players
kit
  3 soft balls, like a foam ball
  2 tins for stoats, like a plastic pin
set-up
  tins on the back line of stoats
  hares begin with 3 soft balls
play
  hares roll a soft ball at the tins
  a missed ball rests on the court
  a scored ball rests on the court
  hares fetch balls from the court
when
  a tin is knocked: it stays down and the roller's side scores 1 point
finish
  after 4 min: more points wins, else a draw
"""


def test_nobody_is_to_fetch_from_hands() -> None:
    net = net_in(game_in(IN_HANDS))
    [stuck] = [each for each in findings_told(check(net).findings, net) if each.code == "C-dead-end"]
    assert "in the hands" in stuck.hint and "from the hands" not in stuck.hint
    assert all(not mistakes_with(IN_HANDS, line) for line, _ in offered_in(IN_HANDS))
