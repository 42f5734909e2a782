"""What a side has → counts and guards on them."""

from __future__ import annotations

from attrs import evolve

from grammar.core.guards import (
    Ahead,
    BallsAt,
    Compare,
    Count,
    Guard,
    LivesOf,
    PartOfAll,
    PlayersAt,
    Points,
    Relation,
    TimesRun,
    either,
    every,
)
from grammar.core.reading.phrases.frozen import where_frozen
from grammar.core.reading.phrases.runs_asked import times_run
from grammar.core.reading.phrases.things_counted import things_counted
from grammar.core.reading.phrases.without_lives import with_lives
from grammar.core.reading.sheet.amounts import amount
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, none_of, whose, whose_side
from grammar.core.values import SHARED, At, KindId, Laden, Part, Presence, SideId, Sort, Spot
from grammar.meanings import CategoryMeaning, FrozenMeaning, KitMeaning, LoadMeaning, PlayerMeaning
from grammar.said import Said, Written, quoting, said, write
from grammar.sentences import claims, finish
from grammar.sentences.base import Np, SideRef
from grammar.sentences.determiners import EACH, ONE
from grammar.sentences.points import BeginsPoints
from grammar.sentences.relays import HasRun
from grammar.sentences.runs import CountedRuns

_TIMES = {"twice as many": 2, "3 times as many": 3}


def read_condition(reader: Reader, condition: claims.Condition, spoken: Spoken, each: bool = True) -> Guard:
    """A condition where `spoken` says who "it" and "the other side" are.

    `each`: "a side" is the side spoken of, since the sentence holds for each in turn; else it is some side.
    """
    return either([every([read_claim(reader, claim, spoken, each) for claim in way.claims]) for way in condition.ways])


def read_claim(reader: Reader, claim: claims.Claim, spoken: Spoken, each: bool = True) -> Guard:
    """One claim. What every side has is so of all, what a side has of one."""
    if isinstance(claim, claims.ThereAre) and _stands_anywhere(reader, claim):
        return every([_of_side(reader, claim, side, spoken) for side in reader.side_ids])
    if isinstance(claim, claims.ThereAre):
        return _of_side(reader, claim, _whoever(reader, claim), spoken)
    said = whose_side(reader.game, claim.side)
    if said.whose is Whose.ANY and each and spoken.that is not None:
        said = evolve(said, whose=Whose.THAT)
    if said.whose is Whose.UNSAID:
        raise Senseless(claim.side, "`{said}` is no side.", write("a side"))
    sides = [side for side in reader.side_ids if side in spoken.meant(said, frozenset())]
    parts: list[Guard] = [_of_side(reader, claim, side, spoken) for side in sides]
    return either(parts) if said.whose is Whose.ANY else every(parts)


def _stands_anywhere(reader: Reader, claim: claims.ThereAre) -> bool:
    """Whether it is of targets how they stand: of what is nobody's, or that there are none, of whichever side."""
    counted = claim.counted
    if not isinstance(counted, claims.Counted) or not isinstance(counted.state, claims.Standing | claims.Down):
        return False
    things = [thing for kind in reader.kinds_meant(counted.what, Sort.TARGET) for thing in reader.owned(kind)]
    none = isinstance(claim.quantity, claims.NoneOf)
    return bool(things) and (none or all(thing.owner is SHARED for thing in things))


def _whoever(reader: Reader, claim: claims.ThereAre) -> SideId:
    """A side that has the place: what lies in one that is nobody's, or one side's, is there whoever speaks of it."""
    counted = claim.counted
    what = reader.game.meaning(counted.what) if isinstance(counted, claims.Counted) else None
    if isinstance(what, PlayerMeaning) and (what.side is not None or len(reader.sides) == 1):
        return SideId(what.side or reader.side_ids[0].key)
    placed = counted.state if isinstance(counted, claims.Counted) else None
    things = counted.what if isinstance(counted, claims.Counted) else None
    if things is None or not reader.kinds_meant(things, Sort.BALL, Sort.LOAD) or not isinstance(placed, claims.Placed):
        hint = "Of what stands say how it stands: each side has no cones standing"
        if isinstance(counted, claims.Counted) and isinstance(reader.game.meaning(counted.what), PlayerMeaning):
            whose_they_are = reader.side_ids[0].key if len(reader.side_ids) == 1 else "a side"
            line = f"{whose_they_are} has {claim.quantity.words()} {counted.words()}"
            raise Senseless(claim, "What lies in a place is said of balls, and of what players carry.", write(line))
        raise Senseless(claim, "What lies in a place is said of balls, and of what players carry.", hint)
    owners = reader.owners_of_place(reader.place(placed.where))
    if not owners or (len(owners) > 1 and whose(reader.game, placed.where, place=True).whose is not Whose.NAMED):
        whose_it_is = "the other side" if whose(reader.game, placed.where).whose is Whose.OTHER else "a side"
        lying = f"{claim.quantity.words()} {things.text} {placed.preposition} the {placed.where.name.text}"
        raise Senseless(placed.where, "`{said}`: each side has one of its own.", write(f"{whose_it_is} has {lying}"))
    return owners[0] if isinstance(owners[0], SideId) else reader.side_ids[0]


