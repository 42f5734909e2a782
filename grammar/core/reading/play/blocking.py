"""Who blocks or guards what, and how many of them there are to each thing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import suppress

from grammar.core.play import Guarding
from grammar.core.reading.phrases.aims import spoken_of
from grammar.core.reading.play.offers import acting
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.stopping import Blocking, Means
from grammar.core.values import SHARED, Population, SideId, Sort, Thing
from grammar.frozen import evolve
from grammar.said import quoting, write
from grammar.sentences import attempting, play
from grammar.sentences.base import Np
from grammar.sentences.blocking import Blocks
from grammar.sentences.determiners import EACH

ONE = ("a", "an")
MEANS = {
    None: Means.BODY,
    "with the body": Means.BODY,
    "with the hands": Means.HANDS,
    "with the feet": Means.FEET,
    "with the hands and feet": Means.HANDS_AND_FEET,
    "with the hands and body": Means.HANDS_AND_BODY,
    "with the feet and body": Means.FEET_AND_BODY,
    "with the hands, feet and body": Means.ALL_OF_IT,
    "with a mat": Means.MAT,
    "with a tray": Means.TRAY,
}


def read_blocks(reader: Reader, sentence: Blocks, line: int) -> Iterator[Blocking]:
    """Players of the side whose the thing is; of what is nobody's, players of every side."""
    role = reader.player_phrase(sentence.who)[1]
    near = sentence.count is None and role is None and _do_something_else(reader, sentence.who)
    whats = [each for each in (sentence.what, sentence.also) if each is not None]
    if len(whats) == 2 and whats[0].words() == whats[1].words():
        raise Senseless(whats[1], "`{said}` stands twice.", "Take one of them out.")
    for what in whats:
        one = evolve(sentence, what=what, also=None)
        yield from _whoever_is_near(reader, one, line) if near else _of_what(reader, one, line)


def _whoever_is_near(reader: Reader, sentence: Blocks, line: int) -> Iterator[Blocking]:
    """Of those who try something else, too: as many as another line says, else one at a time before each thing."""
    counted = [each for each in reader.game.all_of("play", Blocks) if each.count is not None]
    said = {one.thing: one for each in counted for one in _by_side(reader, each, _before_each(each), line)}
    for blocking in _by_side(reader, sentence, None, line):
        if blocking.thing not in said:
            yield evolve(blocking, each=1, near=True)
            continue
        if said[blocking.thing].means is not blocking.means:
            title = "Two lines say who stops balls before the same thing, and not with the same."
            raise Senseless(
                sentence, title, quoting("Say in the other, too: {what}", what=sentence.means or "with the body")
            )
        yield evolve(blocking, each=said[blocking.thing].each)


def _do_something_else(reader: Reader, who: Np) -> bool:
    """Whether any line of play gives these players anything to try in play."""
    tried = [
        *(each.who for each in reader.game.all_of("play", attempting.Attempt) if each.where is None),
        *(each.who for each in reader.game.all_of("play", play.Touch)),
        *(each.who for each in reader.game.all_of("play", play.Take)),
    ]
    return bool(frozenset(acting(reader, who)) & {one for each in tried for one in acting(reader, each)})


def _of_what(reader: Reader, sentence: Blocks, line: int) -> list[Blocking]:
    """Of one of the things of which a line speaks. Raises Senseless."""
    found = list(_by_side(reader, sentence, _before_each(sentence), line))
    if not found:
        raise Senseless(sentence.who, "Nobody blocks what belongs to others.", "Name players of the side whose it is.")
    for blocking in found:
        _each_or_in_all(reader, sentence, blocking)
        _enough(reader, sentence, blocking)
    return found


def _before_each(sentence: Blocks) -> int | None:
    """How many stand before each thing; None: all who have that task share the things among them. Raises Senseless."""
    who, of_each = sentence.who, sentence.what.determiner in EACH
    if sentence.count is None and of_each and who.determiner not in (*ONE, None):
        title = "`{said}` before each of them: how many are that?"
        raise Senseless(who, title, "Say how many, such as: 1 player stands before each target")
    if sentence.count is not None:
        return sentence.count.whole
    return 1 if who.determiner in ONE else None


