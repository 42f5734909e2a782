"""Every word of a sentence exchanged for others that the grammar allows there: made from the tree, slot by slot."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

import attrs
from attrs import evolve, field, frozen

from grammar.game import Game
from grammar.meanings import ACTORS, BUILT_IN_PLACES, CATEGORY_WORDS, Meaning
from grammar.sentences import attempting, ball, base, claims, finish, lives, queues, resting, sets, then, time
from grammar.sentences.base import Name, Node, Np, Owner, OwnerName, Quantity, SideNamed, SideOf, SideRef, SideSame

DETERMINERS = (None, "a", "the", "their", "its", "each", "all", "any", "that")
PREPOSITIONS = ("in", "on", "behind", "before", "beside", "across", "along", "around", "between")
SKILLS = ("overarm throw", "underarm throw", "roll", "kick", "strike", "pass", "carry", "tow", "push", "run")
AGENTS = ("thrower", "catcher", "keeper", "teacher")
OTHER = (None, "other")

# What else may stand in a slot of fixed words, by class and field; a field alone where every class has the same.
WORDS: Mapping[str, tuple[str | None, ...]] = {
    "determiner": DETERMINERS,
    "other": OTHER,
    "preposition": PREPOSITIONS,
    "Court.cut": (None, "halved across", "in one piece", "in equal parts"),
    "NobodyThere.verb": ("guards there", "enters there", "acts there", "is touched there"),
    "Headcount.each": (None, "each", "all"),
    "OddPupil.does": ("joins the first side", "keeps the score", "is the teacher's helper", "changes in each round"),
    "Placing.all_but": (None, "all but"),
    "Placing.spread": (None, "evenly spaced", "in a ring", "staggered", "in a triangle", "close together"),
    "AimAt.standing_or_not": (None, "standing or not", "in order"),
    "RestInHalf.which": ("half it was sent to", "half it came from", "half it left"),
    "RestToHalf.which": ("half it was sent to", "half it came from", "half it left"),
    "Rest.state": (None, "missed", "caught", "scored", "passed", "blocked"),
    "Blocks.means": (None, *(f"with {each}" for each in ("a mat", "a tray", "the hands", "the feet", "the body", *(
        f"the {both}" for both in ("hands and feet", "hands and body", "feet and body", "hands, feet and body"))))),
    "PointsCount.times": ("count double", "count three times"),
    "NotAbove.said": tuple(f"a hit above the {part} does not count" for part in ("shoulder", "hip", "knee")),
    "NotBounced.said": tuple(f"a {each} does not count" for each in ("hit off the wall", "catch after a bounce")),
    "HitNotBounced.said": tuple(f"hit {way} does not count" for way in ("after a bounce", "off the wall")),
    "LowDown.said": ("play seated", "play kneeling"),
    "Rests.who": ("one side rests", "two sides rest", "four sides on two courts"),
    "Rests.how": ("the winner stays on", "all meet all", "winners meet winners"),
    "EveryTime.determiner": ("every", "each", "the"),
    "Rotate.every": ("minute", "round", "point"),
    "MoveOn.every": ("minute", "round", "point"),
    "AllMoveOn.every": ("minute", "round", "point"),
    "Queued.end": ("first", "last"),
    "Steps.direction": ("towards", "away from"),
    "Scores.verb": ("scores", "loses"),
    "MoreWins.more": ("more", "fewer"),
    "Halves.change": ("the sides change tasks", "the sides change ends"),
    "ChangeEnds.when": ("at half-time", "after each round"),
    "Switch.usually": ("usually on", "usually off"),
    "Told.text": ("Another word.",),
    "SaidRule.text": ("Another word.",),
    "Caution.text": ("Another word.",),
    "Practice.text": ("roll", "climb"),
    "Licence.identifier": ("CC0-1.0",),
}
DROPPED = (
    "Np.owner", "Kit.owner", "Kit.singular", "Kit.percent", "Kit.parts", "Kit.like", "AimTo.where",
    "Placing.count", "When.span_of_time", "When.condition", "PointsCount.span_of_time", "Touch.load",
    "Hit.load", "Touched.load", "AimAt.load", "Queued.number", "When.doer",
)


@frozen
class Exchange:
    """A sentence with one word exchanged: where in the tree, what stood there and what stands there now."""

    slot: str
    was: str
    now: str
    sentence: Node


@frozen
class Names:
    """What a sheet can speak of, in the words of its own declarations."""

    sides: tuple[str, ...]
    things: tuple[str, ...]
    people: tuple[str, ...]
    places: tuple[str, ...]
    meanings: Mapping[str, Meaning] = field(factory=dict, eq=False)
    lone: tuple[str, ...] = ()  # areas of which there is one, whosever it is

    @property
    def every(self) -> tuple[str, ...]:
        """All of them."""
        return (*self.things, *self.people, *self.places, *self.sides)


def names_of(game: Game) -> Names:
    """The names that a game declares, and those of the language."""
    return Names(
        tuple(side.name for side in game.sides),
        (*dict.fromkeys(kit.name for kit in game.kit), *CATEGORY_WORDS),
        ("player", *(role.name for role in game.roles), *AGENTS),
        (*(area.name for area in game.areas), *(track.name for track in game.tracks), *BUILT_IN_PLACES),
        game.vocabulary,
        tuple(area.name for area in game.areas if not area.each),
    )


def exchanges(sentence: Node, names: Names) -> Iterator[Exchange]:
    """All exchanges of one word of a sentence."""
    yield from _within(sentence, names, lambda changed: changed)


def _within(node: Node, names: Names, whole: Callable[[Any], Node]) -> Iterator[Exchange]:
    for part in attrs.fields(type(node)):
        if part.name in ("span", "parameter") or part.eq is False:
            continue
        value = getattr(node, part.name)
        slot = f"{type(node).__name__}.{part.name}"

        def put(changed: Any, field: str = part.name, inner: Node = node) -> Node:
            return whole(evolve(inner, **{field: changed}))

        for other in _others(slot, value, names):
            yield Exchange(slot, _said(value), _said(other), put(other))
        if isinstance(value, Node):
            yield from _within(value, names, put)
        elif isinstance(value, tuple):
            yield from _in_tuple(slot, value, names, put)


def _said(value: object) -> str:
    if isinstance(value, tuple):
        return " | ".join(_said(each) for each in value)
    return value.words() if isinstance(value, Node) else "" if value is None else str(value)


def _in_tuple(slot: str, values: tuple[Any, ...], names: Names, put: Callable[[Any], Node]) -> Iterator[Exchange]:
    for at, each in enumerate(values):
        before, after = values[:at], values[at + 1 :]

        def placed(changed: Any, before: Any = before, after: Any = after) -> Node:
            return put((*before, changed, *after))

        if before or after or slot.endswith((".details", ".options", ".rules")):
            yield Exchange(slot, _said(each), "", put((*before, *after)))
        if isinstance(each, Node):
            for other in _instead(each, names):
                yield Exchange(slot, _said(each), _said(other), placed(other))
            yield from _within(each, names, placed)
        elif slot == "Attempt.skills":
            for skill in SKILLS:
                yield Exchange(slot, each, skill, placed(skill))


def _others(slot: str, value: Any, names: Names) -> Iterator[Any]:
    field = slot.partition(".")[2]
    words = WORDS.get(slot, WORDS.get(field) if isinstance(value, str | None) else None)
    if words is not None and (value is not None or slot not in ("Fetch.preposition",)):
        yield from (word for word in words if word != value)
    elif field == "possessive":
        owners = (*names.sides, *AGENTS)
        yield from (word for word in (None, *(f"{owner}'s" for owner in owners)) if word != value)
    elif field == "owner":
        yield from (owner for owner in _owners(slot, names) if owner != value)
    elif isinstance(value, Node):
        yield from (other for other in _instead(value, names) if other != value)
    if value is not None and slot in DROPPED:
        yield None


def _owners(slot: str, names: Names) -> Iterator[Owner | OwnerName | None]:
    yield from (Owner(word) for word in ("each", "a", "the", "their", "its", "all"))
    yield Owner("the", "other")
    yield from (OwnerName(None, None, Name(side)) for side in names.sides)
    yield from (OwnerName("the", None, Name(agent)) for agent in AGENTS)


TWO = Quantity(2.0)
AMOUNTS = (claims.NoneOf, claims.Exactly, claims.AtLeast, claims.AtMost, claims.AllOf, claims.HalfOf, claims.AllBut)
SOME_AMOUNTS = (claims.NoneOf(), claims.Exactly(TWO), claims.AtLeast(TWO), claims.AtMost(TWO), claims.AllOf("all"),
                claims.AllOf("a"), claims.HalfOf("more than half of its"),
                claims.AllBut("all but", Quantity(1.0)))  # fmt: skip


def _instead(value: Node, names: Names) -> Iterator[Node]:
    """Another node in the place of this one."""
    match value:
        case Quantity():
            yield from _quantities(value)
        case Name():
            yield from (Name(name) for name in names.every if name != value.text)
        case SideRef() | SideOf() | SideSame() | SideNamed():
            yield from (each for each in _whole_sides(names) if each != value)
        case claims.MoreOf() | claims.TimesAsMany():
            times, more = ("twice as many", "3 times as many"), (None, TWO)
            several = (*map(claims.TimesAsMany, times), *(claims.MoreOf(each, "more") for each in more))
            yield from (each for each in several if type(each) is type(value) and each != value)
        case _ if isinstance(value, AMOUNTS):
            yield from (each for each in SOME_AMOUNTS if each != value)
        case claims.Standing() | claims.Down() | claims.Inside() | claims.Placed() | claims.AtHome():
            states = (claims.Standing(), claims.Down(), claims.Inside(), claims.AtHome())
            yield from (each for each in states if each != value)
        case finish.MoreWins() | finish.Draw() | finish.SideWins() | finish.NobodyWins() | finish.NextPointWins():
            yield from (each for each in (finish.Draw(), finish.NobodyWins()) if each != value)
        case then.StaysDown() | then.StandsUp() | sets.StaysAsItIs():
            yield from (each for each in (then.StaysDown(), then.StandsUp()) if each != value)
        case queues.Queued():
            yield queues.AllQueued("all", value.preposition, value.where)
        case queues.AllQueued():
            yield queues.Queued("the", "first", None, value.preposition, value.where)
        case resting.RestInHalf() | resting.RestToHalf():
            yield from _places(isinstance(value, resting.RestToHalf))
        case time.SpanAfter() | time.SpanFirst() | time.SpanLast():
            spans = (time.SpanAfter(value.time), time.SpanFirst(value.time), time.SpanLast(value.time))
            yield from (each for each in (*spans, time.TheFirstTime()) if each != value)
        case time.AfterTime():
            yield time.EveryTime("every", value.time)
        case time.EveryTime():
            yield time.AfterTime(value.time)
        case lives.LosesLife():
            yield lives.WinsLife(value.who, "gets a life back")
        case then.Drops():
            yield then.GoesBack(value.what, "goes back")
        case attempting.AimAt(what=what):
            yield from (attempting.AimThrough(what), attempting.AimPast(what), attempting.AimTo(what))


def _places(to: bool) -> Iterator[Node]:
    behind = Np("the", None, None, Name("back line"), Owner("the", "other"))
    half = Np("the", None, None, Name("half"), Owner("the", "other"))
    yield resting.RestThere("behind", behind)
    yield ball.RestTo(half) if to else resting.RestThere("in", half)


def _whole_sides(names: Names) -> Iterator[base.AnySide]:
    yield from (SideRef(word) for word in ("a", "each", "all", "that", "its", "their"))
    yield from (SideRef("the", "other"), SideSame(), *(SideOf("the", f"{agent}'s") for agent in ("catcher", "keeper")))
    yield SideOf("the", f"{ACTORS[0]}'s")
    yield from (SideNamed(None, Name(side)) for side in names.sides)


def _quantities(value: Quantity) -> Iterator[Quantity]:
    yield evolve(value, value=value.value + 1)
    yield evolve(value, value=value.value * 2)
    if value.value > 1:
        yield evolve(value, value=value.value - 1)
    unit = {"s": "min", "min": "s", "m": "cm", "cm": "m"}.get(value.unit)
    if unit is not None:
        yield evolve(value, unit=unit)
