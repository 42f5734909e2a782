"""Words such as "at", "of" and "to": one wrong letter leaves half of them, so likeness does not tell a slip of one."""

from __future__ import annotations

from grammar.words import NUMBERS

SMALL_WORDS = frozenset(("at", "on", "in", "to", "of", "by", "with", "from", "for", "and", ",", "or"))
_SHORT = 3
ONE_LETTER = 0.75  # how like such a slip is held to be: our choice


def likeness_of_slip(said: str, word: str) -> float:
    """How like a small word is what was written for it, from 0 to 1; 0 where that is no slip of one letter."""
    if word not in SMALL_WORDS or said in SMALL_WORDS or said in NUMBERS or not said.isalpha():
        return 0.0
    if not 1 < len(word) <= _SHORT or not 1 < len(said) <= _SHORT + 1:
        return 0.0
    if len(said) == len(word):
        differ = sum(one != other for one, other in zip(said, word, strict=True))
        turned = differ == 2 and sorted(said) == sorted(word)
        return ONE_LETTER if turned or differ == 1 else 0.0
    shorter, longer = sorted((said, word), key=len)
    return ONE_LETTER if any(longer[:at] + longer[at + 1 :] == shorter for at in range(len(longer))) else 0.0


def small_words_for(said: str) -> list[str]:
    """The small words of which that may be a slip, one as likely as another: by letters alone nobody can tell."""
    return sorted(word for word in SMALL_WORDS if likeness_of_slip(said, word))
