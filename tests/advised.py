"""Every advice that findings give, taken: the sheet with the advised line in its place, and whether that helps."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from attrs import frozen

from grammar.finding import Finding
from grammar.layout import section_name

Judge = Callable[[str], tuple[Finding, ...]]
_WRITE = re.compile(r"(?:^Write|or write): (.+)$")
_ONE_OF = re.compile(r"^Write one of these: `(.+)`\.$")
_APART = re.compile(r"^Write `([\w-]+)` on a line of its own, and below it: (.+)$")
_MOVE = re.compile(r"^Move (?:it|them) to (`[\w-]+`(?:(?:, | or )`[\w-]+`)*)(?: and write: (.+)|\.)$")


@frozen
class Advice:
    """A finding with a line that it advises, the text as it was, and the text in which that line stands."""

    finding: Finding
    line: str
    was: str
    text: str


def advices(text: str, findings: Sequence[Finding]) -> Iterator[Advice]:
    """Each advice of each finding, taken by itself."""
    for finding in findings:
        moved = _MOVE.match(finding.hint)
        for line in written(finding.hint):
            yield Advice(finding, line, text, with_line(text, finding.place.line, line))
        for section in re.findall(r"`([\w-]+)`", moved.group(1)) if moved else ():
            numbers = [place.line for place in (finding.place, *finding.others)]
            assert moved
            yield Advice(finding, f"under {section}", text, with_moved(text, numbers, section, moved.group(2)))


def written(hint: str) -> list[str]:
    """The lines that a hint says to write; a heading and the line below it are one, with a line break."""
    one, several, apart = _WRITE.search(hint), _ONE_OF.match(hint), _APART.match(hint)
    if apart:
        return ["\n  ".join(apart.groups())]
    return re.split(r"`, `|` or `", several.group(1)) if several else [one.group(1)] if one else []


def with_line(text: str, number: int, line: str) -> str:
    """The text with a line written as advised; it stands as far in as before."""
    lines = re.split(r"\r\n|\r|\n", text)
    before = lines[number - 1]
    lines[number - 1] = before[: len(before) - len(before.lstrip())] + line
    return "\n".join(lines)


def with_moved(text: str, numbers: Sequence[int], section: str, line: str | None) -> str:
    """The text with lines moved to the end of a section, which is put in where there is none."""
    lines = re.split(r"\r\n|\r|\n", text)
    moved = ["  " + (line or lines[number - 1].strip()) for number in numbers]
    kept = [each for number, each in enumerate(lines, start=1) if number not in numbers]
    heads = [at for at, each in enumerate(kept) if each[:1].strip() and section_name(each)]
    mine = [at for at in heads if section_name(kept[at]) == section]
    if not mine:
        return "\n".join([*kept, section, *moved])
    end = next((at for at in heads if at > mine[-1]), len(kept))
    return "\n".join([*kept[:end], *moved, *kept[end:]])


def helps(advice: Advice, before: Sequence[Finding], judge: Judge) -> bool:
    """Whether the sheet has fewer mistakes then, and none that it did not have.

    A mistake is the same where it is told in the same words, or of the same line: what is said of it may hang on
    what can be offered.
    """
    after = judge(advice.text)
    told = {(finding.code, finding.title) for finding in before}
    lines = {(finding.code, _line(advice.was, finding)) for finding in before}
    new = [each for each in after if (each.code, each.title) not in told]
    return len(after) < len(before) and all((each.code, _line(advice.text, each)) in lines for each in new)


def _line(text: str, finding: Finding) -> str:
    lines = re.split(r"\r\n|\r|\n", text)
    return lines[finding.place.line - 1].strip() if 0 < finding.place.line <= len(lines) else ""
