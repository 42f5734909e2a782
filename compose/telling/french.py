"""What French does to words that stand beside each other: articles, contractions, elision.

A name that neither the catalogue nor the library's word list knows is taken as it is written, and as masculine,
as loan words mostly are in French. No h is elided: none of the words that are listed begins with a mute one.
"""

from __future__ import annotations

import re

from compose.telling.wording import GENDER, GROUP, MANY, NUMBER, Wording
from grammar.words import called_by_players, player_of

_VOWEL = r"(?=[aeiouyàâéèêëîïôûœAEIOUÀÂÉÈÊËÎÏÔÛŒ])"
_JOINED = (
    (re.compile(r"\b([Dd])e les\b"), r"\1es"),
    (re.compile(r"\bà les\b"), "aux"),
    (re.compile(rf"\b([LlDdNnSs])[ea] {_VOWEL}"), r"\1’"),
    (re.compile(r"\b([Dd])e le\b"), r"\1u"),
    (re.compile(r"\bà le\b"), "au"),
    (re.compile(rf"\b([Qq])ue {_VOWEL}"), r"\1u’"),
    (re.compile(rf"\bce {_VOWEL}"), "cet "),
)
# "Sa" before a vowel is "son", where "se" is elided: so it is changed before the elision sees it.
_HIS = re.compile(rf"\b([Ss])a {_VOWEL}")
# A space that does not break stands before these marks (common practice of French typesetting).
_MARKS = re.compile(r"[ \u00a0]?([;:!?])(?=\s|$)")


def joined(text: str) -> str:
    """The text with its words contracted: "de le lanceur" gives "du lanceur", "le autre" gives "l’autre"."""
    return _MARKS.sub("\u00a0\\1", contracted(text))


def contracted(text: str) -> str:
    """The same where the marks stand as they shall: in a text that holds lines of a sheet."""
    text = _HIS.sub(r"\1on ", text)
    for pattern, instead in _JOINED:
        text = pattern.sub(instead, text)
    return text


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
    """A noun in the right number and whether it is feminine; `as_written` where nobody knows its French."""
    known = wording.several.get(one)
    text = (known[1] if several else known[0]) if known else as_written
    return text, feminine(wording, one)


def feminine(wording: Wording, one: str) -> bool:
    """Whether a noun is feminine, by its English singular."""
    return wording.known(GENDER, one) == "f"


def definite(wording: Wording, written: str) -> str:
    """A name with "the", in the number in which it is written: "the lanterns", "the back line"."""
    known = wording.known(NUMBER, written)
    several = known == MANY if written in wording.several else called_by_players(written)
    return joined(f"{article('the', feminine(wording, written), several)} {wording.named(written)}")


def one_of_a_kind(wording: Wording, one: str) -> str:
    """ "une quille": a thing by its English singular, with its article."""
    text, female = noun(wording, one, False, one)
    return f"{article('a', female, False)} {text}"


def side_noun(wording: Wording, side: str, several: bool) -> tuple[str, bool]:
    """A player of a side that is called by its players, "heron", "herons", and whether the noun is feminine."""
    return noun(wording, player_of(side), several, side if several else player_of(side))


def side_label(wording: Wording, side: str) -> str:
    """A side by its bare name, as it stands on a plan: "herons", "north"."""
    return side_noun(wording, side, True)[0] if called_by_players(side) else wording.named(side)


def side_name(wording: Wording, side: str) -> str:
    """A side in a sentence: "les hérons", "le Nord"; a name that nobody knows has no article."""
    if called_by_players(side):
        return f"les {side_noun(wording, side, True)[0]}"
    return definite(wording, side) if wording.knows(side) else wording.known(GROUP, side) or side


def side_players(wording: Wording, side: str, number: int) -> str:
    """ "11 hérons", "10 joueurs du Nord"."""
    if called_by_players(side):
        return f"{wording.figure(number)} {side_noun(wording, side, number >= 2)[0]}"
    players = wording.counted(number, "player", "players")
    return joined(f"{players} de {side_name(wording, side)}")
