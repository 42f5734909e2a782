"""Everything that is wrong with a file in one pass: slips of words and mistakes of meaning together.

A line with a slip takes part as it was probably meant, so that one mistake does not hide another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

import attrs

from grammar.finding import Finding, retold
from grammar.lines import decoded
from grammar.mistakes.first_ones import advised
from grammar.mistakes.mistakes import OF_SECTIONS
from grammar.mistakes.offered import MOVE_IT
from grammar.parse import Reading, read
from grammar.resolve import resolve
from grammar.resolve.known import unknown_name
from grammar.resolve.names import ANOTHER_NAME
from grammar.said import said

_OF_SEVERAL = {
    "This sentence does not belong under `{section}`.": "These {number} sentences do not belong under `{section}`.",
    OF_SECTIONS: "They are sentences of {places}.",
    MOVE_IT: "Move them to {places}.",
    "Move it to {places} and write: {line}": "Move them to {places} and write: {line}",
}
OtherMeaning = Callable[[Reading], Iterable[Finding]]


def proofread(
    data: bytes, file: str, catalogue: Mapping[str, str], other_meaning: OtherMeaning | None = None
) -> tuple[Finding, ...]:
    """All findings of a file in the order of the text, with advice; `catalogue` as for `resolve`.

    `other_meaning` says what is wrong with the sheets that are no games.
    """
    text, findings = decoded(data, file)
    if findings:
        return findings

    def judge(text: str) -> Sequence[Finding]:
        return mistakes(read(text, file), catalogue, other_meaning)

    def soon(text: str) -> Sequence[Finding]:
        return mistakes(read(text, file), catalogue, other_meaning, weighed=False)

    return tuple(_told_once(advised(text, judge, soon, catalogue)))


def mistakes(
    reading: Reading, catalogue: Mapping[str, str], other_meaning: OtherMeaning | None = None, weighed: bool = True
) -> tuple[Finding, ...]:
    """All that is wrong with what was read, in the order of the text, without advice; `weighed` as for `resolve`."""
    found = list(reading.findings)
    # of a line that is no sentence nobody knows which name stands in a wrong place
    unread = {each.place.line for each in found if each.code == "L-sentence"}
    for sheet in reading.rules.games:
        of_sheet = resolve(sheet, catalogue, reading.unread.get(sheet.span, ()), weighed).findings
        found.extend(each for each in of_sheet if each.place.line not in unread or each.hint != ANOTHER_NAME)
    found.extend(other_meaning(reading) if other_meaning else ())
    return tuple(sorted(found, key=lambda finding: (finding.place.line, finding.place.column)))


def _told_once(findings: Sequence[Finding]) -> Iterator[Finding]:
    """The findings; lines that belong under the same heading, or hold the same unknown name, are told together."""
    alike: dict[object, list[Finding]] = {}
    for finding in findings:
        alike.setdefault(_cause(finding), []).append(finding)
    for first, *more in alike.values():
        others = (*first.others, *(place for each in more for place in (each.place, *each.others)))
        told = attrs.evolve(first, others=tuple(each for each in dict.fromkeys(others) if each != first.place))
        yield _of_several(told, 1 + len(more)) if more and first.code == "L-wrong-section" else told


def _of_several(finding: Finding, number: int) -> Finding:
    assert finding.said is not None, "what stands under a wrong heading is told in values"
    title, hint = finding.said
    many = said(_OF_SEVERAL[title.pattern], **dict(title.fields), number=number)
    return retold(finding, many, said(_OF_SEVERAL[hint.pattern], **dict(hint.fields)))


def _cause(finding: Finding) -> object:
    """What is the same for findings that are one: an advice for one line is told by itself."""
    if finding.code == "L-wrong-section":
        return finding.title, finding.hint
    name = unknown_name(finding)
    return name.removesuffix("s") if name and not finding.corrections else (finding.place, finding.title)
