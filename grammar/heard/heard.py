"""What a teacher says otherwise than the language does, where both mean the same: such a line is read, not refused.

First single words (team, children, metres, three), then, where that is no sentence yet, whole turns of phrase, then
lists that are several sentences in one line. `tidy` writes what was heard in the language's own wording. Only what
keeps the meaning may stand here; what only probably means the same is advice (grammar/mistakes/wordings.py).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache

from grammar.heard.lists import apart
from grammar.heard.saying import shielded
from grammar.heard.turns import TURNS
from grammar.heard.waiting_place import placed
from grammar.heard.words import WORDS

_A_TEXT = re.compile(r"(?:about|cue|credit|caution|outcomes)\b", re.IGNORECASE)
IsSentence = Callable[[str], bool]


def heard(section: str, line: str, names: Sequence[str], is_sentence: IsSentence) -> tuple[str, ...]:
    """The sentences that a line says which is none as it stands; nothing where it cannot be told."""
    kept = shielded(line, names)
    a_text = section == "care" or (section == "head" and _A_TEXT.match(line))  # in which no word is said otherwise
    words = kept.text if a_text else WORDS.applied(section, kept.text)
    for text in _turned(section, words):
        said = placed(kept.opened(text), names)
        if is_sentence(said):
            return (said,)
        for parts in apart(section, text):
            sentences = tuple(placed(kept.opened(part), names) for part in parts)
            if all(is_sentence(each) for each in sentences):
                return sentences
    return ()


def otherwise(section: str, line: str, names: Sequence[str]) -> Iterator[str]:
    """The line in other turns of phrase, whether that makes a sentence of it or not."""
    kept = shielded(line, names)
    yield from (kept.opened(text) for text in _turned(section, kept.text))


@lru_cache(maxsize=1_024)
def _turned(section: str, text: str) -> tuple[str, ...]:
    """The text with all turns of phrase one after the other, then with each of those alone that apply."""
    whole = text
    for turn in TURNS:
        whole = turn.applied(section, whole)
    if whole == text:
        return (text,)
    alone = dict.fromkeys(turn.applied(section, text) for turn in TURNS)
    return (text, whole, *(each for each in alone if each not in (text, whole)))
