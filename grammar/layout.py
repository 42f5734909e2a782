"""The layout of a file: where its games and modifiers begin, and which section a line belongs to.

A heading that is misspelled is a mistake, but the lines below it are read as if it stood there.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from grammar.finding import Correction, Finding, mistake
from grammar.frozen import frozen
from grammar.lines import TextLine as TextLine
from grammar.lines import decoded as decoded
from grammar.lines import text_lines
from grammar.said import Value, quoting
from grammar.span import Span
from grammar.words import nearest

SECTIONS = ("space", "sides", "kit", "set-up", "play", "when", "finish", "care")
KINDS = ("game", "modifier", "remix", "class", "hall")
MOST_TITLE_LETTERS = 60
_TITLE = re.compile(r"[^\W_][\w '’&,.!-]*")
_SENTENCE_OF_A_CLASS = re.compile(  # no name of a game, a class or a hall begins so
    r"class\s+of\b|\d+\s+(?:pupils|children|kids|players|\S+-year-olds)|hall(?:\s+is|:)?\s+\d+\s*(?:\.\d+\s*)?(?:m|x|×|by)\b",
    re.IGNORECASE,
)
_ALONE = ("space", "sides", "kit", "set-up", "setup", "finish", "care")
_OTHER_SPELLINGS = {"setup": "set-up", "set up": "set-up"}
_OTHER_WORDS = {
    "area": "space", "court": "space", "field": "space", "hall": "space", "pitch": "space",
    "groups": "sides", "players": "sides", "pupils": "sides", "teams": "sides", "team": "sides",
    "equipment": "kit", "gear": "kit", "material": "kit", "materials": "kit",
    "organisation": "set-up", "preparation": "set-up", "start": "set-up",
    "actions": "play", "playing": "play", "rules": "play", "tasks": "play",
    "consequences": "when", "events": "when", "if": "when", "what happens": "when",
    "end": "finish", "ending": "finish", "goal": "finish", "scoring": "finish", "winning": "finish",
    "health": "care", "safety": "care", "cautions": "care",
}  # fmt: skip


@frozen
class Part:
    """A game or a modifier as lines: those of the head, then those of each section as they come.

    The name of a section is "" where its heading cannot even be guessed.
    """

    kind: str
    title: str
    heading: TextLine
    head: tuple[TextLine, ...]
    sections: tuple[tuple[str, TextLine, tuple[TextLine, ...]], ...]
    closing_notes: tuple[str, ...] = ()


def parts(text: str, file: str) -> tuple[list[Part], list[Finding]]:
    """Split a file into its games and modifiers; lines that belong nowhere are findings."""
    lines, closing, findings = text_lines(text, file)
    found: list[Part] = []
    groups = list(_groups(lines, findings, file))
    for heading, body in groups:
        kind, title = _heading(heading)
        findings.extend(_title_findings(kind, title, heading, file))
        head, sections = _sections(body, findings, file) if kind == "game" else (tuple(body), ())
        last = heading is groups[-1][0]
        found.append(Part(kind, title, heading, head, sections, tuple(closing) if last else ()))
    if not groups and not findings:
        title = "This file says nothing." if not lines else "This file does not say what it holds."
        findings.append(mistake("L-empty", title, Span(file, 1, 1, 1), _begin_with("game Lantern Row")))
    return found, findings


def _groups(lines: list[TextLine], findings: list[Finding], file: str) -> Iterator[tuple[TextLine, list[TextLine]]]:
    """Each heading with its lines. A file that begins otherwise is read as if a heading stood there."""
    heading: TextLine | None = None
    body: list[TextLine] = []
    for line in lines:
        if line.indent == 0 and _heading(line)[0]:
            if heading:
                yield heading, body
            heading, body = line, []
        elif heading:
            body.append(line)
        else:
            heading, hint = _meant_heading(line)
            meant = (Correction(line.span(file), heading.text),) if heading.number else ()
            first = line.text.split(maxsplit=1)[0]
            title: Value = quoting(
                "A file begins with `game` and its name; this one begins with `{first}`.", first=first[:30]
            )
            if _SENTENCE_OF_A_CLASS.match(line.text):
                title = "A class begins with `class` and its name; this is a sentence of it."
            elif first.lower() in KINDS:
                title = quoting("`{first}` does not stand at the beginning of its line.", first=first)
                hint, meant = "Take away the space before it.", ()
            findings.append(mistake("L-first-line", title, line.span(file), hint, corrections=meant))
            body = [] if heading.number else [line]
    if heading:
        yield heading, body


def _meant_heading(line: TextLine) -> tuple[TextLine, Value]:
    """The heading that a first line was meant to be, and what such a line is like; number 0 where it is none."""
    first, _, rest = line.text.partition(" ")
    if _SENTENCE_OF_A_CLASS.match(line.text):
        return TextLine(0, 0, "class (no name)", ()), _begin_with("class Beck Class")
    near = nearest(first.rstrip(":"), KINDS, most=1)
    if near and rest:
        text = f"{near[0]} {rest.strip()}"
        return TextLine(line.number, 0, text, line.notes), _begin_with(f"{near[0]} Lantern Row")
    hint = _begin_with("game Lantern Row")
    if not line.indent and not section_name(line.text) and _is_name(line.text) and len(line.text) <= MOST_TITLE_LETTERS:
        text = f"game {line.text}"
        return TextLine(line.number, 0, text, line.notes), hint
    return TextLine(0, 0, "game (no name)", ()), hint


def _begin_with(line: str) -> Value:
    return quoting('Begin with a line such as "{line}".', line=line)


def _heading(line: TextLine) -> tuple[str, str]:
    first, _, rest = line.text.partition(" ")
    if first.lower() not in KINDS or _SENTENCE_OF_A_CLASS.match(line.text):
        return "", ""
    if first.lower() == "hall" and not rest.strip():  # a section of a game, misnamed
        return "", ""
    return first.lower(), " ".join(rest.split())


def _is_name(title: str) -> bool:
    """Whether a title has no sign that a name cannot have; a letter may be followed by its marks, as in "ড়"."""
    bare = "".join(letter for letter in title if not unicodedata.category(letter).startswith("M"))
    return _TITLE.fullmatch(bare) is not None and bare[0] == title[0]


def _title_findings(kind: str, title: str, heading: TextLine, file: str) -> Iterator[Finding]:
    hint: Value = quoting('Write the name behind the word, such as "{kind} Lantern Row".', kind=kind)
    if not title:
        wrong = quoting("This {kind} has no name.", kind=kind)
    elif not heading.number:
        return
    elif len(title) > MOST_TITLE_LETTERS:
        wrong = quoting(
            "This name has {number} letters; at most {most} fit on a card.",
            number=len(title),
            most=MOST_TITLE_LETTERS,
        )
    elif not _is_name(title):
        wrong = quoting("`{title}` has a sign that a name cannot have.", title=title)
        hint = "A name has letters, digits and spaces, and of signs only ' & , . ! -"
    else:
        return
    yield mistake("L-name", wrong, heading.span(file), hint)


def section_name(text: str) -> str | None:
    """The section that a heading line opens, or None where the line is no heading."""
    said = text.lower().rstrip(":").strip()
    said = _OTHER_SPELLINGS.get(said, said)
    return said if said in SECTIONS else None


def _sections(
    body: list[TextLine], findings: list[Finding], file: str
) -> tuple[tuple[TextLine, ...], tuple[tuple[str, TextLine, tuple[TextLine, ...]], ...]]:
    head: list[TextLine] = []
    sections: list[tuple[str, TextLine, list[TextLine]]] = []
    current = head
    for line in body:
        name, rest = _heading_and_line(line)
        if rest:
            apart = (Correction(line.span(file), f"{name}\n  {rest.text}"),)
            title = quoting("The heading `{name}` stands alone on its line.", name=name or "")
            hint = "Write what follows it on a line of its own."
            findings.append(mistake("L-section", title, line.span(file), hint, corrections=apart))
        if name:
            current = [rest] if rest else []
            sections.append((name, line, current))
        elif line.indent == 0 and (meant := _meant_section(line.text)) is not None:
            known = quoting("The sections are {sections}.", sections=", ".join(SECTIONS))
            title = quoting("`{line}` is not a section of a game.", line=line.text)
            better = (Correction(line.span(file), meant),) if meant else ()
            findings.append(mistake("L-section", title, line.span(file), known, corrections=better))
            current = []
            sections.append((meant, line, current))
        else:
            current.append(line)
    return tuple(head), tuple((name, line, tuple(lines)) for name, line, lines in sections)


def _heading_and_line(line: TextLine) -> tuple[str | None, TextLine | None]:
    """The section that a line opens, and the sentence that stands wrongly on the same line."""
    name = section_name(line.text)
    first, _, rest = line.text.partition(" ")
    if name or line.indent or first.lower().rstrip(":") not in _ALONE or not rest.strip():
        return name, None
    said = rest.strip()
    return section_name(first), TextLine(line.number, len(line.text) - len(said), said)


def _meant_section(text: str) -> str | None:
    """The section that a heading was meant to be, "" for one that cannot be guessed, None for a sentence."""
    said = text.lower().rstrip(":").strip()
    if said in _OTHER_WORDS:
        return _OTHER_WORDS[said]
    if len(said.split()) > 1 or (not said.isalpha() and "-" not in said):
        return None
    return next(iter(nearest(said, SECTIONS, most=1)), "")
