"""Places and lines that cannot stand beside each other: seen without playing."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.finding import Finding, mistake
from grammar.game import Game, GameArea
from grammar.meanings import PlaceMeaning, PlayerMeaning
from grammar.said import Capital, listed, quoting
from grammar.sentences.attempting import Attempt
from grammar.sentences.base import Node, Np
from grammar.sentences.play import Stay
from grammar.sentences.sides import Placing


def areas_in_a_circle(game: Game) -> Iterator[Finding]:
    """An area lies by a place that does not lie by the area itself, in however many steps."""
    by_name = {area.name: area for area in game.areas}
    told: set[str] = set()
    for area in game.areas:
        chain = [area]
        while (following := _lies_by(game, chain[-1], by_name)) and following not in chain:
            chain.append(following)
        if following is area and area.name not in told:
            told.update(each.name for each in chain)
            told_of = listed(
                quoting("the {name} lies {where} the {other}", name=each.name, where=each.preposition, other=after.name)
                for each, after in zip(chain, [*chain[1:], area], strict=True)
            )
            title = quoting("{places}: that is no place.", places=Capital(told_of))
            hint = quoting('Say where one of them lies, such as "{name}: beside each half".', name=area.name)
            others = tuple(each.span for each in chain[1:])
            yield mistake("G-circle", title, area.span, hint, *others)


def _lies_by(game: Game, area: GameArea, by_name: dict[str, GameArea]) -> GameArea | None:
    meaning = game.vocabulary.get(area.spot)
    return by_name.get(meaning.place) if isinstance(meaning, PlaceMeaning) else None


def forbidden_places(game: Game) -> Iterator[Finding]:
    """Nobody stays or stands where the sheet says that nobody does."""
    closed = {area.name: area for area in game.areas if "enters" in area.forbidden}
    for section in ("set-up", "play"):
        for sentence in game.sentences(section):
            place = _entered(game, sentence)
            if place in closed:
                title = quoting("Nobody enters the {place}, but this line puts somebody there.", place=place)
                hint = "Take one of the two lines out, or name another place."
                yield mistake("G-contradiction", title, sentence.span, hint, closed[place].span)


def kept_from_acting(game: Game) -> Iterator[Finding]:
    """Nobody who has to throw or roll is kept where the sheet says that nobody acts."""
    idle = {area.name: area for area in game.areas if "acts" in area.forbidden}
    for stay in game.all_of("play", Stay):
        place = _entered(game, stay)
        act = next((each for each in game.all_of("play", Attempt) if _same_players(game, stay.who, each.who)), None)
        if place in idle and act is not None:
            title = quoting(
                "Nobody acts in the {place}, but this line keeps {who} there, who have to act.",
                place=place,
                who=stay.who.words(),
            )
            hint = "Take one of the lines out, or let them stay in another place."
            yield mistake("G-contradiction", title, stay.span, hint, idle[place].span, act.span)


def _same_players(game: Game, one: Np, other: Np) -> bool:
    first, second = game.meaning(one.name), game.meaning(other.name)
    if not isinstance(first, PlayerMeaning) or not isinstance(second, PlayerMeaning):
        return False
    return first.role == second.role and (first.side == second.side or None in (first.side, second.side))


def _entered(game: Game, sentence: Node) -> str:
    """The area in which a sentence puts players, or "" where it puts none."""
    if not isinstance(sentence, Stay | Placing) or sentence.preposition != "in":
        return ""
    who = sentence.who if isinstance(sentence, Stay) else sentence.what
    where = game.meaning(sentence.where.name)
    if isinstance(game.meaning(who.name), PlayerMeaning) and isinstance(where, PlaceMeaning):
        return where.place
    return ""


def said_twice(game: Game) -> Iterator[Finding]:
    """The same line twice, or two homes for the same players."""
    for section in ("space", "sides", "set-up", "play", "when", "finish"):
        first: dict[str, Node] = {}
        for sentence in game.sentences(section):
            words = sentence.words()
            if words in first:
                yield mistake("G-twice", "This line stands twice.", sentence.span, "Take one out.", first[words].span)
            first.setdefault(words, sentence)
    homes: dict[str, Stay] = {}
    for stay in game.all_of("play", Stay):
        who = stay.who.words()
        if who in homes and homes[who].words() != stay.words():
            title = quoting("Two lines say where {who} stay.", who=who)
            hint = "Keep one, or give some of them a role of their own under `sides`."
            yield mistake("G-contradiction", title, stay.span, hint, homes[who].span)
        homes.setdefault(who, stay)
