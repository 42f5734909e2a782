"""The sides and roles that a sheet declares."""

from __future__ import annotations

from grammar.game import GameRole, GameSide
from grammar.meanings import EVERYBODY, PlayerMeaning, SideMeaning, side_named
from grammar.resolve.vocabulary import COUNT_LIMIT, Vocabulary
from grammar.said import Value, listed, quoting
from grammar.sentences.base import Name, Owner
from grammar.sentences.sides import AimsFrom, NeverAimedAt, Role, Sides, Uses
from grammar.tree import GameSheet
from grammar.words import called_by_players, player_of, plural


def declare_sides(sheet: GameSheet, words: Vocabulary) -> tuple[tuple[GameSide, ...], tuple[GameRole, ...]]:
    """The sides and roles of a sheet."""
    sides: list[GameSide] = []
    roles: list[GameRole] = []
    for line in sheet.lines("sides"):
        sentence = line.sentence
        if isinstance(sentence, Sides):
            least, most = _headcount(sentence, words)
            for name in sentence.names:
                side = GameSide(name.text, least, most, "mirrored" in sentence.options, name.span)
                sides.append(side)
                _declare_side(name, words)
    if len(sides) == 1:
        for word in EVERYBODY:
            words.meanings.setdefault(word, SideMeaning(sides[0].name))
    for line in sheet.lines("sides"):
        sentence = line.sentence
        if isinstance(sentence, Role):
            roles.append(_declare_role(sentence, words))
    return tuple(sides), tuple(roles)


def _declare_side(name: Name, words: Vocabulary) -> None:
    text = name.text
    if text.rsplit(maxsplit=1)[-1] in ("side", "sides", "team", "teams", "group", "groups"):
        hint = "Give each side a name, such as: north and south, 6 to 14 players each, mirrored"
        words.wrong("G-name", quoting("`{said}` is no name of a side.", said=text), name.span, hint)
    by_players = called_by_players(text)
    if not words.declare((text,), PlayerMeaning(side=text) if by_players else SideMeaning(text), name):
        return
    players = PlayerMeaning(side=text)
    words.declare((f"{text} player", f"{text} players"), players, name)
    if by_players:
        words.declare((player_of(text),), players, name)


def _declare_role(sentence: Role, words: Vocabulary) -> GameRole:
    least, most = _headcount(sentence, words)
    name = sentence.name.text
    owner = sentence.owner
    side = None
    if not isinstance(owner, Owner):
        meaning = words.meanings.get(owner.name.text)
        side = side_named(meaning)
        if side is None:
            words.wrong(
                "G-unknown",
                quoting("There is no side called `{name}`.", name=owner.name.text),
                owner.name.span,
                _the_sides(words),
            )
    words.declare((name, plural(name)), PlayerMeaning(side=side, role=name), sentence.name)
    aims = next((part.distance.metres for part in sentence.details if isinstance(part, AimsFrom)), None)
    uses = next((part.what.name.text for part in sentence.details if isinstance(part, Uses)), None)
    aimed_at = not any(isinstance(part, NeverAimedAt) for part in sentence.details)
    return GameRole(name, least, most, side, aims, sentence.span, uses, aimed_at)


def _the_sides(words: Vocabulary) -> Value:
    sides = listed(word for word, meaning in words.meanings.items() if side_named(meaning) == word)
    return quoting("The sides are {sides}.", sides=sides)


def _headcount(sentence: Sides | Role, words: Vocabulary) -> tuple[int, int]:
    headcount = sentence.headcount
    fewest = 0 if isinstance(sentence, Role) else 1
    least, most = headcount.least, headcount.most or headcount.least
    for number in (least, most):
        if number.value != int(number.value) or not fewest <= number.value <= COUNT_LIMIT:
            words.wrong(
                "G-count",
                quoting("A side cannot have {number} players.", number=number.words()),
                number.span,
                quoting("Write a whole number from 1 to {most}.", most=COUNT_LIMIT),
            )
            return 1, 1
    if least.value > most.value:
        words.wrong(
            "G-range",
            quoting("{least} to {most} runs backwards.", least=least.words(), most=most.words()),
            least.span,
            quoting("Write {most} to {least}.", most=most.words(), least=least.words()),
        )
    return least.whole, most.whole
