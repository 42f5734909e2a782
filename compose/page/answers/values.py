"""What the answers are made of: plain values that cross from a worker to the page, and load nothing heavy."""

from __future__ import annotations

from grammar.frozen import frozen


@frozen
class Said:
    """`gravity` is mistake, mend or know; `line` is the rule's own line, `moves` how many a line of play has."""

    code: str
    gravity: str
    title: str
    hint: str
    known_by: str
    line: str
    moves: int


@frozen
class ForClass:
    """`lines` say how the class plays it: teams, court, kit; the plans are SVG, the narrow one with larger words."""

    lines: tuple[str, ...]
    cautions: tuple[str, ...]
    plan: str
    narrow_plan: str


@frozen
class Asked:
    """Which game with what for whom: whole texts, so that it says all that the answer hangs on."""

    texts: tuple[str, ...]
    uses: tuple[str, ...]
    group: str
    language: str


@frozen
class Amount:
    """A value of a modifier, with the ones before and after it; None where there are none."""

    name: str
    words: str
    less: str | None
    more: str | None


@frozen
class Used:
    """A modifier in use: as it is written in an address, as it is called, and what can be set."""

    written: str
    label: str
    amounts: tuple[Amount, ...]


@frozen
class Proof:
    """What is proved. `whole`: every situation was looked at; `going_on`: the first look left some, and a longer one is
    worth its time; `fits`: nothing is to mend for the class; `unread`: what ends the verdict where rules are not read.
    Findings stand with their places."""

    sound: bool
    fits: bool
    whole: bool
    going_on: bool
    unread: str
    facts: tuple[str, ...]
    findings: tuple[tuple[str, Said], ...]


@frozen
class Quick:
    """`refused` says why the modifiers cannot be used together, or the class cannot play it: then without a `proof`."""

    title: str
    used: tuple[Used, ...] = ()
    refused: tuple[Said, ...] = ()
    changes: tuple[tuple[str, tuple[str, ...]], ...] = ()
    played: ForClass | None = None
    proof: Proof | None = None
    of_class: tuple[Said, ...] = ()


@frozen
class Odds:
    """The forecast in a few lines; `known_by` says how it is known. Findings of the lesson's time stand with their
    places."""

    lines: tuple[str, ...]
    findings: tuple[tuple[str, Said], ...]
    known_by: tuple[str, ...]
    sound: bool


@frozen
class Band:
    """What to expect of pupils of little and of much ability, each under what it is called, and what the forecast
    hangs on most. None of them where there is no forecast to compare."""

    ends: tuple[tuple[str, tuple[str, ...]], ...]
    hangs_on: tuple[str, ...]


@frozen
class Row:
    """`lacks` is what the class lacks, `short_m` by how many metres its hall is too small, `refused`
    whether it cannot play it as it is, `skills` in the language,
    `picture` is SVG, `broken` why there is no game."""

    slug: str
    title: str
    about: str
    ages: tuple[int, int]
    pupils: tuple[int, int]
    skills: tuple[tuple[str, str], ...]
    picture: str
    lacks: tuple[str, ...]
    kit_there: bool
    right_age: bool
    short_m: float = 0.0
    refused: bool = False
    broken: tuple[str, ...] = ()


@frozen
class Choice:
    """A modifier that may be chosen; `why_not` says why it does not go with the remix as it is."""

    name: str
    label: str
    about: str
    used: bool
    why_not: str


@frozen
class Heading:
    """A heading with its modifiers, those that fit first."""

    name: str
    label: str
    choices: tuple[Choice, ...]


@frozen
class Picture:
    """A moment of a line of play: its plan as SVG, what happens, and the counts after it."""

    plan: str
    words: str
    counts: str


@frozen
class Why:
    """A finding with its line of play; no pictures where no play is needed to see it."""

    title: str
    finding: Said
    pictures: tuple[Picture, ...]
    goes_round: bool


@frozen
class Mend:
    """A change that mends a finding: the modifiers that are then in use, and what there is then to mend that was not
    before."""

    words: str
    about: str
    uses: tuple[str, ...]
    brings: tuple[str, ...]


@frozen
class Stretch:
    """A stretch of a lesson: what is done from which minute for how long, with which game, in how many rounds."""

    what: str
    start: str
    minutes: str
    game: str
    rounds: str


@frozen
class LessonShown:
    """The bars are SVG; `first` says what to lay out; `wrong` why there is no lesson of these games; `lacks` what the
    class lacks for each of them, by its title."""

    bar: str
    narrow_bar: str
    stretches: tuple[Stretch, ...]
    first: tuple[str, ...]
    wrong: tuple[str, ...]
    lacks: tuple[tuple[str, str], ...] = ()


@frozen
class Slip:
    """A mistake in a text: lines and columns from 1; `mended` is the whole text with it put right, "" where nobody
    knows how; `write` is the line that it then has."""

    line: int
    column: int
    end: int
    title: str
    hint: str
    write: str
    mended: str


@frozen
class Looked:
    """What was understood of a text: `more` mistakes than are told; the names it declares; it in its usual wording.

    `later`: of the last of those told it is not worked out yet what to write instead.
    """

    title: str
    slips: tuple[Slip, ...]
    understood: tuple[tuple[str, tuple[str, ...]], ...]
    names: tuple[str, ...]
    tidy: str
    more: int = 0
    later: bool = False


@frozen
class Read:
    """A pack that was read, or why it was refused. The pack itself is only handed on."""

    pack: object
    wrong: str
