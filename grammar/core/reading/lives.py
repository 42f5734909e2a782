"""Lines about lives: how many each has, who loses one, who gets one back, and when the last is lost."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.lives import LastLife, Lives
from grammar.core.reading.offers import acting
from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Senseless, Spoken
from grammar.core.rules import LifeOf, Person, Subject
from grammar.core.values import SideId
from grammar.sentences import lives

MOST = 9  # our choice: more are counted with points


def read_lives(reader: Reader, sentence: lives.HasLives, line: int) -> Iterator[Lives]:
    """How many lives each of them has."""
    if sentence.who.determiner not in ("each", "every", "all", None):
        raise Senseless(sentence.who, f"`{sentence.who.words()}`: which of them?", "Write: each player has 3 lives")
    number = sentence.number
    if number.value != number.whole or not 1 <= number.whole <= MOST:
        raise Senseless(number, f"Nobody has {number.words()} lives.", f"Write a whole number from 1 to {MOST}.")
    for who in acting(reader, sentence.who):
        yield Lives(who, number.whole, (line,))


def last_lives(reader: Reader, event: lives.LastLife) -> Iterator[tuple[SideId, LastLife, Spoken]]:
    """The players who may lose their last life, side by side, and who is spoken of then."""
    for side in reader.side_ids:
        who = frozenset(each for each in acting(reader, event.who) if each.side == side and has_lives(reader, each))
        others = reader.others(side)
        if who:
            own = frozenset({side})
            yield side, LastLife(who), Spoken(reader.side_ids, own=own, that=own, other=others or None)
    if not any(has_lives(reader, each) for each in acting(reader, event.who)):
        raise Senseless(event, "Nobody of these has lives.", 'Add to sides: "each player has 3 lives".')


def has_lives(reader: Reader, who: object) -> bool:
    """Whether the lives of a population are counted."""
    return any(each.who == who for each in reader.lives)


def life_of(reader: Reader, node: lives.LosesLife | lives.WinsLife, who: Subject) -> LifeOf:
    """Somebody loses a life, or gets one back."""
    if not isinstance(who, Person) or who is Person.MATE:
        raise Senseless(node, "Only who took part in this, in play, loses or gets lives.", "Write: that player")
    if not reader.lives:
        raise Senseless(node, "Nobody has lives.", 'Add to sides: "each player has 3 lives".')
    return LifeOf(who, -1 if isinstance(node, lives.LosesLife) else 1)
