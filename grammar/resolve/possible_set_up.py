"""Whether the set-up places what the kit has: no more, and somewhere every ball, and whatever else a rule speaks of."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from attrs import define, field

from grammar.finding import Finding, mistake
from grammar.game import Game, GameKit
from grammar.meanings import CategoryMeaning, KitMeaning, Meaning
from grammar.resolve.names import names_of
from grammar.said import Many, quoting, said
from grammar.sentences.ball import BeginsWith
from grammar.sentences.base import Node, Owner
from grammar.sentences.determiners import ALL, EACH
from grammar.sentences.finish import After
from grammar.sentences.sides import Placing, PlacingOnStep
from grammar.sentences.then import ComesIn
from grammar.sentences.time import EveryTime
from grammar.sentences.when import When

_RULES = ("play", "when", "finish")


@define
class _Placed:
    """What the set-up says of one thing: how many it counts out, whether all others follow, and where first."""

    number: int = 0
    rest: bool = False
    lines: list[Node] = field(factory=list)


def placed_kit(game: Game) -> Iterator[Finding]:
    """No more is placed than the kit has; every ball has a place, and so has what any rule speaks of."""
    if not game.sides:
        return
    spoken_of = {line.name for line in game.kit if _is_spoken_of(game, line)}
    placed = {line.name: _placed(game, line) for line in game.kit}
    most = {side.name: side.most for side in game.sides}
    for line in game.kit:
        later, total = _later(game, line), line.total(most)
        coming = sum(number for number, _ in later)
        if coming > total:
            title = quoting(
                "{count} come in while play goes on; the kit has {total}.",
                count=Many(coming, line.name, line.plural),
                total=total,
            )
            yield mistake("G-too-many", title, later[-1][1].span, "Add to the kit, or let fewer come in.", line.span)
        elif not coming or coming < total or placed[line.name].lines:
            instead = _so_often(game, later[0][1], total - placed[line.name].number) if len(later) == 1 else ""
            yield from _wrongly_placed(line, placed[line.name], total - coming, coming, line.name in spoken_of, instead)


def _is_spoken_of(game: Game, line: GameKit) -> bool:
    """Whether any rule says something of a thing; else it is a vessel or furniture, which stands where it is handy."""
    rules = (said.sentence for section in _RULES for said in game.sheet.lines(section))
    names = {name.text for rule in rules for _, name in names_of(rule)}
    return any(_means(meaning, line) for meaning in map(game.vocabulary.get, names) if meaning)


def _so_often(game: Game, said: ComesIn, left: int) -> str:
    """How to write that something comes in only as often as there is any left of it."""
    rule = next((each for each in game.whens if said in each.consequences), None)
    number = said.number.whole if said.number else 1
    times = left // number if number else 0
    if rule is None or not isinstance(rule.event, EveryTime) or times < 1:
        return ""
    so_often = f"every {rule.event.time.words()}, {times} times" if times > 1 else f"after {rule.event.time.words()}"
    return f"{so_often}: {said.words()}"


def _later(game: Game, line: GameKit) -> list[tuple[int, ComesIn]]:
    """How many of a thing come in while play goes on, by each phrase that says so."""
    return [
        ((said.number.whole if said.number else 1) * _moments(game, rule), said)
        for rule in game.whens
        for said in rule.consequences
        if isinstance(said, ComesIn) and said.determiner not in ALL
        if _means(game.meaning(said.name), line)
    ]


def _moments(game: Game, rule: When) -> int:
    """How often the clock brings a rule about; once where no clock ends the round, which is refused elsewhere."""
    after = next(game.all_of("finish", After), None)
    if not isinstance(rule.event, EveryTime) or after is None or rule.event.time.seconds <= 0:
        return 1
    return ceil(after.time.seconds / rule.event.time.seconds) - 1


def _placed(game: Game, line: GameKit) -> _Placed:
    found = _Placed()
    for placing in game.placings:
        if not _means(game.meaning(placing.what.name), line):
            continue
        found.lines.append(placing)
        if placing.all_but and placing.count is not None:
            found.number += line.total({side.name: side.most for side in game.sides}) - placing.count.whole
        elif placing.count is None:
            found.rest = True
        else:
            found.number += placing.count.whole * _repeats(game, placing, line)
    for begins in game.all_of("set-up", BeginsWith):
        if _means(game.meaning(begins.ball.name), line):
            found.lines.append(begins)
            found.rest |= begins.number is None or line.is_for_each_who(begins)
            found.number += 0 if found.rest else (begins.number or 0) * (len(game.sides) if begins.for_each else 1)
    for on_step in game.all_of("set-up", PlacingOnStep):
        if isinstance(meaning := game.meaning(on_step.what.name), KitMeaning) and _means(meaning, line):
            found.lines.append(on_step)
            found.rest = True
    return found


def _means(meaning: Meaning, line: GameKit) -> bool:
    if isinstance(meaning, CategoryMeaning):
        return line.category == meaning.category
    return isinstance(meaning, KitMeaning) and meaning.key == line.name


def _repeats(game: Game, placing: Placing, line: GameKit) -> int:
    """In how many places the phrase puts its count: "in each half" and "in the crate of each side" is two."""
    owner = placing.where.owner
    of_each = isinstance(owner, Owner) and owner.determiner in (*EACH, "their") and not owner.other
    each = of_each or placing.where.determiner in (*EACH, "their") or placing.what.owner is not None
    return len(game.sides) if each and line.owner in (None, "each") else 1


def _wrongly_placed(
    line: GameKit, placed: _Placed, total: int, coming: int, spoken_of: bool, instead: str
) -> Iterator[Finding]:
    placing = Many(placed.number, line.name, line.plural)
    where = placed.lines[0].span if placed.lines else line.span
    if placed.number > total:
        title = "The set-up places {placed}; the kit has {total}."
        if coming:
            title = "The set-up places {placed}; the kit has {total}, and {coming} come in later."
        told = quoting(title, placed=placing, total=total + coming, coming=coming)
        hint = "Place fewer, or add to the kit, or say how often they come in: {instead}"
        fewer = quoting(hint, instead=instead) if instead else said("Place fewer, or add to the kit.")
        yield mistake("G-too-many", told, where, fewer, line.span)
    elif line.category in ("target", "body", "ring") and spoken_of and not placed.lines:
        told = quoting("The set-up does not say where the {things} stand.", things=line.plural)
        standing = 'Add to set-up, such as "{things} on the back line of their side, evenly spaced".'
        yield mistake("G-no-place", told, line.span, quoting(standing, things=line.plural))
    elif line.category == "ball" and not placed.lines:
        told = quoting("The set-up does not say where the {things} lie.", things=line.plural)
        such = quoting('Add to set-up, such as "{things} in the middle".', things=line.plural)
        yield mistake("G-no-place", told, line.span, such)
    elif line.category == "ball" and not placed.rest and placed.number < total:
        pattern = "The set-up places {number} of {total}."
        if coming:
            pattern = "The set-up places {number} of {total}, and {coming} come in later."
        total_told = Many(total + coming, line.name, line.plural)
        told = quoting(pattern, number=placed.number, total=total_told, coming=coming)
        yield mistake("G-no-place", told, line.span, "Say where the others lie at the start.", where)
