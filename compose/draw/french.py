"""What French does to words that stand beside each other: articles, contractions, elision.

Names that authors wrote are taken as they are. A name that the catalogue does not know is masculine, as
loan words mostly are in French.
"""

from __future__ import annotations

import re

from compose.draw.wording import Wording

_VOWEL = r"(?=[aeiouyàâéèêëîïôûAEIOUÀÂÉÈÊ])"
_JOINED = (
    (re.compile(r"\b([Dd])e les\b"), r"\1es"),
    (re.compile(r"\bà les\b"), "aux"),
    (re.compile(rf"\b([LlDd])[ea] {_VOWEL}"), r"\1’"),
    (re.compile(r"\b([Dd])e le\b"), r"\1u"),
    (re.compile(r"\bà le\b"), "au"),
    (re.compile(rf"\b([Qq])ue {_VOWEL}"), r"\1u’"),
    (re.compile(rf"\b([Nn])e {_VOWEL}"), r"\1’"),
    (re.compile(rf"\bce {_VOWEL}"), "cet "),
    (re.compile(rf"\b(?:sa|sa) {_VOWEL}"), "son "),
)
# A narrow space that does not break stands before these marks (common practice of French typesetting).
_MARKS = re.compile(r" ?([;:!?])(?=\s|$)")


def joined(text: str) -> str:
    """The text with its words contracted: "de le lanceur" gives "du lanceur", "le autre" gives "l’autre"."""
    for pattern, instead in _JOINED:
        text = pattern.sub(instead, text)
    return _MARKS.sub("\u00a0\\1", text)


def article(determiner: str | None, feminine: bool, several: bool) -> str:
    """The French determiner for one of the language; none at all is as good as "the"."""
    match determiner:
        case "a" | "an" | "any":
            return "des" if several else "une" if feminine else "un"
        case "each" | "every":
            return "chaque"
        case "all":
            return "toutes les" if feminine else "tous les"
        case "that":
            return "ces" if several else "cette" if feminine else "ce"
        case "its":
            return "ses" if several else "sa" if feminine else "son"
        case "their":
            return "leurs" if several else "leur"
    return "les" if several else "la" if feminine else "le"


def noun(wording: Wording, one: str, several: bool, as_written: str) -> tuple[str, bool]:
    """A noun in the right number and whether it is feminine; `as_written` where the catalogue does not know it."""
    known = wording.several.get(one)
    text = (known[1] if several else known[0]) if known else as_written
    return text, wording.known("gender", one) == "f"
