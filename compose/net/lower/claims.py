"""Claims ("the other side has no lanterns standing") → conditions on counts."""

from __future__ import annotations

from compose.net.lower.builder import Builder, Key
from compose.net.lower.spots import spot_key
from compose.net.lower.tokens import IN, in_play, kit_meant, owners, target_place, targets_change_owners, track_of
from compose.net.net import All, AnyOf, Comparison, Condition
from grammar.meanings import AgentMeaning, KitMeaning, PlaceMeaning, PlayerMeaning, side_named
from grammar.sentences import finish
from grammar.sentences.base import AnySide, Name, SideNamed, SideOf, SideRef


def lower_condition(
    builder: Builder, condition: finish.Condition, side: str, counted_to: int, actor: str | None = None
) -> Condition:
    """The condition with "a side" and "it" meaning `side`, and "the thrower's side" meaning that of `actor`."""
    ways = tuple(
        All(tuple(lower_claim(builder, claim, side, counted_to, actor) for claim in way.claims))
        for way in condition.ways
    )
    return ways[0] if len(ways) == 1 else AnyOf(ways)


def lower_claim(
    builder: Builder, claim: finish.Claim, side: str, counted_to: int, actor: str | None = None
) -> Condition:
    """One claim; "the other side" of several means every other side."""
    parts = []
    for meant in sides_meant(builder, claim.side, side, actor):
        places = counted_places(builder, claim.counted, meant)
        total = sum_of_capacity(builder, claim.counted, places)
        parts.append(_compare(places, claim.quantity, total, _shrinks(claim.counted)))
    return parts[0] if len(parts) == 1 else All(tuple(parts))


def sides_meant(builder: Builder, phrase: AnySide, side: str, actor: str | None = None) -> tuple[str, ...]:
    """The sides that a phrase means when the side spoken of is `side`."""
    if isinstance(phrase, SideNamed):
        meaning = builder.game.meaning(phrase.name)
        return (side_named(meaning) or side,)
    if isinstance(phrase, SideOf):
        possessor = builder.game.vocabulary.get(phrase.possessive.removesuffix("'s"))
        if isinstance(possessor, AgentMeaning):
            return (actor or side,) if possessor.part == "actor" else (side,)
        return (side_named(possessor) or side,)
    if isinstance(phrase, SideRef) and phrase.other:
        return builder.others(side)
    return (side,)


def speaks_of_every_side(phrase: AnySide) -> bool:
    """Whether the sentence holds for each side in turn ("a side", "it")."""
    return not isinstance(phrase, SideNamed)


def _shrinks(counted: finish.Counted | finish.CountedPoints) -> bool:
    """Whether play makes less of it: targets standing, players in. Points, say, are built up instead."""
    return isinstance(counted, finish.Counted) and (
        counted.state is None or isinstance(counted.state, finish.Standing | finish.Inside)
    )


def _compare(places: tuple[int, ...], quantity: finish.AmountOf, total: int, shrinks: bool) -> Condition:
    """A bare number is exact where play makes less of it, and enough once reached where it is built up."""
    terms = tuple((1, place) for place in places)
    match quantity:
        case finish.NoneOf():
            return Comparison(terms, "==", 0)
        case finish.AtMost():
            return Comparison(terms, "<=", quantity.count.whole)
        case finish.AllOf() if quantity.determiner != "all":
            return Comparison(terms, ">=", 1)
        case finish.AllOf():
            return Comparison(terms, ">=", total)
        case finish.Exactly() if shrinks:
            return Comparison(terms, "==", quantity.count.whole)
        case finish.AtLeast() | finish.Exactly():
            return Comparison(terms, ">=", quantity.count.whole)


def counted_places(builder: Builder, counted: finish.Counted | finish.CountedPoints, side: str) -> tuple[int, ...]:
    """The places whose counts a side "has"."""
    if isinstance(counted, finish.CountedPoints):
        return (builder.index(("points", side)),)
    meaning = builder.game.meaning(counted.what)
    if isinstance(meaning, PlayerMeaning):
        return _players(builder, meaning, counted.state, side)
    return _kit(builder, counted.what, counted.state, side)


def _players(builder: Builder, meaning: PlayerMeaning, state: finish.State | None, side: str) -> tuple[int, ...]:
    role = meaning.role if meaning.role else "any"
    if state is None or isinstance(state, finish.Inside):
        return in_play(builder, side, role)
    if isinstance(state, finish.Placed):
        spot = builder.game.meaning(state.where.name)
        standing = spot.place if isinstance(spot, PlaceMeaning) and not spot.built_in else IN
        return _standing(builder, side, meaning.role, (standing,))
    return ()


def _standing(builder: Builder, side: str, role: str | None, standings: tuple[str, ...]) -> tuple[int, ...]:
    return tuple(
        number
        for number, key in enumerate(builder.places)
        if key[0] == "player" and key[1] == side and key[3] in standings and (role is None or key[2] == role)
    )


def _kit(builder: Builder, what: Name, state: finish.State | None, side: str) -> tuple[int, ...]:
    meaning = builder.game.meaning(what)
    if (isinstance(meaning, KitMeaning) and meaning.category == "ball") or what.text in ("ball", "balls"):
        spot: Key = ("half", side) if builder.game.halved else ("court", None)
        if isinstance(state, finish.Placed):
            spot = spot_key(builder, state.preposition, state.where, side, side)
        kinds = [line.name for line in kit_meant(builder, meaning, "ball")]
        return tuple(n for kind in kinds for n in builder.found(("ball", kind, *spot)))
    if isinstance(meaning, KitMeaning) and builder.found(("step", meaning.key)):
        return _on_track(builder, meaning.key, state, side)
    standing = "down" if isinstance(state, finish.Down) else "standing"
    places = []
    for line in kit_meant(builder, meaning, "target"):
        for owner in owners(builder, line):
            if owner == side or (owner is None and not targets_change_owners(builder)):
                places.append(target_place(builder, line.name, owner, standing))
    return tuple(places)


def _on_track(builder: Builder, kind: str, state: finish.State | None, side: str) -> tuple[int, ...]:
    places = builder.found(("step", kind))
    if not isinstance(state, finish.AtHome):
        return places
    return places[:1] if track_of(builder, kind).start == side else places[-1:]


def sum_of_capacity(builder: Builder, counted: finish.Counted | finish.CountedPoints, places: tuple[int, ...]) -> int:
    """The most that the places can hold together: what "all" means."""
    every = list(builder.places.values())
    if isinstance(counted, finish.CountedPoints):
        return every[places[0]].capacity
    by_kind = {(every[place].token, every[place].side, every[place].kind): every[place].capacity for place in places}
    if any(every[place].token == "player" for place in places):
        return max(by_kind.values(), default=0)
    return sum(by_kind.values())
