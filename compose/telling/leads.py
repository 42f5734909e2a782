"""How much more one side has than another, and parts of all there are: "at least 3 more lanterns standing than"."""

from __future__ import annotations

from compose.telling.nouns import Noun
from compose.telling.voice import Voice
from grammar.core.guards import Ahead, PartOfAll, Relation
from grammar.core.values import Owner

PARTS = {
    ("half", Relation.AT_LEAST, True): (
        "{side} has more than half of its {things}", "{side} have more than half of their {things}"
    ),
    ("half", Relation.AT_LEAST, False): (
        "{side} has at least half of its {things}", "{side} have at least half of their {things}"
    ),
    ("half", Relation.AT_MOST, False): (
        "{side} has at most half of its {things}", "{side} have at most half of their {things}"
    ),
    ("half", Relation.AT_MOST, True): (
        "{side} has fewer than half of its {things}", "{side} have fewer than half of their {things}"
    ),
    ("but", Relation.EQUAL, False): (
        "{side} has all but {number} of its {things}", "{side} have all but {number} of their {things}"
    ),
    ("but", Relation.AT_LEAST, False): (
        "{side} has at least all but {number} of its {things}",
        "{side} have at least all but {number} of their {things}",
    ),
}  # fmt: skip


def part_of_all(
    voice: Voice, owners: frozenset[Owner], relation: Relation, part: PartOfAll, things: tuple[Noun, str]
) -> str:
    """ "The other side has more than half of its lanterns down"."""
    patterns = PARTS["half" if part.halved else "but", relation, part.beyond]
    number = voice.wording.figure(part.less)
    return voice.does(owners, *patterns, things=_several(things), number=number)


def lead(voice: Voice, guard: Ahead, owners: frozenset[Owner], than: frozenset[Owner], things: tuple[Noun, str]) -> str:
    """ "It has at least 3 more points than the other side"."""
    if guard.times > 1:
        patterns = (
            "{side} has {times} times as many {things} as {other}",
            "{side} have {times} times as many {things} as {other}",
        )
    elif guard.by == 1:
        patterns = ("{side} has more {things} than {other}", "{side} have more {things} than {other}")
    else:
        patterns = (
            "{side} has at least {by} more {things} than {other}",
            "{side} have at least {by} more {things} than {other}",
        )
    by, times = (voice.wording.figure(each) for each in (guard.by, guard.times))
    near = voice.near is not None and than == {voice.near}
    other = voice.it() if near else voice.sides(than)
    return voice.does(owners, *patterns, things=_several(things), other=other, by=by, times=times)


def _several(things: tuple[Noun, str]) -> str:
    noun, state = things
    return f"{noun.many} {state}".rstrip()
