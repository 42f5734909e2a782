"""Every name of every sentence: is it declared, and may it stand where it stands?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import attrs

from grammar.finding import Finding, Severity
from grammar.meanings import (
    AREA_KINDS,
    AgentMeaning,
    CategoryMeaning,
    FrozenMeaning,
    KitMeaning,
    LoadMeaning,
    MateMeaning,
    Meaning,
    NothingMeaning,
    PlaceMeaning,
    PlayerMeaning,
    SideMeaning,
    TeacherMeaning,
    side_named,
)
from grammar.resolve.expected import EXPECTED
from grammar.sentences import base, head, sides, space
from grammar.sentences.base import Name, Node, Np
from grammar.sentences.then import ComesIn
from grammar.sentences.when import When
from grammar.words import LIKE_ENOUGH, did_you_mean, likeness, listing, plural

_SAID = {
    "ball": "a ball",
    "target": "a target",
    "ring": "a ring",
    "body": "a big body",
    "furniture": "furniture",
    "player": "players",
    "frozen": "frozen players",
    "agent": "who took part (the thrower, the catcher)",
    "mate": "a team-mate",
    "teacher": "the teacher",
    "nothing": "nothing",
    "thing": "things that are taken from place to place",
    "place": "a place",
    "side": "a side",
}
FREE = (  # names that a sentence gives, or that are looked at where it is declared
    (sides.Kit, "like"),
    (sides.Kit, "singular"),
    (sides.Kit, "name"),
    (sides.Sides, "names"),
    (sides.Headcount, "of"),
    (sides.Role, "name"),
    (sides.SideBySide, "what"),
    (space.Area, "name"),
    (space.Track, "name"),
    (space.Track, "start"),
    (space.Track, "goal"),
    (head.Switch, "name"),
    (head.Switched, "name"),
)
_NEXT_POINT = (
    "Only where points were level does the next one decide: more points wins, else the next point wins. Of anything "
    "else that is counted say: else a draw"
)


_ANYTHING = frozenset(("thing", "object", "item", "one", "other"))
_MOST_NAMED = 4
_NOT_OF_PLACES = frozenset(("around", "round", "fourth", "third", "second", "two", "2", "one", "other", "end", "ends"))
_DOINGS = frozenset((  # what nobody lays ready
    "catch", "catches", "throws", "hits", "passes", "points", "lives", "life", "body", "bodies", "frozen", "free",
    "freezes", "half", "halves", "minutes", "rounds", "players", "player", "again", "sets", "turns", "winner",
    "once", "twice", "already", "yet", "miss", "misses", "try", "tries", "attempts", "goals", "steps",
))  # fmt: skip


def sort_of(meaning: Meaning) -> str:
    """One word for what a name means: one of _SAID."""
    match meaning:
        case KitMeaning() | CategoryMeaning() | LoadMeaning():
            return meaning.category
        case PlayerMeaning():
            return "player"
        case FrozenMeaning():
            return "frozen"
        case AgentMeaning():
            return "agent"
        case MateMeaning():
            return "mate"
        case TeacherMeaning():
            return "teacher"
        case NothingMeaning():
            return "nothing"
        case PlaceMeaning():
            return "place"
        case SideMeaning():
            return "side"


def name_findings(sentence: Node, meanings: Mapping[str, Meaning]) -> Iterator[Finding]:
    """What is wrong with the names of one sentence."""
    for expected, name in names_of(sentence):
        meaning = meanings.get(name.text)
        if meaning is None:
            yield _unknown_verb(sentence, name, meanings) or _unknown(name, expected, meanings)
        elif not _fits(meaning, expected):
            yield _never_comes_in(sentence, name, meaning) or _misplaced(name, meaning, expected)


def names_of(node: Node) -> Iterator[tuple[tuple[str, ...], Name]]:
    """Every name of a sentence that must mean something, with the sorts of things it may mean."""
    kind: Any = type(node)
    for field, expected in _fields_with_names(kind):
        value = getattr(node, field)
        for part in value if isinstance(value, tuple) else (value,):
            if not isinstance(part, Node):
                continue
            if isinstance(part, Np):
                if expected:
                    yield expected, part.name
                if isinstance(part.owner, base.OwnerName):
                    yield ("side", "player", "agent", "teacher"), part.owner.name
            elif isinstance(part, base.SideNamed) and expected:
                yield expected, part.name
            elif isinstance(part, Name) and expected:
                yield expected, part
            else:
                yield from names_of(part)


@cache
def _fields_with_names(kind: type[Any]) -> tuple[tuple[str, tuple[str, ...] | None], ...]:
    """The fields of a sentence in which there may be names, with the sorts of things that they may mean."""
    return tuple(
        (field.name, EXPECTED.get((kind, field.name), field.metadata.get("sorts")))
        for field in attrs.fields(kind)
        if field.name != "span" and (kind, field.name) not in FREE
    )


def _unknown_verb(sentence: Node, name: Name, meanings: Mapping[str, Meaning]) -> Finding | None:
    """What to say of a name in which players are followed by what they do, which the language does not know."""
    *first, last = name.text.split()
    who = " ".join(first)
    if _sort_of_known(meanings.get(who)) not in ("player", "side") or not last.endswith("s") or last in meanings:
        return None
    from grammar.mistakes.meant import nearest  # loaded only where a verb is not known

    section = "when" if isinstance(sentence, When) else "play"
    near = [f"`{row.example}` ({row.says})" for row in nearest(section, sentence.words()).rows]
    title = f"Nothing here is called `{name.text}`: {who} is known, but not that one {last}."
    hint = f"Nearest to it: {listing(near, 'or')}." if near else "Say what happens in words of the language page."
    return Finding("G-unknown", Severity.ERROR, title, name.span, hint)


def _never_comes_in(sentence: Node, name: Name, meaning: Meaning) -> Finding | None:
    """What to say of a thing that is no ball and is to come in while play goes on."""
    said = sentence.consequences if isinstance(sentence, When) else ()
    if not any(isinstance(each, ComesIn) and each.name is name for each in said):
        return None
    title = f"`{name.text}` is {_SAID[sort_of(meaning)]}; only balls come in while play goes on."
    hint = "Anything else is there from the start: say in the set-up where it stands or lies."
    return Finding("G-sort", Severity.ERROR, title, name.span, hint)


def _sort_of_known(meaning: Meaning | None) -> str | None:
    """The sort of what a name means, if it means anything."""
    return None if meaning is None else sort_of(meaning)


def _unknown(name: Name, expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> Finding:
    if expected == ("side",) and name.text.startswith("next "):
        title = f"`the {name.text}` decides no round: where a score is level the next point does."
        return Finding("G-unknown", Severity.ERROR, title, name.span, _NEXT_POINT)
    near = [word for word in fitting(expected, meanings) if likeness(name.text, word) >= LIKE_ENOUGH]
    hint = did_you_mean(name.text, near) or _declare_hint(name.text, expected, meanings)
    title = (
        f"Nothing here is called `{name.text}`; {listing([_SAID[sort] for sort in expected], 'or')} could stand here."
    )
    return Finding("G-unknown", Severity.ERROR, title, name.span, hint)


def fitting(expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> list[str]:
    """The names that may stand where these sorts of things are expected; of no sort of which the sheet has none."""
    return [word for word, meaning in meanings.items() if _fits(meaning, expected) and has_any(meaning, meanings)]


def has_any(meaning: Meaning | None, meanings: Mapping[str, Meaning]) -> bool:
    """Whether a sheet has anything of what a word for all of a sort means, as "ring" does; other names are declared."""
    kit = (each.category for each in meanings.values() if isinstance(each, KitMeaning))
    return not isinstance(meaning, CategoryMeaning) or meaning.category in kit


def _fits(meaning: Meaning, expected: tuple[str, ...]) -> bool:
    return sort_of(meaning) in expected or ("side" in expected and side_named(meaning) is not None)


def _declare_hint(text: str, expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> str:
    if "side" in expected:
        sides = [word for word, meaning in meanings.items() if side_named(meaning) == word]
        return f"The sides are {listing(sides)}." if sides else "Name the sides under `sides`."
    last = text.rsplit(maxsplit=1)[-1]
    if "place" in expected and last in AREA_KINDS:
        return f'Say in space where it is, such as "{text}: beside each half".'
    if "ball" in expected and last in ("ball", "balls"):
        return f'Add it to the kit, such as "{1 if last == "ball" else 4} {text}".'
    kit = [f"`{word}`" for word, meaning in meanings.items() if isinstance(meaning, KitMeaning) and meaning.key == word]
    if text.removesuffix("s") in _ANYTHING and kit:
        return f"Name what is meant: {listing(kit[:_MOST_NAMED], 'or')}."
    kind = last.removesuffix("s")
    areas = [f"`{word}`" for word, meaning in meanings.items()
             if isinstance(meaning, PlaceMeaning) and kind in AREA_KINDS and word.endswith(f" {kind}")]  # fmt: skip
    if areas and "place" not in expected:
        return f"It is a place: {listing(areas, 'or')}. Say who or what is there."
    if ("ball" in expected or "target" in expected) and not {"misses", "miss"}.isdisjoint(text.split()):
        return "Misses are counted as lives: each player has 3 lives, and: a ball is missed: the thrower loses a life"
    if ("ball" in expected or "target" in expected) and not _DOINGS.isdisjoint(text.split()):
        return "If it is a thing, declare it under kit; if not, the language says it in another way."
    if "ball" in expected or "target" in expected:
        return f'Add it to the kit, such as "4 {text if text.endswith("s") else plural(text)}, like a cone".'
    if "place" in expected and text.split()[0] not in _NOT_OF_PLACES:
        return f'Say in space where it is, such as "{text} zone: 2 m deep, before each back line".'
    if "place" in expected:
        return "Name a place of the court (half, back line, side line, middle, corner, wall), or an area of the sheet."
    if "player" in expected:
        return "Players are called players, or by the name of their side or role."
    return "Use a name that the sheet declares."


def _misplaced(name: Name, meaning: Meaning, expected: tuple[str, ...]) -> Finding:
    verb = "means" if sort_of(meaning) == "player" else "is"
    title = (
        f"`{name.text}` {verb} {_SAID[sort_of(meaning)]}; "
        f"{listing([_SAID[sort] for sort in expected], 'or')} could stand here."
    )
    hint = "Name one of these, or change the verb."
    if {sort_of(meaning), *expected} >= {"player", "target"} and ("player" in expected) != ("target" in expected):
        hint = "A target is knocked; a player is hit."
    if sort_of(meaning) == "player" and expected == ("ball",):
        hint = "So it is said of balls; what somebody who plays does wrong is a foul, such as: a player fouls"
    if sort_of(meaning) == "furniture" and "target" in expected:
        hint = f'What is aimed at is like a target: "1 {name.text} for each side, like a thick mat" (or box, or board).'
    if sort_of(meaning) == "place" and "side" in expected:
        hint = f"Of a place say what lies there: there are no balls in the {name.text}"
    return Finding("G-sort", Severity.ERROR, title, name.span, hint)
