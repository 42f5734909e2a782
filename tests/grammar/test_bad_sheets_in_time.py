"""A sheet with many mistakes is told in time: no line is read again for every other that is mended.

What is counted is how often lines are read, not seconds, so that it is the same on every machine.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from proofreading import judge_of

from grammar.reading import line_said
from grammar.resolve.known import names_meant
from tests.grammar.corpus import FILES

WRONG = (
    "players rol a foam ball at the {name} of the other side",
    "players trow a foam ball at the {name}",
    "blah {name} blah",
    "players roll a foam ball at the {name} of the other side",
)
SHEET = """\
game Many Mistakes
space
  court 18 m by 9 m, halved across
sides
  north and south, 6 to 12 players each, mirrored
kit
  4 foam balls
  2 cones for each side
set-up
  2 foam balls in each half
  cones on the back line of their side
play
{lines}
finish
  a side wins when the other side has no cones standing
"""
LINES, MOST_READ = 16, 12  # of each line: as it stands, and once for each way in which it may be mended


def forget() -> None:
    line_said.cache_clear()
    names_meant.cache_clear()


def test_lines_are_not_read_again_for_the_mistakes_of_others() -> None:
    lines = [f"  {WRONG[at % len(WRONG)].format(name=f'tower{chr(97 + at % 26)}')}" for at in range(LINES)]
    forget()
    found = judge_of("many.rules")(SHEET.format(lines="\n".join(lines)))
    assert len(found) >= LINES / 2
    assert line_said.cache_info().misses < MOST_READ * LINES


@pytest.mark.sample(5)
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_what_was_read_before_changes_nothing(path: Path) -> None:
    """Mistakes and advice are the same whether the lines were kept from another reading or not."""
    text, judge = path.read_bytes().decode("utf-8-sig", errors="replace"), judge_of(path.name)
    moved = f"note: a line more\n{text}"
    judge(text), judge(moved)
    kept = judge(moved)
    forget()
    assert judge(moved) == kept
