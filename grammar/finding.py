"""The one record in which every stage speaks of what is wrong, and the pair of value and findings."""

from __future__ import annotations

from enum import Enum
from typing import Any, Generic, TypeVar

from grammar.frozen import evolve, field, frozen
from grammar.said import NOTHING, english
from grammar.span import Span
from grammar.words import capital

# What says of a look how far it went; it is nothing that a teacher could mend in the sheet.
NOT_PROVED = frozenset({"C-budget", "C-too-large", "C-unfinished"})

IDLE = "C-idle"  # what never takes effect, whether a sheet, a net or all of play shows it


class Severity(Enum):
    """How a finding counts: an error stops the work, a warning asks the teacher to act, a note informs."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Basis(Enum):
    """How a finding is known; no finding is a guess."""

    READ = "read in the text"
    PROVED = "proved"
    COMPUTED = "computed"
    SIMULATED = "simulated"


@frozen
class Step:
    """One move of a witness: what happens, in the words of the rules, and the counts after it."""

    words: str
    after: str
    transition: int = -1


@frozen
class Correction:
    """A line that may mend a mistake. Nobody is told of it before advice.py has seen that it does.

    `line` takes the place of the line at `place`; with a `section` it goes to the end of that section
    instead. What is then said of the mistake: `code`, `title` and `mark`, where they differ. Not `sure`: the
    name in it was meant otherwise. The smaller `cost`, the nearer it is to what was written.
    """

    place: Span
    line: str
    cost: float = 0.5
    code: str = ""
    title: Any = ""
    mark: Span | None = None
    section: str = ""
    sure: bool = True


@frozen
class Finding:
    """One thing to say about a text or a game.

    `code` is stable (tests match it), `title` is one plain sentence, `hint` says what would mend it.
    `witness` is the shortest line of play that leads there, empty where no play is needed;
    `loop` is the part of it that can repeat for ever. `corrections` are lines that might mend it.
    `said` are title and hint in values, for other languages; None where there are only the words of English.
    """

    code: str
    severity: Severity
    title: str
    place: Span
    hint: str = ""
    others: tuple[Span, ...] = ()
    basis: Basis = Basis.READ
    witness: tuple[Step, ...] = ()
    loop: tuple[Step, ...] = ()
    numbers: tuple[tuple[str, float], ...] = field(default=())
    corrections: tuple[Correction, ...] = field(default=(), eq=False, repr=False)
    said: tuple[Any, Any] | None = field(default=None, eq=False, repr=False)


def spoken(code: str, severity: Severity, title: Any, place: Span, hint: Any = NOTHING, **more: Any) -> Finding:
    """The finding of a title and a hint in values (`grammar.said.Value`)."""
    words = capital(english(title)), capital(english(hint))
    return Finding(code, severity, words[0], place, words[1], said=(title, hint), **more)


def mistake(
    code: str, title: Any, place: Span, hint: Any = NOTHING, *others: Span, corrections: tuple[Correction, ...] = ()
) -> Finding:
    """What cannot be played, or not be read, as it stands in a sheet."""
    return spoken(code, Severity.ERROR, title, place, hint, others=others, corrections=corrections)


def retold(finding: Finding, title: Any = None, hint: Any = None, **more: Any) -> Finding:
    """The finding with another title, another hint, or both."""
    first, second = finding.said or (finding.title, finding.hint)
    told = spoken(finding.code, finding.severity, title or first, finding.place, second if hint is None else hint)
    return evolve(finding, title=told.title, hint=told.hint, said=told.said, **more)


Value = TypeVar("Value")


@frozen
class Outcome(Generic[Value]):
    """What a stage gives: a value where there is one, and all that is to be said of it."""

    value: Value | None
    findings: tuple[Finding, ...] = ()

    @property
    def broken(self) -> bool:
        """True where the next stage must not start."""
        return self.value is None or any(f.severity is Severity.ERROR for f in self.findings)
