"""Lines about lives: how many each has, who loses one, who gets one back, and when the last is lost."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from grammar.core.lives import LastLife, Lives
from grammar.core.reading.phrases.without_lives import none_of_these
from grammar.core.reading.play.offers import acting
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose
from grammar.core.rules import LifeOf, Person, Subject, Trigger
from grammar.core.values import Population, SideId
from grammar.frozen import evolve
from grammar.said import listed, quoting, write
from grammar.sentences import lives
from grammar.sentences.base import Np, Quantity
from grammar.sentences.determiners import ALL

MOST = 9  # our choice: more are counted with points


def read_lives(reader: Reader, sentence: lives.HasLives, line: int) -> Iterator[Lives]:
    """How many lives each of them has; who has a line of their own has what that says."""
    named = reader.player_phrase(sentence.who)[1] is not None
    if sentence.who.determiner not in (*ALL, None) and not named and not sentence.who.other:
        raise Senseless(sentence.who, "`{said}`: which of them?", write("each player has 3 lives"))
    number = sentence.number
    if number.value != number.whole or not 1 <= number.whole <= MOST:
        raise Senseless(
            number,
            "Nobody has {number} lives.",
            quoting("Write a whole number from 1 to {most}.", most=MOST),
            number=number.words(),
        )
    own = _with_own_line(reader, sentence)
    if sentence.who.other and not own:
        hint = "Say before how many lives some with a task have."
        raise Senseless(sentence.who, "`{said}`: others than who?", hint)
    for who in (each for each in acting(reader, _each(sentence.who)) if each not in own):
        yield Lives(who, number.whole, (line,))


def _each(who: Np) -> Np:
    """The phrase of a line about lives: "each other player" is whoever has no line of their own."""
    return evolve(who, determiner="each", other=None)


def _narrow(reader: Reader, who: Np) -> int:
    """How much a line names: a task, a side."""
    said, role = reader.player_phrase(_each(who))
    return int(role is not None) + int(said.whose is Whose.NAMED)


def _with_own_line(reader: Reader, sentence: lives.HasLives) -> frozenset[Population]:
    """Those of whom another line speaks more narrowly. Raises Senseless where one speaks as narrowly of the same."""
    found: set[Population] = set()
    mine, named = frozenset(acting(reader, _each(sentence.who))), _narrow(reader, sentence.who)
    for line in reader.game.all_of("sides", lives.HasLives):
        its = frozenset(acting(reader, _each(line.who))) & mine
        narrower = _narrow(reader, line.who)
        if its and narrower > named:
            found |= its
        elif its and narrower == named and line.words() != sentence.words():
            title = quoting("Another line says how many lives they have: `{line}`.", line=line.words())
            raise Senseless(sentence, title, "Keep one of the two.")
    return frozenset(found)


def last_lives(reader: Reader, event: lives.LastLife) -> Iterator[tuple[SideId, LastLife, Spoken]]:
    """The players who may lose their last life, side by side, and who is spoken of then."""
    for side in reader.side_ids:
        who = frozenset(each for each in acting(reader, event.who) if each.side == side and has_lives(reader, each))
        if who:
            yield side, LastLife(who), reader.of_one(side)
    if not any(has_lives(reader, each) for each in acting(reader, event.who)):
        raise none_of_these(reader, event, "Name those who have lives.")
    _same_number(reader, event.number, acting(reader, event.who))


def _same_number(reader: Reader, said: Quantity | None, who: Iterable[Population]) -> None:
    """Raises Senseless where a line says another number of lives than those have of whom it speaks."""
    numbers = sorted({each.number for each in reader.lives if each.who in set(who)})
    if said is not None and numbers and numbers != [said.value]:
        has = listed(map(str, numbers), "or")
        raise Senseless(
            said, "Each of these has {has} lives at the start, and never more.", write(str(numbers[-1])), has=has
        )


def has_lives(reader: Reader, who: object) -> bool:
    """Whether the lives of a population are counted."""
    return any(each.who == who for each in reader.lives)


def lives_changed(
    reader: Reader, node: lives.LosesLife | lives.WinsLife, who: Iterable[Subject], trigger: Trigger
) -> Iterator[LifeOf]:
    """Some lose a life, or get one back."""
    if isinstance(trigger, LastLife):
        title = "Whoever has lost the last life and plays on, or comes back, has all of them again."
        raise Senseless(node, title, "Say where they go: that player joins the other side")
    for each in who:
        if not isinstance(each, Person) or each is Person.MATE:
            raise Senseless(node, "Only who took part in this, in play, loses or gets lives.", write("that player"))
        if not reader.lives:
            raise Senseless(node, "Nobody has lives.", 'Add to sides: "each player has 3 lives".')
        if isinstance(node, lives.WinsLife):
            _same_number(reader, node.most, (one.who for one in reader.lives))
        yield LifeOf(each, -1 if isinstance(node, lives.LosesLife) else 1)
