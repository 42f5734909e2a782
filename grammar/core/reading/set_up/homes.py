"""Where each population stays: by a line of the sheet, from where it starts to throw, or as it is taken for granted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from grammar.core.declared import ALL
from grammar.core.play import Home, Offer
from grammar.core.reading.sheet.sheet_pass import Reading
from grammar.core.skills import WITH_A_BALL
from grammar.core.values import AreaId, Part, Population, Spot


def homes_of(reading: Reading) -> tuple[Home, ...]:
    """The homes that the sheet gives; of whom it says nothing, those taken for granted. The line about the fewest
    players wins, however many places it gives them: a role before all players."""
    homes = (*reading.of(Home), *_of_throwers(reading))
    about = Counter(line for line, _ in {(line, home.who) for home in homes for line in home.lines})
    least: dict[Population, tuple[bool, int]] = {}
    for home in homes:
        rank = _rank(reading, home, about)
        least[home.who] = min(least.get(home.who, rank), rank)
    return tuple(home for home in homes if _rank(reading, home, about) == least[home.who])


def _rank(reading: Reading, home: Home, about: Mapping[int, int]) -> tuple[bool, int]:
    return all(reading.lines[line].granted for line in home.lines), min(about[line] for line in home.lines)


def _of_throwers(reading: Reading) -> Iterator[Home]:
    """Of those of whom no line says where they stay: they stay where all of them start, if only they enter there and
    all that they try is to send balls."""
    said = {home.who for home in reading.of(Home) if not _rank(reading, home, Counter(home.lines))[0]}
    only = {(area.id, area.owner): area.only for area in reading.reader.areas}
    for post in reading.reader.posts:
        who, at = post.what, post.at
        if not isinstance(who, Population) or not isinstance(at, Spot) or at.part is not Part.AT or who in said:
            continue
        tried = {each.skill for offer in reading.of(Offer) if offer.by == who for each in offer.attempts}
        alone = only.get((at.of, at.owner)) if isinstance(at.of, AreaId) else None
        if post.count is ALL and alone is not None and who in alone and tried and tried <= frozenset(WITH_A_BALL):
            yield Home(who, at, post.lines)
