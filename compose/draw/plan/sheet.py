"""What the parts of a floor plan share while it is drawn."""

from __future__ import annotations

from attrs import define, evolve, field

from compose.draw.signs.labelling import Clearings
from compose.draw.signs.palette import SideStyle, style_of
from compose.draw.signs.shapes import Shape
from compose.draw.units import METRIC, Units
from compose.staging.floor.throws import Throw
from compose.staging.floor.values import Floor, FloorItem, Rectangle
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game


def without_throws(game: Game) -> Game:
    """The game as a legend needs it that knows the players and the kit, but no throws: they are for the plan of one
    court on a page of its own. What follows from play goes with it."""
    sections = tuple(part for part in game.sheet.sections if part.name not in ("play", "when", "finish"))
    return evolve(game, sheet=evolve(game.sheet, sections=sections))


@define
class Sheet:
    """Shapes are added in the order of drawing. `unit` is a hundredth of the plan's length, in metres.

    `letters` makes words and the legend larger, for a plan that will be printed small. `told_below` are arrows beside
    which there was no room for all of their words.
    """

    game: Game
    floor: Floor
    unit: float
    letters: float = 1.0
    units: Units = METRIC
    wording: Wording = ENGLISH
    shapes: list[Shape] = field(factory=list)
    clearings: Clearings = field(factory=Clearings)
    told_below: list[Throw] = field(factory=list)

    @property
    def sides(self) -> tuple[str, ...]:
        return tuple(side.name for side in self.game.sides)

    @property
    def text_m(self) -> float:
        """The size of letters on the plan."""
        return 2.0 * self.unit * self.letters

    @property
    def key_unit(self) -> float:
        """The unit of the legend, in metres."""
        return self.unit * self.letters

    @property
    def least_m(self) -> float:
        """The least half-width of a sign, so that it can be told apart on paper."""
        return 0.85 * self.unit

    @property
    def extent(self) -> Rectangle:
        """All that lies on the floor or beside the court, with the signs as large as they are drawn."""
        around = self.floor.extent
        for item in self.floor.items:
            around = around.joined(Rectangle(item.x, item.y, item.x, item.y).grown(self.shown(item)))
        return around

    def style(self, side: str | None) -> SideStyle:
        return style_of(side, self.sides)

    def ball_kind(self, name: str) -> int:
        """Which of the kinds of balls this is, from 0."""
        kinds = [line.name for line in self.game.kit if line.category == "ball"]
        return kinds.index(name) if name in kinds else 0

    def shown(self, item: FloorItem) -> float:
        """The half-width of an item's sign in metres."""
        return max(item.radius, self.least_m)
