"""A file's bytes → lines that say something, each with the notes above it.

A file from another school is hostile until read: its size, its lines and its characters are bounded here.
"""

from __future__ import annotations

import re
import unicodedata

from grammar.finding import Finding, mistake
from grammar.frozen import frozen
from grammar.said import Value, quoting
from grammar.span import Span

MOST_BYTES = 1 << 20
MOST_LINE_LETTERS = 400
MOST_LINES = 20_000


@frozen
class TextLine:
    """A line that says something, with the notes that stand above it. `indent` counts letters."""

    number: int
    indent: int
    text: str
    notes: tuple[str, ...] = ()

    def span(self, file: str) -> Span:
        """The whole of what the line says."""
        return Span(file, self.number, self.indent + 1, self.indent + 1 + len(self.text))


def decoded(data: bytes, file: str) -> tuple[str, tuple[Finding, ...]]:
    """Text of a file's bytes, or "" and why they are not text."""

    def refuse(title: Value, hint: Value) -> tuple[str, tuple[Finding, ...]]:
        return "", (mistake("L-not-text", title, Span(file, 0, 0, 0), hint),)

    if len(data) > MOST_BYTES:
        return refuse(
            "This file is larger than 1 MiB; a rule sheet is a page or two.", "Split it into one file a game."
        )
    if b"\0" in data:
        return refuse("This file is not text: it holds bytes that no text has.", "Give a plain text file of rules.")
    try:
        return data.decode("utf-8-sig"), ()
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        return refuse(
            quoting("Line {line} holds a letter that is not in UTF-8.", line=line),
            "Save the file as plain text in UTF-8.",
        )


def text_lines(text: str, file: str) -> tuple[list[TextLine], list[str], list[Finding]]:
    """Lines that say something, the notes after the last of them, and lines that cannot be read."""
    lines: list[TextLine] = []
    notes: list[str] = []
    findings: list[Finding] = []
    for number, raw in enumerate(re.split(r"\r\n|\r|\n", text), start=1):
        written = raw.expandtabs(4).rstrip()
        said = written.lstrip()
        place = Span(file, number, len(written) - len(said) + 1, min(len(written), MOST_LINE_LETTERS) + 1)
        if number > MOST_LINES or len(said) > MOST_LINE_LETTERS or _strange(said):
            findings.append(_unreadable(said, number, place))
            if number > MOST_LINES:
                break
        elif re.match(r"note\s*:", said, re.IGNORECASE):
            notes.append(said.split(":", 1)[1].strip())
        elif said:
            # A letter with its accent typed after it, as some systems save it, is the same letter.
            composed = unicodedata.normalize("NFC", said)
            lines.append(TextLine(number, len(written) - len(said), composed, tuple(notes)))
            notes = []
    return lines, notes, findings


def _strange(said: str) -> bool:
    return (
        not said.isascii()
        and any(unicodedata.category(letter) in ("Cc", "Cf", "Co", "Cn", "Cs", "Zl", "Zp") for letter in said)
    ) or (any(ord(letter) < 32 or ord(letter) == 127 for letter in said))


def _unreadable(said: str, number: int, place: Span) -> Finding:
    if number > MOST_LINES:
        title: Value = quoting("This file has more than {most} lines.", most=MOST_LINES)
        hint = "Split it into one file a game."
    elif len(said) > MOST_LINE_LETTERS:
        title = quoting(
            "This line has {number} letters; at most {most} are read.",
            number=len(said),
            most=MOST_LINE_LETTERS,
        )
        hint = "Write one sentence a line."
    else:
        title, hint = "This line holds a letter that cannot be seen.", "Type the line again."
    return mistake("L-line", title, place, hint)
