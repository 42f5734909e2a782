"""What is suggested: the sets found, each without what is not needed and with amounts no further from the usual ones
than they have to be, and what each modifier bought."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from attrs import frozen

from compose.fit.suggest.amounts import chosen, towards_usual, with_amounts
from compose.fit.suggest.played_wishes import Mended
from compose.fit.suggest.score import Change, Scored, Scorer, Uses, change
from compose.fit.suggest.search import Found
from compose.fit.suggest.wish import Miss, Wish
from compose.modifiers.modifier import Use
from compose.telling.findings import finding_said
from compose.telling.wording import ENGLISH, Wording


@frozen
class Bought:
    """A modifier of a set and the wishes that would be missed without it; `needed_by` names modifiers that would
    not fit without it."""

    use: Use
    wishes: tuple[str, ...]
    needed_by: Uses = ()


@frozen
class Suggestion:
    """A set of modifiers that meets all wishes, in the order to apply them, and how many lines of the game change.
    `afterwards` is what the forecast then finds to mend, where something was to be mended."""

    bought: tuple[Bought, ...]
    edits: int
    afterwards: tuple[str, ...] = ()

    @property
    def uses(self) -> Uses:
        """The modifiers with their amounts."""
        return tuple(each.use for each in self.bought)

    @property
    def change(self) -> Change:
        """How much it changes."""
        return change(self.uses, self.edits)


def suggestions(found: Found, scorer: Scorer, most: int = 5, wording: Wording = ENGLISH) -> tuple[Suggestion, ...]:
    """The sets of a search, least change first; of sets with the same modifiers only the one that changes least."""
    made: dict[frozenset[str], Suggestion] = {}
    for each in _of_each_modifiers(found.solutions)[:most]:
        suggestion = _suggestion(_eased(_needed(each.uses, scorer), scorer), scorer, wording)
        names = frozenset(use.modifier.name for use in suggestion.uses)
        if names not in made or suggestion.change < made[names].change:
            made[names] = suggestion
    smallest = [each for names, each in made.items() if not any(other < names for other in made)]
    return tuple(sorted(smallest, key=lambda each: each.change))


def _of_each_modifiers(solutions: Sequence[Scored]) -> list[Scored]:
    first: dict[frozenset[str], Scored] = {}
    for each in solutions:
        first.setdefault(frozenset(each.names), each)
    return list(first.values())


def _met(uses: Uses, scorer: Scorer) -> bool:
    scored = scorer(uses)
    return scored is not None and scored.met


def _needed(uses: Uses, scorer: Scorer) -> Uses:
    """The uses without those that the others do without."""
    for use in uses:
        rest = tuple(each for each in uses if each is not use)
        if _met(rest, scorer):
            return _needed(rest, scorer)
    return uses


def _eased(uses: Uses, scorer: Scorer) -> Uses:
    """The same modifiers with each amount as near to its usual one as meets all wishes, one amount after the other;
    found by halving, for it is taken that further from the usual one is never worse for them."""
    for axis, nearer in enumerate(towards_usual(uses)):
        low, high = 0, len(nearer)
        while low < high:
            middle = (low + high) // 2
            if _met(_at(uses, axis, nearer[middle]), scorer):
                high = middle
            else:
                low = middle + 1
        uses = _at(uses, axis, nearer[low]) if low < len(nearer) else uses
    return uses


def _at(uses: Uses, axis: int, value: float) -> Uses:
    there = chosen(uses)
    return with_amounts(uses, (*there[:axis], value, *there[axis + 1 :]))


def _suggestion(uses: Uses, scorer: Scorer, wording: Wording) -> Suggestion:
    whole = scorer(uses)
    assert whole is not None
    return Suggestion(tuple(_bought(uses, scorer, wording)), whole.edits, _afterwards(uses, scorer, wording))


def _afterwards(uses: Uses, scorer: Scorer, wording: Wording) -> tuple[str, ...]:
    made = scorer.made(uses)
    if made is None or not any(isinstance(wish, Mended) for wish in scorer.wishes):
        return ()
    return tuple(finding_said(each, wording).title for each in scorer.looker.foreseen(made[0]).to_mend)


def _bought(uses: Uses, scorer: Scorer, wording: Wording) -> Iterator[Bought]:
    for use in uses:
        rest = tuple(each for each in uses if each is not use)
        made = scorer.made(rest)
        if made is None:
            yield Bought(use, (), rest)
        else:
            yield Bought(use, _missed(scorer, rest, wording))


def _missed(scorer: Scorer, uses: Uses, wording: Wording) -> tuple[str, ...]:
    """The wishes that the rest of a set misses; by how much is said where the game as it is does not say the same."""
    scored, base = scorer(uses), scorer(())
    assert base is not None, "a game is scored as it is"
    return unmet(scored, scorer.wishes, base.misses, wording) if scored is not None else ()


def unmet(
    scored: Scored, wishes: Sequence[Wish], said: Sequence[Miss | None] = (), wording: Wording = ENGLISH
) -> tuple[str, ...]:
    """The wishes that a set misses, in words, with what is missing unless that was `said` before."""
    return tuple(
        _unmet(wish.words(wording), "" if miss in said else miss.said(wording))
        for miss, wish in zip(scored.misses, wishes, strict=True)
        if miss is not None and not miss.met
    )


def _unmet(wish: str, missing: str) -> str:
    return f"{wish} ({missing})" if missing and missing not in wish else wish
