"""Our colours, and how the sides are told apart: by shape and pattern first, by colour besides.

The fills of the sides differ in lightness, so that they stay apart in a grey print, and lie on the
blue-yellow axis as far as there is room, so that they stay apart for those who see no red or no green.
A test measures both.
"""

from __future__ import annotations

from grammar.frozen import frozen

DARK = "#1d232b"
MIDDLE = "#5b6570"
PALE = "#c9ced4"
FAINT = "#eef0f2"
WHITE = "#ffffff"
HALL = "#f3f0ea"
ACCENT = "#17365f"
WARNING = "#8a3b00"


@frozen
class SideStyle:
    """How a side looks: `shape` is circle, square, triangle or diamond; `mark` is what is drawn upon it."""

    shape: str
    fill: str
    edge: str
    mark: str
    tint: str


STYLES = (
    SideStyle("circle", "#17365f", "#0d1f38", "#ffffff", "#eef3fa"),
    SideStyle("square", "#eda52a", "#3d2900", "#3d2900", "#fdf6e6"),
    SideStyle("triangle", "#2f8a80", "#0c2e2a", "#ffffff", "#eaf5f3"),
    SideStyle("diamond", "#eadcf7", "#33204a", "#33204a", "#f8f4fc"),
)
NOBODY = SideStyle("plain", WHITE, DARK, MIDDLE, WHITE)


def style_of(side: str | None, sides: tuple[str, ...]) -> SideStyle:
    """The look of a side; after four sides the looks come round again."""
    return STYLES[sides.index(side) % len(STYLES)] if side in sides else NOBODY
