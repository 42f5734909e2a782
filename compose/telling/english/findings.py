"""What the check has found, made into findings that a teacher reads."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from compose.check.found import (
    BackAfter,
    BackBy,
    Counted,
    FetchedBy,
    Found,
    Instead,
    KeptBy,
    Likewise,
    Share,
    Sides,
    Stepped,
    StoodUpBy,
    Value,
    Wins,
)
from compose.net.match import Match
from compose.net.net import End, Net, Place, Reaction, Rule, Transition
from compose.telling.english.conditions import condition_in_words
from compose.telling.english.ends import end_words
from compose.telling.english.matches import part_words
from compose.telling.english.moves import move_words, step_words
from compose.telling.english.nouns import counted, many
from compose.telling.english.places import plural_of
from compose.telling.english.states import state_in_words
from compose.telling.sides import subject, wins
from grammar.core.declared import STOOD_ON
from grammar.core.values import AreaId, At, KindId, Part, SideId
from grammar.finding import Finding, Step
from grammar.said import Capital, Chain, Figure, Listed, Said, Written, chained, english
from grammar.words import article, called_by_players, capital, listing

SET_UP = "the round starts"


def findings_told(found: Iterable[Found], net: Net) -> tuple[Finding, ...]:
    """The findings of a net in words."""
    return tuple(
        Finding(
            code=each.code,
            severity=each.severity,
            title=capital(words(each.title, net)),
            place=each.place,
            hint=words(each.hint, net),
            others=tuple(dict.fromkeys(span for span in each.others if span != each.place)),
            basis=each.basis,
            witness=tuple(step(one, net) for one in each.witness),
            loop=tuple(step(one, net) for one in each.loop),
            numbers=each.numbers,
            said=(each.title, each.hint),
        )
        for each in found
    )


def step(each: Stepped, net: Net) -> Step:
    """A step of a line of play in words."""
    move = SET_UP if each.transition < 0 else step_words(net, each.before, each.transition)
    return Step(move, state_in_words(net, each.marking, each.only), each.transition)


def words(value: Value, net: Net) -> str:
    """A value that stands in a sentence, in words."""
    match value:
        case str():
            return value
        case Said(pattern, fields):
            return pattern.format(**{name: _field(each, net) for name, each in fields})
        case Chain(items, between, most):
            return chained([words(each, net) for each in items], between, most)
        case Listed(items, last):
            return listing([words(each, net) for each in items], last)
        case Capital(what):
            return capital(words(what, net))
        case Sides(first, others):
            return f"{subject(first)}{_likewise(others)}"
        case Likewise(others):
            return _likewise(others, "of ")
        case Wins(side):
            return wins(side, net.solo)
        case Counted(place, number):
            return counted(net, place, number)
        case Share(part, whole):
            return share(part, whole)
        case BackAfter() | BackBy() | FetchedBy() | KeptBy() | StoodUpBy():
            return line_instead(net, value)
        case Figure() | Written():
            return english(value)
    return _of_net(value, net)


def _of_net(value: Any, net: Net) -> str:
    match value:
        case Place():
            return many(net, value)
        case End():
            return end_words(net, value)
        case Transition() | Reaction():
            return move_words(net, value)
        case Rule():
            return f'"{value.text}"'
        case Match():
            return part_words(value)
    return condition_in_words(value, net)


def _field(value: Value, net: Net) -> str | float:
    """A number stays one, for the pattern says how it is written."""
    return value if isinstance(value, int | float) else words(value, net)


def _likewise(others: tuple[str, ...], lead: str = "") -> str:
    """Such as " (and likewise the pikes)"; nothing for no others."""
    return f" (and likewise {lead}{listing(subject(each) for each in others)})" if others else ""


def share(part: int, whole: int) -> str:
    """A share as "12 %"."""
    return f"{percents(part, whole)} %"


def percents(part: int, whole: int) -> int:
    """How many percent a share is, never rounded to none or all when it is neither."""
    if 0 < part < whole:
        return min(max(round(100 * part / whole), 1), 99)
    return 100 if part else 0


def line_instead(net: Net, value: Instead) -> str:
    """A sentence by which somebody has the balls that lie in a place, or a target stands again."""
    where = value.place
    if isinstance(value, StoodUpBy):
        return f"the teacher stands up {article(where.kind or 'target')}, 2 times a minute"
    assert isinstance(where.standing, At), "balls lie at a place"
    if isinstance(value, BackBy):
        return f"a {value.state} {where.kind or 'ball'} goes back"
    if isinstance(value, KeptBy):
        return f"a {value.state} {where.kind or 'ball'} stays with the {value.doer}"
    spot = where.standing.spot
    name = spot.of.key if isinstance(spot.of, AreaId) else spot.of.value
    if isinstance(value, BackAfter):
        place = f"{'on' if where.area in STOOD_ON else 'in'} the {name}"
        of_others = isinstance(spot.owner, SideId) and spot.owner.key != where.side
        return f"whoever waits {place}{' of the other side' if of_others else ''} comes back after 10 s"
    balls = plural_of(net, KindId(where.kind)) if where.kind else "balls"
    if value.players is not None:
        who = value.players if called_by_players(value.players) else f"players of {value.players}"
        return f"{who} fetch {balls} from the court"
    part = "" if spot.part is Part.AT else f"{spot.part.value} "
    return f"the teacher fetches {balls} from {part}the {name}, 6 times a minute"