def _of_side(reader: Reader, claim: claims.Claim, side: SideId, spoken: Spoken) -> Guard:
    others = reader.others(side)
    within = evolve(spoken, own=frozenset({side}), that=frozenset({side}), other=others or None)
    count = read_count(reader, claim.counted, side, within)
    if claim.than is not None:
        return _ahead(reader, claim, side, within, count)
    if isinstance(claim, HasRun):
        return Compare(count, Relation.AT_LEAST, times_run(reader, claim))
    relation, bound = amount(claim.quantity, _shrinks(reader, claim))
    if isinstance(claim, claims.ThereAre) and isinstance(bound, PartOfAll):
        raise Senseless(claim.quantity, "What lies in a place of all is no side's.", "Write a number, no or all.")
    if isinstance(count, Points) and not isinstance(bound, int):
        raise Senseless(claim.quantity, "Points have no end, so that nobody has all.", "Write a number of points.")
    return Compare(count, relation, bound)


def _ahead(reader: Reader, claim: claims.Claim, side: SideId, spoken: Spoken, count: Count) -> Guard:
    """More than every side has of whom the line speaks. Twice nothing is not enough."""
    assert claim.than is not None
    whom, quantity = claim.than, claim.quantity
    if isinstance(whom, SideRef) and whom.other and whom.determiner in ONE:
        whom = evolve(whom, determiner=EACH[0])  # more than any other is more than each
    said = whose_side(reader.game, whom)
    than = [other for other in reader.side_ids if other in spoken.meant(said, frozenset())]
    if said.whose is Whose.ANY or not than or side in than:
        raise Senseless(claim.than, "`{said}`: more than who?", write("more points than the other side"))
    if isinstance(count, Points) and not _ends_else(reader):
        hint = "Let the clock end the round, too: after 8 min: more points wins"
        raise Senseless(claim, "Points have no end: such a lead may never come.", hint)
    found: list[Guard] = []
    for other in than:
        its = read_count(reader, claim.counted, other, evolve(spoken, own=frozenset({other}), that=frozenset({other})))
        if isinstance(quantity, claims.MoreOf):
            by = quantity.count.whole if quantity.count is not None else 1
            found.append(Ahead(count, its, 1, by) if quantity.more == "more" else Ahead(its, count, 1, by))
        elif isinstance(quantity, claims.TimesAsMany):
            found += [Ahead(count, its, _TIMES[quantity.times], 0), Compare(count, Relation.AT_LEAST, 1)]
    return every(found)


def _ends_else(reader: Reader) -> bool:
    """Whether the round ends by the clock, or by a number of points."""
    return any(True for kind in (finish.After, finish.FirstTo) for _ in reader.game.all_of("finish", kind))


def _shrinks(reader: Reader, claim: claims.Claim) -> bool:
    """Whether play makes less of it: targets standing, players in, points where sides begin with more than is asked
    for. Other points and frozen players are built up instead."""
    counted, quantity = claim.counted, claim.quantity
    if isinstance(counted, claims.CountedLives):
        return True
    if isinstance(counted, claims.CountedPoints) and isinstance(quantity, claims.Exactly):
        begins = (each for part in ("sides", "set-up") for each in reader.game.all_of(part, BeginsPoints))
        return any(each.number.whole > quantity.count.whole for each in begins)
    if not isinstance(counted, claims.Counted) or isinstance(reader.game.meaning(counted.what), FrozenMeaning):
        return False
    brought = set(reader.kinds_meant(counted.what, Sort.BALL, Sort.LOAD)) & reader.taken
    return (counted.state is None and not brought) or isinstance(counted.state, claims.Standing | claims.Inside)


