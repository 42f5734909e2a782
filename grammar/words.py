"""Small words: counting, listing, plurals, and the nearest spelling."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import SequenceMatcher, get_close_matches
from functools import lru_cache

LIKE_ENOUGH = 0.7  # how like two names are, from where on one may be a slip of the other
_ONES = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip
NUMBERS = {**{word: number for number, word in enumerate(_ONES)}, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60}
NUMBER = rf"\d+|{'|'.join(NUMBERS)}"
_UNCHANGED_ENDINGS = ("s", "x", "z", "ch", "sh")
_IRREGULAR = {
    "child": "children", "die": "dice", "foot": "feet", "goose": "geese", "louse": "lice", "mouse": "mice",
    "ox": "oxen", "person": "people", "tooth": "teeth", "woman": "women",
    "echo": "echoes", "hero": "heroes", "potato": "potatoes", "tomato": "tomatoes", "torpedo": "torpedoes",
    **{f"{stem}{end}": f"{stem}ves" for stem, ends in {
        "cal": "f", "el": "f", "hal": "f", "hoo": "f", "kni": "fe", "lea": "f", "li": "fe", "loa": "f", "scar": "f",
        "sel": "f", "shea": "f", "shel": "f", "thie": "f", "wi": "fe", "wol": "f"}.items() for end in (ends,)},
    **{same: same for same in ("bison", "deer", "fish", "moose", "salmon", "series", "sheep", "swine", "trout")},
}  # fmt: skip
_IN_E = (
    "axe", "brownie", "budgie", "collie", "cookie", "genie", "magpie", "movie", "pie", "pixie", "prairie",
    "rookie", "tie", "zombie",
)  # fmt: skip
_IRREGULAR_MANY = {**{many: one for one, many in _IRREGULAR.items()}, **{f"{one}s": one for one in _IN_E}}
_SAME_WITH_E = ("houses", "causes", "blouses", "fuses", "muses", "spouses")  # of a house, a cause; others: of a bus


@lru_cache(maxsize=20_000)
def plural(noun: str) -> str:
    """The regular English plural of the last word: "foam ball" gives "foam balls".

    What stands on something, and what has a size, is counted by what it is: "rings on stands", "footballs size 5".
    """
    first, sized, size = noun.partition(" size ")
    if sized:
        return f"{plural(first)}{sized}{size}"
    upper, on, lower = noun.partition(" on ")
    if on:
        return f"{plural(upper)}{on}{plural(lower)}"
    before, last = _last_word(noun)
    if last in _IRREGULAR:
        return before + _IRREGULAR[last]
    if noun.endswith("man") and not noun.endswith("human"):
        return noun[:-3] + "men"
    if noun.endswith(_UNCHANGED_ENDINGS):
        return noun + "es"
    if noun.endswith("y") and noun[-2:-1] not in "aeiou":
        return noun[:-1] + "ies"
    return noun + "s"


def count(number: float, one: str, many: str | None = None) -> str:
    """Such as "1 ball", "3 balls", "no balls"."""
    noun = one if number == 1 else (many or plural(one))
    return f"{'no' if number == 0 else format(number, 'g')} {noun}"


def _last_word(noun: str) -> tuple[str, str]:
    """What stands before the last word of a name, with its space, and that word."""
    at = noun.rfind(" ") + 1
    return noun[:at], noun[at:]


def singulars(noun: str) -> tuple[str, ...]:
    """What one may be called of which several are called so, the likeliest first; nothing for a word in the singular.

    "foam balls": "foam ball"; "wolves": "wolf"; "finches": "finch", but perhaps "finche".
    """
    before, last = _last_word(noun)
    if last in _IRREGULAR_MANY:
        return (before + _IRREGULAR_MANY[last],)
    if last.endswith("men"):
        return (noun[:-3] + "man",)
    stems = {
        "sses": ("",), "ies": ("y", "ie"), "xes": ("", "e"), "zes": ("e", ""), "ches": ("", "e"), "shes": ("", "e"),
        "uses": ("e", "") if last in _SAME_WITH_E else ("", "e"),
    }  # fmt: skip
    for ending, options in stems.items():
        if last.endswith(ending) and last != ending:
            stem = noun[:-3] if ending == "ies" else noun[:-2]
            return tuple(stem + option for option in options)
    return (noun[:-1],) if last.endswith("s") and not last.endswith("ss") and len(last) > 1 else ()


def called_by_players(side: str) -> bool:
    """Whether a side is called by its players: "carriers", "geese", "upper wolves"; not "north"."""
    return bool(singulars(side))


def player_of(side: str) -> str:
    """What one player of a side is called that is called by its players: "carriers", "foxes": "carrier", "fox"."""
    return next(iter(singulars(side)), side)


def players_said(side: str, number: int) -> str:
    """ "1 roller", "2 rollers", "1 north"."""
    return f"{number} {player_of(side) if number == 1 else side}"


def listing(items: Iterable[str], last: str = "and") -> str:
    """Such as "a", "a and b", "a, b and c"; nothing for no items."""
    said = list(items)
    if len(said) < 2:
        return "".join(said)
    return f"{', '.join(said[:-1])} {last} {said[-1]}"


def capital(words: str) -> str:
    """The words with a capital letter."""
    return words[:1].upper() + words[1:]


def article(noun: str) -> str:
    """Such as "a lantern", "an open box"; goes by the letter, which is right for the words of kit lists."""
    return f"{'an' if noun[:1].lower() in 'aeiou' else 'a'} {noun}"


def small(text: str) -> str:
    """The text in small letters, as many as before: one letter of Turkish grows by a mark that no name may have."""
    return "".join(letter.lower()[:1] for letter in text)


def nearest(word: str, known: Iterable[str], most: int = 3) -> list[str]:
    """Up to `most` known words that are spelled like `word`, the likest first; far ones only if none is near."""
    by_folded = {candidate.lower(): candidate for candidate in known}
    said = word.lower()
    found = get_close_matches(said, by_folded, n=most, cutoff=0.6)
    best = likeness(said, found[0]) if found else 0.0
    return [by_folded[match] for match in found if likeness(said, match) >= best - 0.12]


def can_be_alike(one: str, other: str, least: float) -> bool:
    """False where two spellings are surely less like than that, by their letters alone: most pairs are far apart."""
    letters, others = set(one), set(other)
    most = min(len(one) - len(letters - others), len(other) - len(others - letters))
    return 2 * most >= least * (len(one) + len(other))


@lru_cache(maxsize=50_000)
def likeness(one: str, other: str) -> float:
    """How like two spellings are, from 0 to 1."""
    return SequenceMatcher(None, other, one).ratio()


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Such as "Did you mean `lantern`?", or "" where nothing is near."""
    near = nearest(word, known)
    return f"Did you mean {listing([f'`{match}`' for match in near], 'or')}?" if near else ""
