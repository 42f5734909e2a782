"""Small invented games that between them put something in every place the language knows."""

from __future__ import annotations

from collections.abc import Mapping

from compose.staging.floor.distance import Reach, reach
from compose.staging.floor.floor import floor_of
from compose.staging.floor.values import Floor
from compose.staging.resolved import resolved
from grammar.core.play import Aim, AtThing
from grammar.core.values import PLAIN, SHARED, KindId, Population, RoleId, SideId, Thing
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from library.load import kit_catalogue

FOUR_MATS = """
game Four Mats
space
  court 18 m by 9 m, in one piece
  mat base: in each corner, nobody is touched there
sides
  {sides}
play
  {play}
when
  a player arrives: the runner's side scores 1 point
finish
  after 3 min: nobody wins
"""


def game_of(text: str) -> Game:
    """The game that a text means; the text must be without mistakes."""
    catalogue = {name: item.category for key, item in kit_catalogue().items() for name in (key, *item.also)}
    read = parse(text, "test.rules")
    assert read.value is not None, [finding.title for finding in read.findings]
    outcome = resolve(read.value.games[0], catalogue)
    assert outcome.value is not None, [finding.title for finding in outcome.findings]
    return outcome.value


Sizes = Mapping[str, tuple[float, float]]


def floor_in(game: Game, players: Mapping[str, int], sizes_m: Sizes | None = None) -> Floor:
    """The floor of a game; a side by its name."""
    return floor_of(resolved(game), {SideId(side): number for side, number in players.items()}, sizes_m)


def players_of(side: str, role: str | None = None) -> Population:
    """A population by its names."""
    return Population(SideId(side), RoleId(role) if role else PLAIN)


def at(kind: str, owner: str | None = None) -> AtThing:
    """The aim at things of a kind and owner."""
    return AtThing(Thing(KindId(kind), SideId(owner) if owner else SHARED))


def reached(game: Game, floor: Floor, by: Population, aim: Aim) -> Reach:
    """A typical attempt."""
    return reach(floor, resolved(game), by, aim)


TWO_HALVES = """
game {title}
space
  court {court}, halved across
{space}
sides
  east and west, 2 to 20 players each, mirrored
{sides}
kit
  6 foam balls
{kit}
set-up
  foam balls in the middle
{setup}
play
  players overarm throw a foam ball at the players of the other side
{play}
finish
  a side wins when the other side has no players in
"""


def halved(space: str = "", kit: str = "", setup: str = "", **parts: str) -> Game:
    """A game of two halves with a few lines more; sections take lines without indentation."""
    lines = {"space": space, "kit": kit, "setup": setup, "sides": "", "play": "", **parts}
    indented = {name: "\n".join(f"  {line}" for line in text.splitlines()) for name, text in lines.items()}
    indented["court"] = lines.get("court", "18 m by 9 m")
    indented["title"] = lines.get("title", "Two Halves")
    return game_of(TWO_HALVES.format(**indented))


HOME_BASES = """
game Home Bases
  ages 7 to 10
space
  court 16 m by 12 m, in one piece
  home base: 2 m deep, in each corner
  den circle: 4 m deep, in the middle, nobody enters there
  resting bench: beside the court
sides
  everyone, 8 to 24 players
kit
  10 foam balls
  6 cones
set-up
  cones in the den circle, in a ring
  foam balls in the middle, close together
  players in the home bases
play
  players roll a foam ball at the cones
when
  a cone is knocked: it stays down
finish
  after 5 min: a draw
"""

FOUR_CORNERS = """
game Four Streams
space
  court 20 m by 10 m, halved across
  queue: behind each back line
sides
  ash, birch, cedar and elm, 3 to 6 players each
kit
  8 foam balls
  2 cones for each side
set-up
  foam balls on the middle line, evenly spaced
  cones on the back line of their side, evenly spaced
play
  players stay in their half
  players roll a foam ball at the cones of the other side
when
  a cone is knocked: it stays down
finish
  after 5 min: more cones standing wins, else a draw
"""

FAR_BENCH = """
game Ferry
space
  court 18 m by 9 m, halved across
  far bench: behind each back line
  queue: behind each back line
sides
  east and west, 4 to 12 players each, mirrored
  role keeper: 1 to 2 players of each side
kit
  4 foam balls
  3 goals for each side, like a small goal
set-up
  goals before the back line of their side, evenly spaced
  2 foam balls in each half
play
  players pass a foam ball to a team-mate on the far bench of the other side
  players overarm throw a foam ball at the goals of the other side
when
  a pass is caught on the far bench of the other side: the passer joins the far bench of the other side
finish
  a side wins when it has all players on the far bench
"""
