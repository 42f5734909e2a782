"""What is said of all though one at a time is meant: "throw all balls", "all chestnuts go back"."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.reading.sheet.whose import THAT_WORDS, Senseless
from grammar.frozen import evolve
from grammar.game import Game
from grammar.meanings import CategoryMeaning, KitMeaning, PlayerMeaning
from grammar.said import write
from grammar.sentences import attempting, claims, events, play, points, queues, then
from grammar.sentences.base import Name, Node, Np
from grammar.sentences.determiners import ALL, EACH
from grammar.words import singulars

CARRIED = "`{said}`: one carries one at a time."
TO_ONE_PLACE = "`{said}`: of which side?"


def refuse_all_of_one(game: Game, node: Node) -> None:
    """Raises Senseless for a word that speaks of all, or of any, where a line is about one at a time."""
    for phrase, words, title, as_one in _one_at_a_time(node):
        if phrase is not None and phrase.determiner in words:
            article = "the" if isinstance(node, then.Drops | then.GoesBack) else None
            plain = as_one or with_article(game, phrase, article)
            raise Senseless(phrase, title, write(plain))
    match node:
        case claims.Claim(quantity=claims.AllOf(determiner="the") as the, counted=claims.Counted(what=name)):
            if _several(game, name.text):
                raise Senseless(the, "`the {name}`: all of them, or one?", write(f"all {name.text}"), name=name.text)
        case queues.Queued() if node.where.determiner == "any" and len(game.sides) > 1:
            raise Senseless(node.where, "`{said}`: which of them?", write(_the(node.where)))
        case points.AtTheEnd() if node.first.determiner == "all":
            name = node.first.counted.what
            title = "`all {name}`: each of them, or all together?"
            raise Senseless(node.first, title, write(f"{name.text} …"), name=name.text)


_Refused = tuple[Np | None, tuple[str, ...], str, str | None]


def _one_at_a_time(node: Node) -> Iterator[_Refused]:
    """The phrases of a node that are about one, the words that these cannot have, why, and what to write instead."""
    match node:
        case attempting.Attempt():
            yield node.ball, ALL, "`{said}`: with one at a time; how many there are the kit says.", None
        case attempting.AimAt():
            yield node.what, EACH, "`{said}`: one is aimed at at a time.", f"at {_the(node.what)}"
            yield node.load, ALL, CARRIED, None
        case attempting.AimTo():
            yield node.what, (*ALL, *THAT_WORDS), "`{said}`: a pass goes to one.", "a team-mate"
        case play.Touch():
            yield node.load, ALL, CARRIED, None
        case play.StandUp():
            yield node.what, ALL, "`{said}`: one is stood up at a time.", None
        case play.Take():
            yield from ((each, ALL, "`{said}`: one is taken at a time.", None) for each in node.phrases)
            yield node.goal, (*ALL, "any"), TO_ONE_PLACE, _the(node.goal)
        case attempting.AimBetween():
            yield from ((each, (*ALL, "any"), TO_ONE_PLACE, _the(each)) for each in (node.start, node.goal))
        case events.Hit() | events.Touched():
            yield node.load, ALL, CARRIED, None
        case events.GoesThrough():
            yield node.through, ALL, "`{said}`: that happens to one at a time.", None
        case then.Drops() | then.GoesBack():
            yield node.what, (*ALL, "any"), "`{said}`: that happens to one at a time.", None
        case then.TurnsInto():
            yield node.role, ALL, "`{said}`: one has one task.", None


def _the(phrase: Np) -> str:
    return evolve(phrase, determiner="the").words()


def _several(game: Game, name: str) -> bool:
    meaning = game.vocabulary.get(name)
    return name != meaning.key if isinstance(meaning, KitMeaning) else bool(singulars(name))


def with_article(game: Game, phrase: Np, article: str | None = None) -> str:
    """The phrase about one of them: "a cone", or with another article."""
    meaning = game.vocabulary.get(phrase.name.text)
    one = meaning.key if isinstance(meaning, KitMeaning) else phrase.name.text
    one = meaning.category if isinstance(meaning, CategoryMeaning) and not meaning.skills else one
    if isinstance(meaning, PlayerMeaning):
        one = meaning.role or next(iter(singulars(one)), one)
    return evolve(phrase, determiner=article or ("an" if one[0] in "aeiou" else "a"), name=Name(one)).words()
