"""Every name of every sentence: is it declared, and may it stand where it stands?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import attrs

from grammar.finding import Finding, mistake
from grammar.meanings import (
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
from grammar.mistakes.near_names import near_names
from grammar.resolve.expected import EXPECTED
from grammar.resolve.undeclared import declare_hint
from grammar.said import Listed, listed, perhaps_meant, quoting, said
from grammar.sentences import base, head, sides, space
from grammar.sentences.base import Name, Node, Np
from grammar.sentences.then import ComesIn
from grammar.sentences.when import When
from grammar.words import LIKE_ENOUGH, likeness, plural

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
    (head.SwitchedOff, "name"),
)
_NEXT_POINT = (
    "Only where points were level does the next one decide: more points wins, else the next point wins. Or, of "
    "targets: else the next cone knocked wins. Of anything else that is counted say: else a draw"
)


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
    from grammar.mistakes.wishes import near_rows

    section = "when" if isinstance(sentence, When) else "play"
    near = nearest(section, sentence.words()).rows
    title = quoting(
        "Nothing here is called `{name}`: {who} is known, but not that one {last}.", name=name.text, who=who, last=last
    )
    hint = near_rows(near) if near else "Say what happens in words of the language page."
    return mistake("G-unknown", title, name.span, hint)


def _never_comes_in(sentence: Node, name: Name, meaning: Meaning) -> Finding | None:
    """What to say of a thing that is no ball and is to come in while play goes on."""
    those = sentence.consequences if isinstance(sentence, When) else ()
    if not any(isinstance(each, ComesIn) and each.name is name for each in those):
        return None
    title = quoting(
        "`{name}` is {what}; only balls come in while play goes on.", name=name.text, what=said(_SAID[sort_of(meaning)])
    )
    hint = "Anything else is there from the start: say in the set-up where it stands or lies."
    return mistake("G-sort", title, name.span, hint)


def _sort_of_known(meaning: Meaning | None) -> str | None:
    """The sort of what a name means, if it means anything."""
    return None if meaning is None else sort_of(meaning)


def _unknown(name: Name, expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> Finding:
    if expected == ("side",) and name.text.startswith("next "):
        title = quoting("`the {name}` decides no round: where a score is level the next point does.", name=name.text)
        return mistake("G-unknown", title, name.span, _NEXT_POINT)
    hint = perhaps_meant(name.text, _perhaps(name.text, fitting(expected, meanings))) or declare_hint(
        name.text, expected, meanings
    )
    title = quoting(
        "Nothing here is called `{name}`; {sorts} could stand here.", name=name.text, sorts=_sorts(expected)
    )
    return mistake("G-unknown", title, name.span, hint)


def _perhaps(name: str, known: list[str]) -> list[str]:
    """The known names that are so like a name that they may be meant, none in the singular and the plural."""
    like = [word for word, _ in near_names(name, known, len(known)) if likeness(name, word) >= LIKE_ENOUGH]
    return [word for word in like if not any(plural(other) == word for other in like if other != word)]


def fitting(expected: tuple[str, ...], meanings: Mapping[str, Meaning]) -> list[str]:
    """The names that may stand where these sorts of things are expected; of no sort of which the sheet has none."""
    return [word for word, meaning in meanings.items() if _fits(meaning, expected) and has_any(meaning, meanings)]


ANOTHER_NAME = "Name one of these, or change the verb."


def has_any(meaning: Meaning | None, meanings: Mapping[str, Meaning]) -> bool:
    """Whether a sheet has anything of what a word for all of a sort means, as "ring" does; other names are declared."""
    kit = (each.category for each in meanings.values() if isinstance(each, KitMeaning))
    return not isinstance(meaning, CategoryMeaning) or meaning.category in kit


def _fits(meaning: Meaning, expected: tuple[str, ...]) -> bool:
    return sort_of(meaning) in expected or ("side" in expected and side_named(meaning) is not None)


def _sorts(expected: tuple[str, ...]) -> Listed:
    return listed((said(_SAID[sort]) for sort in expected), "or")


def _misplaced(name: Name, meaning: Meaning, expected: tuple[str, ...]) -> Finding:
    title = quoting(
        "`{name}` means {what}; {sorts} could stand here."
        if sort_of(meaning) == "player"
        else "`{name}` is {what}; {sorts} could stand here.",
        name=name.text,
        what=said(_SAID[sort_of(meaning)]),
        sorts=_sorts(expected),
    )
    hint = ANOTHER_NAME
    if {sort_of(meaning), *expected} >= {"player", "target"} and ("player" in expected) != ("target" in expected):
        hint = "A target is knocked; a player is hit."
    if sort_of(meaning) == "player" and {"furniture", "target"} <= {*expected}:
        hint = "Things go back; a player goes to a place, or returns."
    if sort_of(meaning) == "player" and expected == ("ball",):
        hint = "So it is said of balls; what somebody who plays does wrong is a foul, such as: a player fouls"
    if sort_of(meaning) == "furniture" and "target" in expected:
        hint = 'What is aimed at is like a target: "1 {name} for each side, like a thick mat" (or box, tipped bench).'
        if "ball" in expected:
            hint = 'What is carried on and on is like a cone, a box or a ball: "1 {name} for each side, like a cone".'
    if sort_of(meaning) == "place" and "side" in expected:
        hint = "Of a place say what lies there: there are no balls in the {name}"
    return mistake("G-sort", title, name.span, quoting(hint, name=name.text))