def _each_or_in_all(reader: Reader, sentence: Blocks, blocking: Blocking) -> None:
    """Raises Senseless where so many stand before several things, and it is not said that they do before each."""
    number = _number(reader, blocking.thing)
    if blocking.each is not None and sentence.what.determiner not in EACH and number > 1:
        title = quoting("So many before each of the {number}, or before one of them?", number=number)
        raise Senseless(sentence.what, title, "Say it of each, such as: 1 player stands before each target")


def _number(reader: Reader, thing: Thing) -> int:
    return sum(supply.count for supply in reader.supplies if supply.thing == thing)


def blocked_things(reader: Reader, lines: Iterable[tuple[Blocks, int]]) -> Iterator[Thing]:
    """The things that somebody may block; a line that means nothing is told where it is read."""
    for sentence, line in lines:
        with suppress(Senseless):
            yield from (each.thing for each in read_blocks(reader, sentence, line))


def _by_side(reader: Reader, sentence: Blocks, each: int | None, line: int) -> Iterator[Blocking]:
    """Their own, or what is nobody's."""
    who = acting(reader, sentence.who)
    for side in reader.side_ids:
        own = frozenset(one for one in who if one.side == side)
        if own:
            phrase, spoken = sentence.what, spoken_of(reader, side)
            _refuse_of_every_side(reader, phrase)
            for thing in reader.thing_phrase(phrase, spoken, frozenset({side}), Sort.TARGET, Sort.RING, some=False):
                if thing.owner in (side, SHARED):
                    yield Blocking(own, thing, each, MEANS[sentence.means], (line,))


def _refuse_of_every_side(reader: Reader, phrase: Np) -> None:
    """Raises Senseless for the things of every side: before those of others nobody stands."""
    said = whose(reader.game, phrase)
    if said.whose in (Whose.ONE_EACH, Whose.ANY) and len(reader.sides) > 1:
        hint = write(f"the {phrase.name.text} of their side")
        raise Senseless(said.node, "Nobody blocks what belongs to others.", hint)


def _enough(reader: Reader, sentence: Blocks, blocking: Blocking) -> None:
    """So many stand before each thing at once: the role has as many, or the side."""
    there = _number(reader, blocking.thing)
    most = max(_most(reader, who) for who in blocking.who)
    if blocking.each is not None and blocking.each * there > most:
        title = quoting(
            "{number} would stand before {there}; there are at most {most}.",
            number=blocking.each * there,
            there=there,
            most=most,
        )
        raise Senseless(sentence, title, "Let fewer stand before each, or add to the role.")


def read_guarding(reader: Reader, sentence: play.GuardLimit, line: int) -> Iterator[Guarding]:
    """How many may guard each thing: of its own side, where the line does not say of which."""
    said, role = reader.player_phrase(sentence.who)
    spoken = Spoken(reader.side_ids)
    nobody = True
    for thing in reader.thing_phrase(sentence.what, spoken, reader.all_sides, Sort.TARGET):
        own = frozenset({thing.owner}) if isinstance(thing.owner, SideId) else reader.all_sides
        who = frozenset(reader.of_role(spoken.meant(said, own) & own, role))
        if who:
            nobody = False
            _refuse_too_many(reader, sentence, who)
            _refuse_in_all(reader, sentence, thing)
            yield Guarding(who, thing, sentence.most.whole, (line,))
    if nobody:
        raise Senseless(sentence.who, "Nobody guards what belongs to others.", "Name players of the side whose it is.")


def _refuse_too_many(reader: Reader, sentence: play.GuardLimit, who: frozenset[Population]) -> None:
    most = sum(_most(reader, each) for each in who)
    if sentence.most.whole > most:
        title = quoting(
            "There are never {most} of them: there are at most {most_2}.", most=sentence.most.words(), most_2=most
        )
        raise Senseless(sentence.most, title, quoting("Write {most} or fewer.", most=most))


def _most(reader: Reader, who: Population) -> int:
    """How many of them there can be: as many as the role says, or the side."""
    side = next(one for one in reader.sides if one.id == who.side)
    role = next((one for one in reader.roles if (one.side, one.id) == (who.side, who.role)), None)
    return role.most if role else side.most


def _refuse_in_all(reader: Reader, sentence: play.GuardLimit, thing: Thing) -> None:
    """Raises Senseless where so many may guard several things, and it is not said that they may guard each."""
    if sentence.what.determiner not in (*EACH, *ONE, "any") and _number(reader, thing) > 1:
        raise Senseless(sentence.what, "`{said}`: each of them, or all together?", write(f"each {thing.kind.key}"))
