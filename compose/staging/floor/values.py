"""The floor of a game as plain values: rectangles, areas and things with their places, all in metres.

x runs along the court from the back line of the first side (0) to the other end; y runs across it
from 0. What lies outside the court (a bench, a queue) has coordinates below 0 or beyond the court.
"""

from __future__ import annotations

from math import hypot

from grammar.core.declared import Doing
from grammar.core.values import Population
from grammar.finding import Finding
from grammar.frozen import evolve, frozen

KEPT_OFF = frozenset({Doing.ENTER, Doing.ACT})  # nobody aims from where nobody enters or acts
THING_DEPTH_M = 0.3  # assumption: how deep a thing is that faces along the court


@frozen
class Rectangle:
    """left <= right along the court, bottom <= top across it, in metres; it may be as thin as a line."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def length(self) -> float:
        return self.right - self.left

    @property
    def width(self) -> float:
        return self.top - self.bottom

    @property
    def centre(self) -> tuple[float, float]:
        return (self.left + self.right) / 2, (self.bottom + self.top) / 2

    def moved(self, by_x: float, by_y: float) -> Rectangle:
        """The same rectangle elsewhere."""
        return Rectangle(self.left + by_x, self.bottom + by_y, self.right + by_x, self.top + by_y)

    def grown(self, by: float) -> Rectangle:
        """The rectangle with `by` more on every side; a negative number shrinks it, at most to its centre."""
        across, along = max(by, -self.length / 2), max(by, -self.width / 2)
        return Rectangle(self.left - across, self.bottom - along, self.right + across, self.top + along)

    def joined(self, other: Rectangle) -> Rectangle:
        """The smallest rectangle around both."""
        return Rectangle(
            min(self.left, other.left),
            min(self.bottom, other.bottom),
            max(self.right, other.right),
            max(self.top, other.top),
        )

    def overlaps(self, other: Rectangle) -> bool:
        """Whether they share more than an edge (a thousandth of a millimetre is no overlap)."""
        apart = 1e-6
        return (
            self.left < other.right - apart
            and other.left < self.right - apart
            and self.bottom < other.top - apart
            and other.bottom < self.top - apart
        )

    def common_m2(self, other: Rectangle) -> float:
        """The area in square metres that two rectangles share."""
        long = min(self.right, other.right) - max(self.left, other.left)
        wide = min(self.top, other.top) - max(self.bottom, other.bottom)
        return max(0.0, long) * max(0.0, wide)

    def holds(self, x: float, y: float, radius: float = 0.0) -> bool:
        """Whether a round thing at (x, y) lies wholly inside."""
        apart = 1e-6
        return (
            self.left + radius <= x + apart
            and x <= self.right - radius + apart
            and self.bottom + radius <= y + apart
            and y <= self.top - radius + apart
        )

    def nearest(self, x: float, y: float) -> tuple[float, float]:
        """The point of the rectangle that is nearest to (x, y)."""
        return min(max(x, self.left), self.right), min(max(y, self.bottom), self.top)

    def distance_m(self, x: float, y: float) -> float:
        """How far (x, y) is from the rectangle; 0 inside."""
        near_x, near_y = self.nearest(x, y)
        return hypot(near_x - x, near_y - y)

    def without(self, strip: Rectangle) -> Rectangle:
        """What is left beside a strip that cuts a whole edge off; the rectangle itself where it does not."""
        if not self.overlaps(strip):
            return self
        apart = 1e-6
        if strip.bottom <= self.bottom + apart and strip.top >= self.top - apart:
            if strip.left <= self.left + apart < strip.right < self.right:
                return evolve(self, left=strip.right)
            if self.left < strip.left < self.right - apart <= strip.right:
                return evolve(self, right=strip.left)
        if strip.left <= self.left + apart and strip.right >= self.right - apart:
            if strip.bottom <= self.bottom + apart < strip.top < self.top:
                return evolve(self, bottom=strip.top)
            if self.bottom < strip.bottom < self.top - apart <= strip.top:
                return evolve(self, top=strip.bottom)
        return self


@frozen
class Half:
    """The part of the court that a side calls its half."""

    side: str
    rectangle: Rectangle


@frozen
class FloorArea:
    """An area on the floor. `owner` is the side it belongs to; `shut` is what nobody does there; `out` do not enter."""

    name: str
    kind: str
    owner: str | None
    rectangle: Rectangle
    shut: frozenset[Doing] = frozenset()
    out: frozenset[Population] = frozenset()


@frozen
class FloorTrack:
    """A track of steps along the court: step n lies at x = steps[n]; `start` and `goal` are the sides at its ends."""

    name: str
    start: str
    goal: str
    steps: tuple[float, ...]
    width_m: float

    def row(self, step: int) -> Rectangle:
        """The line across the court at a step; beyond the ends the nearest step counts."""
        x = self.steps[min(max(step, 0), len(self.steps) - 1)]
        return Rectangle(x, 0.0, x, self.width_m)


@frozen
class FloorItem:
    """A thing or a player at the start: its middle in metres, and how wide and high it is.

    Balls, bodies and players are round; other things face along the court and are at most 0.3 m deep.

    `category` is target, ring, body, ball, furniture or player. `side` is the owner; `near` the side in
    whose half (or on whose line) it stands, None for the middle. `on` names what it lies upon.
    `index` counts from 0 within its name and side.
    """

    name: str
    category: str
    side: str | None
    x: float
    y: float
    width_m: float
    height_m: float
    index: int = 0
    role: str | None = None
    near: str | None = None
    on: str | None = None

    @property
    def radius(self) -> float:
        return self.width_m / 2

    @property
    def round(self) -> bool:
        return self.category in ("ball", "body", "player") or self.width_m <= THING_DEPTH_M

    @property
    def deep(self) -> float:
        """How far it reaches from its middle along the court, in metres."""
        return self.radius if self.round else THING_DEPTH_M / 2

    @property
    def box(self) -> Rectangle:
        """The rectangle around it on the floor."""
        deep, radius = self.deep, self.radius
        return Rectangle(self.x - deep, self.y - radius, self.x + deep, self.y + radius)

    def clear_of(self, other: FloorItem) -> float:
        """The gap between two things on the floor, in metres; below 0 they overlap."""
        radius, its = self.radius, other.radius
        if self.round and other.round:
            return hypot(self.x - other.x, self.y - other.y) - radius - its
        deep, its_deep = self.deep, other.deep
        apart_x = max((self.x - deep) - (other.x + its_deep), (other.x - its_deep) - (self.x + deep))
        apart_y = max((self.y - radius) - (other.y + its), (other.y - its) - (self.y + radius))
        return max(apart_x, apart_y) if min(apart_x, apart_y) < 0 else hypot(apart_x, apart_y)


@frozen
class Floor:
    """The whole floor. `problems` says what did not fit, with `short_m` metres among the finding's numbers.

    Things that do not fit are left out of `items`, so that nothing that is there overlaps.
    """

    length_m: float
    width_m: float
    halves: tuple[Half, ...]
    areas: tuple[FloorArea, ...]
    items: tuple[FloorItem, ...] = ()
    problems: tuple[Finding, ...] = ()
    tracks: tuple[FloorTrack, ...] = ()

    @property
    def court(self) -> Rectangle:
        return Rectangle(0.0, 0.0, self.length_m, self.width_m)

    @property
    def extent(self) -> Rectangle:
        """The smallest rectangle around the court and all that lies beside it."""
        around = self.court
        for area in self.areas:
            around = around.joined(area.rectangle)
        for item in self.items:
            around = around.joined(item.box)
        return around

    @property
    def areas_apart(self) -> tuple[FloorArea, ...]:
        """The areas without those that lie on one another: a side line of an undivided court is every side's."""
        return tuple({(area.name, area.rectangle): area for area in reversed(self.areas)}.values())[::-1]

    def half_of(self, side: str) -> Rectangle | None:
        """The half of a side, where the court has halves."""
        return next((half.rectangle for half in self.halves if half.side == side), None)

    def items_of(self, name: str, side: str | None = None) -> tuple[FloorItem, ...]:
        """The things of that name; with a side only those it owns."""
        return tuple(item for item in self.items if item.name == name and side in (None, item.side))

    def players_of(self, side: str | None = None) -> tuple[FloorItem, ...]:
        """The players of a side, or all."""
        return tuple(item for item in self.items if item.category == "player" and side in (None, item.side))

    def areas_of(self, name: str, owner: str | None = None) -> tuple[FloorArea, ...]:
        """The areas of that name; with an owner those of that side and those of nobody."""
        return tuple(area for area in self.areas if area.name == name and owner in (None, area.owner))
