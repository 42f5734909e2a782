"""Single words that mean what a word of the language means, and signs that mean nothing."""

from __future__ import annotations

import re
from collections.abc import Sequence

from grammar.heard.saying import Sayings, saying, shielded
from grammar.words import NUMBERS

_CONTRACTIONS = {
    "aren't": "are not", "can't": "can not", "cannot": "can not", "didn't": "did not", "doesn't": "does not",
    "don't": "do not",
    "hasn't": "has not", "haven't": "have not", "isn't": "is not", "mayn't": "may not", "mustn't": "must not",
    "shouldn't": "should not", "won't": "will not", "it's": "it is", "that's": "that is", "there's": "there is",
    "they're": "they are", "they've": "they have", "we've": "we have", "who's": "who is", "what's": "what is",
    "everyone's": "everyone is", "everybody's": "everybody is", "whoever's": "whoever is", "nobody's": "nobody is",
}  # fmt: skip


def _number(match: re.Match[str]) -> str:
    return str(NUMBERS[match.group().lower()])


def _contraction(match: re.Match[str]) -> str:
    return _CONTRACTIONS[match.group().lower().replace("’", "'")]


_OPPOSING = r"(?:opposing|opposite|opponents?'?|opponent's|enemy)"

WORDS = Sayings((
    # signs
    saying(r"^\s*[-*•·]\s+", ""),
    saying(r"\s*[.;!]+$", ""),
    saying(r"(?<=\w)’(?=\w)", "'"),
    saying(r"\b(?:" + "|".join(re.escape(each).replace("'", "['’]") for each in _CONTRACTIONS) + r")\b", _contraction),
    # numbers and units
    saying(r"(?<!\()(?<!-)(?<!no )\b(?:" + "|".join(NUMBERS) + r")\b(?!-|')", _number),
    saying(r"\b(?:half a minute)\b", "30 s"),
    saying(r"\ba minute and a half\b", "90 s"),
    saying(r"(?<=\d)\s*[- ]?(?:minutes|minute|mins)\b", " min"),
    saying(r"(?<=\d)\s*[- ]?(?:seconds|second|secs|sec)\b", " s"),
    saying(r"(?<=\d)\s*[- ]?(?:metres|metre|meters|meter)\b", " m"),
    saying(r"(?<=\d)\s*[- ]?(?:centimetres|centimetre|centimeters|centimeter)\b", " cm"),
    saying(r"(?<=\d)\s*(?:per cent|percent)\b", " %"),
    saying(r"(?<=\d)\s*(?:–|—|-)\s*(?=\d)", " to "),
    saying(r"(?<=[\dm])\s*[x×]\s*(?=\d)", " by "),
    # places
    saying(r"\b(?:base|end)[- ]?line(s?)\b", r"back line\1"),
    # people
    saying(r"\bteam[- ]?mates?\b", "team-mate"),
    saying(r"\bteam(?!-)", "side"),
    saying(r"(?<!odd )\b(?:child|pupil|kid)\b", "player"),
    saying(r"\b(?:children|pupils|kids)\b", "players"),
    # whose
    saying(rf"\b(?:the |an? |their )?{_OPPOSING} side's\b", "the other side's"),
    saying(rf"\b(?:the |an? |their )?{_OPPOSING} side\b", "the other side"),
    saying(r"\beither side\b", "any side"),
    saying(r"\b(?:another|any other|some other) side(?='s\b|$| to )", "the other side"),
    saying(r"\b(?:the )?(?:2 |both )sides' ", "each side's "),
    saying(r"\bof (?:the 2|both|all(?: the)?) sides\b", "of each side"),
    saying(r"\b(?:the 2|both) sides have\b", "each side has"),
    saying(r"(?<!by )\b(their|its) own\b|(?<=by )(their|its) own\b(?! side)", lambda m: m[1] or m[2]),
    saying(r"\b(?:his|her|his or her|his/her|your)(?: own)? (?=\w)", "their "),
    # how a rule is put
    saying(r",? (?:straight away|right away|immediately)\b", ""),
    saying(r"(?<=\w),? (?:too|as well)(?=$| and )", ""),
    saying(r"\b(may|can) also(?= \w)", r"\1"),
    saying(r"\bhas (?:already )?won\b", "wins"),
    saying(r"\bhas lost\b", "loses"),
    saying(r"\b(?:as soon as|whenever)\b", "when"),
))  # fmt: skip


def in_words_of_the_language(section: str, line: str, names: Sequence[str]) -> str:
    """The line with single words said as the language says them."""
    if not WORDS.search(line):
        return line
    kept = shielded(line, names)
    return kept.opened(WORDS.applied(section, kept.text))