def read_count(reader: Reader, counted: claims.CountedWhat, side: SideId, spoken: Spoken) -> Count:
    """What is counted of a side; `spoken` says whose places are meant."""
    if isinstance(counted, claims.CountedPoints):
        return Points(side)
    if isinstance(counted, CountedRuns):
        return TimesRun(side)
    if isinstance(counted, claims.CountedLives):
        with_lives(reader, counted, side)
        return LivesOf(side)
    meaning = reader.game.meaning(counted.what)
    if isinstance(meaning, PlayerMeaning | FrozenMeaning):
        return _players(reader, counted, meaning, side, spoken)
    if not isinstance(meaning, KitMeaning | CategoryMeaning | LoadMeaning):
        raise Senseless(counted.what, "`{said}` cannot be counted.", "Name players or things of the kit.")
    if isinstance(meaning, CategoryMeaning) and meaning.skills:
        kinds = counted.what.text.capitalize()
        raise Senseless(counted, "{what} are not counted.", "Count players, things or points.", what=kinds)
    balls = reader.kinds_meant(counted.what, Sort.BALL, Sort.LOAD)
    if balls:
        return _balls(reader, counted, balls, side, spoken)
    return things_counted(reader, counted, side, spoken)


def _players(
    reader: Reader, counted: claims.Counted, meaning: PlayerMeaning | FrozenMeaning, side: SideId, spoken: Spoken
) -> PlayersAt:
    if meaning.side not in (None, side.key):
        raise none_of(counted.what, counted.what.text, side, "Write players, or another side.")
    role = meaning.role
    who = frozenset(each for each in reader.populations([side]) if role in (None, getattr(each.role, "key", None)))
    if not who:
        raise none_of(counted.what, counted.what.text, side, "Name a role of that side.")
    match counted.state:
        case None if isinstance(meaning, FrozenMeaning):
            return PlayersAt(who, frozenset({At(where_frozen(side))}))
        case _ if isinstance(meaning, FrozenMeaning):
            raise Senseless(counted, "Frozen players are where they froze.", write(counted.what.text))
        case None | claims.Inside():
            return PlayersAt(who, frozenset({Presence.PLAYING}))
        case claims.Gone():
            return PlayersAt(who, frozenset({Presence.OUT}))
        case claims.Placed():
            return PlayersAt(who, where_players_are(reader, counted.state.preposition, counted.state.where, spoken))
    state = counted.state.words()
    raise Senseless(counted, "Players are never {state}.", "Write in, or a place where they can be.", state=state)


def where_players_are(reader: Reader, preposition: str | None, where: Np, spoken: Spoken) -> frozenset[Presence | At]:
    """The places of a phrase at which players can be; without an owner, wherever there is one of that name."""
    spots = reader.spots(preposition, where, spoken, reader.all_sides, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        title = quoting("Who is {how} {where} is not counted.", how=preposition or "", where=where.words())
        raise Senseless(where, title, "Name an area to which a rule or the set-up sends players, or write in.")
    return frozenset(At(spot) for spot in spots)


def _balls(reader: Reader, counted: claims.Counted, kinds: tuple[KindId, ...], side: SideId, spoken: Spoken) -> BallsAt:
    loads = any(reader.sort(kind) is Sort.LOAD for kind in kinds)
    match counted.state:
        case None if set(kinds) & reader.taken:
            return BallsAt(frozenset(kinds), frozenset({_brought_to(reader, counted, kinds, side)}))
        case None:
            return BallsAt(frozenset(kinds), frozenset({reader.own_part(side)}))
        case claims.Placed():
            spots = reader.spots(counted.state.preposition, counted.state.where, spoken, frozenset({side}))
            return BallsAt(frozenset(kinds), frozenset(spots))
    what, state = Written(counted.what.text) if loads else Said("Balls"), counted.state.words()
    raise Senseless(counted, "{what} are never {state}.", "Name the place where they lie.", what=what, state=state)


def _brought_to(reader: Reader, counted: claims.Counted, kinds: tuple[KindId, ...], side: SideId) -> Spot:
    """Where a side has what its players take from place to place: the one place to which they bring it."""
    loads = (who.role for who in reader.laden if who.side == side and isinstance(who.role, Laden))
    goals = {load.goal for load in loads if load.kind in kinds}
    if len(goals) != 1:
        name = counted.what.text
        many = said("more than one place" if goals else "no place")
        title = "The {name} are whoever's place they lie in, and {side} bring them to {many}."
        hint = quoting("Say where: {name} in its base.", name=name)
        raise Senseless(counted, title, hint, name=name, side=side.key, many=many)
    return next(iter(goals))
