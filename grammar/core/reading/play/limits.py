"""Lines about what counts, about going with the ball, and about who sits or kneels."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.limits import CountsOnly, LowDown, Posture, Steps, Valid
from grammar.core.reading.play.offers import acting
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken
from grammar.core.skills import BOUNCING, FLYING, WITH_A_BALL
from grammar.core.values import Population, Sort, Thing
from grammar.said import quoting
from grammar.sentences import limits
from grammar.sentences.base import Node, Np
from grammar.sentences.limits import (
    BOUNCED,
    CountsAfterBounce,
    HitNotBounced,
    NobodyRuns,
    NotAbove,
    NotBounced,
    StepLimit,
)


def read_after_bounce(reader: Reader, sentence: CountsAfterBounce, line: int) -> Iterator[CountsOnly]:
    """Only what bounced first counts."""
    if not reader.tried & FLYING:
        raise Senseless(sentence, "Nothing flies here that could bounce.", "Leave the line out.")
    yield CountsOnly(Valid.AFTER_BOUNCE, (line,))


def read_not_bounced(reader: Reader, sentence: NotBounced, line: int) -> Iterator[CountsOnly]:
    """Only what comes straight counts."""
    _comes_so(reader, sentence)
    yield from (CountsOnly(Valid(f"{sentence.what} {way}"), (line,)) for way in sentence.ways)


def read_hit_not_bounced(reader: Reader, sentence: HitNotBounced, line: int) -> Iterator[CountsOnly]:
    """Only what comes straight counts where one of these is hit."""
    _comes_so(reader, sentence)
    meant = frozenset(_hit(reader, sentence.what)) & reader.sent_at
    if not meant:
        title = quoting("No ball is sent at `{what}` here.", what=sentence.what.words())
        raise Senseless(sentence.what, title, "Leave the line out, or name what is aimed at.")
    yield from (CountsOnly(Valid(f"hit {way}"), (line,), meant) for way in sentence.ways)


def _hit(reader: Reader, what: Np) -> tuple[Population | Thing, ...]:
    """The things or players of a phrase, of every side where it does not say whose."""
    everybody = Spoken(reader.side_ids)
    if reader.is_kit(what):
        return reader.thing_phrase(what, everybody, reader.all_sides, Sort.TARGET, Sort.RING, Sort.BODY)
    said, role = reader.player_phrase(what)
    return reader.of_role(everybody.meant(said, reader.all_sides), role)


def _comes_so(reader: Reader, sentence: NotBounced | HitNotBounced) -> None:
    """Raises Senseless where no ball can come by the floor or a wall, as the line says it."""
    if BOUNCED in sentence.ways:
        nothing_bounces(reader, sentence)
    elif reader.tried.isdisjoint(WITH_A_BALL):
        raise Senseless(sentence, "No ball is sent here that could come off a wall.", "Leave the line out.")


def nothing_bounces(reader: Reader, node: Node) -> None:
    """Raises Senseless where no ball flies, or where all that counts has bounced."""
    if not reader.tried & BOUNCING:
        raise Senseless(node, "Nothing flies here that could bounce.", "Leave the line out.")
    if any(True for _ in reader.game.all_of("play", CountsAfterBounce)):
        raise Senseless(node, "All that counts here has bounced: another line says so.", "Take one of them out.")


def read_not_above(reader: Reader, sentence: NotAbove, line: int) -> Iterator[CountsOnly]:
    """Only hits so low count."""
    if not any(isinstance(each, Population) for each in reader.sent_at):
        raise Senseless(sentence, "Nobody aims at players here.", "Leave the line out, or say who is aimed at.")
    yield CountsOnly(Valid(sentence.part), (line,))


def read_steps(reader: Reader, sentence: NobodyRuns | StepLimit, line: int) -> Iterator[Steps]:
    """How many steps one may go with a ball: none where nobody runs with it."""
    for ball in reader.balls(sentence.ball):
        if ball in reader.run_with:
            title = quoting("Another line lets players go from place to place with the {ball}.", ball=ball.key)
            raise Senseless(sentence, title, "Take one of the two lines out.")
        yield Steps(ball, sentence.most.whole if isinstance(sentence, StepLimit) else 0, (line,))


def read_low_down(reader: Reader, sentence: limits.LowDown, line: int) -> Iterator[LowDown]:
    """Who sits or kneels. Raises Senseless where another line says it otherwise of the same players."""
    who = acting(reader, sentence.who)
    for other in reader.game.all_of("play", limits.LowDown):
        if other.how != sentence.how and set(acting(reader, other.who)) & set(who):
            title = quoting("Another line says that they play {how}.", how=other.how)
            raise Senseless(sentence, title, "Take one of the two lines out.")
    yield from (LowDown(each, Posture(sentence.how), (line,)) for each in who)
