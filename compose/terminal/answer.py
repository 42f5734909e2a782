"""How a command ends: what it prints, in words or as JSON, and its exit code."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Mapping, Sequence
from contextvars import ContextVar
from functools import cache
from pathlib import Path
from typing import Any, NoReturn

import typer

import library
from compose.telling.wording import ENGLISH, Wording
from grammar.finding import Finding, Severity, Step
from grammar.mistakes.shown import framed, headed, label_of
from grammar.span import Span

FINE, TO_MEND, WRONG = 0, 1, 2
WIDTH = 78  # signs of a printed line: it fits a terminal of 80 columns
JSON_VERSION = 1  # of all answers as JSON: raised when a field goes or means something else, not when one comes
# All control signs but the line end, and the marks that set a direction of writing (Unicode Standard 15.0, 23.2).
_UNSEEN = (
    *(*range(0x0A), *range(0x0B, 0x20), *range(0x7F, 0xA0), 0x061C, 0x200E, 0x200F),
    *(*range(0x2028, 0x202F), *range(0x2066, 0x206A)),
)


_SPOKEN = ContextVar[Wording]("_SPOKEN", default=ENGLISH)


def speak(wording: Wording) -> None:
    """Tell in this language from now on, within this call, what ends a command before it has an answer."""
    _SPOKEN.set(wording)


def exit_code(findings: Iterable[Finding]) -> int:
    """0 fine, 1 something the teacher should mend, or that is not proved, 2 wrong use or bad input."""
    severities = {finding.severity for finding in findings}
    if Severity.ERROR in severities:
        return WRONG
    return TO_MEND if Severity.WARNING in severities else FINE


@cache
def file_lines(file: str) -> tuple[str, ...]:
    """The lines of a file as it is shown; none where it cannot be read."""
    path = Path(file)
    if path.parts[:1] == ("library",) and not path.exists():
        path = library.granted_path().parents[1] / path
    try:
        return tuple(path.read_text(encoding="utf-8-sig", errors="replace").expandtabs(4).splitlines())
    except OSError:
        return ()


def source_line(file: str, line: int) -> str | None:
    """A line of a file for its frame; None where the file cannot be read any more."""
    lines = file_lines(file)
    return lines[line - 1] if 0 < line <= len(lines) else None


def say(text: str = "") -> None:
    """Print to the reader."""
    typer.echo(_printable(text))


def say_to_error(text: str) -> None:
    """Print beside the answer."""
    typer.echo(_printable(text, to_error=True), err=True)


def _printable(text: str, to_error: bool = False) -> str:
    """The text with a sign in the place of each letter that the terminal's encoding does not have, or that would move
    the cursor or turn the writing round: names of files and words of the call are whatever somebody chose."""
    encoding = (sys.stderr if to_error else sys.stdout).encoding or "utf-8"
    plain = text.expandtabs(4).translate(dict.fromkeys(_UNSEEN, "\N{REPLACEMENT CHARACTER}"))
    return plain.encode(encoding, "replace").decode(encoding, "replace")


def say_findings(
    findings: Sequence[Finding], to_error: bool = False, wording: Wording = ENGLISH, notes_framed: bool = True
) -> None:
    """All findings in frames, in the order given; of what there is only to know without `notes_framed` the heads."""
    for finding in findings:
        told, say = _told(finding, wording), wording.say
        short = not notes_framed and finding.severity is Severity.NOTE
        for line in headed(told, say=say) if short else framed(told, source_line, say=say):
            typer.echo(_shown(_printable(line, to_error), finding, wording), err=to_error)
        typer.echo("", err=to_error)


def _told(finding: Finding, wording: Wording) -> Finding:
    """The finding in a language; what knows others than English is loaded for them alone."""
    if wording.english:
        return finding
    from compose.telling.findings import finding_said

    return finding_said(finding, wording)


def _shown(line: str, finding: Finding, wording: Wording) -> str:
    if line.startswith(wording.say(label_of(finding))):
        colour = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "blue"}[finding.severity]
        return typer.style(line, bold=True, fg=colour)
    return line


def stop(findings: Sequence[Finding], as_json: bool) -> NoReturn:
    """End with findings that let nothing else be done, in the language of the call."""
    wording = _SPOKEN.get()
    if as_json:
        say_json({"findings": [finding_json(finding) for finding in findings]})
    else:
        say_findings(findings, to_error=True, wording=wording)
        number = sum(finding.severity is Severity.ERROR for finding in findings)
        pattern = "{number} mistake; nothing was done." if number == 1 else "{number} mistakes; nothing was done."
        say_to_error(wording.say(pattern, number=number or "No"))
    raise typer.Exit(exit_code(findings))


def refuse(title: str, hint: str = "", as_json: bool = False) -> NoReturn:
    """End because of wrong use."""
    stop((Finding("U-use", Severity.ERROR, title, Span("the command line", 0, 0, 0), hint),), as_json)


def say_json(value: Mapping[str, Any]) -> None:
    """Print one JSON object; answers.schema.json says what its fields mean."""
    import json

    text = json.dumps({"version": JSON_VERSION, **value}, ensure_ascii=False, indent=2)
    say(text.translate({sign: f"\\u{sign:04x}" for sign in _UNSEEN}))


def finding_json(finding: Finding) -> dict[str, Any]:
    """A finding as JSON."""
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "basis": finding.basis.value,
        "title": finding.title,
        "hint": finding.hint,
        "place": span_json(finding.place),
        "others": [span_json(place) for place in finding.others],
        "witness": [step_json(step) for step in finding.witness],
        "loop": [step_json(step) for step in finding.loop],
        "numbers": dict(finding.numbers),
    }


def span_json(place: Span) -> dict[str, Any]:
    """A place as JSON; lines and columns from 1, 0 for a thing without text."""
    return {"file": place.file, "line": place.line, "column": place.column, "end": place.end}


def step_json(step: Step) -> dict[str, str]:
    """A step of a witness as JSON."""
    return {"move": step.words, "after": step.after}
