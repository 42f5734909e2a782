"""The kit that a sheet declares."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs

from grammar.finding import Correction
from grammar.game import GameKit
from grammar.meanings import KitMeaning, PlayerMeaning
from grammar.mistakes.near_names import near_names
from grammar.resolve.vocabulary import COUNT_LIMIT, Vocabulary, category_of, not_in_the_kit, singular
from grammar.said import Value, quoting
from grammar.sentences.base import Name, Owner, OwnerName
from grammar.sentences.sides import Kit
from grammar.tree import GameSheet
from grammar.words import article, plural

LOTS = ("die", "dice")  # what decides by chance
_A_SLIP = 0.35  # how far in letters a name of the kit may be from what was written to be offered as a slip


def declare_kit(sheet: GameSheet, words: Vocabulary, catalogue: Mapping[str, str]) -> tuple[GameKit, ...]:
    """The kit of a sheet; `catalogue` gives the category of every thing that the library knows."""
    kit: list[GameKit] = []
    for line in sheet.lines("kit"):
        sentence = line.sentence
        if isinstance(sentence, Kit):
            kit.extend(_kit_line(sentence, words, catalogue, kit))
    return tuple(kit)


def _for_another_side(kit: list[GameKit], new: GameKit) -> bool:
    """Whether a line says how many of a known thing another side has: "6 pots for north", "3 pots for south"."""
    same = [line for line in kit if {line.name, line.plural} & {new.name, new.plural}]
    owners = [line.owner for line in same]
    alike = all((line.like, line.scale, line.parts) == (new.like, new.scale, new.parts) for line in same)
    return bool(same) and alike and not {None, "each"} & {*owners, new.owner} and new.owner not in owners


def _kit_line(sentence: Kit, words: Vocabulary, catalogue: Mapping[str, str], kit: list[GameKit]) -> Iterator[GameKit]:
    number = sentence.count
    if number.value != int(number.value) or not 1 <= number.value <= COUNT_LIMIT:
        words.wrong(
            "G-count",
            quoting("There cannot be {number} of a thing in the kit.", number=number.words()),
            number.span,
            quoting("Write a whole number from 1 to {most}.", most=COUNT_LIMIT),
        )
        number = attrs.evolve(number, value=float(COUNT_LIMIT))
    written = sentence.name.text
    if written.startswith("x ") and not sentence.singular:
        better = attrs.evolve(sentence, name=Name(written[2:]))
        meant = Correction(sentence.span, better.words())
        words.wrong("G-name", "`x` has no place here.", sentence.name.span, "Leave it out.", (meant,))
        written = written[2:]
    one = sentence.singular.text if sentence.singular else singular(written, number.whole, catalogue)
    many = written if written != one else plural(one)
    like = sentence.like.text if sentence.like else one
    near = near_names(like, catalogue, 1) if sentence.like and like not in catalogue else []
    category = catalogue[near[0][0]] if near else category_of(like, catalogue)
    if sentence.like and sentence.like.text not in catalogue:
        title, hint = not_in_the_kit(sentence.like.text, catalogue)
        words.wrong("G-unknown-kit", title, sentence.like.span, hint, tuple(_other_likes(sentence, catalogue)))
    elif category is None:
        title, say = _unknown(sentence, one)
        others = () if one in LOTS else _other_names(sentence, one, catalogue)
        words.wrong("G-unknown-kit", title, sentence.name.span, say, tuple(others))
    owner = sentence.owner
    whose: str | None = None
    per_player = False
    if owner is not None:
        whose = "each" if isinstance(owner, Owner) else owner.name.text
        players = None if isinstance(owner, Owner) else words.meanings.get(owner.name.text)
        if isinstance(owner, OwnerName) and isinstance(players, PlayerMeaning) and owner.determiner == "each":
            per_player, whose = True, players.side or "each"
    scale = sentence.percent.value / 100 if sentence.percent else 1.0
    parts = sentence.parts.whole if sentence.parts else 1
    sort = category or "target"
    line = GameKit(one, many, sort, number.whole, whose, like, sentence.span, scale, parts, per_player)
    if _for_another_side(kit, line) or words.declare((one, many), KitMeaning(one, sort), sentence.name):
        yield line


def _unknown(sentence: Kit, one: str) -> tuple[Value, Value]:
    """What is said of a thing that is not known, and what to do about it."""
    if one not in LOTS:
        say = quoting('Say what it is like, such as "{sentence}, like a plastic pin".', sentence=sentence.words())
        return quoting("It is not known what a `{one}` is.", one=one), say
    title = quoting("What a `{one}` decides cannot be said yet.", one=one)
    instead = (
        "Leave it out here, say in `play` how often it comes to that on average, such as `..., {often}`, and put what "
        "it decides in quotes there, for people."
    )
    return title, quoting(instead, often="3 in 5 succeed")


def _ends_of(name: str) -> Iterator[str]:
    """What a name may be called without its first words, the longest first: "flat bat" is a bat."""
    words = name.split()
    return (" ".join(words[at:]) for at in range(1, len(words)))


def _other_likes(sentence: Kit, catalogue: Mapping[str, str]) -> Iterator[Correction]:
    for name, cost in near_names(sentence.like.text if sentence.like else "", catalogue):
        if cost > _A_SLIP:
            continue  # a medicine ball is no mini handball, however alike the letters are
        better = attrs.evolve(sentence, determiner=article(name).split()[0], like=Name(name))
        yield Correction(sentence.span, better.words(), cost)


def _other_names(sentence: Kit, one: str, catalogue: Mapping[str, str]) -> Iterator[Correction]:
    known = next((name for name in _ends_of(one) if name in catalogue), None)
    if known:
        better = attrs.evolve(sentence, determiner=article(known).split()[0], like=Name(known))
        yield Correction(sentence.span, better.words())
    for name, cost in near_names(one, catalogue) if not known else ():
        better = attrs.evolve(sentence, name=Name(name if sentence.count.value == 1 else plural(name)))
        yield Correction(sentence.span, better.words(), cost)
