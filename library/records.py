"""What the data files say, as frozen values: sources, figures, kit, halls, courts, norms, words."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.core.skills import WITH_A_BALL
from grammar.frozen import frozen

READ = ("issuer's text", "second-hand", "from memory", "common practice", "assumption")
CATEGORIES = ("ball", "target", "ring", "body", "furniture")
BALL_SKILLS = tuple(skill.value for skill in WITH_A_BALL)
SERVES = (
    *("at people", "bounce", "carry", "lie", "hang", "push", "drive", "tow", "ride", "sit on", "stand on"),
    *("walk along", "land on", "wear", "tuck in", "mark a line", "mark a place", "hold a hoop", "tow with"),
    *("stand things on", "divide", "strike along the floor", "strike", "clip on", "run round", "lay down"),
    *("show", "touch with"),
)
WALLS = ("north", "east", "south", "west")


@frozen
class Source:
    """Where a number comes from; `read` (one of READ) says how far it was checked."""

    key: str
    title: str
    issuer: str
    year: int | None
    section: str
    read: str

    def __str__(self) -> str:
        parts = (self.title, self.issuer, str(self.year or ""), self.section)
        return ", ".join(part for part in parts if part) + f" ({self.read})"


@frozen
class Figure:
    """A number as a band, low <= usual <= high, with its source; `why` holds the reasoning or the working."""

    low: float
    usual: float
    high: float
    source: Source
    why: str = ""


@frozen
class KitItem:
    """A kind of ball, target, ring, big body or piece of furniture; sizes in cm, masses in g.

    `may` lists the skills a ball is fit for, `serves` what else a thing may be used for (words of SERVES, common
    practice and its own caution): a ball that is fit to be sent at people, one that bounces, what can be carried in
    the hands, what lies where it is put, a ring that can be hung up. `also` are other names for the same thing. What
    is `fixed` does not fall. A ring's `diameter_cm` is the clear width inside it; `stands_above_floor_cm` is its lower
    edge. A ball goes into what `opens` up or to the front; the mouth is as wide as the thing.
    """

    name: str
    plural: str
    category: str
    about: str
    also: tuple[str, ...] = ()
    soft: bool = False
    fixed: bool = False
    may: tuple[str, ...] = ()
    serves: tuple[str, ...] = ()
    diameter_cm: Figure | None = None
    width_cm: Figure | None = None
    height_cm: Figure | None = None
    length_cm: Figure | None = None
    mass_g: Figure | None = None
    stands_above_floor_cm: Figure | None = None
    opens: str = ""
    caution: str = ""

    @property
    def size_m(self) -> tuple[float, float]:
        """Usual width and height seen from the front, in m (0 where the catalogue gives none)."""
        width = self.width_cm or self.diameter_cm
        height = self.height_cm or self.diameter_cm
        return (width.usual / 100 if width else 0.0, height.usual / 100 if height else 0.0)


@frozen
class Court:
    """A marked court of a sport: size inside the lines, clear strip beside and behind, clear height (m)."""

    name: str
    about: str
    length_m: Figure
    width_m: Figure
    run_off_side_m: Figure | None = None
    run_off_end_m: Figure | None = None
    clear_height_m: Figure | None = None


@frozen
class Door:
    """A door in a wall; `at_m` is its middle, from the west end of the wall, or from its south end."""

    side: str
    at_m: float
    width_m: float
    source: Source


@frozen
class Obstacle:
    """Something fixed: its rectangle on the plan, `x_m`, `y_m` its south-west corner."""

    name: str
    x_m: float
    y_m: float
    length_m: float
    width_m: float
    source: Source


@frozen
class Marking:
    """A court painted on the floor: its name in the courts data and its middle on the plan.

    Its long side runs along the hall, or across it where `turned`.
    """

    court: str
    x_m: float
    y_m: float
    turned: bool
    source: Source


UNNAMED = "hall"  # what a hall is called that is only described


@frozen
class Hall:
    """A hall: x runs east along the length, y north along the width, both from the south-west corner."""

    name: str
    about: str
    invented: bool
    length_m: Figure
    width_m: Figure
    height_m: Figure | None = None
    doors: tuple[Door, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    markings: tuple[Marking, ...] = ()

    @property
    def area_m2(self) -> float:
        """Floor area at the usual size, in m2, obstacles not taken off."""
        return self.length_m.usual * self.width_m.usual


@frozen
class Row:
    """One figure of a norm for pupils of `ages` in whole years (both ends included); None: for every age."""

    ages: tuple[int, int] | None
    figure: Figure


@frozen
class Table:
    """A norm by name and age: `rows["overarm throw"]` are the rows of that name, youngest first.

    `better` is "higher" or "lower", the end of the band an able class is at, or "neither" where
    ability has no part in it.
    """

    name: str
    about: str
    unit: str
    better: str
    rows: Mapping[str, tuple[Row, ...]]


@frozen
class Norms:
    """All norms: `tables["aim across"]` is the table [across] of norms/aim.toml."""

    tables: Mapping[str, Table]


@frozen
class Word:
    """A noun of the library in another language: as written (one, many), then `one` and `many` over there."""

    name: str
    names: str
    one: str
    many: str
    feminine: bool


@frozen
class WordList:
    """The library in another language: nouns by their singular as written, whole texts by the text as written."""

    words: Mapping[str, Word]
    texts: Mapping[str, str]
