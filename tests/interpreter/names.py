"""The second reader's own list of names: what a word of a sheet may stand for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Union

from attrs import frozen

import library
from grammar.sentences import play, sides, space
from grammar.sentences.base import Name
from grammar.sentences.head import Switched
from grammar.tree import GameSheet

SENDING = ("thrower", "roller", "kicker", "striker", "passer", "shooter", "hitter")
ACTING = (*SENDING, "carrier", "pusher", "runner", "tagger")
THROWS = ("overarm throw", "underarm throw")
SHOTS = (*THROWS, "roll", "kick", "strike")
SENT = (*SHOTS, "pass")
BY_SKILL = {"throw": THROWS, "shot": SHOTS, "pass": ("pass",)} | {each: (each,) for each in SHOTS}
SHARED_PLACES = ("middle", "court")
OWNED_PLACES = ("half", "back line", "side line", "wall", "corner")
AREA_WORDS = ("strip", "zone", "bench", "queue", "base", "circle", "mark")


@frozen
class Stuff:
    """Kit of some kinds; `skills` where a word such as "a roll" means only balls of some skills."""

    category: str
    kinds: frozenset[str]
    named: bool = False
    skills: tuple[str, ...] = ()


@frozen
class Folk:
    """Players: of one side or of any, in one role or in any."""

    side: str | None = None
    role: str | None = None


@frozen
class Frozen:
    """Players who froze: of one side or of any, in one role or in any."""

    side: str | None = None
    role: str | None = None


@frozen
class Part:
    """Who took part in what happened: "actor", "catcher" or "keeper"."""

    part: str


@frozen
class Mate:
    """A team-mate of who acts."""


@frozen
class Teacher:
    """The teacher."""


@frozen
class Somewhere:
    """A place by its name; whose it is the phrase says."""

    place: str


@frozen
class OneSide:
    """A side that is not called by its players."""

    side: str


Meant = Union[Stuff, Folk, Frozen, Part, Mate, Teacher, Somewhere, OneSide]


def several(noun: str) -> str:
    """More than one of it, in plain English."""
    if noun == "half":
        return "halves"
    if noun.endswith("man"):
        return noun[:-2] + "en"
    if noun.endswith(("s", "x", "z", "ch", "sh")):
        return noun + "es"
    return noun[:-1] + "ies" if noun.endswith("y") and noun[-2] not in "aeiou" else noun + "s"


def single(nouns: str) -> str:
    """One of them, in plain English."""
    if nouns.endswith("men"):
        return nouns[:-2] + "an"
    if nouns.endswith("ies"):
        return nouns[:-3] + "y"
    if nouns.endswith(("xes", "zes", "ches", "shes", "sses")):
        return nouns[:-2]
    return nouns.removesuffix("s")


def kit_name(line: sides.Kit, known: Mapping[str, str]) -> str:
    """What one thing of a kit line is called."""
    if line.singular is not None:
        return line.singular.text
    written = line.name.text
    return written if line.count.whole == 1 or written in known else single(written)


def names_of(tree: GameSheet, known: Mapping[str, str]) -> dict[str, Meant]:
    """Every name of a sheet with what it stands for; `known` gives the category of what the library's kit has."""
    found: dict[str, Meant] = {word: Part("actor") for word in ACTING}
    found |= {"catcher": Part("catcher"), "keeper": Part("keeper"), "teacher": Teacher()}
    found |= {"nothing": Stuff("", frozenset())} | dict.fromkeys(("thing", "things"), _taken_along(tree, known))
    found |= {"team-mate": Mate(), "team-mates": Mate(), "player": Folk(), "players": Folk()}
    for place in (*SHARED_PLACES, *OWNED_PLACES):
        found[place] = found[several(place)] = Somewhere(place)
    found["middle line"] = found["middle lines"] = Somewhere("middle")
    found |= _kit(tree, known)
    found |= dict.fromkeys(("fixed target", "fixed targets"), Stuff("target", _never_fall(tree, known), named=True))
    found |= _people(tree)
    found |= _areas(tree)
    for form, place in _short(tree):
        found.setdefault(form, place)
    who = {word: meant for word, meant in found.items() if isinstance(meant, Folk | Mate)}
    frozen_ones = {f"frozen {word}": Frozen(*_whom(meant)) for word, meant in who.items()}
    return frozen_ones | found


def _whom(meant: Folk | Mate) -> tuple[str | None, str | None]:
    return (meant.side, meant.role) if isinstance(meant, Folk) else (None, None)


def is_keeper(meant: object) -> bool:
    """Whether a role of keepers is meant, whatever they keep."""
    return isinstance(meant, Folk) and (meant.role or "").endswith("keeper")


