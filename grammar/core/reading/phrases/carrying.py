"""Players who carry something, or nothing, or who have a ball."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import KindId, Laden, Population, Sort
from grammar.frozen import evolve
from grammar.meanings import NothingMeaning
from grammar.said import Value, quoting
from grammar.sentences import play
from grammar.sentences.base import Np


def with_load(reader: Reader, who: frozenset[Population], load: Np | None) -> frozenset[Population]:
    """Of these players those who carry such a thing, where a phrase speaks of one."""
    if load is None:
        return who
    if isinstance(reader.game.meaning(load.name), NothingMeaning):
        if not reader.laden:
            raise Senseless(load, "Nobody carries anything here.", "Who holds a ball is not counted; leave that out.")
        return frozenset(each for each in who if not isinstance(each.role, Laden))
    kinds = set(reader.kinds_meant(load, Sort.LOAD, Sort.BALL))
    found = frozenset(each for each in who if isinstance(each.role, Laden) and each.role.kind in kinds)
    if not any(isinstance(each.role, Laden) and each.role.kind in kinds for each in reader.laden):
        if reader.held and reader.kinds_meant(load, Sort.BALL):
            title = quoting("Who of a side has `{load}` is read only of whoever is touched for it.", load=load.words())
            raise Senseless(load, title, "Say who touches players who carry it, and of the ball itself where it goes.")
        hint: Value = "Say in play who takes it from where to where."
        if reader.kinds_meant(load, Sort.BALL):
            hint = quoting("Say in play: players carry {load} to the back line of the other side", load=load.words())
        raise Senseless(load, "Nobody carries `{load}`.", hint, load=load.words())
    return found


def balls_in_hand(reader: Reader, load: Np | None) -> frozenset[KindId]:
    """The balls of a phrase that nobody takes from place to place: a side has them, and anybody of it carries one."""
    if load is None or isinstance(reader.game.meaning(load.name), NothingMeaning):
        return frozenset()
    kinds = reader.kinds_meant(load, Sort.BALL)
    if not kinds or set(kinds) & reader.taken:
        return frozenset()
    if not reader.held:
        title = "Who has a ball is known only where a side has it, on a court in one piece."
        hint = "Write: court 18 m by 9 m, in one piece, and in the set-up: north begins with the ball"
        raise Senseless(load, title, hint)
    return frozenset(reader.balls(load))


def touched_with(reader: Reader, load: Np | None) -> frozenset[KindId]:
    """The same in an event: whoever has one has to be chased for it."""
    kinds = balls_in_hand(reader, load)
    if load is not None and kinds and not kinds <= reader.chased_for:
        hint = quoting(
            "Say in play, too: {chase}. Where the ball goes then is said of it: {goes_down}",
            chase=_chase(reader, load),
            goes_down=goes_down(load),
        )
        raise Senseless(load, "Nobody is chased because they carry `{load}`.", hint, load=load.words())
    return kinds


def goes_down(load: Np) -> str:
    """What is said of a ball that falls, which is never in the hands of one of them that is counted."""
    return f"the {load.name.text} goes to the court"


def _chase(reader: Reader, load: Np) -> str:
    """A line of the play that chases for a ball: as the one line does that chases anybody, or of all players."""
    lines = [each for each in reader.game.all_of("play", play.Touch) if each.load is None]
    if len(lines) == 1:
        return evolve(lines[0], load=load).words()
    return f"players touch players of the other side who carry {load.words()}"
