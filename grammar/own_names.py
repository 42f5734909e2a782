"""Names that hold words of the language: "step stone", "no man", a side called "run".

A sheet makes such a name its own where it declares it; a name in quotes is one wherever it stands. In a line that has
one, its words are read as the language's or as the name's, whichever makes a sentence of the line. To be parsed, the
name is masked: one letter that nobody writes, with its number, stands for it.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import combinations

from lark import UnexpectedCharacters

from grammar.frozen import frozen
from grammar.language import reserved_phrases, tokens
from grammar.layout import Part
from grammar.words import NUMBER, NUMBERS, plural, singulars, small

MASK = "ǂ"
_MASKED = re.compile(rf"{MASK}(\d+)")
_OF_NAMES = frozenset(("WORD", "COURT", "SIDE_LINE", "PARTS", "THING", "SIZE"))
_ARTICLES = frozenset(("a", "an", "the", "their", "its", "each", "every", "all", "any", "that"))
_OF_SENTENCES = _ARTICLES | frozenset(
    ("of", "for", "to", "from", "and", "or", "with", "is", "are", "has", "have", "in", "on", "at", "by", "per", "vs",
     "against", "versus")
)  # fmt: skip
NO_NAMES_OF_SIDES = ("sides", "teams", "groups")  # "two teams" says how many there are, not what they are called
_DECLARED = {
    "head": re.compile(r"switch\s+(.+?)\s*,", re.IGNORECASE),
    "space": re.compile(r"([^:]+?)\s*:"),
    "sides": re.compile(rf"(?:role\s+)?([^:]+?)\s*(?::|,\s*(?:{NUMBER}))", re.IGNORECASE),
    "kit": re.compile(
        r'(?:\w+)\s+((?:"[^"]*"|.)+?)\s*(?:\(\s*one\s+([^)]+?)\s*\).*|,.*|\bfor\s.*)?$', re.IGNORECASE
    ),
}
_SAID_OTHERWISE = re.compile(
    rf"\b(?:per|against|versus|vs|v)\b|\beach (?:team|side)\b(?! begins)|\ba (?:team|side)\b|^(?:{NUMBER})\b(?!.*,.*:)"
    rf".*\b(?:and|,)\s+(?:{NUMBER})\b", re.IGNORECASE
)  # fmt: skip
_TWO_SIDES = re.compile(rf"[a-z]+ and [a-z]+, (?:{NUMBER})\b[^:]*\bplayers?\b", re.IGNORECASE)  # home and away
_A_PLACE = re.compile(rf"\b(?:bench|queue|corner)|^(?:{NUMBER})\b", re.IGNORECASE)
_SO_MANY_SIDES = re.compile(rf"^.*\b(?:{NUMBER}) (?:sides|teams|groups)\b.*:", re.IGNORECASE)
_APART = re.compile(r"\s*,\s*|\s+and\s+", re.IGNORECASE)
_QUOTED = re.compile(r'"([^"]*)"')
_NAME = re.compile(r"[^\W\d_][\w-]*(?: [^\W_][\w-]*){0,4}")
_DIGIT = re.compile(r"\d")
MOST_PLACES = 4
_OF_ANY_BALL = ("ball", "balls")


@frozen
class Masked:
    """A line with names masked; `places` are their columns in it (from 1) with the letters that the line lost there."""

    text: str
    places: tuple[tuple[int, int], ...] = ()

    def column(self, column: int) -> int:
        """Where a column of the masked line stands in the line as written."""
        return column + sum(lost for at, lost in self.places if column > at)

    def shown(self, column: int) -> int:
        """Where a column of the line as written stands in the masked line."""
        for at, lost in self.places:
            column -= lost if column > at else 0
        return column


@lru_cache(maxsize=4096)
def is_plain(name: str) -> bool:
    """Whether a name can stand in any sentence as it is: it holds no word of the language."""
    try:
        return all(token.type in _OF_NAMES for token in tokens(name))
    except UnexpectedCharacters:
        return False


@lru_cache(maxsize=4096)
def _begins_a_phrase(name: str) -> bool:
    """Whether a plain name can be taken for the beginning of words of the language: the guards of "guards there"."""
    beginning = f"{name} "
    return any(phrase.startswith(beginning) for phrase in reserved_phrases())


@frozen
class DeclaredNames:
    """The names that a sheet declares, in all their forms, the longest first: all, and those that hold words of the
    language; the plain ones as they are declared; and those of sides and of tasks."""

    every: tuple[str, ...] = ()
    own: tuple[str, ...] = ()
    plain: tuple[str, ...] = ()
    people: tuple[str, ...] = ()

    @property
    def begun(self) -> tuple[str, ...]:
        """All forms of plain names that words of the language begin with: asked of a line that is no sentence as it is,
        since most sheets have none."""
        return _begun(self.plain)


    def in_full(self, text: str) -> str:
        """The text with each name in full of which only the last word is said, where no other name ends so."""
        heads = _heads(self.every)
        if not heads:
            return text
        return _named_in_short(self.every).sub(lambda match: heads.get(match.group().lower(), match.group()), text)


NO_NAMES = DeclaredNames()


@lru_cache
def _heads(names: tuple[str, ...]) -> Mapping[str, str]:
    """The last words of names of several, each with its name: of bottles, where there are plastic bottles alone."""
    ends = defaultdict[str, list[str]](list)
    for name in names:
        if " " in name:
            ends[name.rsplit(" ", 1)[1]].append(name)
    no_other = {head: called[0] for head, called in ends.items() if len(called) == 1}
    return {head: name for head, name in no_other.items() if head not in (*names, *_OF_ANY_BALL)}


@lru_cache
def _named_in_short(names: tuple[str, ...]) -> re.Pattern[str]:
    """The last words of names where they stand alone: in a whole name no word stands for another name."""
    whole = (name for name in names if " " in name)
    said = "|".join(rf"(?<![\w-]){re.escape(each)}(?![\w-])" for each in (*whole, *_heads(names)))
    return re.compile(said, re.IGNORECASE)


def declared_names(part: Part) -> DeclaredNames:
    """The names of a sheet, read from its lines before they are parsed. What stands before a colon is one for sure,
    but with a number in it, and what begins with its place in a row, such as "last cone"."""
    found, surely, people = dict[str, None](), set[str](), set[str]()
    for section, lines in (("head", part.head), *((name, lines) for name, _, lines in part.sections)):
        declaring = lines if section in _DECLARED else ()
        for declared in (each for line in declaring for each in _lines(section, line.text)):
            match = _DECLARED[section].match(declared)
            for said in match.groups() if match else ():
                names = tuple(_names_in(said or "", section))
                found |= dict.fromkeys(names)
                people.update(names if section == "sides" else ())
                by_colon = match is not None and match.group().endswith(":")
                of_two = section == "sides" and _TWO_SIDES.match(declared) is not None
                sure = of_two or by_colon
                surely.update(name for name in names if _is_counted(name) or (sure and not _DIGIT.search(name)))
    odd = [name for name in found if not is_plain(name)]
    text = [" ".join(small(line.text).split()) for _, _, lines in part.sections for line in lines] if odd else []
    own = [name for name in odd if name in surely or _used(name, text) or any(f'"{name}"' in line for line in text)]
    plain = tuple(name for name in found if name not in odd)
    known = (name for name in found if name not in odd or name in own)
    return DeclaredNames(_all_forms(known), _all_forms(own), plain, _all_forms(people))


def _lines(section: str, text: str) -> Iterator[str]:
    """A line as it stands, and as the language says it where it seems to be said otherwise."""
    yield text
    place = section == "space" and ":" not in text and _A_PLACE.search(text)
    people = section == "sides" and ("," not in text or _SO_MANY_SIDES.search(text))
    if place or people or (section in ("sides", "kit") and _SAID_OTHERWISE.search(text)):
        from grammar.heard.declared import as_declared  # loaded only where a sheet has such a line

        yield from as_declared(section, text)


def _is_counted(name: str) -> bool:
    first, *rest = name.split()
    return bool(rest) and (first in ("first", "last") or first in NUMBERS)


@lru_cache
def _begun(plain: tuple[str, ...]) -> tuple[str, ...]:
    return _all_forms(name for name in plain if any(map(_begins_a_phrase, _forms(name))))


def _all_forms(names: Iterable[str]) -> tuple[str, ...]:
    forms = (form for name in names for form in _forms(name))
    return tuple(sorted(dict.fromkeys(forms), key=lambda form: (-len(form), form)))


def _forms(name: str) -> tuple[str, ...]:
    return (name, plural(name), *singulars(name))


def _used(name: str, text: Sequence[str]) -> bool:
    """Whether more lines than the one that declares it hold a name: "stones per side" is none."""
    pattern = re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, _forms(name)))})(?!\w)")
    return sum(1 for line in text if pattern.search(line)) > 1


def _names_in(said: str, section: str) -> Iterator[str]:
    """The names of a declaration: in quotes, or with no small word of sentences in them."""
    quoted = [" ".join(small(each).split()) for each in _QUOTED.findall(said)]
    yield from (name for name in quoted if _NAME.fullmatch(name))
    plain = _QUOTED.sub("", small(said))
    for words in _APART.split(plain) if section == "sides" else [plain]:
        name = " ".join(words.split())
        barred = _ARTICLES if " " not in name else _OF_SENTENCES
        if _NAME.fullmatch(name) and not barred & set(name.split()) and not name.endswith(NO_NAMES_OF_SIDES):
            yield name


def holds(text: str, own: Sequence[str]) -> bool:
    """Whether a name of the sheet stands in a line."""
    return bool(own) and next(_places(text, own), None) is not None


def ways_to_mask(text: str, own: Sequence[str]) -> Iterator[tuple[Masked, tuple[str, ...]]]:
    """The line with its names masked, and what each mask stands for: what is in quotes always, other names of the
    sheet in every choice of their places, all of them first. Nothing where no name stands in it."""
    quoted = [(match.start(), match.end(), match.group(1)) for match in _QUOTED.finditer(text)
              if _NAME.fullmatch(" ".join(match.group(1).split()))]  # fmt: skip
    places = list(_places(text, own))[:MOST_PLACES]
    for number in range(len(places), -1, -1):
        for chosen in combinations(places, number):
            if quoted or chosen:
                yield _masked(text, sorted((*quoted, *chosen)))


def _places(text: str, own: Sequence[str]) -> Iterator[tuple[int, int, str]]:
    if not own:
        return
    forms = "|".join(re.escape(name).replace(r"\ ", r"\s+") for name in own)
    for match in re.finditer(rf"(?<![\w\"-])(?:{forms})(?![\w-])", text, re.IGNORECASE):
        if text.count('"', 0, match.start()) % 2 == 0:
            yield match.start(), match.end(), match.group()


def _masked(text: str, names: Sequence[tuple[int, int, str]]) -> tuple[Masked, tuple[str, ...]]:
    said, places, last = "", list[tuple[int, int]](), 0
    for number, (start, end, _) in enumerate(names):
        said += text[last:start]
        mask = f"{MASK}{number}"
        places.append((len(said) + 1, end - start - len(mask)))
        said += mask
        last = end
    return Masked(said + text[last:], tuple(places)), tuple(" ".join(small(name).split()) for *_, name in names)


def unmasked(text: str, names: Sequence[str], quoted: bool = False) -> str:
    """A text with the names instead of their masks, in quotes where it is a line to be written; the masks stay where
    nobody says what they stand for, as in a line that is mended before its names are put back."""
    if MASK not in text or not names:
        return text
    return _MASKED.sub(lambda match: f'"{names[int(match[1])]}"' if quoted else names[int(match[1])], text)
