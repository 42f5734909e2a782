"""How often players choose each of the things they may try: what the text says, the rest divided evenly.

Each side's players of one role choose by themselves, with each kind of ball. Options that differ only in which
role is hit, or on which step of its track a thing stands, are one choice: what is there decides between them.
While a choice cannot be made (a sentence says "only when", or nothing is left to aim at), its share falls to the
others: such an option becomes several, each with the share that holds then.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product

from compose.net.alike import first_like
from compose.net.attempt import Attempt
from compose.net.net import All, AnyOf, Comparison, Condition, Not, Rate, Ratio
from compose.net.outcome import Moment
from grammar.core.play import Attempt as Trial
from grammar.core.play import Offer, PickUp
from grammar.core.values import At, KindId, Population, Presence
from grammar.frozen import evolve, field, frozen

MOST_CONDITIONS = 3  # more would make too many out of one option; then every choice keeps its share


@frozen
class Option:
    """One thing that players of one side and role may try with one kind of ball, counted among those who `stand` so.

    `only` is what the sentence asks for ("only when ..."), `there` that something is there to aim at.
    """

    offer: Offer
    trial: Trial
    moment: Moment
    attempt: Attempt
    guard: tuple[Condition, ...]
    rate: Rate
    only: Condition | None = None
    there: tuple[Condition, ...] = ()
    stand: Presence | At = Presence.PLAYING
    standing_ratio: tuple[Ratio, ...] = field(default=())
    down_ratio: tuple[Ratio, ...] = field(default=())


@frozen
class Rival:
    """An option with the number of what is chosen: equal for all that are one choice."""

    choice: int
    option: Option


Needs = Mapping[int, tuple[Condition, ...]]


def shared(options: Sequence[Option], always: frozenset[Condition]) -> tuple[Option, ...]:
    """The options with their shares. `always` holds as long as play goes on, for else the round is over."""
    rivals = list(map(Rival, first_like(_choice(each) for each in options), options))
    choosers = first_like(_chooser(each) for each in options)
    of_chooser = {who: [rival for rival, by in zip(rivals, choosers, strict=True) if by == who] for who in choosers}
    needs = {who: _needs(some, always) for who, some in of_chooser.items()}
    return tuple(
        variant
        for rival, who in zip(rivals, choosers, strict=True)
        for variant in _variants(rival, of_chooser[who], needs[who])
    )


def _variants(own: Rival, rivals: Sequence[Rival], needs: Needs) -> Iterator[Option]:
    option, sure = own.option, set(needs[own.choice])
    doubtful = list(dict.fromkeys(need for needed in needs.values() for need in needed if need not in sure))
    if len(doubtful) > MOST_CONDITIONS:
        doubtful = []
    for held in product((True, False), repeat=len(doubtful)):
        known = tuple(need if so else negated(need) for need, so in zip(doubtful, held, strict=True))
        barred = {need for need, so in zip(doubtful, held, strict=True) if not so}
        open_ones = {choice for choice, needed in needs.items() if not barred & set(needed)}
        share = _share(own.choice, [each for each in rivals if each.choice in open_ones])
        if share > 0 and not _contradictory((*option.guard, *known)):
            yield evolve(option, attempt=evolve(option.attempt, share=share), guard=option.guard + known)


def _needs(rivals: Sequence[Rival], always: frozenset[Condition]) -> Needs:
    """What has to be so for each choice to be possible, besides players and balls."""
    there: dict[int, list[tuple[Condition, ...]]] = {}
    only: dict[int, Condition | None] = {}
    for each in rivals:
        there.setdefault(each.choice, []).append(each.option.there)
        only[each.choice] = each.option.only
    found: dict[int, tuple[Condition, ...]] = {}
    for choice, ways in there.items():
        some = ways[0] if len(ways) == 1 or () in ways else (AnyOf(tuple(All(way) for way in ways)),)
        asked = only[choice]
        found[choice] = tuple(need for need in (*some, *((asked,) if asked else ())) if need not in always)
    return found


def negated(condition: Condition) -> Condition:
    """The opposite, in its plainest form."""
    if isinstance(condition, All) and len(condition.parts) == 1:
        return negated(condition.parts[0])
    if isinstance(condition, Comparison) and all(times == 1 for times, _ in condition.terms):
        if (condition.relation, condition.bound) == (">=", 1):
            return Comparison(condition.terms, "==", 0)
        if (condition.relation, condition.bound) == ("==", 0):
            return Comparison(condition.terms, ">=", 1)
    return condition.part if isinstance(condition, Not) else Not(condition)


def _contradictory(conditions: tuple[Condition, ...]) -> bool:
    plain = set(_flat(conditions))
    return any(negated(each) in plain for each in plain)


def _flat(conditions: tuple[Condition, ...]) -> Iterator[Condition]:
    for each in conditions:
        if isinstance(each, All):
            yield from _flat(each.parts)
        else:
            yield each


def _share(own: int, available: Sequence[Rival]) -> float:
    """The share of a choice among those that may be made."""
    said = {each.choice: _said(each.option, available) for each in available}
    fixed = sum(share for share in said.values() if share is not None)
    free = sum(share is None for share in said.values())
    share = said[own]
    if share is None:
        return max(0.0, 1.0 - fixed) / free
    return share if free else share / fixed


def _said(option: Option, available: Sequence[Rival]) -> float | None:
    """What the text says of a sentence, divided by the choices that the sentence offers."""
    if option.offer.share is None:
        return None
    choices = {each.choice for each in available if each.option.offer.lines == option.offer.lines}
    return float(option.offer.share) / len(choices)


def _choice(option: Option) -> tuple[tuple[int, ...], Trial, Presence | At]:
    """What is chosen, and from where: of several kinds that a line lets them take whichever they come upon."""
    trial = evolve(option.trial, ball=None) if isinstance(option.trial.aim, PickUp) else option.trial
    return option.offer.lines, trial, option.moment.by_at


def _chooser(option: Option) -> tuple[Population, Presence | At, KindId | None]:
    taking = isinstance(option.trial.aim, PickUp)  # who takes something chooses from where, of whatever kind
    return option.offer.by, option.stand, None if taking else option.trial.ball
