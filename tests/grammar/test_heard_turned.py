"""What turns the meaning of a line round is never dropped on hearing: "may" for "may not", "nobody" for "players"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tests.grammar.test_heard import LINES, READER, TextLine

TURNS = (
    (r"\b(may|can|must)(?! not)\b", r"\1 not"),
    (r"\b(may|can|must) not\b", r"\1"),
    (r"\bnobody\b|\bno[- ]one\b", "everybody"),
    (r"^(?:players|children|everybody|everyone|pupils)\b", "nobody"),
    (r"\bnot \b", ""),
    (r"\bis\b", "is not"),
    (r"\bhas\b", "does not have"),
    (r"\bno\b", "all"),
    (r"\ball\b", "no"),
    (r"\bat most\b|\bup to\b", "at least"),
    (r"\bat least\b", "at most"),
    (r"\blonger than\b", "shorter than"),
    (r"\bwith\b", "without"),
    (r"\bwithout\b", "with"),
    (r"\b(?:after|until)\b", "before"),
    (r"\band\b", "or"),
    (r"\bor\b", "and"),
    (r"\b(?:if|when)\b", "unless"),
)
# Where "and" and "or" mean the same: who blocks with either does so with both, each is aimed at with each ball.
BLOCKING = " block shots "
ALIKE = frozenset((
    "children roll a ball at the lanterns, the cones and the bottles of the other side",
    "players throw a foam ball into the bottles, the cones and the ring",
    "players roll a foam ball at the cones, stones or bottles",
    "players throw a foam ball and a bottle at the cones",
    "whoever is tagged freezes on the spot with legs apart or arms up",
))  # fmt: skip


def turned(said: str) -> Iterator[str]:
    for old, new in TURNS:
        for match in re.finditer(old, said, re.IGNORECASE):
            yield said[: match.start()] + match.expand(new) + said[match.end() :]


def test_a_line_turned_round_is_heard_otherwise_or_not_at_all() -> None:
    unheard = []
    for section, said, meant in LINES:
        for other in turned(said):
            sentences, _ = READER.sentences(section, TextLine(1, 0, other), {})
            alike = other in ALIKE or BLOCKING in other
            if not alike and [each.words() for each in sentences] == meant.split(" + "):
                unheard.append((said, other))
    assert unheard == []
