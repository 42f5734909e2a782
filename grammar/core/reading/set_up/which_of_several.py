"""A line of the set-up that does not say which of several it means: "a half", "a lantern", "all balls in each half"."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import SHARED, Landmark, Owner, Sort, Thing
from grammar.frozen import evolve
from grammar.said import quoting, write
from grammar.sentences import sides
from grammar.sentences.base import Name, Np
from grammar.sentences.base import Owner as OwnerPhrase
from grammar.sentences.determiners import ALL, ONE


def refuse_any_of_several(reader: Reader, where: Np) -> None:
    """Raises Senseless for "a half", "the half of a side": which of them is not said."""
    owner = where.owner if isinstance(where.owner, OwnerPhrase) else None
    unsaid = owner.determiner in ONE if owner and not owner.other else where.determiner in ONE and not where.owner
    if unsaid and not reader.is_kit(where) and len(reader.owners_of_place(reader.place(where))) > 1:
        name = where.name.text
        raise Senseless(where, "`{said}`: which of them?", quoting("Say each {name}, or of which side.", name=name))


def refuse_one_of_several(reader: Reader, sentence: sides.Placing) -> None:
    """Raises Senseless for "a lantern" where there are more: one of them, or all?"""
    what = sentence.what
    alone = reader.is_kit(what) and all(line.count == 1 for line in reader.game.kit_meant(what.name))
    if sentence.count is None and what.determiner in ONE and not alone:
        plain = evolve(what, determiner=None).words()
        raise Senseless(what, "`{said}`: one of them, or all?", write(f"1 {plain}"))


def refuse_all_in_each(reader: Reader, sentence: sides.Placing) -> None:
    """Raises Senseless where all of what is nobody's should lie in each of several places."""
    several = whose(reader.game, sentence.where, True).whose is Whose.ONE_EACH and len(reader.sides) > 1
    shared = any(each.owner is SHARED for each in things_meant(reader, sentence.what))
    if several and shared and sentence.what.determiner == "all":
        how, place = sentence.preposition, sentence.where.words()
        hint = quoting("{hint}. They are then shared out.", hint=write(f"{sentence.what.name.text} {how} {place}"))
        raise Senseless(sentence.what, "`{said}` cannot all be {how} `{where}`.", hint, how=how, where=place)


def refuse_half_of_whom(reader: Reader, sentence: sides.Placing) -> None:
    """Raises Senseless where so many of nobody's lie in "the half", or so many of several sides by one side's line."""
    said = whose(reader.game, sentence.where, True)
    if sentence.count is None or sentence.all_but or reader.is_kit(sentence.where):
        return
    if reader.place(sentence.where) is Landmark.HALF and said.whose is Whose.UNSAID:
        raise Senseless(sentence.where, "`{said}`: which of them?", write("each half"))
    owners = {each.owner for each in things_meant(reader, sentence.what)}
    if said.whose is Whose.NAMED and whose(reader.game, sentence.what).whose is Whose.UNSAID and len(owners) > 1:
        title = quoting("`{count} {what}`: of which side?", count=sentence.count.words(), what=sentence.what.words())
        raise Senseless(sentence.what, title, write(f"{sentence.what.words()} of {said.node.words()}"))


def refuse_in_each_of_many(reader: Reader, sentence: sides.Placing) -> None:
    """Raises Senseless for "3 balls in each crate" where a side has several crates: they are counted together."""
    where = sentence.where
    if sentence.count is None or not reader.is_kit(where) or where.determiner not in ALL:
        return
    for line in reader.game.kit_meant(where.name):
        if line.count > 1 and reader.kinds_meant(sentence.what, Sort.BALL):
            plain = evolve(where, determiner="the", name=Name(line.plural)).words()
            title = "`{said}`: there are {number} of them, and what lies in them is counted together."
            raise Senseless(where, title, write(f"… {sentence.preposition} {plain}"), number=line.count)


def things_meant(reader: Reader, phrase: Np) -> tuple[Thing, ...]:
    """The things of a phrase; balls are nobody's whoever has them. Raises Senseless where there are none."""
    kinds = reader.kinds_meant(phrase, *Sort)
    if all(reader.sort(kind) is Sort.BALL for kind in kinds):
        return tuple(thing for kind in reader.balls(phrase) for thing in reader.owned(kind))
    said = whose(reader.game, phrase)
    owners: set[Owner] = {*Spoken(reader.side_ids).meant(said, reader.all_sides)}
    if said.whose is Whose.UNSAID:
        owners.add(SHARED)
    first = [supply.thing for supply in reader.supplies if supply.thing.kind in kinds and supply.thing.owner in owners]
    if not first:
        raise Senseless(phrase, "There are no such things: `{said}`.", "See in the kit whose they are.")
    return tuple(dict.fromkeys(first))
