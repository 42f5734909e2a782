"""Ways from place to place: with a load, with the ball in the hands, with nothing."""

from __future__ import annotations

from grammar.core.play import Along
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, whose
from grammar.core.values import Landmark, Part, SideId, Sort, Thing
from grammar.meanings import MateMeaning, PlayerMeaning
from grammar.said import quoting, write
from grammar.sentences import attempting


def way_between(
    reader: Reader,
    sentence: attempting.Attempt,
    aim: attempting.AimBetween,
    side: SideId,
    spoken: Spoken,
    load: frozenset[Thing],
) -> Along:
    """A way with its two ends. From a place to the like of it there is no end: what was brought can be taken again."""
    own, others = frozenset({side}), reader.others(side) or frozenset({side})
    start = reader.spots(None, aim.start, spoken, own)[0]
    begin, end = (whose(reader.game, each, place=True) for each in (aim.start, aim.goal))
    again = reader.place(aim.start) == reader.place(aim.goal) and (begin.whose, begin.side) == (end.whose, end.side)
    unsaid = others if again else own
    goal = reader.spots(None, aim.goal, spoken, unsaid)[0]
    if start == goal and start.of is not Landmark.WALL:
        raise Senseless(aim.goal, "They would stay where they are.", "Name another place to go to.")
    if aim.back is not None and (load or sentence.ball is not None):
        raise Senseless(aim, "Whoever brings something leaves it there.", "Leave out: and back.")
    return Along(start, goal, again, aim.back is not None)


def way_from_hand(
    reader: Reader, sentence: attempting.Attempt, aim: attempting.AimTo, side: SideId, spoken: Spoken
) -> Along:
    """From where a side has its balls to a place of which it must be known whose it is."""
    what = sentence.ball
    if what is None or not reader.kinds_meant(what, Sort.BALL):
        raise Senseless(what or sentence, "What is no ball is taken up.", write("take a log from the middle to …"))
    if not reader.held:
        hint = quoting("Say from where, too: carry {what} from … {aim}", what=what.words(), aim=aim.words())
        on_the_way = "Whoever has the ball can go on with it where a side has it, on a court in one piece."
        raise Senseless(sentence, on_the_way, hint)
    if aim.where is not None:
        raise Senseless(aim.where, "Only one place is where they go.", write(f"to {aim.what.words()}"))
    if reader.is_kit(aim.what) or isinstance(reader.game.meaning(aim.what.name), PlayerMeaning | MateMeaning):
        raise Senseless(aim.what, "A ball is carried to a place.", "Name a line, or an area of the sheet.")
    goals = reader.spots(None, aim.what, spoken, reader.all_sides)
    if len(goals) != 1:
        title = "`{said}`: each side has one, and it is not said whose is meant."
        raise Senseless(aim.what, title, write(f"to the {aim.what.name.text} of the other side"))
    if goals[0].of is Landmark.COURT and goals[0].part is Part.AT:
        raise Senseless(aim.what, "They are on the court already.", "Name a line, or an area of the sheet.")
    return Along(reader.own_part(side), goals[0], False)
