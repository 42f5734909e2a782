"""One drawn game from one number: its meaning first, then the sheet that says it."""

from __future__ import annotations

from random import Random

from tests.interpreter.drawn.balls import draw_balls
from tests.interpreter.drawn.ends import draw_ends
from tests.interpreter.drawn.extras import draw_extras
from tests.interpreter.drawn.more_rules import draw_more, draw_returns
from tests.interpreter.drawn.people_and_floor import draw_floor, draw_kit, draw_sides, draw_waiting
from tests.interpreter.drawn.records import Draft
from tests.interpreter.drawn.rules import agent_of, draw_falls, draw_hits, draw_track
from tests.interpreter.drawn.tasks import draw_tasks


def drawn_game(number: int) -> Draft:
    """The game of a number; the same each time."""
    draft = Draft(Random(number))
    draw_sides(draft)
    draw_floor(draft)
    draw_kit(draft)
    draw_waiting(draft)
    draw_tasks(draft)
    draw_balls(draft, agent_of(draft))
    draw_falls(draft)
    draw_hits(draft)
    draw_track(draft)
    draw_more(draft)
    draw_returns(draft)
    draw_ends(draft)
    draw_extras(draft)
    return draft