def categories(tree: GameSheet, known: Mapping[str, str]) -> dict[str, str]:
    """The category of every kind of kit of a sheet."""
    found: dict[str, str] = {}
    for line in tree.all_of("kit", sides.Kit):
        name = kit_name(line, known)
        like = line.like.text if line.like else name
        last = like.split()[-1]
        found.setdefault(name, known.get(like) or (single(last) if single(last) in ("ball", "ring") else "target"))
    for name, forms in _forms(tree, known):
        words = {found[name], several(found[name])} if found[name] in ("target", "ring") else set()
        if found[name] != "ball" and (forms | words) & _taken(tree):
            found[name] = "load"
    return found


def _never_fall(tree: GameSheet, known: Mapping[str, str]) -> frozenset[str]:
    """The kinds of kit that stay as they are when they are hit."""
    fixed, lines = library.fixed_kit(), tree.all_of("kit", sides.Kit)
    names = ((kit_name(line, known), line.like) for line in lines)
    return frozenset(name for name, like in names if (like.text if like else name) in fixed)


def _forms(tree: GameSheet, known: Mapping[str, str]) -> Iterator[tuple[str, set[str]]]:
    """Every kind of kit with the words that stand for it."""
    for line in tree.all_of("kit", sides.Kit):
        kind = kit_name(line, known)
        yield kind, {kind, line.name.text, several(kind)}


def _taken(tree: GameSheet) -> set[str]:
    """The words for things that somebody takes from place to place."""
    lines = (line.sentence for line in tree.lines("play"))
    said = (line.sentence if isinstance(line, Switched) else line for line in lines)
    return {phrase.name.text for line in said if isinstance(line, play.Take) for phrase in line.phrases}


def _taken_along(tree: GameSheet, known: Mapping[str, str]) -> Stuff:
    """Whatever it is that somebody takes from place to place."""
    words = _taken(tree)
    return Stuff("load", frozenset(kind for kind, forms in _forms(tree, known) if forms & words))


def _kit(tree: GameSheet, known: Mapping[str, str]) -> Iterator[tuple[str, Meant]]:
    sorts = categories(tree, known)
    for category in ("ball", "target", "ring"):
        meant = (category, "load") if category == "target" else (category,)
        every = frozenset(kind for kind, sort in sorts.items() if sort in meant)
        yield from ((word, Stuff(category, every)) for word in (category, several(category)))
    balls = frozenset(kind for kind, sort in sorts.items() if sort == "ball")
    for word, skills in BY_SKILL.items():
        yield from ((each, Stuff("ball", balls, skills=skills)) for each in (word, several(word)))
    for kind, forms in _forms(tree, known):
        for form in forms:
            yield form, Stuff(sorts[kind], frozenset((kind,)), named=True)


def _people(tree: GameSheet) -> Iterator[tuple[str, Meant]]:
    for line in tree.all_of("sides", sides.Sides):
        for name in line.names:
            side = name.text
            by_players = called_by_players(side)
            yield side, Folk(side) if by_players else OneSide(side)
            yield from ((form, Folk(side)) for form in (f"{side} player", f"{side} players"))
            if by_players:
                yield single(side), Folk(side)
    for role in tree.all_of("sides", sides.Role):
        for form in (role.name.text, several(role.name.text)):
            yield form, Folk(None, role.name.text)


def called_by_players(side: str) -> bool:
    """Whether a side is called by its players, such as carriers."""
    return side.endswith("men") or (side.endswith("s") and not side.endswith("ss"))


def _areas(tree: GameSheet) -> Iterator[tuple[str, Meant]]:
    areas = [area.name.text for area in tree.all_of("space", space.Area)]
    for word in AREA_WORDS:
        alike = [name for name in areas if name.split()[-1] == word]
        if len(alike) == 1:
            yield from ((form, Somewhere(alike[0])) for form in (word, several(word)))
    for name in (*areas, *(track.name.text for track in tree.all_of("space", space.Track))):
        yield from ((form, Somewhere(name)) for form in (name, several(name)))


def _short(tree: GameSheet) -> Iterator[tuple[str, Meant]]:
    """An area without the last word of its name, where no other area is called so."""
    areas = [area.name.text for area in tree.all_of("space", space.Area)]
    short = [name.rpartition(" ")[0] for name in areas]
    for name, called in zip(areas, short, strict=True):
        if called and short.count(called) == 1:
            yield from ((form, Somewhere(name)) for form in (called, several(called)))


def read_name(names: Mapping[str, Meant], name: Name) -> Meant:
    """What a name stands for; LookupError, with the word, where the sheet has no such name."""
    if name.text not in names:
        raise LookupError(f"nothing here is called {name.text}")
    return names[name.text]
